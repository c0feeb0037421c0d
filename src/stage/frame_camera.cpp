// Solving the camera.
//
// Idea: with the direction of view and the lens fixed, shot size fixes the distance in closed form
// (a figure of stature H at depth d is f·H/d high), and a lens shift then slides the picture under
// the frame without changing any shape in it. So nothing is searched; three corrections of the
// distance are enough when a group has to be held, since nearer figures grow as the camera comes.
//
// Words. Held: what the shot must keep in the frame. Nice: what it keeps when the shot's band
// allows a little more distance. Target: the part of the panel in which the focus must stand
// (the whole panel unless `keepInside` says otherwise). Scale: frame widths per metre at depth d.
//
// 1. Lens by shot size (85 mm for faces to 28 mm for places), stretched for tall panels so that
//    the figure keeps its perspective whatever the panel's shape; a low eye takes a wider lens.
// 2. Direction from side and eye height. Level views do not pitch: the horizon runs through the
//    eyes and uprights stay upright. The others look up or down at the aim point. No camera goes
//    below the floor.
// 3. Distance from ratio = stature / target height (shot_size.h), then less when held things do
//    not fit: down to the band's lower edge for company, further for a figure that must be whole.
// 4. Shift: the crown under the head room (wide shots: soles above the foot margin), the box of
//    held things off centre so that the look has room, air for copy above.
//
// Cost: under 3 µs for two figures. Does badly: a focus lying along the line of sight, and panels
// so narrow that even a face must be cut. Pinhole and image size: Hartley & Zisserman ch. 6.
// Lens choices, look room and head room are common practice, no source.
#include "stage/frame_camera.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "stage/held_props.h"
#include "stage/shot_size.h"

namespace tw {
namespace {

constexpr double kDeg = std::numbers::pi / 180;
constexpr double kHeadRoom = 0.08;
constexpr double kSideMargin = 0.05;
constexpr double kFootMargin = 0.055;
constexpr double kLowestEyeM = 0.14;
constexpr double kNearestM = 1.0;  // no held figure closer to the lens than this
constexpr double kLongestLens = 135;
constexpr double kLeastForProps = 0.8;
constexpr double kFarAway = 1e6;

/// Box in target units: 0…1 across and down the target rectangle.
struct Extent {
  double left = kFarAway, top = kFarAway, right = -kFarAway, bottom = -kFarAway;

  void add(double x, double y, double rx, double ry) {
    left = std::min(left, x - rx);
    right = std::max(right, x + rx);
    top = std::min(top, y - ry);
    bottom = std::max(bottom, y + ry);
  }
  void add(const Extent& o) {
    left = std::min(left, o.left);
    right = std::max(right, o.right);
    top = std::min(top, o.top);
    bottom = std::max(bottom, o.bottom);
  }
  bool empty() const { return right < left; }
  double width() const { return empty() ? 0 : right - left; }
  double height() const { return empty() ? 0 : bottom - top; }
};

double lensFor(ShotSize shot, EyeHeight eye) {
  constexpr std::array<double, kShotSizes> kLens{95, 85, 75, 60, 50, 42, 34, 28};
  const double wider = eye == EyeHeight::Worm ? 0.62 : eye == EyeHeight::Low ? 0.85 : 1.0;
  return kLens[static_cast<std::size_t>(shot)] * wider;
}

/// How far the eye stands above (> 0) or below the aim point, seen from there.
double elevationDeg(EyeHeight eye, ShotSize shot) {
  const bool far = shot >= ShotSize::VeryLong;
  switch (eye) {
    case EyeHeight::Worm:
      return -34;
    case EyeHeight::Low:
      return -15;
    case EyeHeight::Level:
      return 0;
    case EyeHeight::High:
      return far ? 18 : 28;
    case EyeHeight::Bird:
      return far ? 38 : 50;
  }
  return 0;
}

/// Tall panels keep the distance to the figure, so the lens grows with the frame's height; in wide
/// ones the middle way between height and width keeps the ends from stretching.
double lensStretch(double aspect) {
  constexpr double kStill = 1.5;  // 36 × 24 mm, the frame for which the lenses are named
  return aspect < kStill ? kStill / aspect : std::sqrt(kStill / aspect);
}

bool wholeShot(ShotSize shot) {
  return shot >= ShotSize::Long;
}

/// Lowest body level that a shot holds of a figure.
bool holdsLevel(ShotSize shot, Level level) {
  switch (level) {
    case Level::Head:
      return true;
    case Level::Shoulders:
      return shot >= ShotSize::MediumCloseUp;
    case Level::Torso:
      return shot >= ShotSize::Medium;
    case Level::Hips:
      return shot >= ShotSize::MediumLong;
    case Level::Arm:
    case Level::Hand:
    case Level::Thigh:
    case Level::Shank:
    case Level::Foot:
      return wholeShot(shot);
  }
  return false;
}

class Framing {
 public:
  Framing(const Scene& scene, const FrameWish& wish)
      : scene_(scene), wish_(wish), shot_(wish.choice.shot) {
    target_ = wish.keepInside.value_or(Rect{{0, 0}, {1, 1}});
    side_ = (wish.leftward ? -1 : 1) * wish.choice.sideDeg;
    headRoom_ = kHeadRoom + std::min(0.55 * wish.airShare, 0.3);
    if (shot_ == ShotSize::ExtremeCloseUp) headRoom_ = 0;
  }

