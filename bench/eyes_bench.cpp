// How long simulated readers' eyes take over a page of six panels.
#include <benchmark/benchmark.h>

#include "read/eye_pages_test.h"

namespace {

using namespace tw;

/// Two texts of eight words in every other panel, one in the rest; a figure in each.
SeenPage sixPanels() {
  SeenPage page = test::gridPage(3, 2);
  for (std::size_t i = 0; i < page.panels.size(); ++i) {
    test::addCopy(page.panels[i], 1 + static_cast<int>(i % 2), 8);
    test::addFigure(page.panels[i], 0.5);
  }
  return page;
}

void readEyesOfCrowd(benchmark::State& state) {
  const SeenPage page = sixPanels();
  const EyePathModel model = test::shippedEyes();
  EyeOptions options;
  options.readers = static_cast<int>(state.range(0));
  options.threads = static_cast<unsigned>(state.range(1));
  options.heatColumns = 60;
  for (auto _ : state) benchmark::DoNotOptimize(readEyes(page, model, options));
}
BENCHMARK(readEyesOfCrowd)
    ->ArgNames({"readers", "threads"})
    ->Args({500, 1})
    ->Args({500, 2})
    ->Args({10000, 1})
    ->Args({10000, 2})
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime()
    ->MeasureProcessCPUTime();

}  // namespace

BENCHMARK_MAIN();
