// Finding tangents.
//
// Two outlines that just touch without plainly overlapping read as ambiguous depth (teaching pages;
// the theory is the generic viewpoint assumption, Albert & Hoffman 2000, Perception 29:303). No
// published threshold is known; ours is the one of facts: staging §9.4 ([derived]): outlines nearer
// than τ = 1 % of the panel's diagonal, directions within 15 degrees, for longer than 2τ.
//
// Words. Own outline: border of a thing's own picture (own_mask.h), also where something hides it,
// so that a gap and an overlap of a hair's breadth are found alike. Spot: a pixel of that border,
// with the outward direction. Stretch: spots in a row that all meet the same other outline.
//
//  1 Spots of every figure and prop that the picture shows, on the frame's pixels and a margin.
//    The outward direction is the mask's first moment around the spot.
//  2 For each pair, spots of the one that have a spot of the other within τ and along it.
//  3 A spot counts when the picture shows both things near it, at depths that differ by more than
//    12 cm: what touches in space may touch on paper.
//  4 The same against the panel's border.
//  5 Spots are linked to stretches; long enough ones are tangents, and those over 6τ run along.
//
// Cost: the pixels of all outlines times a window of 2τ. Does badly: limbs of one figure against
// each other, and sets, which are invented masses that the artist draws anew.
#include "stage/tangents.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>

namespace tw {
namespace {

constexpr double kTauOfDiagonal = 0.01;
constexpr double kAlongCos = 0.9659;              // 15 degrees
constexpr double kLeastLong = 2, kRunsAlong = 6;  // τ
constexpr double kTouchInSpaceM = 0.12;
constexpr int kMoment = 3;  // half window, px

struct Spot {
  int x, y;        ///< frame pixels; may lie in the margin
  Vector outward;  ///< unit
};

/// A thing's own picture on the frame's pixels with a margin around, and its border.
struct Outline {
  int solid = -1;
  std::vector<std::uint8_t> mask;
  std::vector<Spot> spots;
  std::vector<std::int32_t> spotAt;  ///< per pixel, −1 none
};

class Finder {
 public:
  explicit Finder(const PanelSight& sight)
      : sight_(sight),
        tau_(kTauOfDiagonal * std::hypot(sight.picture.width, sight.picture.height)),
        reach_(static_cast<int>(std::ceil(tau_))),
        margin_(reach_ + kMoment + 1),
        width_(sight.picture.width + 2 * margin_),
        height_(sight.picture.height + 2 * margin_) {}

  std::vector<Tangent> run() {
    makeOutlines();
    for (std::size_t i = 0; i < outlines_.size(); ++i) {
      againstBorder(outlines_[i]);
      for (std::size_t k = i + 1; k < outlines_.size(); ++k)
        againstEachOther(outlines_[i], outlines_[k]);
    }
    std::stable_sort(found_.begin(), found_.end(),
                     [](const Tangent& a, const Tangent& b) { return a.lengthMm > b.lengthMm; });
    return std::move(found_);
  }

 private:
  std::size_t index(int x, int y) const {
    return static_cast<std::size_t>(y + margin_) * width_ + static_cast<std::size_t>(x + margin_);
  }

  void makeOutlines() {
    std::vector<std::uint8_t> seen(sight_.solids.size(), 0);
    for (std::size_t i = 0; i < sight_.picture.solid.size(); ++i)
      if (sight_.inside[i] && sight_.picture.solid[i] >= 0)
        seen[static_cast<std::size_t>(sight_.picture.solid[i])] = 1;
    for (std::size_t k = 0; k < seen.size(); ++k)
      if (seen[k] && sight_.mask(static_cast<int>(k)))
        outlines_.push_back(outlineOf(static_cast<int>(k)));
  }

  Outline outlineOf(int solid) const {
    Outline out{solid, {}, {}, {}};
    out.mask.resize(static_cast<std::size_t>(width_) * height_);
    const OwnMask& own = *sight_.mask(solid);
    for (int y = -margin_; y < height_ - margin_; ++y)
      for (int x = -margin_; x < width_ - margin_; ++x)
        out.mask[index(x, y)] = own.at(sight_.place(x, y)) != 0;
    out.spotAt.assign(out.mask.size(), -1);
    const int edge = margin_ - kMoment;
    for (int y = -edge; y < height_ - margin_ - kMoment; ++y)
      for (int x = -edge; x < width_ - margin_ - kMoment; ++x) {
        if (!isBorder(out.mask, x, y)) continue;
        const Vector outward = outwardAt(out.mask, x, y);
        if (outward.length() < 0.5) continue;
        out.spotAt[index(x, y)] = static_cast<std::int32_t>(out.spots.size());
        out.spots.push_back({x, y, outward});
      }
    return out;
  }

  bool isBorder(const std::vector<std::uint8_t>& mask, int x, int y) const {
    return mask[index(x, y)] && !(mask[index(x - 1, y)] && mask[index(x + 1, y)] &&
                                  mask[index(x, y - 1)] && mask[index(x, y + 1)]);
  }

  Vector outwardAt(const std::vector<std::uint8_t>& mask, int x, int y) const {
    Vector sum;
    for (int dy = -kMoment; dy <= kMoment; ++dy)
      for (int dx = -kMoment; dx <= kMoment; ++dx)
        if (mask[index(x + dx, y + dy)])
          sum = sum + Vector{static_cast<double>(-dx), static_cast<double>(-dy)};
    return sum.unit();
  }

  /// Depth at which the panel shows the solid nearest to that pixel, or nothing.
  std::optional<float> shownNear(int x, int y, int solid) const {
    const Picture& picture = sight_.picture;
    const int reach = reach_ + 1;
    int best = 2 * reach * reach + 1;
    std::optional<float> depth;
    for (int dy = -reach; dy <= reach; ++dy)
      for (int dx = -reach; dx <= reach; ++dx) {
        const int px = x + dx, py = y + dy;
        if (px < 0 || py < 0 || px >= picture.width || py >= picture.height) continue;
        const std::size_t i =
            static_cast<std::size_t>(py) * picture.width + static_cast<std::size_t>(px);
        if (!sight_.inside[i] || picture.solid[i] != solid || dx * dx + dy * dy >= best) continue;
        best = dx * dx + dy * dy;
        depth = picture.depth[i];
      }
    return depth;
  }

  bool meets(const Spot& spot, const Outline& other) const {
    for (int dy = -reach_; dy <= reach_; ++dy)
      for (int dx = -reach_; dx <= reach_; ++dx) {
        const int x = spot.x + dx, y = spot.y + dy;
        if (dx * dx + dy * dy > tau_ * tau_ || x < -margin_ || y < -margin_ ||
            x >= width_ - margin_ || y >= height_ - margin_)
          continue;
        const std::int32_t at = other.spotAt[index(x, y)];
        if (at < 0) continue;
        const Vector& outward = other.spots[static_cast<std::size_t>(at)].outward;
        if (std::abs(dot(outward, spot.outward)) > kAlongCos) return true;
      }
    return false;
  }

  bool isUnclear(const Spot& spot, int a, int b) const {
    const auto da = shownNear(spot.x, spot.y, a);
    if (!da) return false;
    const auto db = shownNear(spot.x, spot.y, b);
    return db && std::abs(*da - *db) > kTouchInSpaceM;
  }

  void againstEachOther(const Outline& a, const Outline& b) {
    std::vector<Spot> spots;
    for (const Spot& spot : a.spots)
      if (meets(spot, b) && isUnclear(spot, a.solid, b.solid)) spots.push_back(spot);
    addStretches(spots, a.solid, b.solid);
  }

  void againstBorder(const Outline& a) {
    std::vector<Spot> spots;
    for (const Spot& spot : a.spots)
      if (runsAlongBorder(spot) && shownNear(spot.x, spot.y, a.solid)) spots.push_back(spot);
    addStretches(spots, a.solid, -1);
  }

  bool runsAlongBorder(const Spot& spot) const {
    const std::vector<Point>& corners = sight_.panel.points;
    const Point at = sight_.onPage(spot.x + 0.5, spot.y + 0.5);
    for (std::size_t i = 0; i < corners.size(); ++i) {
      const Point from = corners[i], to = corners[(i + 1) % corners.size()];
      const Vector along = (to - from).unit(), by = at - from;
      const double done = dot(by, along);
      if (done < 0 || done > (to - from).length()) continue;
      const double away = std::abs(along.x * by.y - along.y * by.x) / sight_.mmPerPx();
      const double across = std::abs(along.x * spot.outward.y - along.y * spot.outward.x);
      if (away <= tau_ && across > kAlongCos) return true;
    }
    return false;
  }

  /// Links spots no more than two pixels apart.
  void addStretches(const std::vector<Spot>& spots, int a, int b) {
    std::vector<std::uint8_t> taken(spots.size(), 0);
    for (std::size_t start = 0; start < spots.size(); ++start) {
      if (taken[start]) continue;
      std::vector<std::size_t> stretch{start};
      taken[start] = 1;
      for (std::size_t head = 0; head < stretch.size(); ++head)
        for (std::size_t i = start + 1; i < spots.size(); ++i) {
          const Spot &p = spots[stretch[head]], &q = spots[i];
          if (taken[i] || std::abs(p.x - q.x) > 2 || std::abs(p.y - q.y) > 2) continue;
          taken[i] = 1;
          stretch.push_back(i);
        }
      addTangent(spots, stretch, a, b);
    }
  }

  void addTangent(const std::vector<Spot>& spots, const std::vector<std::size_t>& stretch, int a,
                  int b) {
    int left = width_, right = -width_, top = height_, bottom = -height_;
    for (const std::size_t i : stretch) {
      left = std::min(left, spots[i].x), right = std::max(right, spots[i].x);
      top = std::min(top, spots[i].y), bottom = std::max(bottom, spots[i].y);
    }
    const double length = std::hypot(right - left, bottom - top);
    if (length <= kLeastLong * tau_) return;
    const Point middle{(left + right + 1) / 2.0, (top + bottom + 1) / 2.0};
    Point at = middle;
    double best = 1e18;
    for (const std::size_t i : stretch) {
      const Point p{spots[i].x + 0.5, spots[i].y + 0.5};
      if ((p - middle).length() < best) best = (p - middle).length(), at = p;
    }
    found_.push_back(
        {a, b, length > kRunsAlong * tau_, sight_.onPage(at.x, at.y), length * sight_.mmPerPx()});
  }

  const PanelSight& sight_;
  double tau_;
  int reach_, margin_, width_, height_;
  std::vector<Outline> outlines_;
  std::vector<Tangent> found_;
};

}  // namespace

std::vector<Tangent> tangentsOf(const PanelSight& sight) {
  return Finder(sight).run();
}

}  // namespace tw
