// The grid.
//
// Idea. A straight line of the scene is straight on the picture, so two of its points suffice; all
// that can go wrong is a point behind the eye. Each line is therefore cut at a plane just before
// the eye first, and only then projected.
//
// 1. Squares: the largest of 0.25, 0.5, 1, 2, 5, 10 m of which eight span the frame at the
//    wall's distance.
// 2. Ground: lines of both directions around the foot of the wall, as far as the frame can see;
//    those running across are left out where they would crowd nearer than kLeastGapMm.
// 3. Wall: an upright plane through the focus, parallel to the picture as nearly as the set's own
//    directions allow, with the same squares.
// 4. Horizon and vanishing points from the camera's own matrix (Hartley & Zisserman ch. 8).
//
// Cost: a few hundred projections, microseconds. Does badly: nothing is hidden by figures; it is
// meant to be drawn over.
#include "stage/perspective_grid.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "geometry/polygon.h"

namespace tw {
namespace {

constexpr double kNearM = 0.05;  // lines start this far before the eye
constexpr double kFarM = 400;
constexpr double kLeastGapMm = 0.9;
constexpr int kMostEachWay = 60;
constexpr double kParallelMm = 20000;  // a vanishing point farther out is no use to a ruler
constexpr int kWallSquares = 3;        // high
constexpr double kBeyondMm = 30;       // lines end this far outside the panel

/// The part of the line inside the box, which it is known to cross (Liang & Barsky 1984).
RuledLine within(const RuledLine& line, const Rect& box) {
  const Vector d = line.to - line.from;
  double in = 0, out = 1;
  const auto slab = [&](double from, double step, double low, double high) {
    if (step == 0) return;
    const double a = (low - from) / step, b = (high - from) / step;
    in = std::max(in, std::min(a, b));
    out = std::min(out, std::max(a, b));
  };
  slab(line.from.x, d.x, box.min.x, box.max.x);
  slab(line.from.y, d.y, box.min.y, box.max.y);
  return {line.from + d * in, line.from + d * std::max(in, out), line.weight};
}

class Grid {
 public:
  Grid(const Camera& camera, const Vec3& through, const Rect& frame, const Polygon& panel)
      : camera_(camera), foot_(through.x(), 0, through.z()), frame_(frame) {
    out_.clip = panel;
  }

  PerspectiveGrid made(const CameraPlace& place) {
    out_.squareM = squareFor();
    out_.eyeM = camera_.eye().y();
    out_.lensMm = place.focalMm;
    addHorizon();
    addGround();
    addWall();
    addVanishing(Vec3::UnitX(), "left to right");
    addVanishing(Vec3::UnitZ(), "away");
    addVanishing(Vec3::UnitY(), "upright");
    return std::move(out_);
  }

 private:
  Point onPage(Point p) const {
    return {frame_.min.x + p.x * frame_.width(), frame_.min.y + p.y * frame_.width()};
  }

  double squareFor() const {
    const double span = std::max(camera_.depth(foot_), 0.5) / camera_.intrinsics()(0, 0);
    constexpr std::array<double, 6> kSides{10, 5, 2, 1, 0.5, 0.25};
    const auto fits = std::ranges::find_if(kSides, [&](double side) { return 8 * side <= span; });
    return fits == kSides.end() ? kSides.back() : *fits;
  }

  /// The part of the line from a to b that lies before the eye, on the page.
  std::optional<RuledLine> ruled(Vec3 a, Vec3 b, double weight) const {
    double da = camera_.depth(a), db = camera_.depth(b);
    if (da < kNearM && db < kNearM) return std::nullopt;
    if (da > db) std::swap(a, b), std::swap(da, db);
    if (da < kNearM) a += (b - a) * ((kNearM - da) / (db - da));
    return RuledLine{onPage(camera_.projectAlways(a)), onPage(camera_.projectAlways(b)), weight};
  }

