#include "press/page_art.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "geometry/turn_area.h"
#include "press/balloon_art.h"
#include "press/inked_line.h"

namespace tw {

namespace {

// Even weight for all panels of a page, at print; common practice, no source.
constexpr double kBorderMm = 0.5;
// Paper left around a panel that lies on another one.
constexpr double kInsetMarginMm = 1.1;
// A side this far outside the trim is cut away, so it has no border.
constexpr double kOutsideMm = 0.05;

/// Both ends beyond the same edge of the trim.
bool isBledSide(Point a, Point b, const Rect& trim) {
  const auto beyond = [&](auto&& outside) { return outside(a) && outside(b); };
  return beyond([&](Point p) { return p.x < trim.min.x - kOutsideMm; }) ||
         beyond([&](Point p) { return p.x > trim.max.x + kOutsideMm; }) ||
         beyond([&](Point p) { return p.y < trim.min.y - kOutsideMm; }) ||
         beyond([&](Point p) { return p.y > trim.max.y + kOutsideMm; });
}

/// The outline with each printing side moved inward by the border's weight, corners kept sharp;
/// sides that bleed stay where they are.
Polygon insideBorder(const Polygon& outline, const Rect& trim) {
  const auto& p = outline.points;
  const std::size_t n = p.size();
  const double turn = turnArea(outline) < 0 ? -1 : 1;
  const auto sideAt = [&](std::size_t i) {
    const Point a = p[i], b = p[(i + 1) % n];
    const Vector d = (b - a).unit();
    const double by = isBledSide(a, b, trim) ? 0 : kBorderMm * turn;
    return Ray{a + Vector{-d.y, d.x} * by, d};
  };
  Polygon inside;
  for (std::size_t i = 0; i < n; ++i) {
    const Ray before = sideAt((i + n - 1) % n), after = sideAt(i);
    const double sine = cross(before.direction, after.direction);
    // Sides that go straight on share the moved corner.
    const double along =
        std::abs(sine) < 1e-6 ? 0 : cross(after.from - before.from, after.direction) / sine;
    inside.points.push_back(std::abs(sine) < 1e-6 ? after.from
                                                  : before.from + before.direction * along);
  }
  return inside;
}

}  // namespace

bool liesOnGround(const Rough& rough, std::size_t panel) {
  return !rough.panels[panel].ground &&
         std::any_of(rough.panels.begin(), rough.panels.end(),
                     [](const RoughPanel& each) { return each.ground; });
}

std::vector<std::size_t> paintingOrder(const Rough& rough) {
  std::vector<std::size_t> order;
  for (const bool ground : {true, false})
    for (std::size_t i = 0; i < rough.panels.size(); ++i)
      if (rough.panels[i].ground == ground) order.push_back(i);
  return order;
}

void PageArt::drawOn(Surface& surface, double smallestMm) const {
  const Rough& rough = picture_.rough;
  for (const std::size_t i : paintingOrder(rough)) drawPanel(surface, i, smallestMm);
  for (std::size_t i = 0; i < rough.panels.size(); ++i) drawCopy(surface, rough.panels[i], i);
}

void drawPanelPicture(Surface& surface, const Polygon& outline, bool onGround,
                      const Drawing& drawing, double smallestMm) {
  if (onGround) {
    surface.line(Path(outline), {.ink = kPaper, .width = 2 * kInsetMarginMm});
    surface.fill(Path(outline), kPaper, FillRule::NonZero);
  }
  surface.clip(drawing.clip.empty() ? Path(outline) : Path(drawing.clip), FillRule::EvenOdd);
  drawPicture(surface, drawing, smallestMm);
  surface.unclip();
}

void drawPanelBorder(Surface& surface, const RoughPanel& panel, const Rect& trim) {
  // A ring, not a clipped line: viewers soften clips and would thin one border more than another.
  Path ring(panel.outline);
  ring.add(Path(insideBorder(panel.outline, trim)));
  surface.fill(ring, kBlack, FillRule::EvenOdd);
}

void drawPanelCopy(Surface& surface, const RoughPanel& panel, const Typesetter& typesetter) {
  drawBalloonShapes(surface, panel.balloons, typesetter);
  for (const PlacedBalloon& balloon : panel.balloons) drawBalloonType(surface, balloon, typesetter);
}

void PageArt::drawPanel(Surface& surface, std::size_t index, double smallestMm) const {
  const RoughPanel& panel = picture_.rough.panels[index];
  surface.openGroup(fmt::format("panel-{}", index + 1), fmt::format("Panel {}", index + 1), true);
  const Drawing none;
  drawPanelPicture(surface, panel.outline, liesOnGround(picture_.rough, index),
                   index < picture_.panels.size() ? picture_.panels[index] : none, smallestMm);
  drawPanelBorder(surface, panel, picture_.sheet.trimRect());
  surface.closeGroup();
}

void PageArt::drawCopy(Surface& surface, const RoughPanel& panel, std::size_t index) const {
  if (panel.balloons.empty()) return;
  surface.openGroup(fmt::format("copy-{}", index + 1), fmt::format("Copy of panel {}", index + 1),
                    true);
  drawPanelCopy(surface, panel, typesetter_);
  surface.closeGroup();
}

}  // namespace tw
