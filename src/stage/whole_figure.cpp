// The whole figure.
//
// 1 The solids of the figure and of what it holds or hauls, nothing else of the staging.
// 2 When part of it lies behind the lens or almost in it, the camera steps back; the picture is
//   then scaled so that the head keeps its size and place.
// 3 The frame is widened about the figure: another focal length and lens shift, the same eye and
//   direction, so the picture is the panel's, continued beyond its border.
// 4 Rendered there, traced for the silhouette, and inked as panels are, by the panel's light. What
//   it hauls is traced alone too, so that a border may cut the chain and leave the figure whole.
// Cost: a drawn panel. Does badly: what is thinner than 1/420 of the figure may break up.
#include "stage/whole_figure.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/result.h"
#include "geometry/polygon.h"
#include "stage/held_props.h"
#include "stage/quick_measures.h"
#include "stage/shot_size.h"
#include "stage/trace_region.h"

namespace tw {

namespace {

constexpr double kNearestM = 0.4;  // no part nearer to the lens than this
constexpr int kAcrossPx = 420;
constexpr double kInkMm = 0.5;      // how far lines reach beyond the silhouette
constexpr double kMostFrames = 12;  // what lies farther out is a chain's far end, not a figure

class Isolating {
 public:
  Isolating(const Stager& stager, const RoughPanel& panel, const Beat& beat, const Body& body,
            std::size_t index, const Lighting& light)
      : frame_(frameOf(panel.outline)), place_(panel.staging.camera), light_(light) {
    const Staging& staging = panel.staging;
    const SetFigure& set = staging.figures[index];
    out_.who = set.who;
    actor_ = {set, &body, &stager.poses().orStand(set.pose), {}, {}, set.at.y};
    actor_.skeleton = posed(body, *actor_.pose, set);
    actor_.volumes = volumesOf(body, actor_.skeleton);
    for (Solid& solid : stager.solidsOf(staging, beat, 1)) {
      const bool carried = solid.prop >= 0 && isCarried(beat, staging, solid.prop, set.who);
      if (solid.figure != static_cast<int>(index) && !carried) continue;
      if (carried) out_.carries.push_back(propOf(staging, solid.prop));
      solid.isFocus = solid.figure >= 0;
      hauled_.push_back(carried && isHauled(beat, propOf(staging, solid.prop), set.who));
      solids_.push_back(std::move(solid));
    }
  }

  WholeFigure take() {
    stepBack();
    widen();
    trace();
    ink();
    measure();
    return std::move(out_);
  }

 private:
  static const std::string& propOf(const Staging& staging, int prop) {
    return staging.props[static_cast<std::size_t>(prop)].prop;
  }
  static bool isCarried(const Beat& beat, const Staging& staging, int prop,
                        const std::string& who) {
    for (std::size_t k = 0; k < beat.props.size(); ++k) {
      if (beat.props[k].id != propOf(staging, prop) || !isInHand(beat, k)) continue;
      if (beat.props[k].heldBy == who) return true;
      for (const BeatFigure& f : beat.figures)
        if (f.who == who && f.target == beat.props[k].id) return true;
    }
    return false;
  }
  static bool isHauled(const Beat& beat, const std::string& prop, const std::string& who) {
    return std::any_of(beat.figures.begin(), beat.figures.end(), [&](const BeatFigure& f) {
      return f.who == who && f.target == prop && hauls(beat, f);
    });
  }
  Camera panelCamera() const { return Camera(place_, frame_.width() / frame_.height()); }
  Point onPage(const Camera& camera, const Rect& frame, const Vec3& at) const {
    const Point p = camera.projectAlways(at);
    return {frame.min.x + p.x * frame.width(), frame.min.y + p.y * frame.width()};
  }
  Point onPage(const Vec3& at) const { return onPage(wideCamera(), wide_, at); }
  Camera wideCamera() const { return Camera(widePlace_, wide_.width() / wide_.height()); }

  void stepBack() {
    const Camera camera = panelCamera();
    const Vec3 middle = headMiddle(actor_.skeleton);
    double nearest = camera.depth(middle);
    for (const Solid& solid : solids_)
      for (const Vec3& p : solid.mesh.points) nearest = std::min(nearest, camera.depth(p));
    out_.steppedBackM = std::max(0.0, kNearestM - nearest);
    if (out_.steppedBackM <= 0) return;
    const Vec3 forward = camera.rotation().row(2);
    place_.eye.x -= forward.x() * out_.steppedBackM;
    place_.eye.y -= forward.y() * out_.steppedBackM;
    place_.eye.z -= forward.z() * out_.steppedBackM;
    // The head keeps its size unless it was itself too near.
    const double depth = std::max(camera.depth(middle), kNearestM);
    place_.focalMm *= (depth + out_.steppedBackM) / depth;
    if (camera.depth(middle) < kNearestM) return;
    const Point was = camera.projectAlways(middle), is = panelCamera().projectAlways(middle);
    place_.offsetX += was.x - is.x;
    place_.offsetY += was.y - is.y;
  }