  CameraPlace run() {
    chooseSize();
    double ratio = ratio_;
    for (int round = 0; round < 4; ++round) {
      stand(ratio);
      measure();
      const double shrink = neededShrink(ratio);
      if (shrink > 0.995) break;
      ratio *= shrink;
    }
    shift();
    return place_;
  }

 private:
  const Actor* focus() const {
    return scene_.focus < 0 ? nullptr : &scene_.actors[static_cast<std::size_t>(scene_.focus)];
  }

  void chooseSize() {
    if (!focus()) {
      constexpr std::array<double, kShotSizes> kThing{2.2, 1.5, 1.2, 1.0, 0.82, 0.7, 0.42, 0.2};
      size_ = std::max(scene_.subject.max.y() - scene_.subject.min.y(), 0.05);
      const Vec3 span = scene_.subject.max - scene_.subject.min;
      size_ = std::max(size_, 0.4 * std::max(span.x(), span.z()));
      ratio_ = kThing[static_cast<std::size_t>(shot_)] * (1 - 0.5 * (headRoom_ - kHeadRoom));
      return;
    }
    size_ = focus()->body->stature;
    ratio_ = ratioFor(shot_, headRoom_ + (wholeShot(shot_) ? kFootMargin - 0.02 : 0));
    if (scene_.handIsSubject && shot_ <= ShotSize::CloseUp) {
      ratio_ = shot_ == ShotSize::CloseUp ? 4.6 : 8.2;
    }
  }

  Vec3 aim() const {
    if (!focus()) return scene_.subject.middle();
    const Skeleton& s = focus()->skeleton;
    if (scene_.handIsSubject && shot_ <= ShotSize::CloseUp) return workingPalm(*focus());
    switch (shot_) {
      case ShotSize::ExtremeCloseUp:
      case ShotSize::CloseUp:
        return headMiddle(s);
      case ShotSize::MediumCloseUp:
        return landmark(s, 0.83);
      case ShotSize::Medium:
        return landmark(s, 0.76);
      case ShotSize::MediumLong:
        return landmark(s, 0.66);
      default:
        return bodyMiddle();
    }
  }

  Vec3 bodyMiddle() const {
    Vec3 low = Vec3::Constant(kFarAway), high = Vec3::Constant(-kFarAway);
    for (const Vec3& at : focus()->skeleton.at) {
      low = low.cwiseMin(at);
      high = high.cwiseMax(at);
    }
    return (low + high) / 2;
  }

  double eyeLevel() const {
    if (!focus()) return std::max(1.55, scene_.subject.min.y() + 0.3);
    return headMiddle(focus()->skeleton).y();
  }

  /// Puts the camera so that the focus has that ratio to the target's height.
  void stand(double ratio) {
    const double aspect = wish_.aspect;
    const double scale = ratio * target_.height() / aspect / size_;
    double focal = lensFor(shot_, wish_.choice.eye) * lensStretch(aspect);
    focal = std::clamp(focal, 18.0, 300.0);
    const Vec3 at = aim();
    double distance = focal / 36 / scale;
    const double least = leastDistance(at);
    if (distance < least) {
      focal =
          std::min(focal * least / distance, std::max(focal, kLongestLens * lensStretch(aspect)));
      distance = focal / 36 / scale;
    }
    aimFrom(at, distance);
    place_.focalMm = focal;
    place_.rollDeg = (wish_.leftward ? -1 : 1) * wish_.choice.tiltDeg;
    place_.offsetX = place_.offsetY = 0;
  }

  void aimFrom(const Vec3& at, double distance) {
    const double e = elevationDeg(wish_.choice.eye, shot_) * kDeg;
    const Vec3 toEye = directionOf(side_);
    if (wish_.choice.eye == EyeHeight::Level) {
      const Vec3 eye = at + toEye * distance;
      place_.eye = {eye.x(), std::max(eyeLevel(), kLowestEyeM), eye.z()};
      place_.pitchDeg = 0;
    } else {
      const double rise = std::max(distance * std::sin(e), kLowestEyeM - at.y());
      const double pitch = std::asin(std::clamp(rise / distance, -1.0, 1.0));
      const Vec3 eye = at + toEye * (distance * std::cos(pitch)) + Vec3(0, rise, 0);
      place_.eye = {eye.x(), eye.y(), eye.z()};
      place_.pitchDeg = -pitch / kDeg;
    }
    place_.panDeg = -side_;
  }

