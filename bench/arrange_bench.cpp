// Time to list trees, to size one, and to lay out every tree of a page in every treatment.
// The page is a US comic-book trim with six or nine panels, the third of them dominant.
#include <benchmark/benchmark.h>

#include "arrange/layout.h"

namespace tw {
namespace {

ArrangeRequest pageOf(std::size_t panels) {
  ArrangeRequest request;
  Sheet& sheet = request.sheet;
  sheet.trimWidth = 168.275;
  sheet.trimHeight = 260.35;
  sheet.bleed = 3.175;
  sheet.live = {9.5, 9.5, 12.7, 9.5};
  sheet.gutterAcross = 3;
  sheet.gutterDown = 4;
  sheet.leastPanelWidth = 22;
  sheet.leastPanelHeight = 25;
  request.wishes.resize(panels);
  for (std::size_t i = 0; i < panels; ++i)
    request.wishes[i].weight = 1 + 0.3 * static_cast<double>(i * 7 % 5);
  request.dominant = 2;
  request.wishes[2].weight = 4;
  request.leastDominantShare = 0.25;
  return request;
}

std::vector<PackedTree> treesOf(std::size_t panels) {
  Progress progress;
  return enumerateTrees(static_cast<int>(panels), progress).trees;
}

void BM_EnumerateTrees(benchmark::State& state) {
  Progress progress;
  for (auto _ : state)
    benchmark::DoNotOptimize(enumerateTrees(static_cast<int>(state.range(0)), progress));
}
BENCHMARK(BM_EnumerateTrees)->Arg(9)->Arg(10)->Arg(12)->Arg(16)->Unit(benchmark::kMillisecond);

void BM_SizeTree(benchmark::State& state) {
  const auto panels = static_cast<std::size_t>(state.range(0));
  const ArrangeRequest request = pageOf(panels);
  const std::vector<PackedTree> packedTrees = treesOf(panels);
  std::vector<TreeNode> trees;
  for (std::size_t i = 0; i < packedTrees.size(); i += 7) trees.push_back(treeFrom(packedTrees[i]));
  std::size_t next = 0;
  for (auto _ : state) {
    benchmark::DoNotOptimize(sizeTree(trees[next], {{0, 0}, {146, 241}}, request.wishes, 3, 4,
                                      ReadingDirection::LeftToRight));
    next = (next + 1) % trees.size();
  }
}
BENCHMARK(BM_SizeTree)->Arg(6)->Arg(9)->Unit(benchmark::kMicrosecond);

void BM_LayOutAll(benchmark::State& state) {
  const auto panels = static_cast<std::size_t>(state.range(0));
  const auto treatment = static_cast<Treatment>(state.range(1));
  const ArrangeRequest request = pageOf(panels);
  const std::vector<PackedTree> trees =
      treesOf(treatment == Treatment::Ground ? panels - 1 : panels);
  for (auto _ : state)
    for (const PackedTree& tree : trees) benchmark::DoNotOptimize(layOut(request, tree, treatment));
  state.SetLabel(std::string(nameOf(treatment)));
  state.counters["trees/s"] = benchmark::Counter(static_cast<double>(trees.size()),
                                                 benchmark::Counter::kIsIterationInvariantRate);
}
BENCHMARK(BM_LayOutAll)->ArgsProduct({{6, 9}, {0, 1, 2, 3}})->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace tw
