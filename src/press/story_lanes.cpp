// A lane's height is its whole scale, from nothing at the foot to a round number over the story's
// largest value at the top, so that all rows and sheets compare. A page without a rough leaves its
// place in the two lower lanes hatched.
#include "press/story_lanes.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "press/finding_mark.h"
#include "press/overlays.h"

namespace tw {

namespace {

constexpr double kPaceMarkMm = 2.7 * kFindingMarkMm + 0.7;
constexpr Ink kQuiet{0.38, 0.38, 0.38}, kRule{0.80, 0.80, 0.80}, kBar{0.66, 0.66, 0.66};
constexpr double kRoomyLane = 14;        // mm of height that take larger type
constexpr double kLeastForNumber = 0.5;  // mm of a column for each point of two figures

Path lineBetween(Point a, Point b) {
  Path path;
  path.add({a, b}, false);
  return path;
}

/// 1, 2 or 5 with noughts, not under the value.
double roundAbove(double value) {
  if (value <= 0) return 1;
  const double power = std::pow(10.0, std::floor(std::log10(value)));
  for (const double step : {1.0, 1.5, 2.0, 3.0, 5.0, 7.5, 10.0})
    if (step * power >= value - 1e-9) return step * power;
  return 10 * power;
}

/// Slope of the line through the neighbours of that point.
double slopeAt(const std::vector<Point>& p, std::size_t i) {
  const Vector d = p[std::min(i + 1, p.size() - 1)] - p[i > 0 ? i - 1 : 0];
  return d.x != 0 ? d.y / d.x : 0;
}

/// A function's curve through points along x: cubic Hermite pieces as Bézier's.
Path smoothThrough(const std::vector<Point>& p) {
  Path curve;
  curve.moveTo(p.front());
  for (std::size_t i = 0; i + 1 < p.size(); ++i) {
    const double third = (p[i + 1].x - p[i].x) / 3;
    curve.curveTo(p[i] + Vector{third, third * slopeAt(p, i)},
                  p[i + 1] - Vector{third, third * slopeAt(p, i + 1)}, p[i + 1]);
  }
  return curve;
}

/// A panel that stands on this sheet, with its column.
struct Column {
  const StoryMapPage* page;
  const StoryMapPanel* panel;
  Span span;
  int row;
};

std::vector<Column> columnsOf(const StoryMap& map, const StoryGrid& grid) {
  std::vector<Column> out;
  for (const StoryMapPage& page : map.pages) {
    if (!grid.holds(page.number)) continue;
    for (std::size_t i = 0; i < page.panels.size(); ++i)
      out.push_back({&page, &page.panels[i], grid.column(page, i), grid.rowOf(page.number)});
  }
  return out;
}

template <class Value>
double mostOf(const StoryMap& map, Value value) {
  double most = 0;
  for (const StoryMapPage& page : map.pages)
    for (const StoryMapPanel& panel : page.panels)
      most = std::max(most, static_cast<double>(value(panel)));
  return most;
}

class Lanes {
 public:
  Lanes(Surface& surface, const StoryMap& map, const StoryGrid& grid, const Typesetter& typesetter)
      : surface_(surface),
        map_(map),
        grid_(grid),
        typesetter_(typesetter),
        columns_(columnsOf(map, grid)),
        mostSeconds_(roundAbove(mostOf(map, [](const auto& p) { return p.seconds; }))),
        mostWords_(roundAbove(mostOf(map, [](const auto& p) { return p.words; }))),
        mostArea_(roundAbove(mostOf(map, [](const auto& p) { return p.areaShare; }))) {}

  void draw() {
    for (int row = 0; row < grid_.rows(); ++row) drawFrames(row);
    for (const Column& column : columns_) {
      drawTimeBar(column);
      drawWordBar(column);
      if (column.page->picture) drawAreaBar(column);
    }
    drawNotMeasured();
    drawTimeCurves();
    drawShots();
    drawPaces();
    for (int row = 0; row < grid_.rows(); ++row) drawLabels(row);
    for (const Column& column : columns_) drawNumbers(column);
  }

 private:
  bool isRoomy() const { return grid_.lane(0, StoryLane::Time).height() >= kRoomyLane; }
  double smallPt() const { return isRoomy() ? 8.4 : 7.2; }
  double numberPt() const { return isRoomy() ? 7.6 : 6.6; }

  double heightIn(const Rect& lane, double share) const {
    return lane.max.y - std::clamp(share, 0.0, 1.0) * lane.height();
  }

