// The lines of a costume: seams, closing, collar, cuffs, belt, pockets, patches and a few folds
// where cloth is pressed together. They are laid on the rings of which body and clothes are made,
// so they turn with the figure; what is hidden is left out when they are drawn.
#pragma once

#include <array>

#include "geometry/drawing.h"
#include "stage/panel_view.h"

namespace tw {

std::vector<GarmentLine> garmentLines(const Body& body, const Skeleton& skeleton);
/// Strands of the hair.
std::vector<GarmentLine> hairLines(const Body& body, const Skeleton& skeleton);

/// The value of every body part, 0 paper … 1 black.
using PartValues = std::array<double, static_cast<std::size_t>(BodyPart::Count)>;
PartValues valuesOf(const Look& look);

/// The lines that the picture shows, fewer of them the smaller the figure is.
std::vector<Stroke> drawnGarments(const Solid& solid, int index, const PanelView& view,
                                  double lineMm);

}  // namespace tw
