#include "stage/leads.h"

#include "stage/held_props.h"

namespace tw {

namespace {

// A pointing limb leads most surely, a glance least: gaze moves readers' eyes only a little
// (facts: reading §4, pooled g about 0.23). The ratio is our own judgement.
constexpr double kGaze = 0.45;

}  // namespace

bool pointsWithLimb(const BeatFigure& figure, const Pose& pose) {
  if (pose.pointer.empty()) return false;
  return figure.relation.find("point") != std::string::npos ||
         figure.relation.find("reach") != std::string::npos || pose.motion < 0.4;
}

std::vector<WorldLead> leadsOf(const Actor& actor, bool points) {
  std::vector<WorldLead> leads;
  const Skeleton& s = actor.skeleton;
  if (points) {
    const Vec3 limb = pointingLimb(*actor.pose, s, actor.set.poseMirrored);
    leads.push_back({limb, 1.0, WorldLead::By::Pointing, headMiddle(s)});
  }
  if (actor.pose->motion > 0.05) {
    const Vec3 front = directionOf(actor.set.headingDeg);
    leads.push_back({front, 0.9 * actor.pose->motion, WorldLead::By::Motion, s[Joint::Chest]});
  }
  leads.push_back({headFront(s), kGaze, WorldLead::By::Gaze, headMiddle(s)});
  return leads;
}

}  // namespace tw
