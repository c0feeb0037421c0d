// A pinhole camera (Hartley & Zisserman ch. 6: x ~ K[R|t]X). Picture coordinates: x right,
// y down, in units of the frame width unless pixels are named; camera space z forward.
// Pan > 0 turns to the right (toward +x), pitch > 0 looks up, roll > 0 turns the picture
// counter-clockwise. Lens shift moves the picture: offsetX > 0 to the right, offsetY > 0 down.
#pragma once

#include <Eigen/Core>
#include <optional>

#include "geometry/shapes.h"
#include "job/rough.h"

namespace tw {

using Vec3 = Eigen::Vector3d;

class Camera {
 public:
  /// `aspect` = frame width / height.
  Camera(const CameraPlace& place, double aspect);
  /// From raw intrinsics and pose; for checks against published cameras.
  Camera(const Eigen::Matrix3d& k, const Eigen::Matrix3d& r, const Vec3& t);

  /// Camera-space depth, > 0 in front.
  double depth(const Vec3& world) const;
  /// In frame units: (0,0) top left of the frame, x to 1, y to 1/aspect. Nothing if depth ≤ 0.
  std::optional<Point> project(const Vec3& world) const;
  /// As `project` for points behind the camera too (the mathematical image).
  Point projectAlways(const Vec3& world) const;
  /// World to camera space: x right, y down, z forward, metres.
  Vec3 cameraFromWorld(const Vec3& world) const;
  /// Unit direction in the world that is seen at that place of the frame.
  Vec3 rayThrough(Point p) const;
  /// The horizon of the ground as a line a·x + b·y + c = 0 in frame units, unit normal;
  /// a·x + b·y + c > 0 on the sky's side.
  Eigen::Vector3d horizon() const;
  /// The same for every plane with that normal: where the plane vanishes.
  Eigen::Vector3d vanishingLine(const Vec3& planeNormal) const;
  /// Vanishing point of a world direction, or nothing when it is at infinity.
  std::optional<Point> vanishingPoint(const Vec3& direction) const;

  const Vec3& eye() const { return eye_; }
  const Eigen::Matrix3d& rotation() const { return r_; }
  const Eigen::Matrix3d& intrinsics() const { return k_; }
  double aspect() const { return aspect_; }

 private:
  Eigen::Matrix3d k_, r_;
  Vec3 t_, eye_;
  double aspect_ = 1.5;
};

/// 2·atan(size / 2f) in degrees.
double fieldOfViewDeg(double sizeMm, double focalMm);
/// Projected over true length for a limb at `thetaDeg` to the picture plane, its midpoint on the
/// axis at `distanceOverLength` times its length (facts §5.2).
double foreshortening(double thetaDeg, double distanceOverLength);
/// The same for a limb that comes toward the eye, its far end on the axis; can exceed 1.
double foreshorteningTowardEye(double thetaDeg, double distanceOverLength);

}  // namespace tw