  bool meetsPanel(const RuledLine& line) const {
    const Vector along = line.to - line.from;
    if (along.length() < 1e-9) return false;
    if (contains(out_.clip, line.from) || contains(out_.clip, line.to)) return true;
    const auto hit = firstHit({line.from, along.unit()}, out_.clip);
    return hit && *hit <= along.length();
  }

  void add(std::vector<RuledLine>& lines, const Vec3& a, const Vec3& b, double weight) const {
    if (const auto line = ruled(a, b, weight); line && meetsPanel(*line))
      lines.push_back(within(*line, bounds(out_.clip).outset(kBeyondMm)));
  }

  void addHorizon() {
    const Eigen::Vector3d line = camera_.horizon();
    if (std::abs(line.y()) < 1e-9) return;
    const auto at = [&](double x) { return onPage({x, -(line.x() * x + line.z()) / line.y()}); };
    const RuledLine ruledLine{at(-0.5), at(1.5), 1};
    if (meetsPanel(ruledLine)) out_.horizon = ruledLine;
  }

  /// Lines along `along`, stepping across it, until they crowd or `kMostEachWay` are drawn.
  void addFamily(const Vec3& along, const Vec3& across) {
    for (const int sign : {1, -1}) {
      std::optional<RuledLine> last;
      for (int k = sign > 0 ? 0 : 1; k <= kMostEachWay; ++k) {
        const Vec3 at = foot_ + across * (sign * k * out_.squareM);
        const auto line = ruled(at - along * kFarM, at + along * kFarM, 0.5);
        if (!line || !meetsPanel(*line)) continue;
        if (last && apart(*last, *line) < kLeastGapMm) break;
        out_.ground.push_back(within(*line, bounds(out_.clip).outset(kBeyondMm)));
        last = line;
      }
    }
  }

  /// How far the two lines stand apart across the middle of the panel.
  double apart(const RuledLine& a, const RuledLine& b) const {
    const Point middle = bounds(out_.clip).centre();
    const auto off = [&](const RuledLine& line) {
      const Vector along = (line.to - line.from).unit();
      return cross(along, middle - line.from);
    };
    return std::abs(std::abs(off(a)) - std::abs(off(b)));
  }

  void addGround() {
    addFamily(Vec3::UnitX(), Vec3::UnitZ());
    addFamily(Vec3::UnitZ(), Vec3::UnitX());
  }

  void addWall() {
    const Vec3 forward = camera_.rotation().row(2).transpose();
    const Vec3 along =
        std::abs(forward.z()) >= std::abs(forward.x()) ? Vec3(1, 0, 0) : Vec3(0, 0, 1);
    const double high = kWallSquares * out_.squareM;
    const int half = 4;
    for (int k = -half; k <= half; ++k) {
      const Vec3 foot = foot_ + along * (k * out_.squareM);
      add(out_.upright, foot, foot + Vec3(0, high, 0), 0.6);
    }
    for (int k = 0; k <= kWallSquares; ++k) {
      const Vec3 up(0, k * out_.squareM, 0);
      add(out_.upright, foot_ + up - along * (half * out_.squareM),
          foot_ + up + along * (half * out_.squareM), 0.6);
    }
  }

  void addVanishing(const Vec3& direction, const std::string& of) {
    const auto at = camera_.vanishingPoint(direction);
    if (!at) return;
    const Point p = onPage(*at);
    const Vector off = p - frame_.centre();
    if (off.length() < kParallelMm) out_.vanishing.push_back({of, p});
  }

  const Camera& camera_;
  Vec3 foot_;
  Rect frame_;
  PerspectiveGrid out_;
};

}  // namespace

PerspectiveGrid perspectiveGrid(const Camera& camera, const CameraPlace& place, const Vec3& through,
                                const Rect& frame, const Polygon& panel) {
  return Grid(camera, through, frame, panel).made(place);
}

}  // namespace tw
