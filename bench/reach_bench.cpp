// Times of inverse kinematics. Target: one step of a drag (a hand 2 cm on) under 4 ms.
#include <benchmark/benchmark.h>

#include "stage/reach_pose.h"

using namespace tw;

namespace {

struct Stand {
  PoseLibrary poses = PoseLibrary::load().value();
  JointLimits limits = JointLimits::load().value();
  Body body = bodyOf(Character{});
};

const Stand& ready() {
  static const Stand stand;
  return stand;
}

/// A hand goes round a circle before the chest, 2 cm a step, each step from where the last one
/// ended.
void dragAHand(benchmark::State& state) {
  const Stand& r = ready();
  Pose pose = r.poses.orStand("stand");
  SetFigure set;
  const Vec3 middle = posed(r.body, pose, set)[Joint::LeftShoulder] + Vec3(0.1, -0.05, -0.38);
  double turn = 0, missed = 0, evaluations = 0;
  for (auto _ : state) {
    turn += 0.02 / 0.2;
    const Vec3 to = middle + 0.2 * Vec3(std::cos(turn), std::sin(turn), 0);
    ReachedPose reached = reachPose(r.body, pose, set, {{{MovedPart::LeftHand, to}}, {}}, r.limits);
    missed = std::max(missed, reached.reached[0].shortM);
    evaluations += reached.evaluations;
    pose = std::move(reached.pose);
    set = reached.set;
    if (turn > 6.2) pose = r.poses.orStand("stand"), set = {}, turn = 0;
  }
  state.counters["missed_mm"] = 1000 * missed;
  state.counters["evaluations"] = evaluations / static_cast<double>(state.iterations());
}
BENCHMARK(dragAHand)->Unit(benchmark::kMillisecond);

void moveAFootWithBothHandsPinned(benchmark::State& state) {
  const Stand& r = ready();
  const Pose& pose = r.poses.orStand("hold");
  const Vec3 from = placeOf(MovedPart::RightFoot, r.body, posed(r.body, pose, {}));
  const ReachWish wish{{{MovedPart::RightFoot, from + Vec3(-0.1, 0, 0)}},
                       {Joint::LeftWrist, Joint::RightWrist}};
  for (auto _ : state) benchmark::DoNotOptimize(reachPose(r.body, pose, {}, wish, r.limits));
}
BENCHMARK(moveAFootWithBothHandsPinned)->Unit(benchmark::kMillisecond);

void stretchForWhatIsOutOfReach(benchmark::State& state) {
  const Stand& r = ready();
  const Pose& pose = r.poses.orStand("stand");
  const ReachWish wish{{{MovedPart::RightHand, {-1.5, 1.8, -1.5}}}, {}};
  for (auto _ : state) benchmark::DoNotOptimize(reachPose(r.body, pose, {}, wish, r.limits));
}
BENCHMARK(stretchForWhatIsOutOfReach)->Unit(benchmark::kMillisecond);

}  // namespace
