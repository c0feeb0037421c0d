// Inverse kinematics as a small least-cost problem.
//
// Idea: of all poses that take the moved parts to their targets and leave the pins in place, the
// one nearest to the pose at hand. Nearness makes a drag smooth and the same wish the same answer.
//
// 1. A mirrored figure is solved as the picture in a looking-glass of a plain one, so that mirrored
//    wishes have exactly mirrored answers.
// 2. The cost and its exact slopes (reach_cost.cpp) go to a quasi-Newton solver with bounds
//    (NLopt's limited-memory BFGS), begun at the pose at hand.
// 3. Soft pulls end a little short. The goals are moved beyond themselves by what is missing and
// the
//    solver goes on from where it is (method of multipliers; Hestenes 1969, from memory).
// 4. A target that is still missed by a bent limb was a valley of its own: the solver starts again
//    from a few fixed attitudes of that limb, and the best answer is taken.
// 5. The answer is put on the floor as every pose is, and what is reported is measured there.
//
// Cost: some hundred passes of 10 µs; a drag step stays well under 4 ms (docs/benchmarks.md).
// Does badly: limbs may pass through each other and through props.
// Why NLopt: docs/decisions/0009-nlopt-for-inverse-kinematics.md.
#include "stage/reach_pose.h"

#include <fmt/format.h>
#include <nlopt.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "stage/figure_proportions.h"
#include "stage/reach_problem.h"
#include "stage/volumes.h"

namespace tw {
namespace {

constexpr int kMostEvaluations = 90, kMostPerCorrection = 60, kMostCorrections = 16,
              kLastCorrections = 12, kMostIdle = 4;
constexpr double kIdleFrom = 0.8;  // a correction that leaves more of the miss was in vain
constexpr double kGoodM = 0.0003, kMissedM = 0.001;
constexpr double kBarelyM = 0.05;    // a straight limb that misses by less may do it otherwise
constexpr double kLongestArm = 1.3;  // of the stature: targets farther off are brought nearer

constexpr std::array<std::string_view, 7> kPartNames{
    "left hand", "right hand", "left foot", "right foot", "head", "pelvis", "gaze"};

Vec3 inGlass(const Vec3& at) {
  return {-at.x(), at.y(), at.z()};
}

SetFigure inGlass(SetFigure set) {
  set.at.x = -set.at.x;
  set.headingDeg = -set.headingDeg;
  set.gazeDeg = -set.gazeDeg;
  set.poseMirrored = !set.poseMirrored;
  return set;
}

ReachWish inGlass(const ReachWish& wish) {
  ReachWish out = wish;
  for (ReachTarget& t : out.targets) t = {mirrored(t.part), inGlass(t.to)};
  for (Joint& joint : out.pins) joint = mirrored(joint);
  return out;
}

/// A place a mile off pulls in the same direction as one just out of reach.
ReachWish broughtNear(const Body& body, const Skeleton& s, ReachWish wish) {
  const double most = kLongestArm * body.stature;
  for (ReachTarget& t : wish.targets) {
    if (t.part == MovedPart::Gaze) continue;
    const Vec3 from = s[Joint::Chest], way = t.to - from;
    if (way.norm() > most) t.to = from + way * (most / way.norm());
  }
  return wish;
}

/// One run of the solver and what it found.
struct Run {
  std::vector<double> x;
  double cost = std::numeric_limits<double>::infinity();
};

class Solver {
 public:
  explicit Solver(ReachProblem& problem)
      : problem_(problem),
        least_(problem.least()),
        most_(problem.most()),
        solver_(
            nlopt_create(NLOPT_LD_TNEWTON_PRECOND_RESTART, static_cast<unsigned>(problem.size()))) {
    ensure(solver_ != nullptr, "the solver is there");
    nlopt_set_lower_bounds(solver_, least_.data());
    nlopt_set_upper_bounds(solver_, most_.data());
    nlopt_set_min_objective(solver_, &Solver::evaluate, this);
    nlopt_set_vector_storage(solver_, 16);
    nlopt_set_ftol_rel(solver_, 1e-7);
    nlopt_set_xtol_rel(solver_, 1e-7);
  }
  ~Solver() { nlopt_destroy(solver_); }
  Solver(const Solver&) = delete;

  /// Solves from x and corrects until the goals are met. What is out of reach is then let go where
  /// it has come to, so that its pull no longer strains the pins.
  Run run(std::vector<double> x) {
    Run out;
    if (!correct(x, kMostCorrections, out)) {
      problem_.letGo(x);
      correct(x, kLastCorrections, out);
    }
    out.x = clamped(std::move(x));
    return out;
  }
  int evaluations() const { return evaluations_; }

 private:
  std::vector<double> clamped(std::vector<double> x) const {
    for (std::size_t i = 0; i < x.size(); ++i) x[i] = std::clamp(x[i], least_[i], most_[i]);
    return x;
  }

  /// True when every goal is met.
  bool correct(std::vector<double>& x, int most, Run& out) {
    double before = std::numeric_limits<double>::infinity();
    for (int k = 0, idle = 0; k < most && idle < kMostIdle; ++k) {
      x = clamped(std::move(x));
      nlopt_set_maxeval(solver_, k == 0 ? kMostEvaluations : kMostPerCorrection);
      nlopt_optimize(solver_, x.data(), &out.cost);  // a run that stops early still has its best
      const ReachProblem::Miss miss = problem_.correctGoals(x);
      if (miss.nearM < kGoodM) return miss.far == 0;
      idle = miss.nearM > kIdleFrom * before ? idle + 1 : 0;
      before = miss.nearM;
    }
    return false;
  }

  static double evaluate(unsigned, const double* x, double* gradient, void* self) {
    auto& solver = *static_cast<Solver*>(self);
    ++solver.evaluations_;
    return solver.problem_.cost(x, gradient);
  }

  ReachProblem& problem_;
  std::vector<double> least_, most_;
  nlopt_opt solver_;
  int evaluations_ = 0;
};

/// The best of the plain start and, when it got stuck, of the fixed ones.
Run bestRun(ReachProblem& problem, Solver& solver) {
  Run best = solver.run(std::vector<double>(problem.size(), 0));
  double miss = problem.targetMiss(best.x);
  std::vector<double> x;
  const auto hopeless = [&] { return miss > kBarelyM && problem.isOutOfReach(best.x); };
  for (std::size_t k = 0; miss > kMissedM && !hopeless(); ++k) {
    problem.resetGoals();
    if (!problem.otherStart(k, x)) break;
    Run run = solver.run(x);
    const double now = problem.targetMiss(run.x);
    if (now >= miss) continue;
    miss = now;
    best = std::move(run);
  }
  return best;
}

double missOf(const ReachTarget& target, const Body& body, const Skeleton& s) {
  if (target.part != MovedPart::Gaze) return (placeOf(target.part, body, s) - target.to).norm();
  const Vec3 at = placeOf(MovedPart::Head, body, s);
  return (headFront(s) - (target.to - at).normalized()).norm();
}

/// How far the pinned joints have gone; wrists by their palm.
double pinsMoved(const Body& body, const Skeleton& before, const Skeleton& after,
                 const std::vector<Joint>& pins) {
  double most = 0;
  for (const Joint pin : pins) {
    const bool left = pin == Joint::LeftWrist, right = pin == Joint::RightWrist;
    const MovedPart hand = left ? MovedPart::LeftHand : MovedPart::RightHand;
    const Vec3 way = left || right ? Vec3(placeOf(hand, body, after) - placeOf(hand, body, before))
                                   : Vec3(after[pin] - before[pin]);
    most = std::max(most, way.norm());
  }
  return most;
}

/// The figure's place under its moved hips. In the air it also keeps the height that was found.
void moveSet(const Body& body, const Pose& pose, const Vec3& way, double hips, SetFigure& set) {
  set.at.x += way.x();
  set.at.z += way.z();
  if (pose.support == "none") set.at.y += hips - posed(body, pose, set)[Joint::Pelvis].y();
}

}  // namespace

std::string_view nameOf(MovedPart part) {
  return kPartNames[static_cast<std::size_t>(part)];
}

MovedPart mirrored(MovedPart part) {
  switch (part) {
    case MovedPart::LeftHand:
      return MovedPart::RightHand;
    case MovedPart::RightHand:
      return MovedPart::LeftHand;
    case MovedPart::LeftFoot:
      return MovedPart::RightFoot;
    case MovedPart::RightFoot:
      return MovedPart::LeftFoot;
    default:
      return part;
  }
}

Vec3 placeOf(MovedPart part, const Body& body, const Skeleton& s) {
  using enum Joint;
  const auto palm = [&](Joint wrist, Joint tip) -> Vec3 {
    return s[wrist] + 0.6 * (s[tip] - s[wrist]);
  };
  const auto sole = [&](Joint ankle) -> Vec3 {
    const double middle = 0.5 * (kBallForward - kHeelBack);
    return s[ankle] + s.frameOf(ankle) * Vec3(0, -body.ankleHeight, middle * body.footLength);
  };
  switch (part) {
    case MovedPart::LeftHand:
      return palm(LeftWrist, LeftFingertip);
    case MovedPart::RightHand:
      return palm(RightWrist, RightFingertip);
    case MovedPart::LeftFoot:
      return sole(LeftAnkle);
    case MovedPart::RightFoot:
      return sole(RightAnkle);
    case MovedPart::Head:
      return headMiddle(s);
    case MovedPart::Pelvis:
      return s[Pelvis];
    case MovedPart::Gaze:
      break;
  }
  return headMiddle(s) + headFront(s);
}

std::string ReachedPose::shortfall() const {
  std::string out;
  for (const Reached& r : reached) {
    if (r.shortM < 0.005) continue;
    out += out.empty() ? "" : ", ";
    out += r.part == MovedPart::Gaze
               ? fmt::format("gaze {:.0f}° off", std::atan(r.shortM) * 57.29578)
               : fmt::format("{} {:.0f} cm short", nameOf(r.part), 100 * r.shortM);
  }
  return out;
}

ReachedPose reachPose(const Body& body, const Pose& pose, const SetFigure& set,
                      const ReachWish& wish, const JointLimits& limits) {
  SetFigure start = set;
  start.turnsDeg.clear();
  const Pose given = withTurns(pose, set.turnsDeg);
  const bool glass = set.poseMirrored;
  const SetFigure plain = glass ? inGlass(start) : start;
  const Skeleton before = posed(body, given, plain);
  const ReachWish near = broughtNear(body, before, glass ? inGlass(wish) : wish);

  ReachProblem problem(body, given, plain, near, limits);
  Solver solver(problem);
  const Run best = bestRun(problem, solver);

  ReachedPose out;
  out.pose = problem.poseAt(best.x);
  out.set = plain;
  const double hips = problem.skeletonAt(best.x.data())[Joint::Pelvis].y();
  moveSet(body, out.pose, problem.wayAt(best.x), hips, out.set);
  if (glass) out.set = inGlass(out.set);
  const Skeleton after = posed(body, out.pose, out.set);
  for (const ReachTarget& t : wish.targets) out.reached.push_back({t.part, missOf(t, body, after)});
  out.pinsMovedM = pinsMoved(body, posed(body, given, start), after, wish.pins);
  out.limits = atLimit(out.pose, limits);
  out.evaluations = solver.evaluations();
  return out;
}

}  // namespace tw
