// Solving the camera.
//
// Idea: with the direction of view and the lens fixed, shot size fixes the distance in closed form
// (a figure of stature H at depth d is f·H/d high), and a lens shift then slides the picture under
// the frame without changing any shape in it. So nothing is searched; three corrections of the
// distance are enough when a group has to be held, since nearer figures grow as the camera comes.
//
// Words. Focus: the figure the panel is about; two in one pose for two are one focus. Held, nice,
// target: held_extent.h. Scale: frame widths per metre at depth d.
//
// 1. The artist's own lens, or one by shot size (85 mm for faces to 28 mm for places), stretched
//    for tall panels so that the figure keeps its perspective whatever the panel's shape; a low
//    eye takes a wider lens.
// 2. Direction from side and eye height. Level views do not pitch: the horizon runs through the
//    eyes and uprights stay upright. The others look up or down at the aim point. No camera goes
//    below the floor.
// 3. Distance from ratio = stature / target height (shot_size.h), then less when held things do
//    not fit: down to the band's lower edge for company, further for a figure that must be whole.
// 4. Shift: the crown under the head room (wide shots: soles above the foot margin), the box of
//    held things off centre so that the look has room, air for copy above. No crown of who speaks
//    is cut in shots that show more than a chest. Roll is known to all of it: extents are taken
//    from the rolled picture.
//
// Cost: under 4 µs for two figures. Does badly: a focus lying along the line of sight, panels so
// narrow that even a face must be cut, and a short lens of the artist's own in a close-up: it
// stands where it must, a hand's breadth from the nose. Pinhole and image size: Hartley &
// Zisserman ch. 6. Look room and head room are common practice, no source.
#include "stage/frame_camera.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "stage/camera_habits.h"
#include "stage/held_extent.h"
#include "stage/held_props.h"
#include "stage/shot_size.h"

namespace tw {
namespace {

constexpr double kDeg = std::numbers::pi / 180;
constexpr double kHeadRoom = 0.08;
constexpr double kSideMargin = 0.05;
constexpr double kFootMargin = 0.055;
constexpr double kCrownMargin = 0.02;  // of who speaks, when room is short
constexpr double kHeadsHigh = 0.9;     // of the frame, that faces which belong together may fill
constexpr double kLowestFocus = 0.7;   // no speaker's crown pushes the focus' chin below this
constexpr double kLowestEyeM = 0.14;
constexpr double kNearestM = 1.0;      // no held figure closer to the lens than this
constexpr double kNearestFaceM = 0.3;  // however short the lens
constexpr double kLongestUsual = 135;
constexpr double kLeastForProps = 0.8;
constexpr double kFarAway = Extent::kFarAway;

/// At whose depth the stature counts that names the shot.
Vec3 namingPoint(const Scene& scene, ShotSize shot) {
  const Skeleton& s = scene.actors[static_cast<std::size_t>(scene.focus)].skeleton;
  const Vec3 head = headMiddle(s);
  return shot <= ShotSize::MediumCloseUp ? head : Vec3((head + s[Joint::Pelvis]) / 2);
}

class Framing {
 public:
  Framing(const Scene& scene, const FrameWish& wish)
      : scene_(scene), wish_(wish), shot_(wish.choice.shot), focus_(focusActors(scene)) {
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
  const Actor* focus() const { return focus_.empty() ? nullptr : focus_.front(); }
  bool isHandOnly() const { return scene_.handIsSubject && shot_ <= ShotSize::CloseUp; }

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
    ratio_ = ratioFor(shot_, headRoom_ + (isWholeShot(shot_) ? kFootMargin - 0.02 : 0));
    if (isHandOnly()) ratio_ = shot_ == ShotSize::CloseUp ? 4.6 : 8.2;
  }

  Vec3 aim() const {
    if (!focus()) return scene_.subject.middle();
    if (isHandOnly()) return workingPalm(*focus());
    Vec3 sum = Vec3::Zero();
    for (const Actor* actor : focus_) sum += aimAt(*actor);
    return sum / static_cast<double>(focus_.size());
  }

  Vec3 aimAt(const Actor& actor) const {
    switch (shot_) {
      case ShotSize::ExtremeCloseUp:
      case ShotSize::CloseUp:
        return headMiddle(actor.skeleton);
      case ShotSize::MediumCloseUp:
        return landmark(actor.skeleton, 0.83);
      case ShotSize::Medium:
        return landmark(actor.skeleton, 0.76);
      case ShotSize::MediumLong:
        return landmark(actor.skeleton, 0.66);
      default:
        return bodyMiddle(actor);
    }
  }

