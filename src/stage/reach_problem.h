// What a pose costs while it is solved for, with its exact gradient. Knows no solver: x are the
// turns and the hips' way from the pose at hand, each in its own unit, 0 = as it was.
#pragma once

#include <optional>
#include <vector>

#include "stage/balance.h"
#include "stage/reach_pose.h"

namespace tw {

class ReachProblem {
 public:
  /// The figure must not be mirrored; body and limits must outlive the problem.
  ReachProblem(const Body& body, const Pose& pose, const SetFigure& set, const ReachWish& wish,
               const JointLimits& limits);

  ReachProblem(const ReachProblem&) = delete;

  std::size_t size() const { return ways_.size(); }
  std::vector<double> least() const;
  std::vector<double> most() const;
  double cost(const double* x, double* gradient);

  /// Moves every goal beyond itself by what is still missing, so that a soft pull ends on it.
  struct Miss {
    double nearM = 0;  ///< the largest among goals that are near
    int far = 0;       ///< goals too far off to be corrected
  };
  Miss correctGoals(const std::vector<double>& x);
  /// Targets that are far from reached pull no more.
  void letGo(const std::vector<double>& x);
  void resetGoals();
  /// x with the moved limbs laid toward one of a few fixed attitudes; false when there are no more.
  bool otherStart(std::size_t number, std::vector<double>& x) const;

  double targetMiss(const std::vector<double>& x);
  /// Every target that is missed lies farther from its shoulder or hip than the limb is long: no
  /// other start would help.
  bool isOutOfReach(const std::vector<double>& x);

  Pose poseAt(const std::vector<double>& x);
  /// How far the hips have gone.
  Vec3 wayAt(const std::vector<double>& x) const;
  /// The skeleton at x, not put on the floor.
  const Skeleton& skeletonAt(const double* x);

 private:
  enum class Kind : std::uint8_t { Trunk, Limb, Forearm, Girdle, Root, Move };
  /// One degree of freedom.
  struct Way {
    Kind kind;
    Joint joint;       ///< the subtree it moves
    int axis = 0;      ///< flex, aside, twist; x, y, z
    double unit = 1;   ///< degrees or metres per unit of x
    double start = 0;  ///< degrees
    double least = 0, most = 0;
    double softLeast = 0, softMost = 0;
    double* turn = nullptr;  ///< in pose_
  };
  struct Goal {
    Joint joint;
    Vec3 local, to, pulledTo;
    double weight = 1;
    bool target = false;  ///< its pull is bounded, so that it cannot tear pins
  };
  struct Force {
    Vec3 push = Vec3::Zero(), turn = Vec3::Zero();
  };

  void addTurns(const std::string& name, Joint joint, Kind kind, const TurnRanges& ranges,
                const std::array<double, 3>& units);
  void addTrunk(const JointLimits& limits);
  void addLimbs(const JointLimits& limits, bool left);
  void addRoot();
  void addTarget(const ReachTarget& target);
  void addPin(Joint joint);
  void addFootPins(bool left, const std::vector<Contact>& contacts);
  void addGoal(Joint joint, const Vec3& at, const Vec3& to, double weight, bool target);
  void keepSupport();
  void keepClear();
  void keepBalance();
  bool isMoved(MovedPart part) const;

  Vec3 placeOfGoal(const Goal& goal) const;
  Vec3 feetMiddle(const Skeleton& skeleton) const;
  Vec3 nearestOnTrunk(const Vec3& at) const;
  double stayCost(const double* x, double* gradient) const;
  double limitCost(double* gradient) const;
  double armTwistCost(double* gradient) const;
  double goalCost();
  double gazeCost();
  double headCost();
  double balanceCost();
  double floorCost();
  double trunkCost();
  void push(Joint joint, const Vec3& at, const Vec3& slope);
  void twist(Joint joint, const Vec3& direction, const Vec3& slope);
  void gather();
  double slopeOf(const Way& way) const;
  Vec3 axisOf(const Way& way) const;
  Vec3 shoulderSlope(const Way& way) const;

  const Body& body_;
  Pose pose_;
  SetFigure set_;
  const ReachWish& wish_;
  double graceDeg_;
  TurnRanges shoulder_;
  std::vector<Way> ways_;
  std::vector<Goal> goals_;
  std::vector<std::size_t> shoulderWays_;  ///< first of flex, aside, twist of each moved arm
  Skeleton skeleton_, start_;
  double rootHeight_ = 0;
  std::array<double, 4> clearance_{};  ///< kept by palms and elbows from the trunk's axis
  std::vector<double> floorLift_;      ///< per contact: how far the floor is raised to keep it out
  bool standsLeft_ = false, standsRight_ = false;
  std::optional<Vec3> massOffset_;  ///< mass centre from the standing feet's middle
  std::array<Force, kJoints> forces_;
};

}  // namespace tw
