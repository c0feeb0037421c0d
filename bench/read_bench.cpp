// How long the reading measures take; compose asks for them for every arrangement and staging.
#include <benchmark/benchmark.h>

#include "geometry/polygon.h"
#include "read/handed_on.h"
#include "read/reading_order.h"

namespace {

using namespace tw;

std::vector<Polygon> grid(int rows, int columns) {
  std::vector<Polygon> panels;
  for (int r = 0; r < rows; ++r) {
    for (int c = 0; c < columns; ++c) {
      const Point corner{c * 54.0, r * 84.0};
      panels.push_back(polygonOf(Rect{corner, corner + Vector{50, 80}}));
    }
  }
  return panels;
}

void readNinePanels(benchmark::State& state) {
  const std::vector<Polygon> panels = grid(3, 3);
  for (auto _ : state) {
    benchmark::DoNotOptimize(readOrder(panels, ReadingDirection::LeftToRight));
  }
}
BENCHMARK(readNinePanels);

void readGroundWithInsets(benchmark::State& state) {
  std::vector<Polygon> panels = grid(2, 4);
  panels.insert(panels.begin(), polygonOf(Rect{{-5, -5}, {220, 340}}));
  const std::vector<int> layer{0, 1, 1, 1, 1, 1, 1, 1, 1};
  for (auto _ : state) {
    benchmark::DoNotOptimize(readOrder(panels, ReadingDirection::LeftToRight, layer));
  }
}
BENCHMARK(readGroundWithInsets);

void handOnAmongNinePanels(benchmark::State& state) {
  const ArrivalField field(grid(3, 3), {{-8, -8}, {166, 256}}, ReadingDirection::LeftToRight);
  const Lead lead{{80, 124}, {0.9, 0.3}, 1, ""};
  for (auto _ : state) benchmark::DoNotOptimize(field.of(lead, 4));
}
BENCHMARK(handOnAmongNinePanels);

}  // namespace

BENCHMARK_MAIN();
