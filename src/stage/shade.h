// From pixels to clean flat shapes: a field over the picture is traced at a level into smooth
// outlines on the page. Used for shadow sides, cast shadows, hair and silhouettes.
#pragma once

#include <vector>

#include "stage/panel_view.h"

namespace tw {

/// One number per pixel of the picture.
struct Field {
  int width = 0, height = 0;
  std::vector<float> value;

  float at(int x, int y) const {
    return value[static_cast<std::size_t>(y) * width + static_cast<std::size_t>(x)];
  }
};
Field fieldLike(const Picture& picture);

/// Mean over a square of 2·radius + 1 pixels, twice: nearly a bell. Edges repeat.
Field blurred(const Field& field, int radius);
/// The same, but only pixels with `weight` 1 count and are changed; for tones inside a figure.
Field blurredWithin(const Field& field, const Field& weight, int radius);

struct TraceStyle {
  float level = 0.5f;
  double leastMm2 = 0;    ///< smaller shapes are dropped
  double smoothMm = 0.3;  ///< how far corners are rounded
};
/// Where the field is above the level, mm on the page; runs on beyond the picture's edges a little
/// so that tones reach the panel's border.
Region traced(const Field& field, const PanelView& view, const TraceStyle& style);

/// 1 where the picture shows a solid that `wanted` accepts.
template <class Wanted>
Field maskOf(const Picture& picture, const Wanted& wanted) {
  Field mask = fieldLike(picture);
  for (std::size_t i = 0; i < mask.value.size(); ++i)
    mask.value[i] = picture.solid[i] >= 0 && wanted(i) ? 1.f : 0.f;
  return mask;
}

}  // namespace tw
