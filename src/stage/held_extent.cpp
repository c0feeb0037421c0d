#include "stage/held_extent.h"

#include <algorithm>

#include "stage/camera_habits.h"

namespace tw {
namespace {

constexpr double kPalmM = 0.1;
constexpr double kBoxFilled = 0.75;  // things rarely fill the corners of their box
constexpr double kNearestM = 0.05;

class Measuring {
 public:
  Measuring(const Scene& scene, const HoldWish& wish, const Camera& camera)
      : scene_(scene), wish_(wish), camera_(camera) {}

  HeldExtents run() const {
    HeldExtents out;
    if (scene_.focus < 0 || wish_.handOnly) {
      const Extent one = wish_.handOnly ? around(wish_.aim, kPalmM) : around(scene_.subject);
      out.head = out.must = out.people = out.nice = one;
      return out;
    }
    const auto held = [&](Level level) { return holdsLevel(wish_.shot, level); };
    for (const Actor* actor : focusActors(scene_)) {
      out.head.add(headOf(*actor));
      out.must.add(around(*actor, held));
    }
    for (const Actor& actor : scene_.actors)
      if (actor.speaks) out.speakers.add(headOf(actor));
    out.people = everybody(out.must);
    out.nice = withThings(out.people);
    return out;
  }

 private:
  Extent around(const Vec3& at, double radius) const {
    Extent e;
    const double depth = camera_.depth(at), aspect = camera_.aspect();
    if (depth < kNearestM) return e;
    const Point p = camera_.projectAlways(at);
    const double r = radius * camera_.intrinsics()(0, 0) / depth;
    const Rect& t = wish_.target;
    e.add((p.x - t.min.x) / t.width(), (p.y * aspect - t.min.y) / t.height(), r / t.width(),
          r * aspect / t.height());
    return e;
  }

  template <class Keep>
  Extent around(const Actor& actor, Keep keep) const {
    Extent e;
    for (const Capsule& c : actor.volumes) {
      if (!keep(c.level)) continue;
      e.add(around(c.a, c.radiusA));
      e.add(around(c.b, c.radiusB));
    }
    return e;
  }

  Extent headOf(const Actor& actor) const {
    return around(actor, [](Level level) { return level == Level::Head; });
  }

  Extent around(const Box3& box) const {
    Extent e;
    const Vec3 middle = box.middle();
    for (Vec3 corner : box.corners()) {
      corner.x() = middle.x() + kBoxFilled * (corner.x() - middle.x());
      corner.z() = middle.z() + kBoxFilled * (corner.z() - middle.z());
      e.add(around(corner, 0));
    }
    return e;
  }

  /// Near shots are about the focus alone; farther ones keep company, and the focus' arms.
  Extent everybody(Extent e) const {
    if (wish_.shot < ShotSize::Medium) return e;
    const auto held = [&](Level level) { return holdsLevel(wish_.shot, level); };
    const auto arms = [&](Level level) {
      return held(level) || level == Level::Arm || level == Level::Hand;
    };
    for (std::size_t i = 0; i < scene_.actors.size(); ++i) {
      const bool isFocus = static_cast<int>(i) == scene_.focus;
      e.add(isFocus ? around(scene_.actors[i], arms) : around(scene_.actors[i], held));
    }
    return e;
  }

  Extent withThings(Extent e) const {
    if (wish_.shot < ShotSize::MediumLong) return e;
    for (std::size_t i = 0; i < scene_.propBoxes.size(); ++i)
      if (scene_.propMatters[i]) e.add(around(scene_.propBoxes[i]));
    return e;
  }

  const Scene& scene_;
  const HoldWish& wish_;
  const Camera& camera_;
};

}  // namespace

void Extent::add(double x, double y, double rx, double ry) {
  left = std::min(left, x - rx);
  right = std::max(right, x + rx);
  top = std::min(top, y - ry);
  bottom = std::max(bottom, y + ry);
}

void Extent::add(const Extent& o) {
  left = std::min(left, o.left);
  right = std::max(right, o.right);
  top = std::min(top, o.top);
  bottom = std::max(bottom, o.bottom);
}

HeldExtents heldExtents(const Scene& scene, const HoldWish& wish, const Camera& camera) {
  return Measuring(scene, wish, camera).run();
}

std::vector<const Actor*> focusActors(const Scene& scene) {
  std::vector<const Actor*> out;
  for (const int i : {scene.focus, scene.partner})
    if (i >= 0) out.push_back(&scene.actors[static_cast<std::size_t>(i)]);
  return out;
}

}  // namespace tw
