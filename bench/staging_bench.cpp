// Times of staging: lists of variants for one to three figures, one exact look, one drawing.
#include <benchmark/benchmark.h>

#include <cstdlib>

#include "base/keep_memory.h"
#include "geometry/polygon.h"
#include "stage/staging.h"

namespace {

[[maybe_unused]] const bool kAsInTheProgram = (tw::keepFreedMemory(), true);

using namespace tw;

std::vector<Character> company() {
  return {{"ada", "ADA", {}, Sex::Female, 1.68, "medium", ""},
          {"bo", "BO", {}, Sex::Male, 1.83, "heavy", ""},
          {"cy", "CY", {}, Sex::Female, 1.40, "child", ""}};
}

const Stager& stager() {
  static const Stager made = [] {
    auto stager = Stager::make(company());
    if (!stager) std::abort();
    return std::move(*stager);
  }();
  return made;
}

Beat beatOf(std::size_t figures) {
  Beat beat;
  beat.setting = "exterior quay";
  const char* who[] = {"ada", "bo", "cy"};
  for (std::size_t i = 0; i < figures; ++i) beat.figures.push_back({who[i], "stand", "", ""});
  return beat;
}

void variants(benchmark::State& state) {
  const Beat beat = beatOf(static_cast<std::size_t>(state.range(0)));
  StageRequest request;
  request.beat = &beat;
  request.aspect = 1.2;
  for (auto _ : state) benchmark::DoNotOptimize(stager().variants(request, 48));
}
BENCHMARK(variants)->Arg(1)->Arg(2)->Arg(3)->Unit(benchmark::kMicrosecond);

RoughPanel panelOf(const Beat& beat) {
  StageRequest request;
  request.beat = &beat;
  request.aspect = 1.2;
  RoughPanel panel;
  panel.outline = polygonOf(Rect{{0, 0}, {96, 80}});
  panel.staging = stager().solved(request, {ShotSize::Long, EyeHeight::Level, 25, 0, false, 0});
  return panel;
}

void look(benchmark::State& state) {
  const Beat beat = beatOf(2);
  RoughPanel panel = panelOf(beat);
  for (auto _ : state) stager().look(panel, beat, "ada", 240);
}
BENCHMARK(look)->Unit(benchmark::kMillisecond);

void draw(benchmark::State& state) {
  const Beat beat = beatOf(2);
  const RoughPanel panel = panelOf(beat);
  DrawOptions options;
  options.width = 600;
  for (auto _ : state) benchmark::DoNotOptimize(stager().draw(panel, beat, "ada", options));
}
BENCHMARK(draw)->Unit(benchmark::kMillisecond);

}  // namespace
