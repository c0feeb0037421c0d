// Two roughs of a page mixed: one panel's staging of another rough, or one rough's arrangement with
// the stagings of another. What comes out is a rough of its own; the two stay as they are.
#pragma once

#include <string>
#include <vector>

#include "compose/compose.h"
#include "review/page_case.h"

namespace tw {

/// Not measured yet and without a name: for MeasuredPage::of.
struct Mixed {
  Rough rough;
  std::vector<std::string> notes;  ///< what could not come along, a sentence each
};

/// `into` with that panel staged as in `from`, solved for the shape it has in `into`. The hand-set
/// parts of the staging and the strokes drawn over it come along, those of `into`'s panel do not;
/// balloons placed by hand stay where `into` has them. Both must show the page's beats.
Mixed withPanelOf(const PageCase& page, const Stager& stager, const Rough& into, const Rough& from,
                  std::size_t panel);

/// The shapes of `shapes` with every staging, and the strokes, of `stagings`. Balloons placed by
/// hand are set anew, for their panels have other shapes.
Mixed withArrangementOf(const PageCase& page, const Stager& stager, const Rough& shapes,
                        const Rough& stagings);

}  // namespace tw