  /// So far from the aim point that the nearest figure still stands before the lens.
  double leastDistance(const Vec3& at) const {
    double nearest = 0;
    if (shot_ < ShotSize::MediumCloseUp) return nearest;
    const Vec3 toEye = directionOf(side_);
    for (const Actor& actor : scene_.actors) {
      nearest = std::max(nearest, (headMiddle(actor.skeleton) - at).dot(toEye));
    }
    return nearest < 0.25 ? 0 : nearest + kNearestM;
  }

  Extent extentOf(const Camera& camera, const Vec3& at, double radius) const {
    Extent e;
    const double depth = camera.depth(at);
    if (depth < 0.05) return e;
    const Point p = camera.projectAlways(at);
    const double r = radius * place_.focalMm / 36 / depth;
    e.add((p.x - target_.min.x) / target_.width(),
          (p.y * wish_.aspect - target_.min.y) / target_.height(), r / target_.width(),
          r * wish_.aspect / target_.height());
    return e;
  }

  template <class Keep>
  Extent extentOf(const Camera& camera, const Actor& actor, Keep keep) const {
    Extent e;
    for (const Capsule& c : actor.volumes) {
      if (!keep(c.level)) continue;
      e.add(extentOf(camera, c.a, c.radiusA));
      e.add(extentOf(camera, c.b, c.radiusB));
    }
    return e;
  }

  Extent extentOf(const Camera& camera, const Box3& box) const {
    Extent e;
    // Things rarely fill the corners of their box: the corners are drawn in a little.
    const Vec3 middle = box.middle();
    for (Vec3 corner : box.corners()) {
      corner.x() = middle.x() + 0.75 * (corner.x() - middle.x());
      corner.z() = middle.z() + 0.75 * (corner.z() - middle.z());
      e.add(extentOf(camera, corner, 0));
    }
    return e;
  }

  void measure() {
    const Camera camera(place_, wish_.aspect);
    head_ = must_ = nice_ = Extent{};
    if (!focus()) {
      must_ = nice_ = head_ = extentOf(camera, scene_.subject);
      return;
    }
    if (scene_.handIsSubject && shot_ <= ShotSize::CloseUp) {
      must_ = nice_ = head_ = extentOf(camera, aim(), 0.1);
      return;
    }
    const auto held = [&](Level level) { return holdsLevel(shot_, level); };
    head_ = extentOf(camera, *focus(), [](Level level) { return level == Level::Head; });
    must_ = extentOf(camera, *focus(), held);
    nice_ = must_;
    measureNice(camera);
  }

  void measureNice(const Camera& camera) {
    if (shot_ < ShotSize::Medium) return;
    const auto held = [&](Level level) { return holdsLevel(shot_, level); };
    const auto arms = [&](Level level) {
      return held(level) || level == Level::Arm || level == Level::Hand;
    };
    for (std::size_t i = 0; i < scene_.actors.size(); ++i) {
      const bool isFocus = static_cast<int>(i) == scene_.focus;
      if (isFocus) {
        nice_.add(extentOf(camera, scene_.actors[i], arms));
      } else {
        nice_.add(extentOf(camera, scene_.actors[i], held));
      }
    }
    if (shot_ < ShotSize::MediumLong) return;
    const Extent people = nice_;
    for (std::size_t i = 0; i < scene_.propBoxes.size(); ++i) {
      if (scene_.propMatters[i]) nice_.add(extentOf(camera, scene_.propBoxes[i]));
    }
    // A long thing may run out of the frame rather than make the people small.
    const double cost = fitOf(nice_) / fitOf(people);
    if (cost < kLeastForProps) nice_ = people;
  }

  double room() const { return 1 - 2 * kSideMargin; }
  double heightRoom() const {
    return wholeShot(shot_) || !focus() ? 1 - headRoom_ - kFootMargin : kFarAway;
  }

  double fitOf(const Extent& e) const {
    double shrink = 1;
    if (e.width() > room()) shrink = std::min(shrink, room() / e.width());
    if (e.height() > heightRoom()) shrink = std::min(shrink, heightRoom() / e.height());
    return shrink;
  }

  /// Factor on the ratio, 1 when all that can be held is held.
  double neededShrink(double ratio) const {
    const bool whole = wish_.wholeFigure || wholeShot(shot_);
    if (!focus()) return shot_ >= ShotSize::Medium ? fitOf(must_) : 1;
    const double floor = leastRatio(shot_) * 1.04 / ratio;
    double shrink = std::max(fitOf(nice_), std::min(floor, 1.0));
    const double must = wholeShot(shot_) && whole ? fitOf(must_) : fitOf(head_);
    if (wholeShot(shot_)) shrink = std::min(shrink, must);
    return std::max(shrink, 0.2);
  }

