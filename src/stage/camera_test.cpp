#include "stage/camera.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <Eigen/LU>
#include <cmath>

using namespace tw;

namespace {

constexpr double kPxTolerance = 1e-3;

Camera openCvCamera() {
  Eigen::Matrix3d k, r;
  k << 5000, 0, 1800, 0, 5000, 1200, 0, 0, 1;
  // Rodrigues' rotation from the rotation vector (0.1, -0.2, 0.3).
  const Vec3 v(0.1, -0.2, 0.3);
  const double angle = v.norm();
  const Vec3 n = v / angle;
  Eigen::Matrix3d x;
  x << 0, -n.z(), n.y(), n.z(), 0, -n.x(), -n.y(), n.x(), 0;
  r = Eigen::Matrix3d::Identity() + std::sin(angle) * x + (1 - std::cos(angle)) * x * x;
  return Camera(k, r, Vec3(0.2, -0.1, 5));
}

/// The decomposition example of Hartley & Zisserman ch. 6, K scaled to k33 = 1 by RQ.
struct Textbook {
  Eigen::Matrix<double, 3, 4> p;
  Textbook() {
    p << 3.53553e2, 3.39645e2, 2.77744e2, -1.44946e6, -1.03528e2, 2.33212e1, 4.59607e2, -6.32525e5,
        7.07107e-1, -3.53553e-1, 6.12372e-1, -9.18559e2;
  }
  /// M = K·R by Gram–Schmidt from the last row upward (the RQ decomposition).
  Camera camera() const {
    const Eigen::Matrix3d m = p.leftCols<3>();
    Eigen::Matrix3d r, k = Eigen::Matrix3d::Zero();
    const double scale = m.row(2).norm();
    r.row(2) = m.row(2) / scale;
    k(2, 2) = scale;
    k(1, 2) = m.row(1).dot(r.row(2));
    const Eigen::RowVector3d second = m.row(1) - k(1, 2) * r.row(2);
    k(1, 1) = second.norm();
    r.row(1) = second / k(1, 1);
    k(0, 2) = m.row(0).dot(r.row(2));
    k(0, 1) = m.row(0).dot(r.row(1));
    const Eigen::RowVector3d first = m.row(0) - k(0, 2) * r.row(2) - k(0, 1) * r.row(1);
    k(0, 0) = first.norm();
    r.row(0) = first / k(0, 0);
    const Vec3 t = k.inverse() * p.col(3);
    return Camera(k / scale, r, t);
  }
};

constexpr double kPx = 3600;  // the horizon vectors are in pixels of a 3600 × 2400 frame

double horizonYAtMiddle(const Camera& camera) {
  const Vec3 h = camera.horizon();
  return -(h.x() * 0.5 + h.z()) / h.y() * kPx;
}

Camera turned(double pitch, double roll) {
  CameraPlace place;
  place.pitchDeg = pitch;
  place.rollDeg = roll;
  return Camera(place, 1.5);
}

}  // namespace

TEST_CASE("projection equals OpenCV 4.6 projectPoints without distortion") {
  // Source: vectors computed with OpenCV 4.6.0 cv::projectPoints, f 5000, c (1800, 1200).
  const Camera camera = openCvCamera();
  const struct {
    Vec3 world;
    Point px;
  } cases[] = {{{0, 0, 0}, {2000.0000, 1100.0000}},
               {{1, 0, 0}, {2889.9357, 1375.7756}},
               {{0, 1, 0}, {1698.4490, 2039.1627}},
               {{0, 0, 1}, {1816.2837, 1009.7711}},
               {{0.5, -0.25, 0.75}, {2322.5532, 949.4967}}};
  for (const auto& c : cases) {
    const auto seen = camera.project(c.world);
    REQUIRE(seen.has_value());
    CHECK(std::abs(seen->x - c.px.x) < kPxTolerance);
    CHECK(std::abs(seen->y - c.px.y) < kPxTolerance);
  }
}

