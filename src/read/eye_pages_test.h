// Pages for the tests of the eye path: grids and forks with copy, faces and figures of a stated
// density. Whole millimetres, so that mirrored pages are mirrored exactly.
#pragma once

#include "geometry/polygon.h"
#include "read/eye_reading.h"

namespace tw::test {

inline constexpr Rect kEyePage{{0, 0}, {180, 270}};

inline SeenElement part(SeenKind kind, double x, double y, double w, double h) {
  return {kind, Rect{{x, y}, {x + w, y + h}}, "", 0, 0, false};
}

inline SeenElement copyAt(double x, double y, double w, double h, int words) {
  return {SeenKind::Copy, Rect{{x, y}, {x + w, y + h}}, "", words, words * 4, false};
}

inline SeenPanel panelAt(double x, double y, double w, double h) {
  SeenPanel panel;
  panel.outline = polygonOf(Rect{{x, y}, {x + w, y + h}});
  panel.focus = {x + w / 2, y + h / 2};
  return panel;
}

/// Its upper quarter holds `balloons` of that many words, side by side.
inline void addCopy(SeenPanel& panel, int balloons, int words) {
  const Rect box = bounds(panel.outline);
  const double width = (box.width() - 4) / std::max(1, balloons);
  for (int i = 0; i < balloons; ++i)
    panel.elements.push_back(
        copyAt(box.min.x + 2 + i * width, box.min.y + 2, width - 2, box.height() / 4, words));
}

inline void addFigure(SeenPanel& panel, double share, bool focus = true) {
  const Rect box = bounds(panel.outline);
  const double x = box.min.x + box.width() * share, y = box.min.y + box.height() * 0.4;
  SeenElement face = part(SeenKind::Face, x - 4, y, 8, 10);
  face.isFocus = focus;
  panel.elements.push_back(face);
  panel.elements.push_back(part(SeenKind::Figure, x - 8, y, 16, box.height() * 0.55));
}

/// A grid with 4 mm gutters over the whole page.
inline SeenPage gridPage(int rows, int columns) {
  SeenPage page;
  page.page = kEyePage;
  const double w = (180.0 - 4 * (columns - 1)) / columns, h = (270.0 - 4 * (rows - 1)) / rows;
  for (int r = 0; r < rows; ++r)
    for (int c = 0; c < columns; ++c)
      page.panels.push_back(
          panelAt(std::floor(c * (w + 4)), std::floor(r * (h + 4)), std::floor(w), std::floor(h)));
  return page;
}

inline Rect mirrorOf(const Rect& box, double width) {
  return {{width - box.max.x, box.min.y}, {width - box.min.x, box.max.y}};
}

/// The page seen in a mirror, and read the other way.
inline SeenPage mirrorOf(SeenPage page) {
  const double width = page.page.max.x;
  for (SeenPanel& panel : page.panels) {
    panel.outline = mirrored(panel.outline, width / 2);
    panel.focus.x = width - panel.focus.x;
    panel.lead.from.x = width - panel.lead.from.x;
    panel.lead.direction.x = -panel.lead.direction.x;
    for (SeenElement& e : panel.elements) e.box = mirrorOf(e.box, width);
  }
  const bool right = page.direction == ReadingDirection::LeftToRight;
  page.direction = right ? ReadingDirection::RightToLeft : ReadingDirection::LeftToRight;
  return page;
}

inline EyePathModel shippedEyes() {
  const auto model = loadEyePathModel();
  ensure(model.has_value(), "the shipped constants of the eye path cannot be read");
  return *model;
}

inline EyeReading eyesOn(const SeenPage& page, int readers = 1000) {
  EyeOptions options;
  options.readers = readers;
  options.samples = 0;
  return readEyes(page, shippedEyes(), options);
}

}  // namespace tw::test
