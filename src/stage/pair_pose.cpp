// Poses for two.
//
// Words: a contact is a hand of one figure and the place it is laid on, told in the frame of one of
// the other's joints; the palm is half the way from wrist to fingertip.
//
// 1. The second is turned to the first and set so that its joint stands where the pose says.
// 2. Each hand reaches: the forearm with its hand is one link, so the elbow's bend follows from
//    the distance of shoulder and place (halving the interval), and the arm is then swung by the
//    least turn that brings the palm there. The shoulder follows the arm, so this is repeated.
// 3. What all hands lack on the mean is made up by moving the second, sideways only when it stands
//    on the ground. Back to 2.
//
// Cost: some hundred microseconds a pair. Does badly: it knows no limits of joints and no solid
// bodies; a pose whose places are far from its own arms' bends gives odd elbows.
#include "stage/pair_pose.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cctype>
#include <cmath>
#include <numbers>

#include "stage/shoulder.h"

namespace tw {
namespace {

using Mat3 = Eigen::Matrix3d;

constexpr double kRad = std::numbers::pi / 180;
constexpr double kPalmAlong = 0.5;
constexpr int kRounds = 8, kReaches = 3;
constexpr double kMostBendDeg = 150;

Mat3 about(const Vec3& axis, double deg) {
  return Eigen::AngleAxisd(deg * kRad, axis).toRotationMatrix();
}

struct ArmJoints {
  Joint shoulder, elbow, wrist, tip;
};
ArmJoints armOf(bool left) {
  if (left) return {Joint::LeftShoulder, Joint::LeftElbow, Joint::LeftWrist, Joint::LeftFingertip};
  return {Joint::RightShoulder, Joint::RightElbow, Joint::RightWrist, Joint::RightFingertip};
}

Vec3 palmOf(const Skeleton& s, bool left) {
  const ArmJoints arm = armOf(left);
  return s[arm.wrist] + kPalmAlong * (s[arm.tip] - s[arm.wrist]);
}

std::array<double, 3> turnOf(const Pose& pose, const std::string& joint) {
  const auto found = pose.turnsDeg.find(joint);
  return found == pose.turnsDeg.end() ? std::array<double, 3>{0, 0, 0} : found->second;
}

/// flex, aside, twist of a limb's frame in its parent's; of the two readings the one that is
/// nearer to the turn it had.
std::array<double, 3> limbTurnOf(const Mat3& r, double side, const std::array<double, 3>& before) {
  const double aside = std::asin(std::clamp(-r(0, 1), -1.0, 1.0)) / kRad;
  const double flex = std::atan2(r(2, 1), r(1, 1)) / kRad,
               twist = std::atan2(r(0, 2), r(0, 0)) / kRad;
  const std::array<double, 3> one{-flex, side * aside, side * twist};
  const std::array<double, 3> other{180 - flex, 180 - side * aside, side * twist + 180};
  const auto near = [&](std::array<double, 3> turn) {
    for (std::size_t i = 0; i < 3; ++i)
      turn[i] = before[i] + std::remainder(turn[i] - before[i], 360.0);
    return turn;
  };
  const auto far = [&](const std::array<double, 3>& turn) {
    return std::abs(turn[0] - before[0]) + std::abs(turn[1] - before[1]) +
           std::abs(turn[2] - before[2]);
  };
  const auto a = near(one), b = near(other);
  return far(a) <= far(b) ? a : b;
}

/// One of the two while they are brought together.
struct Partner {
  const Body& body;
  Pose pose;
  SetFigure set;
  Skeleton skeleton;

  void strike() { skeleton = posed(body, pose, set); }

  void move(const Vec3& by) {
    set.at = {set.at.x + by.x(), set.at.y + by.y(), set.at.z + by.z()};
    strike();
  }

  void reach(bool left, const Vec3& to) {
    for (int i = 0; i < kReaches; ++i) reachOnce(left, to);
  }

 private:
  void reachOnce(bool left, const Vec3& to) {
    const double side = left ? -1 : 1;
    const std::string name = left ? "left " : "right ";
    const ArmJoints arm = armOf(left);
    const Mat3 upper = skeleton.frameOf(arm.shoulder), fore = skeleton.frameOf(arm.elbow);
    const std::array<double, 3> elbow = turnOf(pose, name + "elbow");
    const Vec3 link = about(Vec3::UnitZ(), side * elbow[1]) *
                      (fore.transpose() * (palmOf(skeleton, left) - skeleton[arm.elbow]));
    const Vec3 want = to - skeleton[arm.shoulder];
    const double bend = bendFor(link, want.norm());
    const Vec3 now = upper * palmAt(link, bend);
    const Mat3 swung = Eigen::Quaterniond::FromTwoVectors(now, want).toRotationMatrix() * upper;
    const Mat3& chest = skeleton.frameOf(Joint::Chest);
    pose.turnsDeg[name + "shoulder"] =
        limbTurnOf(chest.transpose() * swung, side, turnOf(pose, name + "shoulder"));
    pose.turnsDeg[name + "elbow"] = {bend, elbow[1], elbow[2]};
    strike();
  }

  /// Of the palm from the shoulder, in the upper arm's frame.
  Vec3 palmAt(const Vec3& link, double bendDeg) const {
    return Vec3(0, -body.upperArm, 0) + about(Vec3::UnitX(), -bendDeg) * link;
  }

