#include "arrange/edit_snap.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>

namespace tw {

namespace {

constexpr double kUpright = 1e-4;  // of a unit normal, off an axis
constexpr double kFree = 1e-9;

/// A resting place for borders that look one way.
struct Rest {
  double at = 0;
  SnapLine line;
};

/// x when `isX`, else y.
double coordinate(Point p, bool isX) {
  return isX ? p.x : p.y;
}

bool standsOn(const SideLine& line, bool isX) {
  return std::abs(isX ? line.out.y : line.out.x) < kUpright;
}

void addBox(std::vector<Rest>& out, const Rect& box, SnapTo to, bool isX) {
  const Point a = box.min, b{box.max.x, box.min.y}, c = box.max, d{box.min.x, box.max.y};
  if (isX) {
    out.push_back({a.x, {to, a, d}});
    out.push_back({b.x, {to, b, c}});
  } else {
    out.push_back({a.y, {to, a, b}});
    out.push_back({d.y, {to, d, c}});
  }
}

class Resting {
 public:
  Resting(const std::vector<EditPanel>& panels, const std::vector<PanelSide>& moving,
          const SnapPaper& paper, bool isX)
      : panels_(panels), moving_(moving.begin(), moving.end()), isX_(isX) {
    addBox(places_, paper.live, SnapTo::Live, isX);
    addBox(places_, paper.trim, SnapTo::Trim, isX);
    addBox(places_, paper.bleed, SnapTo::Bleed, isX);
  }

  /// What has to be added to the offset, with the line it lands on.
  std::optional<std::pair<double, SnapLine>> nearest(double offset, double tolerance) const {
    std::optional<std::pair<double, SnapLine>> best;
    for (const PanelSide& id : moving_) {
      const SideLine line = sideLine(panels_[id.panel].outline, id.side);
      if (!standsOn(line, isX_)) continue;
      const double at = coordinate(line.a, isX_) + offset;
      const auto look = [&](const Rest& rest) {
        const double by = rest.at - at;
        if (std::abs(by) <= tolerance && (!best || std::abs(by) < std::abs(best->first)))
          best = {by, rest.line};
      };
      for (const Rest& rest : places_) look(rest);
      for (const Rest& rest : others(line.out)) look(rest);
    }
    return best;
  }

 private:
  /// Borders of others that look the same way: left borders line up with left ones.
  std::vector<Rest> others(Vector out) const {
    std::vector<Rest> rests;
    for (std::size_t p = 0; p < panels_.size(); ++p)
      for (std::size_t s = 0; s < panels_[p].outline.points.size(); ++s) {
        const SideLine line = sideLine(panels_[p].outline, s);
        if (moving_.contains({p, s}) || !standsOn(line, isX_) || dot(line.out, out) < 0) continue;
        rests.push_back({coordinate(line.a, isX_), {SnapTo::Border, line.a, line.b}});
      }
    return rests;
  }

  const std::vector<EditPanel>& panels_;
  std::set<PanelSide> moving_;
  bool isX_;
  std::vector<Rest> places_;
};

}  // namespace

Snapped snapped(const std::vector<EditPanel>& panels, const std::vector<PanelSide>& moving,
                Vector offset, Vector free, const SnapPaper& paper, double toleranceMm) {
  Snapped out{offset, {}};
  for (const bool isX : {true, false}) {
    if (std::abs(isX ? free.x : free.y) < kFree || toleranceMm <= 0) continue;
    const Resting resting(panels, moving, paper, isX);
    const auto found = resting.nearest(isX ? offset.x : offset.y, toleranceMm);
    if (!found) continue;
    (isX ? out.offset.x : out.offset.y) += found->first;
    out.lines.push_back(found->second);
  }
  return out;
}

}  // namespace tw