  /// Page by page a foot line and thin sides; the gaps between pairs stay open.
  void drawFrames(int row) const {
    for (const StoryMapPage& page : map_.pages) {
      if (!grid_.holds(page.number) || grid_.rowOf(page.number) != row || page.panels.empty())
        continue;
      const Span a = grid_.column(page, 0), b = grid_.column(page, page.panels.size() - 1);
      const double from = std::min(a.from, b.from), to = std::max(a.to, b.to);
      for (int i = 0; i < kStoryLanes; ++i) {
        const Rect lane = grid_.lane(row, static_cast<StoryLane>(i));
        surface_.fill(Path(Rect{{from, lane.min.y}, {to, lane.max.y}}), greyOf(0.035),
                      FillRule::NonZero);
        surface_.line(lineBetween({from, lane.max.y}, {to, lane.max.y}),
                      {.ink = kQuiet, .width = 0.18});
        for (const double x : {from, to})
          surface_.line(lineBetween({x, lane.min.y}, {x, lane.max.y}),
                        {.ink = kRule, .width = 0.18});
      }
      const Rect time = grid_.lane(row, StoryLane::Time);
      const double y = heightIn(time, map_.middleSeconds / mostSeconds_);
      surface_.line(lineBetween({from, y}, {to, y}),
                    {.ink = kQuiet, .width = 0.15, .dashes = {0.8, 0.8}});
    }
  }

  Rect barIn(const Column& column, StoryLane which, double share, double widthShare) const {
    const Rect lane = grid_.lane(column.row, which);
    const double half = column.span.width() * widthShare / 2;
    return {{column.span.middle() - half, heightIn(lane, share)},
            {column.span.middle() + half, lane.max.y}};
  }

  void drawTimeBar(const Column& column) const {
    const Rect bar = barIn(column, StoryLane::Time, column.panel->seconds / mostSeconds_, 0.72);
    surface_.fill(Path(bar), greyOf(0.2), FillRule::NonZero);
  }

  void drawWordBar(const Column& column) const {
    if (column.panel->words == 0) return;
    const Rect bar = barIn(column, StoryLane::Words, column.panel->words / mostWords_, 0.5);
    surface_.fill(Path(bar), kOrderInk, FillRule::NonZero);
  }

  /// Hollow; the dominant picture's filled.
  void drawAreaBar(const Column& column) const {
    const Rect bar = barIn(column, StoryLane::Areas, column.panel->areaShare / mostArea_, 0.6);
    if (column.panel->dominant) surface_.fill(Path(bar), kSheetInk, FillRule::NonZero);
    surface_.line(Path(bar), {.ink = kSheetInk, .width = 0.3});
  }

  void drawNotMeasured() const {
    for (const StoryMapPage& page : map_.pages) {
      if (!grid_.holds(page.number) || page.picture || page.panels.empty()) continue;
      const Span a = grid_.column(page, 0), b = grid_.column(page, page.panels.size() - 1);
      for (const StoryLane which : {StoryLane::Shots, StoryLane::Areas}) {
        const Rect lane = grid_.lane(grid_.rowOf(page.number), which);
        const Rect box{{std::min(a.from, b.from), lane.min.y}, {std::max(a.to, b.to), lane.max.y}};
        surface_.clip(Path(box), FillRule::NonZero);
        Path hatch;
        for (double x = box.min.x - box.height(); x < box.max.x; x += 2)
          hatch.add({{x, box.max.y}, {x + box.height(), box.min.y}}, false);
        surface_.line(hatch, {.ink = kRule, .width = 0.2});
        surface_.unclip();
      }
    }
  }

  /// One smooth line through each row.
  void drawTimeCurves() const {
    for (int row = 0; row < grid_.rows(); ++row) {
      const Rect lane = grid_.lane(row, StoryLane::Time);
      std::vector<Point> points;
      for (const Column& column : columns_)
        if (column.row == row)
          points.push_back(
              {column.span.middle(), heightIn(lane, column.panel->curve / mostSeconds_)});
      if (points.size() < 2) continue;
      const Path curve = smoothThrough(points);
      surface_.line(curve, {.ink = kPaper, .width = 1.1, .round = true});
      surface_.line(curve, {.ink = kEyeInk, .width = 0.55, .round = true});
    }
  }

  double shotHeight(const Column& column) const {
    const double near = kShotSizes - 1.0 - static_cast<double>(column.panel->shot);
    const Rect lane = grid_.lane(column.row, StoryLane::Shots).inset(0.9);
    return lane.max.y - near / (kShotSizes - 1) * lane.height();
  }

  /// A stair: a tread for each panel, dashed over a turn, broken where nothing is measured.
  void drawShots() const {
    Path stairs, turns;
    const Column* before = nullptr;
    for (const Column& column : columns_) {
      if (!column.page->picture) {
        before = nullptr;
        continue;
      }
      const double y = shotHeight(column);
      const bool toTheLeft = map_.direction == ReadingDirection::RightToLeft;
      const Point start{toTheLeft ? column.span.to : column.span.from, y},
          end{toTheLeft ? column.span.from : column.span.to, y};
      const bool isNext = before != nullptr && before->row == column.row;
      if (isNext && pairOf(before->page->number) == pairOf(column.page->number))
        stairs.lineTo(start);
      else
        stairs.moveTo(start);
      if (isNext && pairOf(before->page->number) != pairOf(column.page->number))
        turns.add({{toTheLeft ? before->span.from : before->span.to, shotHeight(*before)}, start},
                  false);
      stairs.lineTo(end);
      before = &column;
    }
    if (stairs.isEmpty()) return;
    surface_.line(stairs, {.ink = kLeadInk, .width = 0.4});
    if (!turns.isEmpty())
      surface_.line(turns, {.ink = kLeadInk, .width = 0.25, .dashes = {0.8, 0.7}});
    for (const Column& column : columns_) {
      if (!column.page->picture) continue;
      const Point at{column.span.middle(), shotHeight(column)};
      surface_.fill(Path(Rect{at - Vector{0.75, 0.75}, at + Vector{0.75, 0.75}}), kLeadInk,
                    FillRule::NonZero);
    }
  }

