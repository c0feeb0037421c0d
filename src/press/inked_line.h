// Turns the pen lines of a picture into filled outlines, with as few points as the eye allows.
#pragma once

#include "geometry/drawing.h"
#include "press/surface.h"

namespace tw {

/// The stroke with fewer points: neither its middle nor either edge moves by more than
/// `tolerance` mm.
Stroke thinned(const Stroke& stroke, double tolerance);

/// Tones, then strokes; neighbouring strokes of one darkness are filled together.
void drawPicture(Surface& surface, const Drawing& drawing, double tolerance);

}  // namespace tw
