#include "compose/chain.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>

namespace tw {

namespace {

std::vector<double> costs(std::size_t count) {
  std::vector<double> out(count);
  for (double& cost : out) cost = *rc::gen::inRange(0, 1000) / 10.0;
  return out;
}

ChainProblem randomProblem() {
  ChainProblem problem;
  const int steps = *rc::gen::inRange(1, 5);
  for (int s = 0; s < steps; ++s)
    problem.unary.push_back(costs(static_cast<std::size_t>(*rc::gen::inRange(1, 5))));
  for (std::size_t s = 0; s + 1 < problem.unary.size(); ++s)
    problem.pair.push_back(costs(problem.unary[s].size() * problem.unary[s + 1].size()));
  return problem;
}

double costOf(const ChainProblem& problem, const std::vector<int>& choice) {
  double sum = 0;
  for (std::size_t s = 0; s < choice.size(); ++s) {
    sum += problem.unary[s][static_cast<std::size_t>(choice[s])];
    if (s > 0)
      sum += problem.pair[s - 1][static_cast<std::size_t>(choice[s - 1]) * problem.unary[s].size() +
                                 static_cast<std::size_t>(choice[s])];
  }
  return sum;
}

void everyChain(const ChainProblem& problem, std::vector<int>& choice, std::vector<double>& out) {
  if (choice.size() == problem.unary.size()) {
    out.push_back(costOf(problem, choice));
    return;
  }
  for (std::size_t c = 0; c < problem.unary[choice.size()].size(); ++c) {
    choice.push_back(static_cast<int>(c));
    everyChain(problem, choice, out);
    choice.pop_back();
  }
}

}  // namespace

// Outside judge: every chain counted out by brute force.
TEST_CASE("the kept chains are the cheapest of all, in order") {
  CHECK(rc::check("brute force agrees", [] {
    const ChainProblem problem = randomProblem();
    std::vector<double> all;
    std::vector<int> choice;
    everyChain(problem, choice, all);
    std::sort(all.begin(), all.end());
    const auto kept = cheapestChains(problem, 4);
    RC_ASSERT(kept.size() == std::min<std::size_t>(4, all.size()));
    for (std::size_t i = 0; i < kept.size(); ++i) {
      RC_ASSERT(std::abs(kept[i].cost - all[i]) < 1e-9);
      RC_ASSERT(std::abs(costOf(problem, kept[i].choice) - kept[i].cost) < 1e-9);
    }
  }));
}

TEST_CASE("kept chains differ from each other") {
  const ChainProblem problem{{{0, 0}, {0, 0}}, {{0, 0, 0, 0}}};
  const auto kept = cheapestChains(problem, 9);
  REQUIRE(kept.size() == 4);
  for (std::size_t i = 0; i < kept.size(); ++i)
    for (std::size_t j = i + 1; j < kept.size(); ++j) CHECK(kept[i].choice != kept[j].choice);
}

}  // namespace tw
