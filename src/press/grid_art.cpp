#include "press/grid_art.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "geometry/polygon.h"
#include "press/number_places.h"

namespace tw {

namespace {

constexpr double kLineMm = 0.16, kHorizonMm = 0.4, kKeyPt = 6.5, kInsetMm = 1.2;
constexpr double kCrossMm = 1.6, kLineStepMm = 2.8;
constexpr double kWordsMm = 40;  // about the longest line
constexpr Ink kWords{0.10, 0.42, 0.66};

void drawLines(Surface& surface, const std::vector<RuledLine>& lines, std::vector<double> dashes) {
  for (const RuledLine& line : lines) {
    Path path;
    path.add({line.from, line.to}, false);
    surface.line(path, {.ink = kNonPhotoBlue, .width = kLineMm, .dashes = dashes});
  }
}

void drawCross(Surface& surface, Point at) {
  Path cross;
  cross.add({at - Vector{kCrossMm, 0}, at + Vector{kCrossMm, 0}}, false);
  cross.add({at - Vector{0, kCrossMm}, at + Vector{0, kCrossMm}}, false);
  surface.line(cross, {.ink = kWords, .width = 0.3});
  surface.line(Path(ellipse(at, kCrossMm * 0.55, kCrossMm * 0.55, 24)),
               {.ink = kWords, .width = 0.2});
}

/// "left to right 132 mm left, 4 mm up": from the middle of the panel, for the ruler.
std::string offInWords(const VanishingPoint& point, Point middle) {
  const Vector off = point.at - middle;
  std::string words = point.of;
  words += fmt::format(" {:.0f} mm {}", std::abs(off.x), off.x < 0 ? "left" : "right");
  return words + fmt::format(", {:.0f} mm {}", std::abs(off.y), off.y < 0 ? "up" : "down");
}

std::string sizesInWords(const PerspectiveGrid& grid) {
  return fmt::format("squares {:g} m, eye {:.2f} m up, lens {:.0f} mm", grid.squareM, grid.eyeM,
                     grid.lensMm);
}

/// Lowest baseline of so many lines at which a slanted lower border cuts none of them.
double baselineFor(const Polygon& panel, std::size_t lines) {
  const Rect box = bounds(panel);
  const double high = kLineStepMm * static_cast<double>(lines);
  const double left = box.min.x + kInsetMm, right = std::min(left + kWordsMm, box.max.x - kInsetMm);
  for (double y = box.max.y - kInsetMm; y > box.min.y + high; y -= 0.5)
    if (contains(panel, {left, y + 0.6}) && contains(panel, {right, y + 0.6})) return y;
  return box.max.y - kInsetMm;
}

/// Set from the panel's lower left corner upward, each line on a strip of paper.
void drawWords(Surface& surface, const PerspectiveGrid& grid, const Typesetter& typesetter) {
  const Rect box = bounds(grid.clip);
  std::vector<std::string> lines{sizesInWords(grid)};
  for (const VanishingPoint& point : grid.vanishing)
    if (!contains(grid.clip, point.at)) lines.push_back(offInWords(point, box.centre()));
  double y = baselineFor(grid.clip, lines.size());
  for (const std::string& line : lines) {
    const std::string fitting =
        typesetter.shortened(line, Face::Regular, kKeyPt, box.width() - 2 * kInsetMm);
    const double width = typesetter.widthOf(fitting, Face::Regular, kKeyPt);
    const Point at{box.min.x + kInsetMm, y};
    surface.fill(Path(Rect{{at.x - 0.4, at.y - 2.1}, {at.x + width + 0.4, at.y + 0.6}}), kPaper,
                 FillRule::NonZero);
    surface.type({.text = fitting, .sizePt = kKeyPt, .at = at, .ink = kWords});
    y -= kLineStepMm;
  }
}

/// The panel but for its copy.
Region freeOfCopy(const PerspectiveGrid& grid, const RoughPanel& panel,
                  const Typesetter& typesetter) {
  const std::vector<Polygon> copy = copyShapes(panel, typesetter);
  return copy.empty() ? Region{{grid.clip}} : without({{grid.clip}}, united(copy));
}

void drawGrid(Surface& surface, const PerspectiveGrid& grid, const RoughPanel& panel,
              const Typesetter& typesetter) {
  surface.clip(Path(freeOfCopy(grid, panel, typesetter)), FillRule::EvenOdd);
  drawLines(surface, grid.ground, {});
  drawLines(surface, grid.upright, {0.9, 0.6});
  if (grid.horizon) {
    Path path;
    path.add({grid.horizon->from, grid.horizon->to}, false);
    surface.line(path, {.ink = kWords, .width = kHorizonMm, .dashes = {4, 0.8, 0.8, 0.8}});
  }
  for (const VanishingPoint& point : grid.vanishing) drawCross(surface, point.at);
  drawWords(surface, grid, typesetter);
  surface.unclip();
}

}  // namespace

void drawGrids(Surface& surface, const RoughPicture& picture, const Typesetter& typesetter) {
  for (std::size_t i = 0; i < picture.grids.size(); ++i)
    drawGrid(surface, picture.grids[i], picture.rough.panels[i], typesetter);
}

}  // namespace tw
