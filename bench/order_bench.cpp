// How long it takes to follow all readers of a page exactly, and to send a crowd over it.
#include <benchmark/benchmark.h>

#include "geometry/polygon.h"
#include "read/page_reading.h"

namespace {

using namespace tw;

/// A stack beside a tall panel above a row of three.
std::vector<Polygon> sixPanels() {
  std::vector<Polygon> panels;
  for (const Rect& box :
       {Rect{{0, 0}, {50, 60}}, Rect{{0, 64}, {50, 124}}, Rect{{54, 0}, {104, 124}},
        Rect{{0, 128}, {30, 188}}, Rect{{34, 128}, {64, 188}}, Rect{{68, 128}, {104, 188}}})
    panels.push_back(polygonOf(box));
  return panels;
}

void followAllReadersOfSixPanels(benchmark::State& state) {
  const std::vector<Polygon> panels = sixPanels();
  for (auto _ : state) benchmark::DoNotOptimize(readPage(panels, ReadingDirection::LeftToRight));
}
BENCHMARK(followAllReadersOfSixPanels)->Unit(benchmark::kMillisecond);

void tenThousandReadersOfSixPanels(benchmark::State& state) {
  const std::vector<Polygon> panels = sixPanels();
  for (auto _ : state)
    benchmark::DoNotOptimize(simulateReaders(panels, ReadingDirection::LeftToRight, 10000, 1, 2));
}
BENCHMARK(tenThousandReadersOfSixPanels)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace

BENCHMARK_MAIN();
