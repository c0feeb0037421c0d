// Places for order numbers.
//
// Idea. A reader looks for the number where she enters the panel, so places are asked by their
// distance from that corner, and the first that is free is taken.
// Words. A place is *free* when a disc around it lies inside the trim, off all copy, off heads and
// off the numbers already placed. It is *near* within a share of the panel's diagonal.
// Steps, for each panel: 1. near places inside the border; 2. near places on the border; 3. any
// place inside; 4. any place on the border; 5. the corner itself, come what may.
// Cost: a lattice of some hundred points a panel, most of them never asked.
// Badly done: a head is kept clear with its whole outline, hats and hair beyond it are not known.

#include "press/number_places.h"

#include <algorithm>
#include <optional>

#include "geometry/polygon.h"
#include "job/emphasis.h"

namespace tw {

namespace {

constexpr int kSteps = 28;
constexpr double kNear = 0.4;        ///< of the panel's diagonal
constexpr double kAirMm = 0.5;       ///< between a number and what it must not touch
constexpr double kFromBorder = 1.3;  ///< from the border to the middle, in radii
constexpr double kCapHeight = 0.75, kDescent = 0.2;  ///< of free letters, in ems, with their line

/// A line of free letters as a box, turned like them.
Polygon boxAround(const PlacedBalloon& balloon, const CopyLine& line,
                  const Typesetter& typesetter) {
  const double em = balloon.sizePt * kMmPerPt;
  const double half =
      typesetter.widthOf(withoutStress(line.text), Face::Bold, balloon.sizePt) / 2 + 0.1 * em;
  const double turn = balloon.turnDeg * M_PI / 180, c = std::cos(turn), s = std::sin(turn);
  Polygon box = polygonOf(Rect{{-half, -kCapHeight * em}, {half, kDescent * em}});
  for (Point& p : box.points)
    p = line.baselineMiddle + Vector{p.x * c - p.y * s, p.x * s + p.y * c};
  return box;
}

bool touches(const Polygon& shape, Point p, double radius) {
  return contains(shape, p) || distanceToOutline(shape, p) < radius;
}

/// The panel's corner where reading enters.
Point entryCorner(const Polygon& outline, const Rect& trim, ReadingDirection direction) {
  const Rect box = bounds(outline);
  const double side = direction == ReadingDirection::RightToLeft ? std::min(box.max.x, trim.max.x)
                                                                 : std::max(box.min.x, trim.min.x);
  const Point wanted{side, std::max(box.min.y, trim.min.y)};
  return *std::min_element(outline.points.begin(), outline.points.end(), [&](Point a, Point b) {
    return (a - wanted).length() < (b - wanted).length();
  });
}

void nearestFirst(std::vector<Point>& places, Point corner) {
  std::stable_sort(places.begin(), places.end(),
                   [&](Point a, Point b) { return (a - corner).length() < (b - corner).length(); });
}

class NumberPlacing {
 public:
  NumberPlacing(const RoughPicture& picture, const Typesetter& typesetter, double radius)
      : picture_(picture), radius_(radius) {
    for (const RoughPanel& panel : picture.rough.panels) {
      for (Polygon& shape : copyShapes(panel, typesetter)) obstacles_.push_back(std::move(shape));
      for (const SeenFigure& figure : panel.figures)
        if (figure.face.points.size() > 2)
          for (Polygon& seen : common({figure.face}, {panel.outline}))
            obstacles_.push_back(std::move(seen));
    }
  }

  std::vector<Point> all() {
    for (const RoughPanel& panel : picture_.rough.panels) placed_.push_back(placeIn(panel));
    return placed_;
  }

