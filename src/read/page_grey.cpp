#include "read/page_grey.h"

#include <algorithm>
#include <cmath>

#include "geometry/polygon.h"

namespace tw {

namespace {

/// L* / 100 of a line of type from afar: a fifth of it is ink. Our estimate.
constexpr float kTypeLight = 0.91f;
/// Width of a capital over the type size, and its height; about those of Comic Neue Bold.
constexpr double kLetterWide = 0.56, kLetterHigh = 0.7;
constexpr double kMmPerPoint = 25.4 / 72;

/// Calls visit(x, y, middle of the pixel) for the picture's pixels inside the box.
template <class Visit>
void eachPixel(const GreyPicture& page, const Rect& box, Visit visit) {
  const auto pixel = [&](double mm, double origin, int most) {
    return std::clamp(static_cast<int>(std::floor((mm - origin) / page.mmPerPx)), 0, most);
  };
  const int right = pixel(box.max.x, page.origin.x, page.width - 1);
  const int bottom = pixel(box.max.y, page.origin.y, page.height - 1);
  for (int y = pixel(box.min.y, page.origin.y, page.height - 1); y <= bottom; ++y)
    for (int x = pixel(box.min.x, page.origin.x, page.width - 1); x <= right; ++x)
      if (const Point at = page.onPage(x, y); box.contains(at)) visit(x, y, at);
}

float& lightAt(GreyPicture& page, int x, int y) {
  return page.light[static_cast<std::size_t>(y) * static_cast<std::size_t>(page.width) +
                    static_cast<std::size_t>(x)];
}

/// Mean of the four pixels around a place.
float sampled(const GreyPicture& panel, Point at) {
  const double x = (at.x - panel.origin.x) / panel.mmPerPx - 0.5;
  const double y = (at.y - panel.origin.y) / panel.mmPerPx - 0.5;
  const int x0 = std::clamp(static_cast<int>(std::floor(x)), 0, panel.width - 1);
  const int y0 = std::clamp(static_cast<int>(std::floor(y)), 0, panel.height - 1);
  const int x1 = std::min(x0 + 1, panel.width - 1), y1 = std::min(y0 + 1, panel.height - 1);
  return (panel.at(x0, y0) + panel.at(x1, y0) + panel.at(x0, y1) + panel.at(x1, y1)) / 4;
}

void paint(GreyPicture& page, const RoughPanel& panel, const GreyPicture& picture) {
  if (picture.empty()) return;
  eachPixel(page, bounds(panel.outline), [&](int x, int y, Point at) {
    if (contains(panel.outline, at)) lightAt(page, x, y) = sampled(picture, at);
  });
}

void paintCopy(GreyPicture& page, const PlacedBalloon& balloon) {
  if (balloon.outline.points.size() > 2)
    eachPixel(page, bounds(balloon.outline), [&](int x, int y, Point at) {
      if (contains(balloon.outline, at)) lightAt(page, x, y) = 1;
    });
  const double size = balloon.sizePt * kMmPerPoint;
  for (const CopyLine& line : balloon.lines) {
    const double half = 0.5 * kLetterWide * size * static_cast<double>(line.text.size());
    const Rect type{{line.baselineMiddle.x - half, line.baselineMiddle.y - kLetterHigh * size},
                    {line.baselineMiddle.x + half, line.baselineMiddle.y}};
    eachPixel(page, type, [&](int x, int y, Point) { lightAt(page, x, y) = kTypeLight; });
  }
}

}  // namespace

GreyPicture pageGrey(const Rough& rough, const std::vector<GreyPicture>& panels, const Rect& trim,
                     int width) {
  GreyPicture page;
  page.width = width;
  page.mmPerPx = trim.width() / width;
  page.height = std::max(1, static_cast<int>(std::lround(trim.height() / page.mmPerPx)));
  page.origin = trim.min;
  page.light.assign(static_cast<std::size_t>(page.width) * static_cast<std::size_t>(page.height),
                    1.0f);
  for (const bool ground : {true, false})
    for (std::size_t i = 0; i < rough.panels.size() && i < panels.size(); ++i)
      if (rough.panels[i].ground == ground) paint(page, rough.panels[i], panels[i]);
  for (const RoughPanel& panel : rough.panels)
    for (const PlacedBalloon& balloon : panel.balloons) paintCopy(page, balloon);
  return page;
}

}  // namespace tw
