// The linear program behind fits: the largest scale s with a move (x, y) under linear limits.
// Solved by GLPK (docs/decisions).
#pragma once

#include <optional>
#include <vector>

namespace tw {

/// s · scale + x · moveX + y · moveY ≤ limit (or = limit).
struct FitLimit {
  double s = 0, x = 0, y = 0, limit = 0;
  bool equal = false;
};

struct ScaleAndMove {
  double s = 0, x = 0, y = 0;
  double over(const FitLimit& l) const { return l.s * s + l.x * x + l.y * y - l.limit; }
};

/// The largest s ≥ 0 that keeps all limits, or nothing when no s does. There must be limits that
/// bound s.
std::optional<ScaleAndMove> largestScale(const std::vector<FitLimit>& limits);

}  // namespace tw