  static Vec3 bodyMiddle(const Actor& actor) {
    Vec3 low = Vec3::Constant(kFarAway), high = Vec3::Constant(-kFarAway);
    for (const Vec3& at : actor.skeleton.at) {
      low = low.cwiseMin(at);
      high = high.cwiseMax(at);
    }
    return (low + high) / 2;
  }

  double eyeLevel() const {
    if (!focus()) return std::max(1.55, scene_.subject.min.y() + 0.3);
    double sum = 0;
    for (const Actor* actor : focus_) sum += headMiddle(actor->skeleton).y();
    return sum / static_cast<double>(focus_.size());
  }

  /// Puts the camera so that the focus has that ratio to the target's height.
  void stand(double ratio) {
    const double scale = ratio * target_.height() / wish_.aspect / size_;
    const Vec3 at = aim();
    const double focal = wish_.choice.lensMm > 0 ? wish_.choice.lensMm : lensFor(at, scale);
    place_.focalMm = focal;
    place_.rollDeg = (wish_.leftward ? -1 : 1) * wish_.choice.tiltDeg;
    place_.offsetX = place_.offsetY = 0;
    const double distance = focal / 36 / scale;
    aimFrom(at, distance);
    if (wish_.choice.lensMm > 0 && focus()) standForOwnLens(at, distance);
  }

  /// Short lenses come so near that the aim point and what names the shot differ in depth: the
  /// latter is what has to be at the distance, and nobody's nose may touch the lens.
  void standForOwnLens(const Vec3& at, double distance) {
    const Vec3 named = namingPoint(scene_, shot_);
    double from = distance;
    for (int round = 0; round < 2; ++round) {
      const double depth = Camera(place_, wish_.aspect).depth(named);
      from = std::max(from + std::max(distance, kNearestFaceM) - depth, 0.02);
      aimFrom(at, from);
    }
  }

