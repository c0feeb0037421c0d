// Times of the picture: projecting, rendering and drawing a panel with two figures.
// Targets: render under 5 ms, a drawn panel of two figures at 600 px under 10 ms.
#include <benchmark/benchmark.h>

#include "base/keep_memory.h"
#include "geometry/polygon.h"
#include "stage/picture.h"
#include "stage/solid_shapes.h"
#include "stage/value_plan.h"

using namespace tw;

namespace {

[[maybe_unused]] const bool kAsInTheProgram = (tw::keepFreedMemory(), true);

Solid figure(const PoseLibrary& poses, const char* pose, Sex sex, const SetFigure& set, int index) {
  Character character;
  character.id = set.who;
  character.sex = sex;
  const Body body = bodyOf(character);
  const Skeleton skeleton = posed(body, poses.orStand(pose), set);
  Solid solid;
  solid.mesh = bodyMesh(body, skeleton);
  solid.figure = index;
  solid.isFocus = index == 0;
  solid.head = headMarks(body, skeleton);
  return solid;
}

const std::vector<Solid>& twoFigures() {
  static const std::vector<Solid> scene = [] {
    const auto poses = PoseLibrary::load();
    ensure(poses.has_value(), "the poses are found");
    return std::vector<Solid>{
        figure(*poses, "contrapposto", Sex::Female, {"a", "", false, {-0.5, 0, 0}, -25, 0}, 0),
        figure(*poses, "point", Sex::Male, {"b", "", false, {0.6, 0, 0.6}, 50, 0}, 1)};
  }();
  return scene;
}

Camera camera() {
  CameraPlace place;
  place.eye = {0, 1.5, -4.2};
  place.pitchDeg = -6;
  place.focalMm = 40;
  return Camera(place, 1.4);
}

void projectAPoint(benchmark::State& state) {
  const Camera c = camera();
  Vec3 p(0.1, 0.2, 1);
  for (auto _ : state) {
    p.x() += 1e-9;
    benchmark::DoNotOptimize(c.project(p));
  }
}
BENCHMARK(projectAPoint);

void renderTwoFigures(benchmark::State& state) {
  const Camera c = camera();
  for (auto _ : state)
    benchmark::DoNotOptimize(render(twoFigures(), c, static_cast<int>(state.range(0))));
}
BENCHMARK(renderTwoFigures)->Arg(240)->Arg(600)->Unit(benchmark::kMillisecond);

void visibleSharesOfTwo(benchmark::State& state) {
  const Camera c = camera();
  for (auto _ : state) benchmark::DoNotOptimize(visibleShares(twoFigures(), c, 240));
}
BENCHMARK(visibleSharesOfTwo)->Unit(benchmark::kMillisecond);

void drawTwoFigures(benchmark::State& state) {
  const Camera c = camera();
  const Rect frame{{0, 0}, {140, 100}};
  DrawOptions options;
  options.width = static_cast<int>(state.range(0));
  options.setting = "exterior field";
  for (auto _ : state)
    benchmark::DoNotOptimize(drawPanel(twoFigures(), c, frame, polygonOf(frame), options));
}
BENCHMARK(drawTwoFigures)->Arg(300)->Arg(600)->Unit(benchmark::kMillisecond);

/// The whole of a planned panel: drawing and value plan from one picture.
void drawAndPlanTwoFigures(benchmark::State& state) {
  const Camera c = camera();
  const Rect frame{{0, 0}, {140, 100}};
  DrawOptions options;
  options.width = static_cast<int>(state.range(0));
  options.setting = "exterior field";
  const Lighting light;
  for (auto _ : state)
    benchmark::DoNotOptimize(
        drawWithValues(twoFigures(), c, frame, polygonOf(frame), options, light));
}
// On two cores: the time that passes counts, and that of the process is told beside it.
BENCHMARK(drawAndPlanTwoFigures)
    ->Arg(600)
    ->Unit(benchmark::kMillisecond)
    ->MeasureProcessCPUTime()
    ->UseRealTime();

}  // namespace