  void widen() {
    const Camera camera = panelCamera();
    std::vector<Point> seen;
    for (const Solid& solid : solids_)
      for (const Vec3& p : solid.mesh.points) {
        const Point at = camera.projectAlways(p);
        if (std::abs(at.x) < kMostFrames && std::abs(at.y) < kMostFrames)
          seen.push_back(onPage(camera, frame_, p));
      }
    ensure(!seen.empty(), "a figure has a body");
    const Rect box = bounds(seen);
    wide_ = box.outset(0.03 * std::max(box.width(), box.height()));
    // The principal point stays where it is on the page.
    const double aspect = frame_.width() / frame_.height();
    const Point principal{frame_.min.x + (0.5 + place_.offsetX) * frame_.width(),
                          frame_.min.y + (0.5 / aspect + place_.offsetY) * frame_.width()};
    widePlace_ = place_;
    widePlace_.focalMm = place_.focalMm * frame_.width() / wide_.width();
    widePlace_.offsetX = (principal.x - wide_.min.x) / wide_.width() - 0.5;
    widePlace_.offsetY =
        (principal.y - wide_.min.y) / wide_.width() - 0.5 * wide_.height() / wide_.width();
  }

  int widthPx() const {
    const double most = std::max(wide_.width(), wide_.height());
    return std::max(16, static_cast<int>(std::lround(kAcrossPx * wide_.width() / most)));
  }

  void trace() {
    out_.silhouette = outlinesOf(solids_);
    out_.shapes = filled(out_.silhouette);
    std::vector<Solid> own, hauled;
    for (std::size_t i = 0; i < solids_.size(); ++i)
      (hauled_[i] ? hauled : own).push_back(solids_[i]);
    out_.ownShapes = hauled.empty() ? out_.shapes : filled(outlinesOf(own));
    out_.hauled = filled(outlinesOf(hauled));
  }

  std::vector<Polygon> outlinesOf(const std::vector<Solid>& solids) const {
    if (solids.empty()) return {};
    const Picture picture = render(solids, wideCamera(), widthPx());
    std::vector<std::uint8_t> mask(picture.solid.size());
    for (std::size_t i = 0; i < mask.size(); ++i) mask[i] = picture.solid[i] >= 0;
    const double mm = wide_.width() / picture.width;
    std::vector<Polygon> loops = traced(mask, picture.width, picture.height);
    for (Polygon& loop : loops)
      for (Point& p : loop.points) p = wide_.min + Vector{p.x, p.y} * mm;
    return loops;
  }

  /// All loops filled and joined: what an arm shuts in counts as figure.
  static std::vector<Polygon> filled(const std::vector<Polygon>& loops) {
    std::vector<Polygon> out;
    for (Polygon& shape : united(loops)) {
      const bool inner = std::any_of(out.begin(), out.end(), [&](const Polygon& o) {
        return contains(o, shape.points.front());
      });
      if (!inner) out.push_back(std::move(shape));
    }
    return out;
  }

  double headMm() const { return headBox(actor_, wideCamera()).height() * wide_.height(); }

  void ink() {
    DrawOptions options;
    options.setLines = false;
    options.setting = "none";
    options.width = 2 * widthPx();
    std::vector<Solid> own = solids_;
    for (Solid& solid : own) {
      if (solid.figure >= 0) solid.figure = 0;
    }
    // Drawn with a head of one size, so that a face is drawn however small it is staged.
    const double large = kDrawnHeadMm / headMm();
    const Rect frame{{0, 0}, {wide_.width() * large, wide_.height() * large}};
    out_.drawing = drawLitPanel(own, wideCamera(), frame, polygonOf(frame), options, light_);
    const auto back = [&](Point& p) { p = wide_.min + (p - Point{}) * (1 / large); };
    for (Tone& tone : out_.drawing.tones)
      for (Polygon& polygon : tone.region)
        for (Point& p : polygon.points) back(p);
    for (Stroke& stroke : out_.drawing.strokes)
      for (Point& p : stroke.points) back(p);
    // What falls on the ground belongs to the panel, not to the figure.
    out_.drawing.clip = offset(out_.silhouette, kInkMm / large);
  }

  void measure() {
    using enum Joint;
    const Skeleton& s = actor_.skeleton;
    const Rect head = headBox(actor_, wideCamera());
    out_.headMm = headMm();
    out_.statureMm = out_.headMm * actor_.body->stature / actor_.body->headHeight;
    out_.head = onPage(headMiddle(s));
    out_.pelvis = onPage(s[Pelvis]);
    const Vector half{head.width() * wide_.width() / 2, out_.headMm / 2};
    out_.face = ellipse(out_.head, half.x, half.y, 24);
    for (const CutLine& line : kCutLines)
      out_.cuts.push_back(
          {std::string(line.name), line.joint, onPage(landmark(s, line.heightShare))});
    for (const Joint j : {Neck, LeftWrist, RightWrist, LeftKnee, RightKnee, LeftAnkle, RightAnkle})
      out_.joints.push_back(onPage(s[j]));
    for (const Joint j : {LeftFingertip, RightFingertip}) out_.hands.push_back(onPage(s[j]));
  }

  Rect frame_, wide_;
  CameraPlace place_, widePlace_;
  Actor actor_;
  const Lighting& light_;
  std::vector<Solid> solids_;
  std::vector<bool> hauled_;  ///< of solids_
  WholeFigure out_;
};

}  // namespace

WholeFigure wholeFigure(const Stager& stager, const RoughPanel& panel, const Beat& beat,
                        const Body& body, std::size_t index, const Lighting& light) {
  ensure(index < panel.staging.figures.size(), "the staging has that figure");
  return Isolating(stager, panel, beat, body, index, light).take();
}

}  // namespace tw
