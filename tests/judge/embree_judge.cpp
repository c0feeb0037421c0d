// A second judge of what a panel shows: the ray caster Embree (Apache 2.0, Debian's libembree-dev)
// looks at the same solids through the same camera, a ray for each pixel's centre, and must find
// every figure and prop as large on the panel as the project's own renderer does.
#include <doctest/doctest.h>
#include <embree3/rtcore.h>

#include <cmath>
#include <vector>

#include "base/random.h"
#include "stage/picture.h"
#include "stage/solid_shapes.h"

namespace tw {
namespace {

constexpr int kScenes = 50, kWidth = 240;
constexpr double kAgree = 0.01;  // of the panel's area

/// The solids as an Embree scene; geometry ids are the solids' indices.
class RayScene {
 public:
  explicit RayScene(const std::vector<Solid>& solids)
      : device_(rtcNewDevice(nullptr)), scene_(rtcNewScene(device_)) {
    rtcSetSceneFlags(scene_, RTC_SCENE_FLAG_ROBUST);
    for (const Solid& solid : solids) add(solid.mesh);
    rtcCommitScene(scene_);
  }
  ~RayScene() {
    rtcReleaseScene(scene_);
    rtcReleaseDevice(device_);
  }
  RayScene(const RayScene&) = delete;
  RayScene& operator=(const RayScene&) = delete;

  /// Index of the first solid on the ray, or −1.
  int firstHit(const Vec3& from, const Vec3& direction) const {
    RTCIntersectContext context;
    rtcInitIntersectContext(&context);
    RTCRayHit query{};
    query.ray.org_x = static_cast<float>(from.x());
    query.ray.org_y = static_cast<float>(from.y());
    query.ray.org_z = static_cast<float>(from.z());
    query.ray.dir_x = static_cast<float>(direction.x());
    query.ray.dir_y = static_cast<float>(direction.y());
    query.ray.dir_z = static_cast<float>(direction.z());
    query.ray.tnear = 0.05F;
    query.ray.tfar = 1e9F;
    query.ray.mask = 0xFFFFFFFFU;
    query.hit.geomID = RTC_INVALID_GEOMETRY_ID;
    rtcIntersect1(scene_, &context, &query);
    return query.hit.geomID == RTC_INVALID_GEOMETRY_ID ? -1 : static_cast<int>(query.hit.geomID);
  }

 private:
  void add(const Mesh& mesh) {
    RTCGeometry geometry = rtcNewGeometry(device_, RTC_GEOMETRY_TYPE_TRIANGLE);
    auto* points = static_cast<float*>(rtcSetNewGeometryBuffer(geometry, RTC_BUFFER_TYPE_VERTEX, 0,
                                                               RTC_FORMAT_FLOAT3, 3 * sizeof(float),
                                                               mesh.points.size()));
    for (const Vec3& p : mesh.points)
      for (int axis = 0; axis < 3; ++axis) *points++ = static_cast<float>(p[axis]);
    auto* corners = static_cast<unsigned*>(
        rtcSetNewGeometryBuffer(geometry, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT3,
                                3 * sizeof(unsigned), mesh.triangles.size()));
    for (const auto& triangle : mesh.triangles)
      for (const std::uint32_t corner : triangle) *corners++ = corner;
    rtcCommitGeometry(geometry);
    rtcAttachGeometry(scene_, geometry);
    rtcReleaseGeometry(geometry);
  }

  RTCDevice device_;
  RTCScene scene_;
};

double between(Random& random, double low, double high) {
  return low + (high - low) * random.uniform();
}

Solid someFigure(const PoseLibrary& poses, Random& random, int index) {
  Character who;
  who.sex = random.next() % 2 ? Sex::Male : Sex::Female;
  who.heightM = between(random, 1.2, 1.95);
  const Body body = bodyOf(who);
  const std::vector<std::string> names = poses.names();
  SetFigure set;
  set.pose = names[random.next() % names.size()];
  set.at = {between(random, -1.2, 1.2), 0, between(random, -0.8, 1.2)};
  set.headingDeg = between(random, -180, 180);
  Solid solid;
  solid.mesh = bodyMesh(body, posed(body, poses.orStand(set.pose), set), 0.5);
  solid.figure = index;
  return solid;
}

Solid someProp(Random& random, int index) {
  const std::array<double, 3> size{between(random, 0.2, 1.2), between(random, 0.2, 1.8),
                                   between(random, 0.2, 1.0)};
  const Place3 at{between(random, -1.5, 1.5), 0, between(random, -1, 1.5)};
  Solid solid;
  solid.mesh = placed(random.next() % 2 ? boxMesh(size) : ellipsoidMesh(size, 48), at,
                      between(random, -180, 180));
  solid.prop = index;
  return solid;
}

std::vector<Solid> someScene(const PoseLibrary& poses, Random& random) {
  std::vector<Solid> solids;
  const int figures = 1 + static_cast<int>(random.next() % 3);
  for (int i = 0; i < figures; ++i) solids.push_back(someFigure(poses, random, i));
  const int props = static_cast<int>(random.next() % 3);
  for (int i = 0; i < props; ++i) solids.push_back(someProp(random, i));
  return solids;
}

CameraPlace somePlace(Random& random) {
  CameraPlace place;
  place.eye = {between(random, -0.8, 0.8), between(random, 0.4, 2.6), between(random, -6, -3)};
  place.panDeg = between(random, -8, 8);
  place.pitchDeg = between(random, -15, 5);
  place.rollDeg = between(random, -12, 12);
  place.focalMm = between(random, 28, 85);
  return place;
}

std::vector<double> sharesOf(const std::vector<int>& seen, std::size_t solids) {
  std::vector<double> shares(solids, 0);
  for (const int id : seen)
    if (id >= 0) shares[static_cast<std::size_t>(id)] += 1.0 / static_cast<double>(seen.size());
  return shares;
}

std::vector<int> castOver(const RayScene& scene, const Camera& camera, const Picture& picture) {
  std::vector<int> seen;
  for (int y = 0; y < picture.height; ++y)
    for (int x = 0; x < picture.width; ++x)
      seen.push_back(scene.firstHit(
          camera.eye(), camera.rayThrough({(x + 0.5) / picture.width, (y + 0.5) / picture.width})));
  return seen;
}

}  // namespace

TEST_CASE(
    "an independent ray caster finds every solid as large on the panel as the renderer does") {
  const auto poses = PoseLibrary::load();
  REQUIRE(poses);
  Random random(20261125);
  double worst = 0;
  int shown = 0;
  for (int k = 0; k < kScenes; ++k) {
    const std::vector<Solid> solids = someScene(*poses, random);
    const Camera camera(somePlace(random), between(random, 0.6, 2.2));
    const Picture picture = render(solids, camera, kWidth);
    const std::vector<int> own(picture.solid.begin(), picture.solid.end());
    const std::vector<double> ours = sharesOf(own, solids.size());
    const std::vector<double> theirs =
        sharesOf(castOver(RayScene(solids), camera, picture), solids.size());
    for (std::size_t i = 0; i < solids.size(); ++i) {
      CAPTURE(k);
      CAPTURE(i);
      CHECK(std::abs(ours[i] - theirs[i]) < kAgree);
      worst = std::max(worst, std::abs(ours[i] - theirs[i]));
      shown += ours[i] > 0.02 ? 1 : 0;
    }
  }
  CHECK(shown > kScenes);  // the scenes do show something
  MESSAGE("largest difference, percent of the panel: " << std::to_string(100 * worst));
}

}  // namespace tw