  double bendFor(const Vec3& link, double distance) const {
    double straight = 0, bent = kMostBendDeg;
    for (int i = 0; i < 30; ++i) {
      const double middle = (straight + bent) / 2;
      (palmAt(link, middle).norm() > distance ? straight : bent) = middle;
    }
    return (straight + bent) / 2;
  }
};

class Meeting {
 public:
  Meeting(const PairPose& pair, const Body& a, const Body& b, const SetFigure& first)
      : pair_(pair),
        partners_{Partner{a, pair.poses[0], first, {}}, Partner{b, pair.poses[1], first, {}}} {
    for (std::size_t i = 0; i < 2; ++i) {
      Partner& p = partners_[i];
      p.set.pose = p.pose.name;
      p.set.poseMirrored = false;
      p.set.turnsDeg.clear();
      p.set.gazeDeg = 0;
    }
    partners_[1].set.headingDeg = std::remainder(first.headingDeg + pair.turnDeg, 360.0);
  }

  std::array<SetFigure, 2> run() {
    for (Partner& p : partners_) p.strike();
    placeSecond();
    for (int round = 0; round < kRounds; ++round) {
      const Vec3 lack = reachAll();
      if (round + 1 < kRounds) partners_[1].move(lack);
    }
    for (std::size_t i = 0; i < 2; ++i)
      partners_[i].set.turnsDeg = turnsThatDiffer(pair_.poses[i], partners_[i].pose);
    return {partners_[0].set, partners_[1].set};
  }

  std::vector<double> gaps(const std::array<SetFigure, 2>& sets) {
    for (std::size_t i = 0; i < 2; ++i) {
      partners_[i].set = sets[i];
      partners_[i].strike();
    }
    std::vector<double> out;
    for (const HandHold& c : pair_.holds)
      out.push_back((palmOf(hand(c).skeleton, c.left) - place(c)).norm());
    return out;
  }

 private:
  Partner& hand(const HandHold& c) { return partners_[c.firsts ? 0 : 1]; }
  Partner& other(const HandHold& c) { return partners_[c.firsts == c.own ? 0 : 1]; }

  void placeSecond() {
    const double h = partners_[0].set.headingDeg * kRad, size = partners_[0].body.stature;
    const Vec3 left(std::cos(h), 0, std::sin(h)), front(std::sin(h), 0, -std::cos(h));
    const Vec3 off =
        size * (left * pair_.off.x() + Vec3::UnitY() * pair_.off.y() + front * pair_.off.z());
    Vec3 by = partners_[0].skeleton[pair_.by] + off - partners_[1].skeleton[pair_.placed];
    if (!pair_.lifted) by.y() = 0;
    partners_[1].move(by);
  }

  /// Where the contact's palm belongs.
  Vec3 place(const HandHold& c) {
    const Skeleton& s = other(c).skeleton;
    if (c.palm) return palmOf(s, c.on == Joint::LeftWrist);
    const Vec3 off(-c.off.x(), c.off.y(), c.off.z());
    return s[c.on] + other(c).body.stature * (s.frameOf(c.on) * off);
  }

  /// What the hands lack on the mean: by so much the second has to come nearer.
  Vec3 reachAll() {
    Vec3 lack = Vec3::Zero();
    double count = 0;
    for (const HandHold& c : pair_.holds) {
      const bool theirs = c.on == Joint::LeftWrist;
      Vec3 to = place(c);
      if (c.palm) {
        to = 0.5 * (to + palmOf(hand(c).skeleton, c.left));
        other(c).reach(theirs, to);
        to = palmOf(other(c).skeleton, theirs);
      }
      hand(c).reach(c.left, to);
      if (c.own) continue;
      const Vec3 short_ = palmOf(hand(c).skeleton, c.left) - place(c);
      lack += c.firsts ? short_ : -short_;
      count += 1;
    }
    if (count > 0) lack /= count;
    if (!pair_.lifted) lack.y() = 0;
    return lack;
  }

  const PairPose& pair_;
  std::array<Partner, 2> partners_;
};

bool contains(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

bool namesAny(const std::string& text, const std::vector<std::string>& phrases) {
  std::string folded = text;
  for (char& c : folded) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return std::any_of(phrases.begin(), phrases.end(), [&](const std::string& phrase) {
    return folded.find(phrase) != std::string::npos;
  });
}

}  // namespace

std::optional<PairInBeat> pairIn(const Beat& beat, int first, const PoseLibrary& poses,
                                 const std::map<std::string, double>& statures) {
  const auto statureOf = [&](int i) {
    const auto found = statures.find(beat.figures[static_cast<std::size_t>(i)].who);
    return found == statures.end() ? 1.7 : found->second;
  };
  const BeatFigure& figure = beat.figures[static_cast<std::size_t>(first)];
  const auto target =
      std::find_if(beat.figures.begin(), beat.figures.end(), [&](const BeatFigure& f) {
        return !figure.target.empty() && f.who == figure.target && f.who != figure.who;
      });
  for (const PairPose& pair : poses.pairs()) {
    int second = -1;
    if (target != beat.figures.end() && contains(pair.relations, figure.relation))
      second = static_cast<int>(target - beat.figures.begin());
    else if (first == 0 && beat.figures.size() == 2 && namesAny(beat.description, pair.phrases))
      second = 1;
    if (second < 0) continue;
    const double share = statureOf(second) / statureOf(first);
    if (share < pair.leastShare || share > pair.mostShare) continue;
    return PairInBeat{&pair, first, second};
  }
  return std::nullopt;
}

std::array<SetFigure, 2> paired(const PairPose& pair, const Body& firstBody, const Body& secondBody,
                                const SetFigure& first) {
  return Meeting(pair, firstBody, secondBody, first).run();
}

std::vector<double> contactGaps(const PairPose& pair, const Body& firstBody, const Body& secondBody,
                                const std::array<SetFigure, 2>& sets) {
  return Meeting(pair, firstBody, secondBody, sets[0]).gaps(sets);
}

}  // namespace tw
