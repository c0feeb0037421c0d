// Reading a pose from pixels.
//
// 1. Render the whole scene: what is really seen of each part of the figure.
// 2. Render its arms alone and the rest of it alone, each without anything before it, on a picture
//    three times as wide as the frame: what could be seen, and what the frame cuts off.
// 3. Silhouette = both together. Its hull over it gives the air inside the gesture; arm pixels on
//    the trunk's own pixels are what an inked-in figure would lose.
// Measures of facts on readability: visible share, negative space, limb inside torso; all
// [derived], none from a published threshold. Cost: three small renders. Does badly: legs before
// each other count as seen.
#include "stage/pose_figures.h"

#include <algorithm>
#include <cmath>

#include "geometry/polygon.h"
#include "stage/rasterise.h"
#include "stage/reach_pose.h"

namespace tw {
namespace {

constexpr double kTipClear = 0.55;  // share of a hand that has to stand clear of the body
constexpr double kFullOpen = 0.45;  // openness of a leap with all limbs thrown out
constexpr double kWider = 3;

using PerPart = std::array<double, static_cast<std::size_t>(BodyPart::Count)>;

bool isArmPart(std::uint8_t part) {
  using enum BodyPart;
  const auto p = static_cast<BodyPart>(part);
  return p == LeftArm || p == RightArm || p == LeftForearm || p == RightForearm || p == LeftHand ||
         p == RightHand;
}

/// The figure's mesh with only the arms, or only all else.
Mesh partsOf(const Mesh& mesh, bool arms) {
  Mesh out;
  out.points = mesh.points;
  out.normals = mesh.normals;
  for (std::size_t i = 0; i < mesh.triangles.size(); ++i) {
    if (isArmPart(mesh.part[i]) != arms) continue;
    out.triangles.push_back(mesh.triangles[i]);
    out.part.push_back(mesh.part[i]);
  }
  return out;
}

/// The frame in the middle of a picture that is larger by kWider.
Viewport wideViewport(const Camera& camera, int width) {
  Viewport v = frameViewport(camera, width);
  const double extra = (kWider - 1) / 2;
  v.corner = {-extra, -extra / camera.aspect()};
  v.width = static_cast<int>(kWider * width);
  v.height = static_cast<int>(std::lround(kWider * v.height));
  return v;
}

double lengthInPicture(const Camera& camera, const Vec3& a, const Vec3& b) {
  const Vec3 along = camera.rotation() * (b - a);
  return std::hypot(along.x(), along.y());
}

double reachOf(const Actor& actor, const Camera& camera) {
  using enum Joint;
  const Skeleton& s = actor.skeleton;
  const Body& b = *actor.body;
  const auto ratio = [&](Joint from, Joint to, double length) {
    return std::min(1.0, lengthInPicture(camera, s[from], s[to]) / length);
  };
  const double arm = b.upperArm + b.forearm, leg = b.thigh + b.shank;
  return (ratio(LeftShoulder, LeftWrist, arm) + ratio(RightShoulder, RightWrist, arm) +
          ratio(LeftHip, LeftAnkle, leg) + ratio(RightHip, RightAnkle, leg)) /
         4;
}

class Reader {
 public:
  Reader(const Actor& actor, int figure, const std::vector<Solid>& solids, const Camera& camera,
         int width)
      : actor_(actor), camera_(camera), view_(wideViewport(camera, width)) {
    const auto own = std::find_if(solids.begin(), solids.end(),
                                  [&](const Solid& s) { return s.figure == figure; });
    ensure(own != solids.end(), "the figure is in its scene");
    const Vec3 light = keyLight(camera);
    arms_ = rest_ = scene_ = blankPicture(view_);
    draw(partsOf(own->mesh, true), 0, light, arms_);
    draw(partsOf(own->mesh, false), 0, light, rest_);
    for (std::size_t i = 0; i < solids.size(); ++i)
      if (!solids[i].isSet || solids[i].prop >= 0)
        rasterise(solids[i], static_cast<int>(i), camera, view_, light, scene_);
    index_ = static_cast<int>(own - solids.begin());
  }

  PoseFigures run() {
    count();
    PoseFigures out;
    out.reach = reachOf(actor_, camera_);
    out.openness = openness();
    out.tipsSeen = tipsSeen();
    out.armsInside = arms_px_ > 0 ? armsOnRest_ / arms_px_ : 0;
    out.handsSeen = shareSeen({BodyPart::LeftHand, BodyPart::RightHand});
    out.faceSeen = shareSeen({BodyPart::Head}) * facing();
    out.inFrame = whole_ > 0 ? framed_ / whole_ : 0;
    return out;
  }