  /// Brackets over stretches: through for slow, dashed for fast, with the word.
  void drawPaces() const {
    for (std::size_t i = 0; i < columns_.size();) {
      const int pace = columns_[i].panel->pace;
      std::size_t end = i + 1;
      while (end < columns_.size() && columns_[end].panel->pace == pace &&
             columns_[end].row == columns_[i].row)
        ++end;
      if (pace != 0) drawPace(columns_[i], columns_[end - 1], pace > 0);
      i = end;
    }
  }

  void drawPace(const Column& first, const Column& last, bool slow) const {
    const double y = grid_.lane(first.row, StoryLane::Time).min.y - 1;
    const double from = std::min(first.span.from, last.span.from) + 0.4;
    const double to = std::max(first.span.to, last.span.to) - 0.4;
    const std::string word = slow ? "slow" : "fast";
    const auto& finding = first.panel->paceFinding;
    const double wide = typesetter_.widthOf(word, Face::Italic, smallPt());
    const double half = ((finding ? kPaceMarkMm : 0) + wide) / 2 + 1;
    const double middle = (from + to) / 2;
    Path bracket;
    if (middle - half > from) {
      bracket.add({{from, y + 1}, {from, y}, {middle - half, y}}, false);
      bracket.add({{middle + half, y}, {to, y}, {to, y + 1}}, false);
    }
    Pen pen{.ink = kEyeInk, .width = slow ? 0.55 : 0.3};
    if (!slow) pen.dashes = {1.2, 0.8};
    if (!bracket.isEmpty()) surface_.line(bracket, pen);
    surface_.type({.text = word,
                   .face = Face::Italic,
                   .sizePt = smallPt(),
                   .at = {middle + half - 1 - wide / 2, y + 0.8},
                   .align = Align::Centre,
                   .ink = kEyeInk});
    if (!finding) return;
    const StoryMapFinding& told = map_.findings[*finding];
    drawFindingMark(surface_, {middle - half + 1 + 1.35 * kFindingMarkMm, y - 0.2}, told.severity,
                    *finding + 1, !told.silencedWhy.empty());
  }

  void label(int row, StoryLane lane, const std::string& name, const std::string& unit,
             const std::string& top, const std::string& foot, Ink ink) const {
    const Rect box = grid_.labels(row, lane);
    const double middle = (box.min.y + box.max.y) / 2;
    surface_.type({.text = name,
                   .face = Face::Bold,
                   .sizePt = smallPt(),
                   .at = {box.min.x, middle - 0.3},
                   .ink = ink});
    surface_.type(
        {.text = unit, .sizePt = numberPt(), .at = {box.min.x, middle + 2.6}, .ink = kQuiet});
    const auto tick = [&](const std::string& text, double y) {
      surface_.type({.text = text,
                     .sizePt = numberPt(),
                     .at = {box.max.x, y},
                     .align = Align::Right,
                     .ink = kQuiet});
    };
    tick(top, box.min.y + 1.8);
    tick(foot, box.max.y);
  }

  void drawLabels(int row) const {
    label(row, StoryLane::Time, "reading time", "of a panel", fmt::format("{:g} s", mostSeconds_),
          "0", kEyeInk);
    label(row, StoryLane::Words, "words", "in a panel", fmt::format("{:g}", mostWords_), "0",
          kOrderInk);
    label(row, StoryLane::Shots, "shot size", "far to near", "near", "far", kLeadInk);
    label(row, StoryLane::Areas, "panel area", "of the sheet",
          fmt::format("{:g} %", mostArea_ * 100), "0", kSheetInk);
  }

  void drawNumbers(const Column& column) const {
    if (column.panel->words == 0 || column.span.width() < kLeastForNumber * numberPt()) return;
    const Rect bar = barIn(column, StoryLane::Words, column.panel->words / mostWords_, 0.5);
    surface_.type({.text = std::to_string(column.panel->words),
                   .sizePt = numberPt(),
                   .at = {column.span.middle(), bar.min.y - 0.6},
                   .align = Align::Centre,
                   .ink = kOrderInk});
  }

  Surface& surface_;
  const StoryMap& map_;
  const StoryGrid& grid_;
  const Typesetter& typesetter_;
  std::vector<Column> columns_;
  double mostSeconds_, mostWords_, mostArea_;
};

}  // namespace

void drawStoryLanes(Surface& surface, const StoryMap& map, const StoryGrid& grid,
                    const Typesetter& typesetter) {
  Lanes(surface, map, grid, typesetter).draw();
}

}  // namespace tw
