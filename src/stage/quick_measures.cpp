// Quick measures.
//
// Idea: a figure is twenty capsules; projected, they are rows of discs on a coarse grid of bits.
// Counting bits gives room for copy and what hides whom; single landmarks give focus, lead, cut.
//
// 1. Heads: chin and crown projected; the head's height is their distance, at least the skull's.
// 2. Lead: the strongest of limb, motion, gaze after projection; the part along the line of sight
//    is lost, so a look into the lens leads nowhere.
// 3. Occupancy: every figure's discs on a 48 × 36 grid over the panel, nearest figures remembered
//    apart, so that the focus's own silhouette, on a grid of its own, can be asked cell by cell
//    whether it is in front and in the frame.
// 4. Cut: the body's chain of landmarks against the frame's edges. Edges near neck, knee or ankle
//    cost, so does a crown or a hand that the frame shaves.
//
// Cost: 4 µs for one figure, 10 µs for three. Does badly: hair, clothes and props are ignored by
// the visible share. Axis: staging facts §7.3; cut lines: shot_size.h.
#include "stage/quick_measures.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <array>
#include <cmath>

#include "job/axis_side.h"
#include "stage/held_props.h"
#include "stage/occupancy.h"
#include "stage/shot_size.h"
#include "stage/slots.h"
#include "stage/variants.h"

