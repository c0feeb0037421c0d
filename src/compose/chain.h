// The exact cheapest chains through a line of choices: one choice per panel, a cost for each
// choice and for each two choices running.
#pragma once

#include <cstddef>
#include <vector>

namespace tw {

struct ChainProblem {
  std::vector<std::vector<double>> unary;  ///< [step][choice]
  /// [step][a * choices(step + 1) + b]: cost of choice b at step + 1 after a at step.
  std::vector<std::vector<double>> pair;
};

struct Chain {
  std::vector<int> choice;  ///< one per step
  double cost = 0;
};

/// The `keep` cheapest chains, cheapest first; fewer when fewer exist. Every step needs a choice.
std::vector<Chain> cheapestChains(const ChainProblem& problem, std::size_t keep);

}  // namespace tw
