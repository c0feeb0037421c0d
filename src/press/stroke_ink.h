// The artist's own lines over a rough as ink: non-photo blue, or black.
#pragma once

#include "geometry/drawing.h"
#include "job/rough.h"
#include "press/grid_art.h"
#include "press/surface.h"

namespace tw {

inline Ink inkOf(const PenStroke& stroke) {
  return stroke.black ? kBlack : kNonPhotoBlue;
}
/// A file may hold fewer widths than points; the last one goes on.
inline Polygon outlineOf(const PenStroke& stroke) {
  Stroke full{stroke.points, stroke.widthsMm, 1};
  full.widths.resize(full.points.size(), full.widths.empty() ? 0.3 : full.widths.back());
  return outlineOf(full);
}

}  // namespace tw