namespace tw {
namespace {

constexpr double kCrownCut = 0.03;  // of a speaker's head above the frame, from which it is seen
constexpr double kShave = 0.012;    // frame edge this near to a contour looks like a mistake

Vec3 inCamera(const Camera& camera, const Vec3& direction) {
  return camera.rotation() * direction;
}

double speakerOrder(const Beat& beat, const Scene& scene, const Camera& camera,
                    ReadingDirection direction) {
  const auto speakers = speakersOf(beat);
  std::vector<double> x;
  for (const std::string& who : speakers) {
    for (const Actor& actor : scene.actors) {
      if (actor.set.who == who) x.push_back(panelPoint(camera, headMiddle(actor.skeleton)).x);
    }
  }
  if (x.size() < 2) return 1;
  const double sign = direction == ReadingDirection::LeftToRight ? 1 : -1;
  double kept = 0;
  for (std::size_t i = 1; i < x.size(); ++i) kept += sign * (x[i] - x[i - 1]) > 0 ? 1 : 0;
  return kept / static_cast<double>(x.size() - 1);
}

bool inside(const Rect& frame, Point p, double margin) {
  return p.x > frame.min.x + margin && p.x < frame.max.x - margin && p.y > frame.min.y + margin &&
         p.y < frame.max.y - margin;
}

/// 1 from profile round to full face, 0 from three-quarter back on. Common practice, no source.
double faceToward(const Actor& actor, const Camera& camera) {
  constexpr double kProfile = 0.0, kBack = -0.65;  // cosines to the line of sight
  const Vec3 toEye = (camera.eye() - headMiddle(actor.skeleton)).normalized();
  const double cosine = actor.skeleton.frameOf(Joint::Head).col(2).dot(toEye);
  return std::clamp((cosine - kBack) / (kProfile - kBack), 0.0, 1.0);
}

/// The focus counts twice; heads too small for a face to matter count less; a speaker whose head
/// the frame leaves out has no face at all.
double facesSeen(const Beat& beat, const Scene& scene, const std::vector<Rect>& heads,
                 const Camera& camera) {
  constexpr double kFaceMatters = 0.12;  // head height over panel height
  const auto speakers = speakersOf(beat);
  double hidden = 0, sum = 0;
  for (std::size_t i = 0; i < scene.actors.size(); ++i) {
    const Actor& actor = scene.actors[i];
    const bool speaks =
        std::find(speakers.begin(), speakers.end(), actor.set.who) != speakers.end();
    const double counts = (static_cast<int>(i) == scene.focus ? 2 : 0) + (speaks ? 1 : 0);
    const bool asked = i < beat.figures.size() && turnsAway(beat.figures[i]);
    sum += counts;
    if (!inside({{0, 0}, {1, 1}}, heads[i].centre(), 0)) {
      hidden += counts;
    } else if (!asked) {
      const double size = std::min(1.0, heads[i].height() / kFaceMatters);
      hidden += counts * size * (1 - faceToward(actor, camera));
    }
  }
  return sum > 0 ? 1 - hidden / sum : 1;
}

double rankOf(const Scene& scene, const Camera& camera, double focusHeight) {
  double tallest = 0;
  for (std::size_t i = 0; i < scene.actors.size(); ++i) {
    if (static_cast<int>(i) == scene.focus) continue;
    const Rect head = headBox(scene.actors[i], camera);
    const Point middle = head.centre();
    const bool seen = middle.x > 0 && middle.x < 1 && middle.y > 0 && middle.y < 1;
    if (seen) tallest = std::max(tallest, head.height());
  }
  return tallest <= 0 ? 1 : std::min(1.0, focusHeight / tallest);
}

/// Bodies without heads at the panel's edge: cost of each that is seen but whose head is not.
double headlessCost(const Scene& scene, const Crowd& crowd, const std::vector<Rect>& heads) {
  double cost = 0;
  for (std::size_t i = 0; i < heads.size(); ++i) {
    if (static_cast<int>(i) == scene.focus) continue;
    const double share = 1 - freeShare(crowd.each[i], kRows);
    if (share < 0.02) continue;
    const double across = shareInside(heads[i].min.x, heads[i].max.x);
    const double down = shareInside(heads[i].min.y, heads[i].max.y);
    const double cut = 1 - across * down;
    cost += cut > 0.35 ? 0.85 : cut > 0.12 ? 0.25 : 0;
    if (scene.actors[i].speaks && down < 1 - kCrownCut && cut <= 0.35) cost += 0.45;
  }
  return cost;
}

/// Depth-aware distance of the nearest joint that must not be cut to the frame's edge: panel units.
double jointCost(const Actor& actor, const Camera& camera, const Rect& frame) {
  using enum Joint;
  double cost = 0;
  for (const Joint joint : {LeftWrist, RightWrist, LeftElbow, RightElbow}) {
    const Point p = panelPoint(camera, actor.skeleton[joint]);
    const double gapX = std::min(std::abs(p.x - frame.min.x), std::abs(p.x - frame.max.x));
    const double gapY = std::min(std::abs(p.y - frame.min.y), std::abs(p.y - frame.max.y));
    const bool alongX = p.y > frame.min.y && p.y < frame.max.y && gapX < 0.02;
    const bool alongY = p.x > frame.min.x && p.x < frame.max.x && gapY < 0.02;
    if (alongX || alongY) cost += 0.12;
  }
  return std::min(cost, 0.3);
}

/// Height share on the body where the frame's bottom or side leaves the chain of landmarks.
double lowestSeen(const Actor& actor, const Camera& camera, const Rect& frame) {
  double last = 1.02;
  for (double share = 1.0; share >= -1e-9; share -= 0.02) {
    const Vec3 at = landmark(actor.skeleton, share);
    if (camera.depth(at) < 0.05 || !inside(frame, panelPoint(camera, at), 0)) return last;
    last = share;
  }
  return 0;
}

struct Edges {
  bool top = false, bottom = false, sides = false;
  double nearestInside = 1;  // smallest gap from a contour inside the frame to an edge
};

Edges edgesOf(const Actor& actor, const Camera& camera, const Rect& frame) {
  Edges edges;
  for (const Disc& d : discsOf(actor, camera)) {
    const double gaps[] = {d.y - d.ry - frame.min.y, frame.max.y - d.y - d.ry,
                           d.x - d.rx - frame.min.x, frame.max.x - d.x - d.rx};
    edges.top |= gaps[0] < 0;
    edges.bottom |= gaps[1] < 0;
    edges.sides |= gaps[2] < 0 || gaps[3] < 0;
    for (const double gap : gaps) {
      if (gap >= 0) edges.nearestInside = std::min(edges.nearestInside, gap);
    }
  }
  return edges;
}

}  // namespace

Point panelPoint(const Camera& camera, const Vec3& at) {
  const Point p = camera.projectAlways(at);
  return {p.x, p.y * camera.aspect()};
}

bool showsHandOnly(const Scene& scene, ShotSize shot) {
  return scene.handIsSubject && shot <= ShotSize::CloseUp;
}

double meanReach(const Skeleton& s, const Camera& camera) {
  using enum Joint;
  constexpr std::array<std::array<Joint, 3>, 4> kLimbs{{{LeftShoulder, LeftElbow, LeftWrist},
                                                        {RightShoulder, RightElbow, RightWrist},
                                                        {LeftHip, LeftKnee, LeftAnkle},
                                                        {RightHip, RightKnee, RightAnkle}}};
  double sum = 0;
  for (const auto& limb : kLimbs) {
    const Vec3 span = inCamera(camera, s[limb[2]] - s[limb[0]]);
    const double length = (s[limb[1]] - s[limb[0]]).norm() + (s[limb[2]] - s[limb[1]]).norm();
    sum += std::hypot(span.x(), span.y()) / length;
  }
  return std::min(sum / kLimbs.size(), 1.0);
}

Point focusPoint(const Scene& scene, const Camera& camera, ShotSize shot) {
  if (scene.focus < 0) {
    const Point p = panelPoint(camera, scene.subject.middle());
    return {std::clamp(p.x, 0.02, 0.98), std::clamp(p.y, 0.02, 0.98)};
  }
  const Actor& focus = scene.actors[static_cast<std::size_t>(scene.focus)];
  if (showsHandOnly(scene, shot)) return panelPoint(camera, workingPalm(focus));
  return headBox(focus, camera).centre();
}

Rect headBox(const Actor& actor, const Camera& camera) {
  const Point crown = panelPoint(camera, actor.skeleton[Joint::Crown]);
  const Point chin = panelPoint(camera, actor.skeleton[Joint::Chin]);
  const Vec3 middle = headMiddle(actor.skeleton);
  const double depth = std::max(camera.depth(middle), 0.05);
  const double unit = camera.intrinsics()(0, 0) / depth;
  const double high = actor.body->headHeight * unit * camera.aspect();
  const double half = std::max({std::abs(chin.y - crown.y), 0.86 * high}) / 2;
  const Point c = between(crown, chin, 0.5);
  const double side =
      std::max(0.42 * actor.body->headHeight * unit, std::abs(chin.x - crown.x) / 2);
  return {{c.x - side, c.y - half}, {c.x + side, c.y + half}};
}

FrameCut frameCut(const Actor& actor, const Camera& camera, ShotSize shot, const Rect& frame) {
  FrameCut cut;
  const Edges edges = edgesOf(actor, camera, frame);
  cut.whole = !edges.top && !edges.bottom && !edges.sides;
  const Rect head = headBox(actor, camera);
  const bool headIn = head.min.x > frame.min.x && head.max.x < frame.max.x &&
                      head.min.y > frame.min.y - 0.1 * head.height() && head.max.y < frame.max.y;
  if (!inside(frame, head.centre(), 0)) {
    cut.word = "out of frame";
    cut.cost = 1;
    return cut;
  }
  cut.cost = headIn ? 0 : shot == ShotSize::ExtremeCloseUp ? 0.15 : 0.8;
  cut.heightShare = lowestSeen(actor, camera, frame);
  if (cut.whole) {
    if (edges.nearestInside < kShave) cut.cost += 0.3;
    return cut;
  }
  // A body whose chain ends inside is cut only at a limb or at the soles.
  const bool onlyLimb = cut.heightShare <= 0 && !edges.bottom;
  cut.word = !headIn && cut.heightShare > 0.8 ? "face"
             : onlyLimb                       ? "arm"
                        : std::string(cutName(std::max(cut.heightShare, 0.01)));
  cut.atJoint = cut.word != "face" && cut.word != "arm" && cutsAtJoint(cut.heightShare);
  if (cut.atJoint) cut.cost += 0.5;
  if (onlyLimb) cut.cost += 0.15;
  cut.cost = std::min(1.0, cut.cost + jointCost(actor, camera, frame));
  return cut;
}

namespace {

/// What a glance at somebody in the same picture keeps of its strength: it is answered there, and
/// little of it leaves the panel. Our own judgement.
constexpr double kAnsweredGaze = 0.35;

bool meetsAnotherHead(const Scene& scene, const Camera& camera, Point from, Vector direction) {
  constexpr double kWithinCos = 0.94;  // 20° to either side
  for (std::size_t i = 0; i < scene.actors.size(); ++i) {
    if (static_cast<int>(i) == scene.focus) continue;
    const Point head = headBox(scene.actors[i], camera).centre();
    if (!inside({{0, 0}, {1, 1}}, head, 0)) continue;
    const Vector to{(head.x - from.x) * camera.aspect(), head.y - from.y};
    if (dot(to.unit(), direction) > kWithinCos) return true;
  }
  return false;
}

}  // namespace

PictureLead leadOnPicture(const Beat& beat, const Scene& scene, const Camera& camera) {
  PictureLead best;
  if (scene.focus < 0) return best;
  const auto i = static_cast<std::size_t>(scene.focus);
  const Actor& actor = scene.actors[i];
  const bool points = i < beat.figures.size() && pointsWithLimb(beat.figures[i], *actor.pose);
  for (const WorldLead& lead : leadsOf(actor, points)) {
    const Vec3 d = inCamera(camera, lead.direction);
    const Vector flat{d.x(), d.y()};
    const Point from = panelPoint(camera, lead.from);
    double strength = lead.strength * flat.length();
    if (lead.by == WorldLead::By::Gaze && meetsAnotherHead(scene, camera, from, flat.unit()))
      strength *= kAnsweredGaze;
    if (strength <= best.strength + 1e-9) continue;
    best = {flat.unit(), strength, lead.by, from};
  }
  if (best.strength < 0.1) best = {};
  return best;
}

std::string leadSentence(const PictureLead& lead, const std::string& who) {
  std::string name = who;
  if (!name.empty()) name[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(name[0])));
  switch (lead.by) {
    case WorldLead::By::Pointing:
      return name + " points";
    case WorldLead::By::Motion:
      return name + " moves";
    case WorldLead::By::Gaze:
      return name + " looks";
    case WorldLead::By::Nothing:
      break;
  }
  return {};
}

