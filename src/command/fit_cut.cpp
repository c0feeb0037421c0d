// The figure cut by its panel's border.
//
// 1 The borders that may cut: sides of the room whose outward normal points from the head toward
//   the pelvis, so that head and action stay in. Of a bled panel that side runs out to the trim.
// 2 For each such side and each line of the body between two joints (shot_size.h) the figure is
//   cut along the side's direction there. A line is lawful when no neck, wrist, knee or ankle lies
//   on it within 0.018 of the stature and the head stays whole; it is shifted a little to become
//   so.
// 3 What is left is fitted with the cut lying on that side.
// 4 Best: when the brief asks for a head height, the line that reaches it and loses least; else the
//   largest head that loses no more than a third. Lines that keep the hands of who carries
//   something go before those that do not. Nothing of this has a source but common practice.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "command/fit_room.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kOnJoint = 0.018;    // of the stature, as cutsAtJoint
constexpr double kShift = 0.02;       // of the stature, tried to both sides
constexpr double kLeastTurned = 0.5;  // cosine between side and body
constexpr double kLeastLost = 0.01;   // less is no cut
constexpr double kHeadRoom = 0.02;    // of the stature, kept below the chin
constexpr double kLeastSideMm = 5;    // a shorter side is a corner

double along(Point p, Vector normal) {
  return dot(p - Point{}, normal);
}

class Cutting {
 public:
  Cutting(const FitAnswers& asked, const FitRequest& request)
      : asked_(asked),
        request_(request),
        figure_(asked.figure),
        all_(silhouetteArea(figure_.shapes)) {}

  std::optional<CutAnswer> run() {
    for (const Vector toward : {Vector{0, 1}, Vector{-1, 0}, Vector{1, 0}, Vector{0, -1}})
      trySides(toward);
    if (out_.options.empty()) return {};
    std::stable_sort(out_.options.begin(), out_.options.end(),
                     [](const CutOption& a, const CutOption& b) { return a.lost < b.lost; });
    dropUseless();
    choose();
    return std::move(out_);
  }

 private:
  /// A bled panel runs on to the trim on the side that cuts.
  Region roomToward(Vector toward) const {
    Rect live = asked_.sheet.liveRect(asked_.rightHand);
    const Rect trim = asked_.sheet.trimRect();
    if (toward.y > 0) live.max.y = trim.max.y;
    if (toward.y < 0) live.min.y = trim.min.y;
    if (toward.x > 0) live.max.x = trim.max.x;
    if (toward.x < 0) live.min.x = trim.min.x;
    return roomFor(asked_.roughPage, static_cast<std::size_t>(request_.panel - 1), live);
  }

  void trySides(Vector toward) {
    const Region room = roomToward(toward);
    if (room.empty()) return;
    std::vector<Point> corners;
    for (const Polygon& p : room) corners.insert(corners.end(), p.points.begin(), p.points.end());
    const std::vector<Point> around = hull(corners).points;
    const Vector body = (figure_.pelvis - figure_.head).unit();
    for (std::size_t i = 0; i < around.size(); ++i) {
      const Vector d = (around[(i + 1) % around.size()] - around[i]);
      const Vector normal = Vector{d.y, -d.x}.unit();
      if (dot(normal, toward) < 0.71 || dot(normal, body) < kLeastTurned) continue;
      if (d.length() < kLeastSideMm) continue;
      for (const CutPlace& place : figure_.cuts)
        if (!place.joint && place.name != "face")
          tryLine(room, {normal, along(around[i], normal)}, place);
    }
  }

  std::optional<double> lawful(Vector normal, Point at) const {
    for (const int k : {0, 1, -1, 2, -2}) {
      const double c = along(at, normal) + k * kShift * figure_.statureMm;
      const bool onJoint =
          std::any_of(figure_.joints.begin(), figure_.joints.end(), [&](Point joint) {
            return std::abs(along(joint, normal) - c) < kOnJoint * figure_.statureMm;
          });
      const bool headIn = std::all_of(
          figure_.face.points.begin(), figure_.face.points.end(),
          [&](Point p) { return along(p, normal) < c - kHeadRoom * figure_.statureMm; });
      if (!onJoint && headIn) return c;
    }
    return {};
  }

