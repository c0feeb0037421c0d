// The linear program behind fits: the largest scale s with a move (x, y) under linear limits.
// Solved by GLPK (docs/decisions).
#pragma once

#include <memory>
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

/// A program that is asked again after small changes: each time it goes on from the answer before.
class FitProgram {
 public:
  explicit FitProgram(const std::vector<FitLimit>& limits);
  ~FitProgram();
  FitProgram(const FitProgram&) = delete;
  FitProgram& operator=(const FitProgram&) = delete;

  void add(const FitLimit& limit);
  void replaceLast(const FitLimit& limit);
  /// The largest s ≥ 0 that keeps all limits, or nothing when no s does. There must be limits that
  /// bound s.
  std::optional<ScaleAndMove> largest();

 private:
  struct Solver;
  std::unique_ptr<Solver> solver_;
};

/// The largest s ≥ 0 that keeps all limits, or nothing when no s does. There must be limits that
/// bound s.
std::optional<ScaleAndMove> largestScale(const std::vector<FitLimit>& limits);

}  // namespace tw
