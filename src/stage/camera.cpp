#include "stage/camera.h"

#include <Eigen/Geometry>
#include <Eigen/LU>
#include <numbers>

namespace tw {

namespace {

constexpr double kFrameWidthMm = 36;
constexpr double kRadians = std::numbers::pi / 180;

/// Rows: the camera's right, down and forward in the world. The world is left-handed (x right,
/// y up, z away), so this has determinant −1; lengths and angles are kept all the same.
Eigen::Matrix3d rotationOf(const CameraPlace& place) {
  const double pan = place.panDeg * kRadians, pitch = place.pitchDeg * kRadians;
  const Vec3 forward(std::sin(pan) * std::cos(pitch), std::sin(pitch),
                     std::cos(pan) * std::cos(pitch));
  const Vec3 right(std::cos(pan), 0, -std::sin(pan));
  const Vec3 down(std::sin(pan) * std::sin(pitch), -std::cos(pitch),
                  std::cos(pan) * std::sin(pitch));
  const double roll = place.rollDeg * kRadians;
  Eigen::Matrix3d r;
  r.row(0) = std::cos(roll) * right + std::sin(roll) * down;
  r.row(1) = -std::sin(roll) * right + std::cos(roll) * down;
  r.row(2) = forward;
  return r;
}

Eigen::Matrix3d intrinsicsOf(const CameraPlace& place, double aspect) {
  const double f = place.focalMm / kFrameWidthMm;
  Eigen::Matrix3d k = Eigen::Matrix3d::Identity();
  k(0, 0) = k(1, 1) = f;
  k(0, 2) = 0.5 + place.offsetX;
  k(1, 2) = 0.5 / aspect + place.offsetY;
  return k;
}

}  // namespace

Camera::Camera(const CameraPlace& place, double aspect)
    : k_(intrinsicsOf(place, aspect)),
      r_(rotationOf(place)),
      eye_(place.eye.x, place.eye.y, place.eye.z),
      aspect_(aspect) {
  t_ = -r_ * eye_;
}

Camera::Camera(const Eigen::Matrix3d& k, const Eigen::Matrix3d& r, const Vec3& t)
    : k_(k), r_(r), t_(t), eye_(-r.transpose() * t) {}

double Camera::depth(const Vec3& world) const {
  return r_.row(2).dot(world) + t_.z();
}

Vec3 Camera::cameraFromWorld(const Vec3& world) const {
  return r_ * world + t_;
}

std::optional<Point> Camera::project(const Vec3& world) const {
  if (depth(world) <= 0) return std::nullopt;
  return projectAlways(world);
}

Point Camera::projectAlways(const Vec3& world) const {
  const Vec3 p = k_ * cameraFromWorld(world);
  return {p.x() / p.z(), p.y() / p.z()};
}

Vec3 Camera::rayThrough(Point p) const {
  return (r_.transpose() * (k_.inverse() * Vec3(p.x, p.y, 1))).normalized();
}

Eigen::Vector3d Camera::horizon() const {
  return vanishingLine(Vec3::UnitY());
}

Eigen::Vector3d Camera::vanishingLine(const Vec3& planeNormal) const {
  const Vec3 line = k_.inverse().transpose() * (r_ * planeNormal);
  const double length = std::hypot(line.x(), line.y());
  return length > 0 ? Vec3(line / length) : line;
}

std::optional<Point> Camera::vanishingPoint(const Vec3& direction) const {
  const Vec3 turned = r_ * direction;
  if (std::abs(turned.z()) < 1e-12 * direction.norm()) return std::nullopt;
  const Vec3 v = k_ * turned;
  return Point{v.x() / v.z(), v.y() / v.z()};
}

double fieldOfViewDeg(double sizeMm, double focalMm) {
  return 2 * std::atan(sizeMm / (2 * focalMm)) / kRadians;
}

double foreshortening(double thetaDeg, double distanceOverLength) {
  const double theta = thetaDeg * kRadians;
  const double near = std::sin(theta) / (2 * distanceOverLength);
  return std::cos(theta) / (1 - near * near);
}

double foreshorteningTowardEye(double thetaDeg, double distanceOverLength) {
  const double theta = thetaDeg * kRadians;
  return std::cos(theta) / (1 - std::sin(theta) / distanceOverLength);
}

}  // namespace tw
