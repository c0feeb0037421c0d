#include "press/story_bands.h"

#include <algorithm>
#include <cmath>

namespace tw {

namespace {

constexpr double kBandPt = 7.6, kBandLineMm = 2.8;
constexpr Ink kQuiet{0.38, 0.38, 0.38};

/// Panels in a row of one scene, within a row of pages.
struct SceneRun {
  std::size_t scene;
  int row;
  Span span;
};

std::vector<SceneRun> runsOn(const StoryMap& map, const StoryGrid& grid) {
  std::vector<SceneRun> out;
  for (const StoryMapPage& page : map.pages) {
    if (!grid.holds(page.number)) continue;
    const int row = grid.rowOf(page.number);
    for (std::size_t i = 0; i < page.panels.size(); ++i) {
      const Span column = grid.column(page, i);
      if (out.empty() || out.back().scene != page.panels[i].scene || out.back().row != row)
        out.push_back({page.panels[i].scene, row, column});
      Span& span = out.back().span;
      span = {std::min(span.from, column.from), std::max(span.to, column.to)};
    }
  }
  return out;
}

/// On one line or on two, above the bar or below it, from the scene's start on.
void drawSceneName(Surface& surface, const std::string& name, Point start, double room, bool above,
                   bool toTheLeft, const Typesetter& typesetter) {
  if (room < 6 || name.empty()) return;
  std::vector<std::string> lines = typesetter.broken(name, Face::Regular, kBandPt, room);
  if (lines.size() > 2) {
    for (std::size_t i = 2; i < lines.size(); ++i) lines[1] += " " + lines[i];
    lines.resize(2);
  }
  const double first = above ? -1.9 - kBandLineMm * static_cast<double>(lines.size() - 1) : 3.7;
  for (std::size_t i = 0; i < lines.size(); ++i)
    surface.type({.text = typesetter.shortened(lines[i], Face::Regular, kBandPt, room),
                  .sizePt = kBandPt,
                  .at = start + Vector{0, first + kBandLineMm * static_cast<double>(i)},
                  .align = toTheLeft ? Align::Right : Align::Left,
                  .ink = kQuiet});
}

}  // namespace

void drawSceneBands(Surface& surface, const StoryMap& map, const StoryGrid& grid,
                    const Typesetter& typesetter) {
  const bool toTheLeft = map.direction == ReadingDirection::RightToLeft;
  const std::vector<SceneRun> runs = runsOn(map, grid);
  for (std::size_t i = 0; i < runs.size(); ++i) {
    const SceneRun& run = runs[i];
    const Rect band = grid.band(run.row);
    const bool above = i % 2 == 0;
    const double middle = (band.min.y + band.max.y) / 2;
    const Rect bar{{run.span.from + 0.3, middle - 0.9}, {run.span.to - 0.3, middle + 0.9}};
    surface.fill(Path(bar), greyOf(above ? 0.72 : 0.38), FillRule::NonZero);
    const double start = toTheLeft ? bar.max.x : bar.min.x;
    // Its words may run on until the next title on the same line begins.
    double end = toTheLeft ? band.min.x : band.max.x;
    if (i + 2 < runs.size() && runs[i + 2].row == run.row)
      end = toTheLeft ? runs[i + 2].span.to : runs[i + 2].span.from;
    drawSceneName(surface, map.scenes[run.scene], {start, middle}, std::abs(end - start) - 1.5,
                  above, toTheLeft, typesetter);
  }
}

}  // namespace tw