double axisSideOf(const Scene& scene, const Vec3& eye) {
  if (scene.actors.size() < 2) return 0;
  std::vector<const Actor*> byName;
  for (const Actor& actor : scene.actors) byName.push_back(&actor);
  std::stable_sort(byName.begin(), byName.end(),
                   [](const Actor* a, const Actor* b) { return a->set.who < b->set.who; });
  return axisSide(byName[0]->set.at, byName[1]->set.at, {eye.x(), eye.y(), eye.z()});
}

Variant quicklyMeasured(const StageRequest& request, const StagingChoice& choice,
                        const Scene& scene, const CameraPlace& place) {
  const Beat& beat = *request.beat;
  const Camera camera(place, request.aspect);
  Variant v;
  v.choice = choice;
  v.wantedShot = wantedShot(request);
  v.askedShot = stepsBetween(v.wantedShot, choice.shot);
  v.askedEye = beat.eye ? stepsBetween(*beat.eye, choice.eye) : 0;
  v.axisSide = axisSideOf(scene, camera.eye());
  const Crowd crowd = crowdOf(scene, camera);
  v.air = freeShare(crowd.all, kRows);
  v.airTop = freeShare(crowd.all, kRows / 3);
  for (const Actor& actor : scene.actors) v.heads.push_back(headBox(actor, camera));
  if (scene.focus < 0) {
    v.focus = focusPoint(scene, camera, choice.shot);
    v.cut = "whole";
    return v;
  }
  const Actor& focus = scene.actors[static_cast<std::size_t>(scene.focus)];
  const Rect head = v.heads[static_cast<std::size_t>(scene.focus)];
  v.focus = focusPoint(scene, camera, choice.shot);
  v.focusHead = head.height();
  v.focusRank = rankOf(scene, camera, v.focusHead);
  v.visible = visibleShare(crowd.discs[static_cast<std::size_t>(scene.focus)], crowd.before);
  const FrameCut cut = frameCut(focus, camera, choice.shot, {{0, 0}, {1, 1}});
  const bool handOnly = showsHandOnly(scene, choice.shot);
  v.cut = handOnly ? "hand" : cut.word;
  const double headless =
      choice.shot < ShotSize::MediumCloseUp ? 0 : headlessCost(scene, crowd, v.heads);
  v.cutCost = handOnly ? 0 : std::min(1.0, cut.cost + headless);
  v.focusWhole = cut.whole;
  v.reach = meanReach(focus.skeleton, camera);
  v.facesSeen = handOnly ? 1 : facesSeen(beat, scene, v.heads, camera);
  v.speakersInOrder = speakerOrder(beat, scene, camera, request.direction);
  const PictureLead lead = leadOnPicture(beat, scene, camera);
  v.lead = lead.direction;
  v.leadStrength = lead.strength;
  v.leadWhy = leadSentence(lead, focus.set.who);
  return v;
}

}  // namespace tw
