// The body's surface.
//
// The idea: a draughtsman's lay figure. Rib cage and pelvis are two masses on one flexible trunk;
// each bone of a limb carries a tapered form that swells where muscle lies and ends in a rounding
// as wide as the joint, so two bones meet in one smooth contour at any bend; girdle and buttock
// bridge limb and trunk. Every form is closed and runs into its neighbours, so no seam opens in
// any pose and contours run on into the body as a pen would draw them.
// Cost: about 4 000 points at detail 1, no search, no iteration.
// It does badly: flesh does not fold or bulge where a limb presses on the trunk, and the sum of
// the forms' volumes counts the overlaps twice.
// Radii are drawn by eye within ANSUR II breadths; common practice, no source.
#include <algorithm>

#include "stage/body_parts.h"

namespace tw {
namespace {

constexpr double kBlendedDetail = 0.8;  // coarser meshes serve measures, which ask no light
constexpr double kBlendCell = 0.022;    // of stature: half an arm

/// Nothing that is worn goes lower than the body does; `worn` is its first point.
void stayAboveGround(Mesh& mesh, std::size_t worn) {
  double floor = mesh.points.front().y();
  for (std::size_t i = 0; i < worn; ++i) floor = std::min(floor, mesh.points[i].y());
  for (std::size_t i = worn; i < mesh.points.size(); ++i)
    mesh.points[i].y() = std::max(mesh.points[i].y(), floor);
}

}  // namespace

Ring ringAt(const Vec3& centre, const Eigen::Matrix3d& frame, const Girth& girth, double side,
            double unit, double square) {
  Ring ring;
  ring.centre = centre;
  ring.right = frame.col(0);
  ring.front = frame.col(2);
  ring.toRight = unit * (side > 0 ? girth.out : girth.in);
  ring.toLeft = unit * (side > 0 ? girth.in : girth.out);
  ring.toFront = unit * girth.front;
  ring.toBack = unit * girth.back;
  ring.square = square;
  return ring;
}

void addEgg(Sculpt& sculpt, const Vec3& centre, const Eigen::Matrix3d& frame, const Vec3& radii,
            BodyPart part) {
  Fineness fine = sculpt.fine;
  fine.around = std::max(6, fine.around * 5 / 6);
  const double lift = 0.25 * radii.y();
  const double narrow = 0.968;  // of an ellipse at a quarter of its height
  std::vector<Ring> rings;
  for (const double up : {-lift, lift}) {
    const Girth girth{narrow * radii.x(), narrow * radii.x(), narrow * radii.z(),
                      narrow * radii.z()};
    rings.push_back(ringAt(centre + up * frame.col(1), frame, girth, 1, 1));
  }
  addLoft(sculpt.mesh, rings, {radii.y() - lift, radii.y() - lift}, fine, part);
}

Mesh bodyMesh(const Body& body, const Skeleton& skeleton, double detail) {
  Sculpt sculpt{body, skeleton, finenessOf(detail), body.upperArm / 0.186, {}};
  sculpt.mesh.points.reserve(4000);
  sculpt.mesh.triangles.reserve(8000);
  addTrunk(sculpt);
  addNeck(sculpt);
  for (const bool left : {true, false}) {
    addShoulders(sculpt, left);
    addUpperArm(sculpt, left);
    addThigh(sculpt, left);
  }
  const std::size_t massed = sculpt.mesh.points.size();
  addHead(sculpt);
  for (const bool left : {true, false}) {
    addForearm(sculpt, left);
    addShank(sculpt, left);
    addHand(sculpt, left);
    addFoot(sculpt, left);
  }
  const std::size_t worn = sculpt.mesh.points.size();
  if (body.look.hatKind != Hat::Hood) addHair(sculpt);
  addBeard(sculpt);
  addHat(sculpt);
  if (body.look.clothed) addGarments(sculpt);
  stayAboveGround(sculpt.mesh, worn);
  shadeSmoothly(sculpt.mesh, 0, 0);
  if (detail >= kBlendedDetail) blendNormals(sculpt.mesh, massed, kBlendCell * sculpt.unit);
  return std::move(sculpt.mesh);
}

}  // namespace tw
