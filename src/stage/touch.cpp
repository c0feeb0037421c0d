// Touching, and being inside.
//
// 1 Distance to a triangle: to its plane where the foot of the perpendicular lies inside it, else
//   to the nearest of its sides.
// 2 Inside: a ray straight up; each triangle that it crosses counts +1 or −1 by the side it turns
//   to the ray. A closed mesh gives 0 outside and something else inside, also where several closed
//   parts overlap, as in a body (the winding number by ray, textbook).
// 3 Limbs are judged by places along their bones, so that skin on skin is not inside: only what
//   passes through grossly counts.
// Cost: triangles times places whose boxes meet. Does badly: open meshes (a bell from below) have
// no inside but the thickness of their walls.
#include "stage/touch.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <limits>

#include "stage/held_props.h"
#include "stage/reach_pose.h"

namespace tw {
namespace {

constexpr double kTouchM = 0.09;   // palm's middle to surface: half a hand's thickness and some air
constexpr double kWorksOnM = 0.3;  // on what the script says the figure pushes
constexpr double kRaisedM = 0.12;
constexpr int kPlacesPerBone = 5;

double distanceToSide(const Vec3& p, const Vec3& a, const Vec3& b) {
  const Vec3 along = b - a;
  const double length2 = along.squaredNorm();
  const double t = length2 > 0 ? std::clamp((p - a).dot(along) / length2, 0.0, 1.0) : 0;
  return (p - a - t * along).norm();
}

double distanceToTriangle(const Vec3& p, const Vec3& a, const Vec3& b, const Vec3& c) {
  const Vec3 normal = (b - a).cross(c - a);
  const double size = normal.norm();
  const auto within = [&](const Vec3& from, const Vec3& to) {
    return (to - from).cross(p - from).dot(normal) >= 0;
  };
  if (size > 0 && within(a, b) && within(b, c) && within(c, a))
    return std::abs((p - a).dot(normal)) / size;
  return std::min({distanceToSide(p, a, b), distanceToSide(p, b, c), distanceToSide(p, c, a)});
}

/// −1, 0 or +1: does the ray straight up from p cross the triangle, and from which side?
int crossingAbove(const Vec3& p, const Vec3& a, const Vec3& b, const Vec3& c) {
  const auto side = [&](const Vec3& from, const Vec3& to) {
    return (to.x() - from.x()) * (p.z() - from.z()) - (to.z() - from.z()) * (p.x() - from.x());
  };
  const double u = side(a, b), v = side(b, c), w = side(c, a), all = u + v + w;
  // A side that two triangles share belongs to one of them only.
  const bool clockwise = u < 0 && v < 0 && w < 0, counter = u >= 0 && v >= 0 && w >= 0;
  if (all == 0 || (!clockwise && !counter)) return 0;
  const double y = (v * a.y() + w * b.y() + u * c.y()) / all;
  return y > p.y() ? (counter ? 1 : -1) : 0;
}

struct Box {
  Vec3 low = Vec3::Constant(std::numeric_limits<double>::infinity());
  Vec3 high = -low;
  bool holds(const Vec3& p) const {
    return (p.array() >= low.array()).all() && (p.array() <= high.array()).all();
  }
};

Box boxOf(const Mesh& mesh) {
  Box box;
  for (const Vec3& p : mesh.points) {
    box.low = box.low.cwiseMin(p);
    box.high = box.high.cwiseMax(p);
  }
  return box;
}

/// Somebody else, or a thing that stays where it is.
bool isOther(const Solid& solid, const Beat& beat, const Scene& scene, std::size_t figure) {
  if (solid.figure >= 0) return solid.figure != static_cast<int>(figure);
  if (solid.prop < 0) return true;
  const std::string& id = scene.props[static_cast<std::size_t>(solid.prop)].prop;
  for (std::size_t k = 0; k < beat.props.size(); ++k)
    if (beat.props[k].id == id && isInHand(beat, k)) return false;
  return true;
}

/// The solid is what the figure's relation names.
bool isTarget(const Solid& solid, const Beat& beat, const Scene& scene, std::size_t figure) {
  const std::string& target = beat.figures[figure].target;
  if (target.empty()) return false;
  if (solid.figure >= 0)
    return scene.actors[static_cast<std::size_t>(solid.figure)].set.who == target;
  return solid.prop >= 0 && scene.props[static_cast<std::size_t>(solid.prop)].prop == target;
}

bool worksOn(const BeatFigure& figure) {
  for (const char* word : {"push", "shove", "press", "climb", "lean", "lift", "heave", "roll"})
    if (figure.relation.find(word) != std::string::npos) return true;
  return false;
}

}  // namespace

double distanceToSurface(const Mesh& mesh, const Vec3& place) {
  double least = std::numeric_limits<double>::infinity();
  for (const auto& t : mesh.triangles)
    least = std::min(
        least, distanceToTriangle(place, mesh.points[t[0]], mesh.points[t[1]], mesh.points[t[2]]));
  return least;
}

bool isInside(const Mesh& mesh, const Vec3& place) {
  int crossings = 0;
  for (const auto& t : mesh.triangles)
    crossings += crossingAbove(place, mesh.points[t[0]], mesh.points[t[1]], mesh.points[t[2]]);
  return crossings != 0;
}

std::vector<Joint> touchingLimbs(const Beat& beat, const Scene& scene, std::size_t figure,
                                 const std::vector<Solid>& solids) {
  using enum Joint;
  const Actor& actor = scene.actors[figure];
  std::vector<Joint> out;
  for (const auto& [part, joint, hand] : {std::tuple{MovedPart::LeftHand, LeftWrist, true},
                                          {MovedPart::RightHand, RightWrist, true},
                                          {MovedPart::LeftFoot, LeftAnkle, false},
                                          {MovedPart::RightFoot, RightAnkle, false}}) {
    const Vec3 at = placeOf(part, *actor.body, actor.skeleton);
    // A foot on the floor, whatever that is made of, stands; it does not touch.
    if (!hand && at.y() < actor.set.at.y + kRaisedM) continue;
    const bool touches = std::any_of(solids.begin(), solids.end(), [&](const Solid& solid) {
      if (!isOther(solid, beat, scene, figure)) return false;
      const bool works =
          hand && worksOn(beat.figures[figure]) && isTarget(solid, beat, scene, figure);
      return distanceToSurface(solid.mesh, at) < (works ? kWorksOnM : kTouchM);
    });
    if (touches) out.push_back(joint);
  }
  return out;
}

double limbsInside(const Beat& beat, const Scene& scene, std::size_t figure,
                   const std::vector<Solid>& solids) {
  using enum Joint;
  const Skeleton& s = scene.actors[figure].skeleton;
  constexpr std::pair<Joint, Joint> kBones[] = {
      {LeftShoulder, LeftElbow},    {LeftElbow, LeftFingertip}, {RightShoulder, RightElbow},
      {RightElbow, RightFingertip}, {LeftHip, LeftKnee},        {LeftKnee, LeftAnkle},
      {RightHip, RightKnee},        {RightKnee, RightAnkle},    {Chin, Crown}};
  std::vector<Vec3> places;
  for (const auto& [from, to] : kBones)
    for (int i = 0; i < kPlacesPerBone; ++i)
      places.push_back(s[from] + (s[to] - s[from]) * ((i + 0.5) / kPlacesPerBone));
  std::vector<bool> inside(places.size(), false);
  for (const Solid& solid : solids) {
    if (!isOther(solid, beat, scene, figure)) continue;
    const Box box = boxOf(solid.mesh);
    for (std::size_t i = 0; i < places.size(); ++i)
      if (!inside[i] && box.holds(places[i])) inside[i] = isInside(solid.mesh, places[i]);
  }
  return static_cast<double>(std::count(inside.begin(), inside.end(), true)) /
         static_cast<double>(places.size());
}

}  // namespace tw
