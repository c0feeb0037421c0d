// Exact measures.
//
// 1. Render ids at the asked width; pixels outside the panel's own outline are not the panel.
// 2. A figure's share is its pixels over the panel's; its visible share is those pixels over all
//    pixels it would have alone, beyond the frame too (visibleShares of picture.h, corrected for
//    outlines that cut the frame's corners).
// 3. Silhouettes are traced from the pixels, faces from the head's own shape, mouths from nose and
//    chin; all brought to mm on the page.
// Cost: two renders. Does badly: nothing thinner than a pixel is seen.
#include "stage/exact_measures.h"

#include <algorithm>

#include "geometry/polygon.h"
#include "stage/quick_measures.h"
#include "stage/trace_region.h"

namespace tw {
namespace {

class Looking {
 public:
  Looking(RoughPanel& panel, const Beat& beat, const Scene& scene)
      : panel_(panel),
        beat_(beat),
        scene_(scene),
        frame_(frameOf(panel.outline)),
        camera_(panel.staging.camera, frame_.width() / frame_.height()) {}

  void run(const std::vector<Solid>& solids, int width) {
    picture_ = render(solids, camera_, width);
    markPanel();
    const std::vector<double> visible =
        visibleShares(picture_, solids, camera_, scene_.actors.size());
    panel_.figures.clear();
    for (std::size_t i = 0; i < scene_.actors.size(); ++i) {
      panel_.figures.push_back(seen(i, i < visible.size() ? visible[i] : 0));
    }
    setFocusAndLead();
  }

 private:
  Point onPage(Point panelUnits) const {
    return {frame_.min.x + panelUnits.x * frame_.width(),
            frame_.min.y + panelUnits.y * frame_.height()};
  }
  double mmPerPixel() const { return frame_.width() / picture_.width; }

  void markPanel() {
    inside_.assign(picture_.solid.size(), 1);
    const bool box =
        panel_.outline.points.size() == 4 && area(panel_.outline) > 0.999 * frame_.area();
    if (box) return;
    for (int y = 0; y < picture_.height; ++y) {
      for (int x = 0; x < picture_.width; ++x) {
        const Point p = frame_.min + Vector{(x + 0.5) * mmPerPixel(), (y + 0.5) * mmPerPixel()};
        inside_[static_cast<std::size_t>(y * picture_.width + x)] = contains(panel_.outline, p);
      }
    }
  }

  SeenFigure seen(std::size_t i, double visibleInFrame) const {
    const Actor& actor = scene_.actors[i];
    SeenFigure s;
    s.who = actor.set.who;
    std::vector<std::uint8_t> mask(picture_.solid.size(), 0);
    double inFrame = 0, inPanel = 0, panel = 0;
    for (std::size_t k = 0; k < mask.size(); ++k) {
      const bool own = picture_.solid[k] == static_cast<int>(i);
      mask[k] = own && inside_[k] ? 1 : 0;
      inFrame += own;
      inPanel += mask[k];
      panel += inside_[k];
    }
    s.visible = inFrame > 0 ? std::clamp(visibleInFrame * inPanel / inFrame, 0.0, 1.0) : 0;
    s.share = panel > 0 ? inPanel / panel : 0;
    s.body = bodyRegion(mask);
    setHead(s, actor);
    setCut(s, actor);
    return s;
  }

  Region bodyRegion(const std::vector<std::uint8_t>& mask) const {
    Region region = traced(mask, picture_.width, picture_.height);
    for (Polygon& loop : region) {
      for (Point& p : loop.points) p = frame_.min + Vector{p.x, p.y} * mmPerPixel();
    }
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
  Picture picture_;
  std::vector<std::uint8_t> inside_;
};

}  // namespace

void lookExactly(RoughPanel& panel, const Beat& beat, const Scene& scene,
                 const std::vector<Solid>& solids, int width) {
  Looking(panel, beat, scene).run(solids, width);
}

}  // namespace tw