 private:
  void draw(const Mesh& mesh, int index, const Vec3& light, Picture& picture) const {
    rasterise(mesh, mesh.normals, Faces::TowardEye, index, camera_, view_, light, picture);
  }

  bool inFrame(std::size_t pixel) const {
    const auto w = static_cast<std::size_t>(view_.width);
    const double x = static_cast<double>(pixel % w) + 0.5, y = static_cast<double>(pixel / w) + 0.5;
    const double fx = x / view_.pxPerWidth + view_.corner.x;
    const double fy = y / view_.pxPerWidth + view_.corner.y;
    return fx >= 0 && fx <= 1 && fy >= 0 && fy <= 1 / camera_.aspect();
  }

  void count() {
    for (std::size_t i = 0; i < scene_.solid.size(); ++i) {
      const bool arm = arms_.solid[i] >= 0, rest = rest_.solid[i] >= 0;
      if (!arm && !rest) continue;
      ++whole_;
      const bool framed = inFrame(i);
      framed_ += framed;
      addCorner(i);
      if (arm) {
        ++arms_px_;
        armsOnRest_ += rest;
        ++alone_[arms_.part[i]];
        clear_[arms_.part[i]] += !rest && framed;
      }
      if (rest) {
        ++alone_[rest_.part[i]];
        clear_[rest_.part[i]] += !arm && framed;
      }
      if (framed && scene_.solid[i] == index_) ++seen_[scene_.part[i]];
    }
  }

  /// First and last pixel of each row are all that a hull needs.
  void addCorner(std::size_t i) {
    const auto w = static_cast<std::size_t>(view_.width);
    const double x = static_cast<double>(i % w), y = static_cast<double>(i / w);
    if (rows_.empty() || rows_.back().min.y != y)
      rows_.push_back({{x, y}, {x + 1, y + 1}});
    else
      rows_.back().max.x = x + 1;
  }

  double openness() const {
    std::vector<Point> corners;
    for (const Rect& r : rows_)
      for (const Point p : {r.min, Point{r.max.x, r.min.y}, Point{r.min.x, r.max.y}, r.max})
        corners.push_back(p);
    if (corners.size() < 3) return 0;
    return 1 - whole_ / std::max(1.0, area(hull(std::move(corners))));
  }

  double shareOf(const PerPart& some, BodyPart part) const {
    const auto i = static_cast<std::size_t>(part);
    return alone_[i] > 0 ? some[i] / alone_[i] : 0;
  }

  double tipsSeen() const {
    using enum BodyPart;
    double tips = 0;
    for (const BodyPart part : {Head, LeftHand, RightHand, LeftFoot, RightFoot})
      tips += shareOf(clear_, part) >= kTipClear;
    return tips;
  }

  double shareSeen(std::initializer_list<BodyPart> parts) const {
    double all = 0, seen = 0;
    for (const BodyPart part : parts) {
      all += alone_[static_cast<std::size_t>(part)];
      seen += seen_[static_cast<std::size_t>(part)];
    }
    return all > 0 ? std::min(1.0, seen / all) : 0;
  }

  /// 1 from full face to three-quarter, 0.7 in profile, falling to 0.1 from behind.
  double facing() const {
    const Vec3 toEye = (camera_.eye() - headMiddle(actor_.skeleton)).normalized();
    return std::clamp(0.7 + 0.6 * headFront(actor_.skeleton).dot(toEye), 0.0, 1.0);
  }

  const Actor& actor_;
  const Camera& camera_;
  Viewport view_;
  Picture arms_, rest_, scene_;
  int index_ = 0;
  double whole_ = 0, framed_ = 0, arms_px_ = 0, armsOnRest_ = 0;
  PerPart alone_{}, clear_{}, seen_{};
  std::vector<Rect> rows_;
};

}  // namespace

PoseFigures poseFigures(const Actor& actor, int figure, const std::vector<Solid>& solids,
                        const Camera& camera, int width) {
  PoseFigures out = Reader(actor, figure, solids, camera, width).run();
  out.balance = balanceOf(*actor.body, *actor.pose, actor.skeleton, actor.set.at.y);
  return out;
}

double readability(const PoseFigures& f) {
  double sum = 0.28 * f.reach + 0.22 * std::min(1.0, f.openness / kFullOpen) +
               0.14 * f.tipsSeen / 5 + 0.14 * f.handsSeen + 0.14 * f.faceSeen +
               0.08 * (1 - f.armsInside);
  if (f.balance.judged && f.balance.marginM < 0)
    sum -= std::min(0.25, 0.05 + 1.5 * -f.balance.marginM);
  sum -= 0.5 * (1 - f.inFrame);
  return sum - 0.015 * static_cast<double>(f.limits.size());
}

}  // namespace tw