 private:
  Point placeIn(const RoughPanel& panel) const {
    const Rect trim = picture_.sheet.trimRect();
    const Point corner = entryCorner(panel.outline, trim, picture_.direction);
    std::vector<Point> inside = placesInside(panel), border = placesOnBorder(panel);
    nearestFirst(inside, corner);
    nearestFirst(border, corner);
    const Rect box = bounds(panel.outline);
    const double near = std::max(kNear * std::hypot(box.width(), box.height()), 4 * radius_);
    for (const double reach : {near, 1e9})
      for (const std::vector<Point>* places : {&inside, &border})
        if (const auto place = firstFree(*places, corner, reach)) return *place;
    return inside.empty() ? centroid(panel.outline) : inside.front();
  }

  std::optional<Point> firstFree(const std::vector<Point>& places, Point corner,
                                 double reach) const {
    for (const Point p : places) {
      if ((p - corner).length() > reach) break;
      if (isFree(p)) return p;
    }
    return std::nullopt;
  }

  bool isFree(Point p) const {
    return std::none_of(
               obstacles_.begin(), obstacles_.end(),
               [&](const Polygon& shape) { return touches(shape, p, radius_ * 1.16 + kAirMm); }) &&
           std::none_of(placed_.begin(), placed_.end(),
                        [&](Point other) { return (other - p).length() < 2.5 * radius_; });
  }

  /// Inside the panel's border and the trim, on no inset.
  bool isInside(const RoughPanel& panel, Point p) const {
    const double off = kFromBorder * radius_;
    if (!picture_.sheet.trimRect().inset(off).contains(p)) return false;
    if (!contains(panel.outline, p) || distanceToOutline(panel.outline, p) < off) return false;
    return !panel.ground || std::none_of(picture_.rough.panels.begin(), picture_.rough.panels.end(),
                                         [&](const RoughPanel& other) {
                                           return !other.ground && touches(other.outline, p, off);
                                         });
  }

  std::vector<Point> placesInside(const RoughPanel& panel) const {
    const Rect trim = picture_.sheet.trimRect(), whole = bounds(panel.outline);
    // The first lattice line stands just as far from the border as a number must.
    const double off = kFromBorder * radius_ + 1e-6;
    const Point from{std::max(whole.min.x, trim.min.x) + off,
                     std::max(whole.min.y, trim.min.y) + off};
    const Point to{std::min(whole.max.x, trim.max.x) - off,
                   std::min(whole.max.y, trim.max.y) - off};
    std::vector<Point> places;
    for (int row = 0; row <= kSteps; ++row)
      for (int column = 0; column <= kSteps; ++column) {
        const Point p{from.x + (to.x - from.x) * column / kSteps,
                      from.y + (to.y - from.y) * row / kSteps};
        if (isInside(panel, p)) places.push_back(p);
      }
    return places;
  }

  std::vector<Point> placesOnBorder(const RoughPanel& panel) const {
    const Rect page = picture_.sheet.trimRect().inset(radius_ * 1.2);
    std::vector<Point> places;
    const auto& corners = panel.outline.points;
    for (std::size_t i = 0; i < corners.size(); ++i)
      for (int k = 0; k < kSteps; ++k) {
        const Point p =
            between(corners[i], corners[(i + 1) % corners.size()], static_cast<double>(k) / kSteps);
        if (page.contains(p)) places.push_back(p);
      }
    return places;
  }

  const RoughPicture& picture_;
  double radius_;
  std::vector<Polygon> obstacles_;
  std::vector<Point> placed_;
};

}  // namespace

std::vector<Polygon> copyShapes(const RoughPanel& panel, const Typesetter& typesetter) {
  std::vector<Polygon> shapes;
  for (const PlacedBalloon& balloon : panel.balloons) {
    for (const Polygon* shape : {&balloon.outline, &balloon.tail})
      if (shape->points.size() > 2) shapes.push_back(*shape);
    if (!balloon.outline.points.empty()) continue;
    for (const CopyLine& line : balloon.lines)
      shapes.push_back(boxAround(balloon, line, typesetter));
  }
  return shapes;
}

std::vector<Point> numberPlaces(const RoughPicture& picture, const Typesetter& typesetter,
                                double radius) {
  return NumberPlacing(picture, typesetter, radius).all();
}

}  // namespace tw
