// Small pictures drawn for the tests: paper, boxes, discs and letters of plain dark bars.
#pragma once

#include "geometry/grey_picture.h"
#include "geometry/polygon.h"

namespace tw {

inline GreyPicture paper(int width, int height, float light = 1) {
  GreyPicture picture{.width = width, .height = height};
  picture.light.assign(static_cast<std::size_t>(width) * static_cast<std::size_t>(height), light);
  return picture;
}

/// Every pixel whose middle `inside` holds gets `light`.
template <class Inside>
void paint(GreyPicture& picture, float light, Inside inside) {
  for (int y = 0; y < picture.height; ++y)
    for (int x = 0; x < picture.width; ++x)
      if (inside(picture.onPage(x, y)))
        picture.light[static_cast<std::size_t>(y) * static_cast<std::size_t>(picture.width) +
                      static_cast<std::size_t>(x)] = light;
}

inline void paintBox(GreyPicture& picture, const Rect& box, float light) {
  paint(picture, light, [&](Point p) { return box.contains(p); });
}

inline void paintEllipse(GreyPicture& picture, const Rect& box, float light) {
  const Point c = box.centre();
  paint(picture, light, [&](Point p) {
    return std::hypot((p.x - c.x) / (box.width() / 2), (p.y - c.y) / (box.height() / 2)) <= 1;
  });
}

/// A light balloon with a dark outline and, when wanted, rows of letters.
inline void paintBalloon(GreyPicture& picture, const Rect& box, bool lettered) {
  paintEllipse(picture, box, 0.05f);
  paintEllipse(picture, box.inset(2 * picture.mmPerPx), 1);
  if (!lettered) return;
  const double step = box.height() / 8;
  for (int row = 0; row < 3; ++row)
    for (int letter = 0; letter < 8; ++letter) {
      const Point at{box.min.x + box.width() * (0.24 + 0.065 * letter),
                     box.min.y + box.height() * 0.28 + step * 1.4 * row};
      paintBox(picture, {at, at + Vector{box.width() * 0.03, step}}, 0.1f);
    }
}

inline Polygon wholeOf(const GreyPicture& p) {
  return polygonOf(Rect{p.origin, p.origin + Vector{p.width * p.mmPerPx, p.height * p.mmPerPx}});
}

inline GreyPicture mirroredPicture(const GreyPicture& p) {
  GreyPicture out = p;
  for (int y = 0; y < p.height; ++y)
    for (int x = 0; x < p.width; ++x)
      out.light[static_cast<std::size_t>(y) * static_cast<std::size_t>(p.width) +
                static_cast<std::size_t>(x)] = p.at(p.width - 1 - x, y);
  return out;
}

}  // namespace tw