TEST_CASE("the horizon lies where pitch and roll put it") {
  // Source: closed form, distance f·tan|pitch| from the principal point turned by the roll
  // (Hartley & Zisserman ch. 8), f = 5000 px on 3600 × 2400.
  const struct {
    double pitch, roll, y, slopeDeg, distance;
  } cases[] = {{0, 0, 1200.000, 0, 0},
               {10, 0, 2081.635, 0, 881.635},
               {-10, 0, 318.365, 0, 881.635},
               {-20, 0, -619.851, 0, 1819.851},
               {0, 10, 1200.000, -10, 0},
               {10, 15, 2112.736, -15, 881.635},
               {-20, -30, -901.383, 30, 1819.851}};
  for (const auto& c : cases) {
    CAPTURE(c.pitch);
    CAPTURE(c.roll);
    const Camera camera = turned(c.pitch, c.roll);
    const Vec3 h = camera.horizon();
    CHECK(std::abs(horizonYAtMiddle(camera) - c.y) < kPxTolerance);
    CHECK(std::atan(-h.x() / h.y()) * 180 / M_PI == doctest::Approx(c.slopeDeg).epsilon(1e-6));
    const double distance = std::abs(h.x() * 0.5 + h.y() / 3 + h.z()) * kPx;
    CHECK(std::abs(distance - c.distance) < kPxTolerance);
  }
}

TEST_CASE("fields of view equal the table for a 36 × 24 mm frame") {
  // Source: fov = 2·atan(size / 2f), table rounded to 0.01 degree.
  const struct {
    double f, across, down, diagonal;
  } rows[] = {{14, 104.25, 81.20, 114.18}, {18, 90.00, 67.38, 100.48}, {24, 73.74, 53.13, 84.06},
              {35, 54.43, 37.85, 63.44},   {50, 39.60, 26.99, 46.79},  {85, 23.91, 16.07, 28.56},
              {135, 15.19, 10.16, 18.21},  {200, 10.29, 6.87, 12.35},  {300, 6.87, 4.58, 8.25}};
  for (const auto& row : rows) {
    CHECK(std::abs(fieldOfViewDeg(36, row.f) - row.across) < 0.0051);
    CHECK(std::abs(fieldOfViewDeg(24, row.f) - row.down) < 0.0051);
    CHECK(std::abs(fieldOfViewDeg(std::hypot(36, 24), row.f) - row.diagonal) < 0.0051);
  }
}

TEST_CASE("a camera of that focal length sees just that field") {
  CameraPlace place;
  place.focalMm = 35;
  const Camera camera(place, 1.5);
  const double half = fieldOfViewDeg(36, 35) / 2 * M_PI / 180;
  CHECK(camera.project(Vec3(std::tan(half), 0, 1))->x == doctest::Approx(1));
  CHECK(camera.project(Vec3(-std::tan(half), 0, 1))->x == doctest::Approx(0));
}

TEST_CASE("foreshortening equals the table, and what the camera measures") {
  // Source: cosθ / (1 − (L sinθ / 2D)²) and cosθ / (1 − (L/D) sinθ), tabulated to four places.
  const struct {
    double theta, over, mid;
  } mids[] = {{0, 2, 1},       {0, 10, 1},     {30, 2, .8798}, {30, 3, .8721},  {30, 5, .8682},
              {30, 10, .8666}, {45, 2, .7299}, {45, 3, .7171}, {45, 5, .7107},  {45, 10, .7080},
              {60, 2, .5246},  {60, 3, .5106}, {60, 5, .5038}, {60, 10, .5009}, {80, 2, .1849},
              {80, 3, .1785},  {80, 5, .1753}, {80, 10, .1741}};
  for (const auto& c : mids) {
    CHECK(std::abs(foreshortening(c.theta, c.over) - c.mid) < 5.1e-5);
    const double t = c.theta * M_PI / 180, d = c.over;
    CameraPlace place;
    place.focalMm = 36;
    const Camera camera(place, 1.0);
    const Vec3 half(std::cos(t) / 2, 0, std::sin(t) / 2), middle(0, 0, d);
    const double seen = camera.project(middle + half)->x - camera.project(middle - half)->x;
    CHECK(std::abs(std::abs(seen) * d - c.mid) < 5.1e-5);
  }
  const struct {
    double theta, over, ratio;
  } toward[] = {{0, 1.5, 1},    {30, 1.5, 1.2990}, {30, 2, 1.1547}, {30, 3, 1.0392},
                {30, 5, .9623}, {45, 1.5, 1.3377}, {45, 2, 1.0938}, {45, 3, .9252},
                {45, 5, .8236}, {60, 1.5, 1.1830}, {60, 2, .8819},  {60, 3, .7029},
                {60, 5, .6047}, {80, 1.5, .5056},  {80, 2, .3421},  {80, 3, .2585},
                {80, 5, .2162}};
  for (const auto& c : toward)
    CHECK(std::abs(foreshorteningTowardEye(c.theta, c.over) - c.ratio) < 5.1e-5);
}

