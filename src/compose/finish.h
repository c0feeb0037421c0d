// From a layout and a chain of choices to a finished rough: solved for the exact shapes, looked
// at, lettered, judged.
#pragma once

#include "compose/compose.h"
#include "compose/pins_met.h"
#include "review/score_card.h"

namespace tw {

/// Of the figures only shares are measured; see measureFully. A pinned staging is taken instead of
/// the choice for its panel.
Measured finishRough(const PageCase& page, const Workshop& workshop, const Layout& layout,
                     const OrderReading& order, const std::vector<StagingChoice>& choices,
                     const PinsMet& pins);

/// Measures what is dear in a finished rough (limbs, outlines, tangents) and judges it again.
void measureFully(Measured& measured, const PageCase& page, const Workshop& workshop);

/// Panels that lie on this one.
std::vector<Polygon> insetsOn(const Layout& layout, std::size_t panel);
/// Share of the focus figure under balloons and what else is `over` it; only measured where the
/// figure is to be lifted.
double coveredShare(const PanelCase& wish, const RoughPanel& panel, std::vector<Polygon> over);
/// Where every panel's lead arrives; nowhere without one.
std::vector<Arrival> arrivalsOf(const Rough& rough, const PageCase& page);

/// What lettering has to know of panel i as it is now. Borrows the copy from the page.
LetterRequest letterRequest(const PageCase& page, std::size_t i, const RoughPanel& panel,
                            const std::vector<Polygon>& insets);
/// The copy of panel i set into the panel as it is now; balloons placed by hand stay. `insets`:
/// panels that lie on it.
LetterResult letteredPanel(const PageCase& page, const Workshop& workshop, std::size_t i,
                           const RoughPanel& panel, const std::vector<Polygon>& insets);

}  // namespace tw
