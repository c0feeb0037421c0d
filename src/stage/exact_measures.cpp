// Exact measures.
//
// 1. Render ids at the asked width; pixels outside the panel's own outline are not the panel.
// 2. Each figure's shares, limbs, outline, joint cuts and contrast are measured by the files that
//    are named for them, from that one picture and each figure's own.
// 3. Silhouettes are traced from the pixels, faces from the head's own shape, mouths from nose and
//    chin; all brought to mm on the page.
// Cost: two renders for shares, about three for everything. Does badly: nothing thinner than a
// pixel is seen.
#include "stage/exact_measures.h"

#include <algorithm>

#include "geometry/polygon.h"
#include "stage/ground_contrast.h"
#include "stage/joint_cuts.h"
#include "stage/outline_tells.h"
#include "stage/quick_measures.h"
#include "stage/tangents.h"
#include "stage/trace_region.h"
#include "stage/visibility.h"

namespace tw {
namespace {

constexpr std::size_t kMostTangents = 12;  // beyond that the panel is a thicket, not a list
constexpr double kLeastHidden = 0.005;

class Looking {
 public:
  Looking(RoughPanel& panel, const Beat& beat, const Scene& scene, const std::vector<Solid>& solids,
          const Lighting& light, int width, LookFor what)
      : panel_(panel),
        beat_(beat),
        scene_(scene),
        frame_(frameOf(panel.outline)),
        camera_(panel.staging.camera, frame_.width() / frame_.height()),
        sight_(solids, camera_, panel.outline, width, towardLamp(light.key, camera_), what),
        all_(what == LookFor::Everything) {
    if (all_) lightness_ = lightnessPicture(sight_, moodOf(beat.setting), light);
  }

  void run() {
    panel_.figures.clear();
    for (std::size_t i = 0; i < scene_.actors.size(); ++i) panel_.figures.push_back(seen(i));
    panel_.tangents.clear();
    if (all_) setTangents();
    setFocusAndLead();
  }

 private:
  Point onPage(Point panelUnits) const {
    return {frame_.min.x + panelUnits.x * frame_.width(),
            frame_.min.y + panelUnits.y * frame_.height()};
  }

  SeenFigure seen(std::size_t i) const {
    const Actor& actor = scene_.actors[i];
    const int solid = static_cast<int>(i);
    SeenFigure s;
    s.who = actor.set.who;
    const PlainShares plain = plainShares(sight_, solid);
    s.visible = plain.visible;
    s.share = plain.share;
    s.reach = meanReach(actor.skeleton, camera_);
    s.body = bodyRegion(solid);
    setHead(s, actor);
    setCut(s, actor);
    if (all_) setLimbs(s, actor, solid);
    s.liftable = s.cut == "whole" && s.visible >= kLiftableVisible;
    return s;
  }

  void setLimbs(SeenFigure& s, const Actor& actor, int solid) const {
    const OutlineTells outline = outlineTells(*sight_.mask(solid));
    s.solidity = outline.solidity;
    s.tipsSeen = outline.tipsSeen;
    s.contrast = groundContrast(sight_, lightness_, solid);
    s.jointCuts = jointCuts(sight_, actor, solid);
    const Visibility v = visibilityOf(sight_, solid);
    s.visible = v.visible;
    s.overlap = v.overlap;
    for (std::size_t k = 0; k < kLimbs; ++k) {
      const auto limb = static_cast<Limb>(k);
      s.limbs.push_back(
          {std::string(nameOf(limb)), v.limbs[k], foreshortening(limb, actor.skeleton, camera_)});
    }
    std::map<std::string, double> hidden;
    for (const auto& [who, share] : v.hiddenBy) hidden[nameOfSolid(who)] += share;
    hidden["frame"] += v.cutOff;
    for (const auto& [what, share] : hidden)
      if (share >= kLeastHidden) s.hiddenBy.push_back({what, std::min(1.0, share)});
    std::stable_sort(s.hiddenBy.begin(), s.hiddenBy.end(),
                     [](const HiddenBy& a, const HiddenBy& b) { return a.share > b.share; });
  }