  /// What lies on the near side of normal · p = at.
  std::vector<Polygon> cutAlong(Vector normal, double at) const {
    const double far = 20 * (figure_.statureMm + 1) + std::sqrt(all_);
    const Point on = figure_.pelvis + normal * (at - along(figure_.pelvis, normal));
    const Vector side{-normal.y, normal.x};
    const Polygon half{{on + side * far, on - side * far, on - side * far - normal * far,
                        on + side * far - normal * far}};
    return common(figure_.shapes, {half});
  }

  void tryLine(const Region& room, const Side& border, const CutPlace& place) {
    for (const bool mirror : {false, true}) {
      if (mirror && !request_.mayMirror) continue;
      // Turning about is done to the figure after cutting, so the cut is made for the turned side.
      const Vector normal = mirror ? Vector{-border.normal.x, border.normal.y} : border.normal;
      const auto at = lawful(normal, place.at);
      if (!at) continue;
      std::vector<Polygon> kept = cutAlong(normal, *at);
      const double lost = 1 - silhouetteArea(kept) / all_;
      if (kept.empty() || lost < kLeastLost) continue;
      std::vector<Polygon> turned = kept;
      if (mirror)
        for (Polygon& p : turned) p = mirrored(p, 0);
      Fit fit = largestFit(
          {.figure = turned, .region = room, .margin = request_.marginMm, .flush = border});
      if (fit.scale <= 0) continue;
      fit.mirrored = mirror;
      keep({place.name, fit, fit.scale * figure_.headMm, lost, handsIn(normal, *at), border,
            placedShapes(kept, fit)});
    }
  }

  bool handsIn(Vector normal, double at) const {
    return std::all_of(figure_.hands.begin(), figure_.hands.end(),
                       [&](Point hand) { return along(hand, normal) < at; });
  }

  /// One option per line: the largest.
  void keep(CutOption option) {
    for (CutOption& each : out_.options) {
      if (each.line != option.line) continue;
      if (option.headMm > each.headMm) each = std::move(option);
      return;
    }
    out_.options.push_back(std::move(option));
  }

  /// A line that loses more for no larger head is no choice.
  void dropUseless() {
    double most = 0;
    std::erase_if(out_.options, [&](const CutOption& o) {
      if (o.headMm <= most * 1.005) return true;
      most = o.headMm;
      return false;
    });
  }

  void choose() {
    const double wanted = asked_.wantedHeadMm;
    const bool wholeReaches = asked_.whole && asked_.whole->headMm >= wanted;
    const bool carries = !figure_.carries.empty();
    const auto hands = [&](const CutOption& o) { return !carries || o.handsIn; };
    const auto find = [&](auto&& good, auto&& better) -> std::optional<std::size_t> {
      std::optional<std::size_t> best;
      for (std::size_t i = 0; i < out_.options.size(); ++i)
        if (good(out_.options[i]) && (!best || better(out_.options[i], out_.options[*best])))
          best = i;
      return best;
    };
    const auto lessLost = [](const CutOption& a, const CutOption& b) { return a.lost < b.lost; };
    const auto larger = [](const CutOption& a, const CutOption& b) { return a.headMm > b.headMm; };
    if (wanted > 0 && !wholeReaches) {
      const auto i =
          find([&](const CutOption& o) { return o.headMm >= wanted && hands(o); }, lessLost);
      if (i)
        return set(*i, fmt::format("loses least of those that reach the brief's {:.0f} mm "
                                   "head",
                                   wanted));
    }
    const auto mild =
        find([&](const CutOption& o) { return o.lost <= kMostLost && hands(o); }, larger);
    if (mild)
      return set(*mild, carries ? "largest head with the hands in and no more than a third "
                                  "of the figure lost"
                                : "largest head with no more than a third lost");
    const auto kept = find(hands, lessLost);
    if (kept) return set(*kept, "loses least of the lines that keep the hands");
    set(0, carries ? "loses least; every line loses a hand that carries"
                   : "loses least; every line loses more than a third");
  }
  void set(std::size_t best, std::string why) {
    out_.best = best;
    out_.why = std::move(why);
  }

  const FitAnswers& asked_;
  const FitRequest& request_;
  const WholeFigure& figure_;
  double all_;
  CutAnswer out_;
};

}  // namespace

std::optional<CutAnswer> fitCut(const FitAnswers& asked, const FitRequest& request) {
  return Cutting(asked, request).run();
}

}  // namespace tw
