// The lead cone.
//
// Idea. A lead is a direction, read with some slack: a cone of rays around it, the middle ones
// counting most. Each ray leaves its own panel, crosses gutters and arrives at the first other
// panel on its way, or at the trim, where the eye leaves the page.
// Steps: 1. turn the lead by fixed angles, weight = cosine of the angle scaled to the cone;
// 2. for each ray find the nearest panel that it enters, box first, outline where the box is not
// exact; 3. sum the weights by what was met.
// A ground panel lies under all others and never stops a ray; only a ray that meets no inset and
// whose next panel is the ground arrives there. For the last panel the page turn's corner region
// of the trim takes the next panel's place.
// Cost: rays × panels box tests, well under 2 µs for nine panels.
// Badly done: no eye was ever measured this way (facts: weak); the cone is as wide at a pointing
// finger as at a glance.
// Source: own measure. ±25° is about the spread within which people still judge a gaze as aimed at
// a thing near by — from memory, low; our choice.

#include "read/handed_on.h"

#include <algorithm>
#include <array>
#include <numbers>
#include <optional>

#include "geometry/polygon.h"

namespace tw {
namespace {

constexpr int kRays = 15;
constexpr double kHalfConeDeg = 25;
/// Share of the trim's sides next to the page-turn corner that counts as that corner; our choice.
constexpr double kTurnShare = 1.0 / 3;

struct ConeRay {
  double cos, sin, weight;
};

std::array<ConeRay, kRays> makeCone() {
  std::array<ConeRay, kRays> cone{};
  double sum = 0;
  for (int i = 0; i < kRays; ++i) {
    const double t = 2.0 * (i + 0.5) / kRays - 1;  // −1…1 across the cone
    const double angle = t * kHalfConeDeg * std::numbers::pi / 180;
    cone[i] = {std::cos(angle), std::sin(angle), std::cos(t * std::numbers::pi / 2)};
    sum += cone[i].weight;
  }
  for (ConeRay& ray : cone) ray.weight /= sum;
  return cone;
}

const std::array<ConeRay, kRays>& cone() {
  static const std::array<ConeRay, kRays> made = makeCone();
  return made;
}

Vector turned(Vector d, const ConeRay& by) {
  return {d.x * by.cos - d.y * by.sin, d.x * by.sin + d.y * by.cos};
}

/// Distance at which the ray enters the box (0 when it starts inside), or none.
std::optional<double> entry(const Ray& ray, const Rect& box) {
  double in = 0, out = 1e300;
  const auto slab = [&](double from, double step, double low, double high) {
    if (step == 0) return from >= low && from <= high;
    double a = (low - from) / step, b = (high - from) / step;
    if (a > b) std::swap(a, b);
    in = std::max(in, a);
    out = std::min(out, b);
    return in <= out;
  };
  const bool hit = slab(ray.from.x, ray.direction.x, box.min.x, box.max.x) &&
                   slab(ray.from.y, ray.direction.y, box.min.y, box.max.y);
  return hit ? std::optional(in) : std::nullopt;
}

bool fillsBox(const Polygon& panel, const Rect& box) {
  return area(panel) > box.area() * 0.9999;
}

/// Where the ray leaves the page: near the page-turn corner?
bool leavesAtTurn(const Ray& ray, const Rect& page, ReadingDirection direction) {
  const Vector d = ray.direction;
  const double toX = d.x > 0 ? page.max.x : page.min.x, toY = d.y > 0 ? page.max.y : page.min.y;
  const double tx = d.x != 0 ? (toX - ray.from.x) / d.x : 1e300;
  const double ty = d.y != 0 ? (toY - ray.from.y) / d.y : 1e300;
  const Point p = ray.from + d * std::max(0.0, std::min(tx, ty));
  const bool leftward = direction == ReadingDirection::RightToLeft;
  const double sideways = leftward ? p.x - page.min.x : page.max.x - p.x;
  return sideways <= page.width() * kTurnShare + 1e-9 &&
         page.max.y - p.y <= page.height() * kTurnShare + 1e-9;
}

Point entryCorner(const Rect& box, ReadingDirection direction) {
  return {direction == ReadingDirection::RightToLeft ? box.max.x : box.min.x, box.min.y};
}

Point turnCorner(const Rect& page, ReadingDirection direction) {
  return {direction == ReadingDirection::RightToLeft ? page.min.x : page.max.x, page.max.y};
}

}  // namespace

ArrivalField::ArrivalField(std::vector<Polygon> panels, Rect page, ReadingDirection direction,
                           std::vector<bool> ground)
    : panels_(std::move(panels)), page_(page), direction_(direction), ground_(std::move(ground)) {
  ground_.resize(panels_.size(), false);
  for (const Polygon& panel : panels_) {
    boxes_.push_back(bounds(panel));
    exact_.push_back(fillsBox(panel, boxes_.back()));
  }
}

int ArrivalField::firstMet(const Ray& ray, std::size_t own) const {
  int met = -1;
  double nearest = 1e300;
  for (std::size_t j = 0; j < boxes_.size(); ++j) {
    if (j == own || ground_[j]) continue;
    std::optional<double> at = entry(ray, boxes_[j]);
    if (!at || *at >= nearest) continue;
    if (!exact_[j] && !contains(panels_[j], ray.from)) at = firstHit(ray, panels_[j]);
    if (!at || *at >= nearest) continue;
    nearest = *at;
    met = static_cast<int>(j);
  }
  return met;
}

Point ArrivalField::goalOf(std::size_t panel) const {
  const bool last = panel + 1 >= panels_.size();
  return last ? turnCorner(page_, direction_) : entryCorner(boxes_[panel + 1], direction_);
}

std::vector<double> ArrivalField::sharesOf(const Lead& lead, std::size_t panel) const {
  std::vector<double> shares(panels_.size(), 0);
  const Vector d = lead.direction.unit();
  if (d == Vector{} || panel >= panels_.size()) return shares;
  for (const ConeRay& turn : cone()) {
    const int met = firstMet({lead.from, turned(d, turn)}, panel);
    if (met >= 0) shares[static_cast<std::size_t>(met)] += turn.weight;
  }
  return shares;
}

Arrival ArrivalField::of(const Lead& lead, std::size_t panel) const {
  Arrival arrival;
  const Vector d = lead.direction.unit();
  if (d == Vector{} || panel >= panels_.size()) return arrival;
  const bool last = panel + 1 == panels_.size();
  const bool nextIsGround = !last && ground_[panel + 1];
  for (const ConeRay& turn : cone()) {
    const Ray ray{lead.from, turned(d, turn)};
    const int met = firstMet(ray, panel);
    const bool arrives = met >= 0 ? !last && met == static_cast<int>(panel) + 1
                         : last   ? leavesAtTurn(ray, page_, direction_)
                                  : nextIsGround;
    (arrives ? arrival.next : met >= 0 ? arrival.other : arrival.off) += turn.weight;
  }
  arrival.towardEntry = dot(d, (goalOf(panel) - lead.from).unit());
  return arrival;
}

}  // namespace tw
