#include "letter/placed_copy.h"

#include <algorithm>
#include <cmath>

#include "geometry/polygon.h"

namespace tw {
namespace {

constexpr double kMmPerPt = 25.4 / 72;
constexpr double kHair = 0.1;  // mm between the two points that end a wedge; see tail.cpp

/// Lines about the middle, turned with the shape.
std::vector<CopyLine> linesAt(const Setting& setting, Point middle) {
  const double t = setting.shape.turnDeg * M_PI / 180;
  std::vector<CopyLine> lines;
  for (std::size_t i = 0; i < setting.lines.size(); ++i) {
    const double down = setting.baselineAt(i);
    lines.push_back(
        {starred(setting.lines[i]), middle + Vector{-down * std::sin(t), down * std::cos(t)}});
  }
  return lines;
}

/// Letters and marks of stress alone.
std::string lettersOf(const std::string& starredWords) {
  std::string out;
  for (const char c : starredWords)
    if (c != ' ' && c != '\n' && c != '-') out += c;
  // Stress that a line's end or a space interrupts is the same stress.
  for (std::size_t at; (at = out.find("**")) != out.npos;) out.erase(at, 2);
  return out;
}

}  // namespace

PlacedBalloon balloonOf(const CopyItem& item, const Setting& setting, Point middle) {
  PlacedBalloon result;
  result.item = item.id;
  result.kind = item.kind;
  result.offPanel = item.offPanel;
  result.outline = outlineOf(setting.shape, middle);
  result.lines = linesAt(setting, middle);
  result.sizePt = setting.sizePt;
  result.turnDeg = setting.shape.turnDeg;
  return result;
}

Point middleOf(const PlacedBalloon& balloon, const TypeMeasure& type) {
  if (balloon.lines.empty()) return bounds(balloon.outline).centre();
  Vector sum;
  for (const CopyLine& line : balloon.lines) sum = sum + (line.baselineMiddle - Point{});
  const Point mean = Point{} + sum * (1.0 / static_cast<double>(balloon.lines.size()));
  const double t = balloon.turnDeg * M_PI / 180;
  // Lines stand evenly about a middle that lies half a cap height over their mean baseline.
  const double down = type.capHeightEm() * balloon.sizePt * kMmPerPt / 2;
  return mean - Vector{-down * std::sin(t), down * std::cos(t)};
}

std::optional<Point> tipOf(const PlacedBalloon& balloon, Point middle) {
  const std::vector<Point>& tail = balloon.tail.points;
  if (tail.size() < 3) return std::nullopt;
  const auto tip =
      std::ranges::max_element(tail, {}, [&](Point p) { return (p - middle).length(); });
  // A wedge ends in two points a hair apart.
  const std::size_t at = static_cast<std::size_t>(tip - tail.begin());
  for (const std::size_t beside : {at + 1, at + tail.size() - 1}) {
    const Point other = tail[beside % tail.size()];
    if ((other - *tip).length() < kHair) return between(*tip, other, 0.5);
  }
  return *tip;
}

bool holdsWords(const PlacedBalloon& balloon, const CopyItem& item, const LetterStyle& style) {
  std::string own;
  for (const CopyLine& line : balloon.lines) own += line.text + " ";
  return balloon.kind == item.kind && balloon.offPanel == item.offPanel &&
         lettersOf(own) == lettersOf(starred(lettered(item.text, style.upperCase)));
}

PlacedBalloon shifted(PlacedBalloon balloon, Vector by) {
  for (Polygon* outline : {&balloon.outline, &balloon.tail})
    for (Point& p : outline->points) p = p + by;
  for (CopyLine& line : balloon.lines) line.baselineMiddle = line.baselineMiddle + by;
  return balloon;
}

}  // namespace tw