TEST_CASE("the textbook camera is decomposed and projects as printed") {
  // Source: Hartley & Zisserman, decomposition example of ch. 6 (P as printed; derived values).
  const Camera camera = Textbook().camera();
  CHECK((camera.eye() - Vec3(1000.0007, 2000.0020, 1500.0003)).norm() < 1e-3);
  CHECK(std::abs(camera.intrinsics()(0, 1) - 91.23) < 0.01);
  CHECK(std::abs(camera.intrinsics()(0, 0) - 468.16) < 0.01);
  CHECK(camera.rotation().determinant() == doctest::Approx(1));
  const Point x = *camera.vanishingPoint(Vec3::UnitX());
  CHECK(std::hypot(x.x - 499.999, x.y + 146.411) < 2e-3);
  const Point y = *camera.vanishingPoint(Vec3::UnitY());
  CHECK(std::hypot(y.x + 960.662, y.y + 65.962) < 2e-3);
  const Point z = *camera.vanishingPoint(Vec3::UnitZ());
  CHECK(std::hypot(z.x - 453.554, z.y - 750.536) < 2e-3);
  const Vec3 line = camera.vanishingLine(Vec3::UnitZ());
  const double sign = line.y() < 0 ? -1 : 1;
  CHECK((sign * line - Vec3(0.05499, 0.99849, 118.692)).norm() < 2e-3);
  const Vec3 front(1000, 1000, 2500);
  CHECK(camera.depth(front) == doctest::Approx(965.925).epsilon(1e-6));
  CHECK(std::hypot(camera.project(front)->x + 64.086, camera.project(front)->y - 451.677) < 2e-3);
}

TEST_CASE("a point behind the textbook camera is not seen though it has an image") {
  // Source: as above; depth −918.559, image (1577.97, 688.61).
  const Camera camera = Textbook().camera();
  CHECK(camera.depth(Vec3::Zero()) == doctest::Approx(-918.559).epsilon(1e-5));
  CHECK_FALSE(camera.project(Vec3::Zero()).has_value());
  const Point p = camera.projectAlways(Vec3::Zero());
  CHECK(std::hypot(p.x - 1577.97, p.y - 688.61) < 0.02);
}

TEST_CASE("pan turns right, and lens shift moves the picture") {
  CameraPlace place;
  place.panDeg = 20;
  CHECK(Camera(place, 1).project(Vec3(0, 0, 5))->x < 0.5);
  place.panDeg = 0;
  place.offsetX = 0.1;
  place.offsetY = -0.2;
  const Point p = *Camera(place, 1).project(Vec3(0, 0, 5));
  CHECK(p.x == doctest::Approx(0.6));
  CHECK(p.y == doctest::Approx(0.3));
}

TEST_CASE("with level pitch the horizon cuts every standing figure at the eye's height") {
  CHECK(rc::check("horizon at h/H of each figure", [](int x, int z, int h) {
    CameraPlace place;
    place.eye.y = 0.3 + (std::abs(h) % 200) / 100.0;
    const Camera camera(place, 1.4);
    const Vec3 foot((x % 50) / 10.0, 0, 2 + std::abs(z) % 30);
    const Vec3 line = camera.horizon();
    const Point eye = *camera.project(foot + Vec3(0, place.eye.y, 0));
    RC_ASSERT(std::abs(line.x() * eye.x + line.y() * eye.y + line.z()) < 1e-9);
  }));
}

TEST_CASE("raising the camera changes no true length") {
  CHECK(rc::check("rays through two images meet the points they came from", [](int up, int turn) {
    CameraPlace place;
    place.eye = {0.2, 1 + (std::abs(up) % 40) / 10.0, -4};
    place.panDeg = turn % 20;
    place.pitchDeg = -(std::abs(up) % 30);
    const Camera camera(place, 1.3);
    const Vec3 a(0.3, 1.2, 0.5), b(-0.4, 0.1, 0.9);
    const auto back = [&](const Vec3& p) {
      return Vec3(camera.eye() + camera.rayThrough(camera.projectAlways(p)) *
                                     (p - camera.eye()).norm() * (camera.depth(p) > 0 ? 1 : -1));
    };
    RC_ASSERT(std::abs((back(a) - back(b)).norm() - (a - b).norm()) < 1e-9);
  }));
}