  /// −1…1: how far the focus looks to the left or right of the picture.
  double lookAcross() const {
    if (!focus()) return 0;
    const Vec3 right(std::cos(side_ * kDeg), 0, std::sin(side_ * kDeg));
    const Vec3 look = headFront(focus()->skeleton) + bodyFront(focus()->skeleton) * 0.5;
    return std::clamp(look.dot(right) / 1.2, -1.0, 1.0);
  }

  void shift() {
    const double x = shiftAcross(), y = shiftDown();
    place_.offsetX = x * target_.width();
    place_.offsetY = y * target_.height() / wish_.aspect;
  }

  double shiftAcross() const {
    const bool company = nice_.width() <= room() + 1e-6 || scene_.actors.size() > 1;
    const Extent& box = company && shot_ >= ShotSize::Medium ? nice_
                        : must_.width() <= room()            ? must_
                                                             : head_;
    const double slack = std::max(1 - box.width(), 0.0);
    const bool alone = scene_.actors.size() < 2 || shot_ < ShotSize::Medium;
    const double bias = alone ? 0.30 : 0.14;
    const double middle = 0.5 - bias * slack * lookAcross();
    const double by = middle - (box.left + box.right) / 2;
    return keptIn(keptIn(by, must_, -0.02), head_, kSideMargin);
  }

  /// The shift nearest to `by` that keeps the extent inside the margin; as it is if too wide.
  static double keptIn(double by, const Extent& e, double margin) {
    const double least = margin - e.left, most = 1 - margin - e.right;
    if (least > most) return margin < 0 ? by : (least + most) / 2;
    return std::clamp(by, least, most);
  }

  double shiftDown() const {
    if (scene_.handIsSubject && shot_ <= ShotSize::CloseUp) {
      return 0.5 + 0.4 * (headRoom_ - kHeadRoom) - (must_.top + must_.bottom) / 2;
    }
    if (!focus()) return shiftThing();
    if (shot_ == ShotSize::ExtremeCloseUp) return 0.5 - (head_.top + head_.bottom) / 2;
    if (!wholeShot(shot_)) return headRoom_ - topHeld();
    return shiftWhole();
  }

  /// Highest crown that the shot shows, if taking it in costs the focus little height.
  double topHeld() const {
    const double top = std::min(must_.top, head_.top);
    if (shot_ < ShotSize::Medium) return top;
    const double most = shot_ == ShotSize::Medium ? 0.12 : 0.18;
    return std::max(std::min(nice_.top, top), top - most);
  }

  double shiftThing() const {
    if (must_.height() > 1) return 0.5 - (must_.top + must_.bottom) / 2;  // a piece of it
    const double slack = 1 - must_.height() - headRoom_ - kFootMargin;
    if (slack < 0) return headRoom_ * 0.5 - must_.top;
    return 1 - kFootMargin - 0.3 * slack - must_.bottom;
  }

  double shiftWhole() const {
    const Extent& box = fitOf(nice_) > 0.97 ? nice_ : must_;
    const double slack = 1 - box.height() - headRoom_ - kFootMargin;
    if (slack < 0) return 1 - kFootMargin - std::max(box.bottom, must_.bottom);
    const bool floats = focus()->floor > 0.6;
    const double below = floats ? 0.5 : shot_ == ShotSize::Long ? 0.3 : 0.22;
    return 1 - kFootMargin - below * slack - box.bottom;
  }

  const Scene& scene_;
  const FrameWish& wish_;
  ShotSize shot_;
  Rect target_;
  double side_ = 0, headRoom_ = kHeadRoom, size_ = 1.7, ratio_ = 1;
  CameraPlace place_;
  Extent head_, must_, nice_;
};

}  // namespace

CameraPlace framedCamera(const Scene& scene, const FrameWish& wish) {
  return Framing(scene, wish).run();
}

double statureOverFrame(const Scene& scene, const Camera& camera) {
  const double f = camera.intrinsics()(0, 0) * camera.aspect();
  if (scene.focus < 0) {
    const double height = scene.subject.max.y() - scene.subject.min.y();
    return f * height / std::max(camera.depth(scene.subject.middle()), 0.01);
  }
  const Actor& actor = scene.actors[static_cast<std::size_t>(scene.focus)];
  const Vec3 head = headMiddle(actor.skeleton);
  const auto ratioAt = [&](const Vec3& at) {
    return f * actor.body->stature / std::max(camera.depth(at), 0.01);
  };
  const double close = ratioAt(head);
  if (close >= leastRatio(ShotSize::MediumCloseUp)) return close;
  return ratioAt((head + actor.skeleton[Joint::Pelvis]) / 2);
}

}  // namespace tw
