// k cheapest chains by dynamic programming.
//
// For each step and each choice there, keep the k cheapest ways to arrive (a list of cost, the
// choice before, and which of that choice's ways it continues). A step from m to n choices merges
// m lists of k for each of the n: O(m·n·k log k). Walking the back pointers from the k cheapest
// arrivals at the last step gives the chains. Exact, because what a chain costs from here on does
// not depend on how it came here (Bellman 1957; the k-best form is textbook).
#include "compose/chain.h"

#include <algorithm>
#include <limits>

#include "base/result.h"

namespace tw {

namespace {

struct Arrival {
  double cost = 0;
  int before = -1;  ///< choice at the step before
  int way = 0;      ///< which of that choice's arrivals this continues
};
using Arrivals = std::vector<Arrival>;  // cheapest first, at most k

bool cheaper(const Arrival& a, const Arrival& b) {
  if (a.cost != b.cost) return a.cost < b.cost;
  return a.before != b.before ? a.before < b.before : a.way < b.way;
}

void keepCheapest(Arrivals& ways, std::size_t keep) {
  const std::size_t kept = std::min(keep, ways.size());
  std::partial_sort(ways.begin(), ways.begin() + static_cast<std::ptrdiff_t>(kept), ways.end(),
                    cheaper);
  ways.resize(kept);
}

/// Arrivals at choice b after the arrivals of the step before.
Arrivals arrivalsAt(const std::vector<Arrivals>& before, const std::vector<double>& pair,
                    std::size_t choices, std::size_t b, double unary, std::size_t keep) {
  Arrivals ways;
  ways.reserve(before.size() * keep);
  for (std::size_t a = 0; a < before.size(); ++a)
    for (std::size_t way = 0; way < before[a].size(); ++way)
      ways.push_back({before[a][way].cost + pair[a * choices + b] + unary, static_cast<int>(a),
                      static_cast<int>(way)});
  keepCheapest(ways, keep);
  return ways;
}

Chain walkBack(const std::vector<std::vector<Arrivals>>& steps, int choice, int way) {
  Chain chain;
  chain.choice.resize(steps.size());
  for (std::size_t step = steps.size(); step-- > 0;) {
    const Arrival& at =
        steps[step][static_cast<std::size_t>(choice)][static_cast<std::size_t>(way)];
    if (step + 1 == steps.size()) chain.cost = at.cost;
    chain.choice[step] = choice;
    choice = at.before;
    way = at.way;
  }
  return chain;
}

}  // namespace

std::vector<Chain> cheapestChains(const ChainProblem& problem, std::size_t keep) {
  ensure(!problem.unary.empty() && problem.pair.size() + 1 >= problem.unary.size(),
         "a chain has a pair table between each two steps");
  std::vector<std::vector<Arrivals>> steps(problem.unary.size());
  for (double cost : problem.unary[0]) steps[0].push_back({{cost, -1, 0}});
  for (std::size_t s = 1; s < steps.size(); ++s) {
    const std::size_t choices = problem.unary[s].size();
    for (std::size_t b = 0; b < choices; ++b)
      steps[s].push_back(
          arrivalsAt(steps[s - 1], problem.pair[s - 1], choices, b, problem.unary[s][b], keep));
  }
  Arrivals ends;
  for (std::size_t b = 0; b < steps.back().size(); ++b)
    for (std::size_t way = 0; way < steps.back()[b].size(); ++way)
      ends.push_back({steps.back()[b][way].cost, static_cast<int>(b), static_cast<int>(way)});
  keepCheapest(ends, keep);
  std::vector<Chain> out;
  for (const Arrival& end : ends) out.push_back(walkBack(steps, end.before, end.way));
  return out;
}

}  // namespace tw