  std::string nameOfSolid(int solid) const {
    if (solid < 0) return "border";
    const Solid& s = sight_.solids[static_cast<std::size_t>(solid)];
    if (s.figure >= 0) return scene_.actors[static_cast<std::size_t>(s.figure)].set.who;
    if (s.prop >= 0) return scene_.props[static_cast<std::size_t>(s.prop)].prop;
    return "set";
  }

  void setTangents() {
    for (const Tangent& t : tangentsOf(sight_)) {
      if (panel_.tangents.size() >= kMostTangents) break;
      panel_.tangents.push_back({t.runsAlong ? "run along" : "touch", nameOfSolid(t.a),
                                 nameOfSolid(t.b), t.at, t.lengthMm});
    }
  }

  Region bodyRegion(int solid) const {
    const Picture& picture = sight_.picture;
    std::vector<std::uint8_t> mask(picture.solid.size());
    for (std::size_t k = 0; k < mask.size(); ++k)
      mask[k] = sight_.inside[k] && picture.solid[k] == solid;
    Region region = traced(mask, picture.width, picture.height);
    for (Polygon& loop : region)
      for (Point& p : loop.points) p = sight_.onPage(p.x, p.y);
    return region;
  }

  void setHead(SeenFigure& s, const Actor& actor) const {
    const Rect head = headBox(actor, camera_);
    s.headMm = head.height() * frame_.height();
    s.face = faceOutline(actor);
    const Vec3 mouth = actor.skeleton[Joint::Chin] +
                       0.45 * (actor.skeleton[Joint::Nose] - actor.skeleton[Joint::Chin]);
    s.mouth = onPage(panelPoint(camera_, mouth));
  }

  /// The head as an ellipsoid: its projected hull.
  Polygon faceOutline(const Actor& actor) const {
    const Skeleton& s = actor.skeleton;
    const Eigen::Matrix3d& frame = s.frame[static_cast<std::size_t>(Joint::Head)];
    const Body& b = *actor.body;
    const Vec3 half(b.headBreadth / 2, b.headHeight / 2, b.headDepth / 2);
    std::vector<Point> points;
    for (int i = 0; i < 16; ++i) {
      for (int k = 0; k < 7; ++k) {
        const double a = i * 0.3926990817, e = (k - 3) * 0.5;
        const Vec3 on(half.x() * std::cos(a) * std::cos(e), half.y() * std::sin(e),
                      half.z() * std::sin(a) * std::cos(e));
        const Vec3 at = headMiddle(s) + frame * on;
        if (camera_.depth(at) > 0.05) points.push_back(onPage(panelPoint(camera_, at)));
      }
    }
    return points.size() < 3 ? Polygon{} : hull(std::move(points));
  }

  void setCut(SeenFigure& s, const Actor& actor) const {
    const FrameCut cut = frameCut(actor, camera_, panel_.staging.choice.shot, Rect{{0, 0}, {1, 1}});
    s.cut = cut.word;
    s.cutAtJoint = cut.atJoint;
  }

  void setFocusAndLead() {
    panel_.lead = Lead{};
    panel_.focus = onPage(focusPoint(scene_, camera_, panel_.staging.choice.shot));
    panel_.lead.from = panel_.focus;
    if (scene_.focus < 0) return;
    const Actor& focus = scene_.actors[static_cast<std::size_t>(scene_.focus)];
    const PictureLead lead = leadOnPicture(beat_, scene_, camera_);
    panel_.lead = {panel_.focus, lead.direction, lead.strength, leadSentence(lead, focus.set.who)};
  }

  RoughPanel& panel_;
  const Beat& beat_;
  const Scene& scene_;
  Rect frame_;
  Camera camera_;
  PanelSight sight_;
  std::vector<float> lightness_;
  bool all_;
};

}  // namespace

void lookExactly(RoughPanel& panel, const Beat& beat, const Scene& scene,
                 const std::vector<Solid>& solids, const Lighting& light, int width, LookFor what) {
  Looking(panel, beat, scene, solids, light, width, what).run();
}

}  // namespace tw
