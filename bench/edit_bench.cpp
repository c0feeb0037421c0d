// What one edit costs by the time all measures of the page are made again: a joint turned in the
// demo's dominant panel, and a gutter dragged beside it.
#include <benchmark/benchmark.h>

#include <cmath>
#include <cstdlib>
#include <memory>

#include "base/keep_memory.h"
#include "base/scratch_folder.h"
#include "command/new_job.h"
#include "command/roughs.h"
#include "command/staged_page.h"
#include "compose/page_readings.h"
#include "geometry/polygon.h"

namespace {

[[maybe_unused]] const bool kAsInTheProgram = (tw::keepFreedMemory(), true);

using namespace tw;

template <class T>
T must(Result<T> result) {
  if (!result) std::abort();
  return std::move(*result);
}

/// The demo's page 4, five panels, with its best rough.
struct DemoPage {
  ScratchFolder scratch;
  EyePathModel model = must(loadEyePathModel());
  std::unique_ptr<StagedPage> staged;

  DemoPage() {
    NewJobRequest request;
    request.folder = scratch / "job";
    request.script = TIERWRIGHT_SOURCE_DIR "/demo/the-low-bell.txt";
    must(newJob(request));
    Progress progress;
    must(makeRoughs({request.folder, 4, {.keep = 1}, {}}, progress));
    staged = must(openStagedPage(request.folder, 4, ""));
  }
  const MeasuredPage& measured() const { return *staged->measured; }
  std::size_t dominant() const { return staged->wishes.dominant.value_or(0); }
};

DemoPage& demo() {
  static DemoPage page;
  return page;
}

EyeOptions live() {
  EyeOptions options;
  options.readers = 200;
  options.samples = 1;
  return options;
}

void turnJoint(benchmark::State& state) {
  MeasuredPage page = demo().measured();
  const std::size_t i = demo().dominant();
  const Staging before = page.rough().panels[i].staging;
  double turn = 0;
  for (auto _ : state) {
    Staging staging = before;
    turn = std::fmod(turn + 3, 60);
    staging.figures.front().turnsDeg["left shoulder"] = {turn, 0, 0};
    page.restage(i, std::move(staging));
    benchmark::DoNotOptimize(readingsOf(page, demo().model, live()));
  }
}
BENCHMARK(turnJoint)->Unit(benchmark::kMillisecond)->UseRealTime();

void dragGutter(benchmark::State& state) {
  MeasuredPage page = demo().measured();
  const Polygon upper = page.rough().panels[0].outline, beside = page.rough().panels[1].outline;
  double shift = 0;
  for (auto _ : state) {
    shift = std::fmod(shift + 0.7, 8);
    Polygon a = upper, b = beside;
    for (Point& p : a.points) p.x += p.x > bounds(upper).centre().x ? shift : 0;
    for (Point& p : b.points) p.x += p.x < bounds(beside).centre().x ? shift : 0;
    page.reshape({{0, a}, {1, b}});
    benchmark::DoNotOptimize(readingsOf(page, demo().model, live()));
  }
}
BENCHMARK(dragGutter)->Unit(benchmark::kMillisecond)->UseRealTime();

void readingsAlone(benchmark::State& state) {
  for (auto _ : state)
    benchmark::DoNotOptimize(readingsOf(demo().measured(), demo().model, live()));
}
BENCHMARK(readingsAlone)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace
