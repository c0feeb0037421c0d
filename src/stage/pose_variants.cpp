// Alternatives to a pose.
//
// 1. Every move of pose_moves.h is made from the present pose by itself.
// 2. The best of each kind are made on top of each other, two at a time, kinds mixed.
// 3. Each outcome is staged (what hands hold goes along), rendered small and measured. Hands and
//    feet that touch what stays are pinned; limbs that pass through it cost, and grossly forbid.
// 4. Kept are the best readable that are unlike the present one and each other: one after another,
//    the next is the one with the largest readability plus what it adds in difference (maximal
//    marginal relevance, Carbonell & Goldstein 1998, from memory).
//
// Cost: some 90 outcomes of about 6 ms. Does badly: it knows nothing of what the scene means; a
// turned figure may look away from its partner.
#include "stage/pose_variants.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "stage/held_props.h"
#include "stage/pose_moves.h"
#include "stage/touch.h"

namespace tw {
namespace {

constexpr double kDetail = 0.45;
constexpr std::size_t kBestPerKind = 2, kMostPairs = 48;
constexpr double kLeastUnlike = 0.02;  // of the stature, mean over the joints
constexpr double kUnlikeWeight = 2.4, kFullyUnlike = 0.09;
constexpr double kRepeated = 0.12;  // what showing a move once more costs
// Of limbs inside another body or thing, beyond what the present pose has: a whole forearm is 0.11.
constexpr double kThroughCosts = 1.5, kMostThrough = 0.07;
constexpr double kDeg = 57.295779513;

constexpr std::array<Joint, 11> kTelling{
    Joint::Crown,          Joint::LeftElbow, Joint::RightElbow, Joint::LeftFingertip,
    Joint::RightFingertip, Joint::LeftKnee,  Joint::RightKnee,  Joint::LeftToe,
    Joint::RightToe,       Joint::Pelvis,    Joint::Nose};

struct Outcome {
  PoseVariant variant;
  std::vector<Point> joints;  ///< in the picture, statures
  std::vector<MoveKind> kinds;
  std::vector<std::string> moves;  ///< their names
  Stance stance;
};

class Search {
 public:
  Search(const Stager& stager, const RoughPanel& panel, const Beat& beat, std::size_t index)
      : stager_(stager),
        panel_(panel),
        beat_(beat),
        index_(index),
        frame_(frameOf(panel.outline)),
        camera_(panel.staging.camera, frame_.width() / frame_.height()) {}

  PoseVariants run(std::size_t keep) {
    present_ = presentOutcome();
    const std::vector<PoseMove> moves = poseMoves(stager_.limits(), facingCamera());
    for (const PoseMove& move : moves) tryMove(present_, move);
    combine(moves);
    PoseVariants out;
    out.present = present_.variant;
    out.tried = outcomes_.size();
    out.kept = chosen(keep);
    return out;
  }

 private:
  Outcome presentOutcome() {
    const SetFigure& set = panel_.staging.figures[index_];
    Outcome out;
    Stance& s = out.stance;
    s.body = &stager_.bodyOf(set.who);
    s.pose = withTurns(stager_.poses().orStand(set.pose), set.turnsDeg);
    s.set = set;
    s.set.turnsDeg.clear();
    s.moving = s.pose.motion >= 0.35;
    const Scene scene = stager_.sceneOf(panel_.staging, beat_);
    const BusyHands busy = busyHands(beat_, scene, index_);
    s.leftBusy = busy.left;
    s.rightBusy = busy.right;
    s.touching =
        touchingLimbs(beat_, scene, index_, stager_.solidsOf(panel_.staging, beat_, kDetail));
    s.leftBusy |= s.touches(Joint::LeftWrist);
    s.rightBusy |= s.touches(Joint::RightWrist);
    out.variant.name = "as it is";
    out.variant.staging = panel_.staging;
    measure(out);
    return out;
  }

  /// The heading with which the figure would face the camera.
  double facingCamera() const {
    const Place3& at = panel_.staging.figures[index_].at;
    const Vec3 to = camera_.eye() - Vec3(at.x, at.y, at.z);
    return std::atan2(to.x(), -to.z()) * kDeg;
  }

  void measure(Outcome& o) const {
    PoseVariant& v = o.variant;
    const std::vector<Solid> solids = stager_.solidsOf(v.staging, beat_, kDetail);
    const Scene scene = stager_.sceneOf(v.staging, beat_);
    Actor actor = scene.actors[index_];
    actor.pose = &o.stance.pose;
    v.figures = poseFigures(actor, static_cast<int>(index_), solids, camera_);
    if (hauls(beat_, beat_.figures[index_])) {
      v.figures.balance.judged = false;
      v.figures.balance.label = "leans against what it hauls: not judged";
    }
    v.figures.limits = atLimit(o.stance.pose, stager_.limits());
    v.figures.limbsInside = limbsInside(beat_, scene, index_, solids);
    v.readability = readability(v.figures) - kThroughCosts * throughBeyondPresent(o);
    const double unit = camera_.intrinsics()(0, 0) * actor.body->stature /
                        std::max(0.3, camera_.depth(actor.skeleton[Joint::Chest]));
    for (const Joint joint : kTelling) {
      const Point p = camera_.projectAlways(actor.skeleton[joint]);
      o.joints.push_back({p.x / unit, p.y / unit});
    }
  }

  /// The present pose may hold somebody close; what goes deeper than that is a fault.
  double throughBeyondPresent(const Outcome& o) const {
    if (o.kinds.empty()) return 0;
    return std::max(0.0, o.variant.figures.limbsInside - present_.variant.figures.limbsInside);
  }

  /// Puts the stance into the panel's staging; held props follow their hands.
  void stage(Outcome& o) const {
    const Stance& s = o.stance;
    SetFigure set = s.set;
    set.turnsDeg = turnsThatDiffer(stager_.poses().orStand(set.pose), s.pose);
    o.variant.staging = panel_.staging;
    o.variant.staging.figures[index_] = set;
    Scene before = stager_.sceneOf(panel_.staging, beat_);
    Scene after = stager_.sceneOf(o.variant.staging, beat_);
    carryProps(beat_, index_, before, after);
    o.variant.staging.props = after.props;
  }

  static double unlike(const Outcome& a, const Outcome& b) {
    double sum = 0;
    for (std::size_t i = 0; i < a.joints.size(); ++i) sum += (a.joints[i] - b.joints[i]).length();
    return sum / static_cast<double>(a.joints.size());
  }

  void tryMove(const Outcome& from, const PoseMove& move) {
    std::optional<Stance> made = move.made(from.stance);
    if (!made) return;
    Outcome o;
    o.stance = std::move(*made);
    o.kinds = from.kinds;
    o.kinds.push_back(move.kind);
    o.moves = from.moves;
    o.moves.push_back(move.name);
    o.variant.name = from.kinds.empty() ? move.name : from.variant.name + ", " + move.name;
    stage(o);
    measure(o);
    if (unlike(o, present_) < kLeastUnlike / 2) return;
    if (throughBeyondPresent(o) > kMostThrough) return;
    outcomes_.push_back(std::move(o));
  }

  std::vector<std::size_t> byReadability(std::size_t count) const {
    std::vector<std::size_t> order(count);
    for (std::size_t i = 0; i < count; ++i) order[i] = i;
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
      return outcomes_[a].variant.readability > outcomes_[b].variant.readability;
    });
    return order;
  }

  /// The best single moves of each kind, two at a time.
  void combine(const std::vector<PoseMove>& moves) {
    const std::size_t singles = outcomes_.size();
    std::array<std::size_t, 6> taken{};
    std::vector<std::size_t> best;
    for (const std::size_t i : byReadability(singles))
      if (taken[static_cast<std::size_t>(outcomes_[i].kinds[0])]++ < kBestPerKind)
        best.push_back(i);
    std::size_t pairs = 0;
    for (std::size_t a = 0; a < best.size(); ++a)
      for (std::size_t b = a + 1; b < best.size() && pairs < kMostPairs; ++b)
        pairs += combined(outcomes_[best[a]], outcomes_[best[b]], moves);
  }

  std::size_t combined(const Outcome& a, const Outcome& b, const std::vector<PoseMove>& moves) {
    if (a.kinds[0] == b.kinds[0]) return 0;
    // Arms last: what the trunk does under a placed hand would spoil it.
    const bool swap = a.kinds[0] < b.kinds[0];
    const Outcome first = swap ? b : a;
    const std::string second = (swap ? a : b).variant.name;
    for (const PoseMove& move : moves)
      if (move.name == second) tryMove(first, move);
    return 1;
  }

  /// How often its moves have been shown already.
  static double repeated(const Outcome& o, const std::map<std::string, int>& used) {
    double times = 0;
    for (const std::string& move : o.moves)
      if (const auto found = used.find(move); found != used.end()) times += found->second;
    return times / static_cast<double>(o.moves.size());
  }

  std::vector<PoseVariant> chosen(std::size_t keep) {
    std::vector<double> nearest;
    for (const Outcome& o : outcomes_) nearest.push_back(unlike(o, present_));
    std::vector<PoseVariant> kept;
    std::map<std::string, int> used;
    while (kept.size() < keep) {
      double best = -std::numeric_limits<double>::infinity();
      std::size_t at = outcomes_.size();
      for (std::size_t i = 0; i < outcomes_.size(); ++i) {
        if (nearest[i] < kLeastUnlike) continue;
        const double worth =
            outcomes_[i].variant.readability + kUnlikeWeight * std::min(nearest[i], kFullyUnlike);
        if (worth > best) best = worth, at = i;
      }
      if (at == outcomes_.size()) break;
      kept.push_back(outcomes_[at].variant);
      for (const std::string& move : outcomes_[at].moves) ++used[move];
      kept.back().unlike = nearest[at];
      for (std::size_t i = 0; i < outcomes_.size(); ++i)
        nearest[i] = std::min(nearest[i], unlike(outcomes_[i], outcomes_[at]));
    }
    std::stable_sort(kept.begin(), kept.end(), [](const PoseVariant& a, const PoseVariant& b) {
      return a.readability > b.readability;
    });
    return kept;
  }

  const Stager& stager_;
  const RoughPanel& panel_;
  const Beat& beat_;
  std::size_t index_;
  Rect frame_;
  Camera camera_;
  Outcome present_;
  std::vector<Outcome> outcomes_;
};

}  // namespace

PoseVariants poseVariants(const Stager& stager, const RoughPanel& panel, const Beat& beat,
                          std::size_t index, std::size_t keep) {
  ensure(index < panel.staging.figures.size(), "the figure stands in the panel");
  return Search(stager, panel, beat, index).run(keep);
}

}  // namespace tw