  /// The shot's own lens, longer when the camera would stand between the figures.
  double lensFor(const Vec3& at, double scale) const {
    const double stretch = lensStretch(wish_.aspect);
    const double focal = std::clamp(usualLens(shot_, wish_.choice.eye) * stretch, 18.0, 300.0);
    const double distance = focal / 36 / scale, least = leastDistance(at);
    if (distance >= least) return focal;
    return std::min(focal * least / distance, std::max(focal, kLongestUsual * stretch));
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

  void measure() {
    const Camera camera(place_, wish_.aspect);
    held_ = heldExtents(scene_, {shot_, target_, isHandOnly(), aim()}, camera);
    // A long thing may run out of the frame rather than make the people small.
    if (fitOf(held_.nice) / fitOf(held_.people) < kLeastForProps) held_.nice = held_.people;
  }

  double room() const { return 1 - 2 * kSideMargin; }
  double heightRoom() const {
    return isWholeShot(shot_) || !focus() ? 1 - headRoom_ - kFootMargin : kFarAway;
  }

  double fitOf(const Extent& e) const {
    double shrink = 1;
    if (e.width() > room()) shrink = std::min(shrink, room() / e.width());
    if (e.height() > heightRoom()) shrink = std::min(shrink, heightRoom() / e.height());
    return shrink;
  }

  /// Factor on the ratio, 1 when all that can be held is held.
  double neededShrink(double ratio) const {
    if (!focus()) return shot_ >= ShotSize::Medium ? fitOf(held_.must) : 1;
    const double floor = leastRatio(shot_) * 1.04 / ratio;
    double shrink = std::max(fitOf(held_.nice), std::min(floor, 1.0));
    if (isWholeShot(shot_)) shrink = std::min(shrink, fitOf(held_.must));
    if (shot_ >= ShotSize::Medium) shrink = std::min(shrink, shrinkForHeads(ratio));
    return std::max(shrink, 0.2);
  }

  /// Faces of a pose for two and of who speaks outrank the band, as far as the next looser shot.
  double shrinkForHeads(double ratio) const {
    Extent heads = held_.head, bodies = held_.must;
    heads.add(held_.speakers);
    bodies.add(heads);
    double shrink = std::min(1.0, room() / std::max(heads.width(), 1e-9));
    shrink = std::min(shrink, kHeadsHigh / std::max(heads.height(), 1e-9));
    if (!held_.speakers.empty())
      shrink = std::min(shrink, (1 - kCrownMargin) / std::max(bodies.height(), 1e-9));
    const int looser = std::min(static_cast<int>(shot_) + 1, kShotSizes - 1);
    const double floor = leastRatio(static_cast<ShotSize>(looser)) * 1.04 / ratio;
    return std::max(shrink, std::min(floor, 1.0));
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
    const auto& [head, must, people, nice, speakers] = held_;
    const bool company = nice.width() <= room() + 1e-6 || scene_.actors.size() > focus_.size();
    const Extent& box = company && shot_ >= ShotSize::Medium ? nice
                        : must.width() <= room()             ? must
                                                             : head;
    const double slack = std::max(1 - box.width(), 0.0);
    const bool alone = scene_.actors.size() <= focus_.size() || shot_ < ShotSize::Medium;
    const double bias = alone ? 0.30 : 0.14;
    const double middle = 0.5 - bias * slack * lookAcross();
    double by = keptIn(middle - (box.left + box.right) / 2, must, -0.02);
    Extent talk = head;
    talk.add(speakers);
    if (shot_ >= ShotSize::Medium && talk.width() <= room()) by = keptIn(by, talk, kSideMargin);
    return keptIn(by, head, kSideMargin);
  }

  /// The shift nearest to `by` that keeps the extent inside the margin; as it is if too wide.
  static double keptIn(double by, const Extent& e, double margin) {
    const double least = margin - e.left, most = 1 - margin - e.right;
    if (least > most) return margin < 0 ? by : (least + most) / 2;
    return std::clamp(by, least, most);
  }

  double shiftDown() const {
    if (isHandOnly()) {
      const Extent& palm = held_.must;
      return 0.5 + 0.4 * (headRoom_ - kHeadRoom) - (palm.top + palm.bottom) / 2;
    }
    if (!focus()) return shiftThing();
    if (shot_ == ShotSize::ExtremeCloseUp) return 0.5 - (held_.head.top + held_.head.bottom) / 2;
    return withCrowns(isWholeShot(shot_) ? shiftWhole() : headRoom_ - topHeld());
  }

  /// So far down that no speaker's crown is cut, as long as the focus' face stays.
  double withCrowns(double by) const {
    if (shot_ < ShotSize::Medium || held_.speakers.empty()) return by;
    // Down to where the focus' own cut line would leave the frame, and its face in any case.
    const double most = std::max({by, 1 - held_.must.bottom, kLowestFocus - held_.head.bottom});
    return std::clamp(kCrownMargin - held_.speakers.top, by, most);
  }

  /// Highest crown that the shot shows, if taking it in costs the focus little height.
  double topHeld() const {
    const double top = std::min(held_.must.top, held_.head.top);
    if (shot_ < ShotSize::Medium) return top;
    const double most = shot_ == ShotSize::Medium ? 0.12 : 0.18;
    return std::max(std::min(held_.nice.top, top), top - most);
  }

  double shiftThing() const {
    if (held_.must.height() > 1)
      return 0.5 - (held_.must.top + held_.must.bottom) / 2;  // a piece of it
    const double slack = 1 - held_.must.height() - headRoom_ - kFootMargin;
    if (slack < 0) return headRoom_ * 0.5 - held_.must.top;
    return 1 - kFootMargin - 0.3 * slack - held_.must.bottom;
  }

  double shiftWhole() const {
    const Extent& box = fitOf(held_.nice) > 0.97 ? held_.nice : held_.must;
    const double slack = 1 - box.height() - headRoom_ - kFootMargin;
    if (slack < 0) return 1 - kFootMargin - std::max(box.bottom, held_.must.bottom);
    const bool floats = focus()->floor > 0.6;
    const double below = floats ? 0.5 : shot_ == ShotSize::Long ? 0.3 : 0.22;
    return 1 - kFootMargin - below * slack - box.bottom;
  }

  const Scene& scene_;
  const FrameWish& wish_;
  ShotSize shot_;
  std::vector<const Actor*> focus_;  ///< one, two in a pose for two, or none
  Rect target_;
  double side_ = 0, headRoom_ = kHeadRoom, size_ = 1.7, ratio_ = 1;
  CameraPlace place_;
  HeldExtents held_;
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
  const auto ratioAt = [&](const Vec3& at) {
    return f * actor.body->stature / std::max(camera.depth(at), 0.01);
  };
  const double close = ratioAt(namingPoint(scene, ShotSize::CloseUp));
  if (close >= leastRatio(ShotSize::MediumCloseUp)) return close;
  return ratioAt(namingPoint(scene, ShotSize::Medium));
}

}  // namespace tw
