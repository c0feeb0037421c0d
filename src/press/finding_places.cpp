// Places for the marks of findings.
//
// Idea. A mark must not be read as its neighbour's, so it stays in its own panel at any price; how
// far it then stands from what it means is weighed against what it would hide.
// Words. The *wish* is the lower right of the place that was found, so that the place itself stays
// in sight, or the panel's lower left corner. A place's *price* is its distance from the wish, mm,
// and a toll for copy and heads under it and for marks that it would touch.
// Steps, for each mark: 1. the wish and a lattice over the panel, as far from the border as a mark
// is wide; 2. in panels too thin for that, half as far, then anywhere within; 3. the least price;
// 4. the centroid when nothing is within.
// Cost: some thousand points a mark in the largest panel, each against a handful of outlines.
// Badly done: marks are placed one after another, so an early one may take the only place that a
// later one wished for.
#include "press/finding_places.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/polygon.h"
#include "press/finding_mark.h"
#include "press/number_places.h"

namespace tw {

namespace {

constexpr double kReach = 1.42 * kFindingMarkMm;  ///< middle to the farthest corner of any mark
constexpr double kFromBorder = kReach + 0.4;
constexpr double kApart = 2 * kReach + 0.3;
constexpr double kClearToll = 28, kTouchToll = 400;  ///< mm of distance that they are worth
constexpr int kMostSteps = 40;
constexpr double kStepMm = 1.5;
constexpr double kOrderNumberRadius = 2;  ///< as OrderNumbers draws them at print size

bool touches(const Polygon& shape, Point p) {
  return contains(shape, p) || distanceToOutline(shape, p) < kReach;
}

double priceOf(const MarkRoom& room, Point p, Point wished) {
  double price = (p - wished).length();
  for (const Polygon& shape : room.clear)
    if (touches(shape, p)) price += kClearToll;
  for (const Point other : room.taken) {
    const double apart = (other - p).length();
    if (apart < kApart) price += kTouchToll * (2 - apart / kApart);
  }
  return price;
}

/// The wish first, so that it wins where the price is equal.
std::vector<Point> placesIn(const Polygon& outline, Point wished) {
  const Rect box = bounds(outline);
  const auto stepsOf = [](double length) {
    return std::clamp(static_cast<int>(length / kStepMm), 4, kMostSteps);
  };
  const int across = stepsOf(box.width()), down = stepsOf(box.height());
  std::vector<Point> out{wished};
  for (int y = 0; y <= down; ++y)
    for (int x = 0; x <= across; ++x)
      out.push_back(box.min + Vector{box.width() * x / across, box.height() * y / down});
  return out;
}

bool isWithin(const MarkRoom& room, Point p, double fromBorder) {
  return contains(room.outline, p) && distanceToOutline(room.outline, p) >= fromBorder &&
         std::ranges::none_of(room.shut, [&](const Polygon& s) { return touches(s, p); });
}

/// The corner of the outline that lies lowest on the left.
Point lowerLeft(const Polygon& outline) {
  return *std::ranges::min_element(outline.points, {}, [](Point p) { return p.x - p.y; });
}

Point wishOf(const Finding& finding, const Polygon& outline) {
  if (!finding.place.points.empty()) return bounds(finding.place).max;
  return lowerLeft(outline) + Vector{1.3 * kFromBorder, -1.3 * kFromBorder};
}

/// What of the panel will be seen once the page is cut.
Polygon trimmed(const Polygon& outline, const Rect& trim) {
  Polygon largest;
  for (const Polygon& part : common({outline}, {polygonOf(trim)}))
    if (largest.points.empty() || area(part) > area(largest)) largest = part;
  return largest.points.empty() ? outline : largest;
}

std::vector<MarkRoom> roomsOf(const RoughPicture& picture, const Typesetter& typesetter) {
  const auto& panels = picture.rough.panels;
  std::vector<MarkRoom> rooms;
  std::vector<Polygon> copy;
  for (const RoughPanel& panel : panels)
    for (Polygon& shape : copyShapes(panel, typesetter)) copy.push_back(std::move(shape));
  for (const RoughPanel& panel : panels) {
    MarkRoom room{trimmed(panel.outline, picture.sheet.trimRect()), {}, copy, {}};
    for (const SeenFigure& figure : panel.figures)
      if (figure.face.points.size() > 2) room.clear.push_back(figure.face);
    if (panel.ground)
      for (const RoughPanel& other : panels)
        if (!other.ground) room.shut.push_back(other.outline);
    rooms.push_back(std::move(room));
  }
  return rooms;
}

}  // namespace

Point markPlace(const MarkRoom& room, Point wished) {
  const std::vector<Point> places = placesIn(room.outline, wished);
  for (const double fromBorder : {kFromBorder, kFromBorder / 2, 0.0}) {
    double least = std::numeric_limits<double>::max();
    Point best;
    for (const Point p : places) {
      if ((p - wished).length() >= least || !isWithin(room, p, fromBorder)) continue;
      const double price = priceOf(room, p, wished);
      if (price >= least) continue;
      least = price;
      best = p;
    }
    if (least < std::numeric_limits<double>::max()) return best;
  }
  return centroid(room.outline);
}

std::vector<PlacedMark> findingPlaces(const RoughPicture& picture,
                                      const std::vector<Finding>& findings,
                                      const Typesetter& typesetter) {
  std::vector<MarkRoom> rooms = roomsOf(picture, typesetter);
  std::vector<Point> taken = numberPlaces(picture, typesetter, kOrderNumberRadius);
  std::vector<PlacedMark> out;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    if (findings[i].panel <= 0 || findings[i].panel > static_cast<int>(rooms.size())) continue;
    MarkRoom& room = rooms[static_cast<std::size_t>(findings[i].panel) - 1];
    room.taken = taken;
    const Point at = markPlace(room, wishOf(findings[i], room.outline));
    taken.push_back(at);
    out.push_back({i, at});
  }
  return out;
}

}  // namespace tw
