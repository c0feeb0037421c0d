#include "stage/camera_moves.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "stage/camera_habits.h"
#include "stage/frame_camera.h"
#include "stage/held_props.h"
#include "stage/shot_size.h"

namespace tw {
namespace {

constexpr double kRad = std::numbers::pi / 180;
constexpr double kSameLensMm = 0.05;

Vec3 eyeOf(const CameraPlace& camera) {
  return {camera.eye.x, camera.eye.y, camera.eye.z};
}
Place3 placeOf(const Vec3& v) {
  return {v.x(), v.y(), v.z()};
}

/// A camera that stands on the floor already may stay there, none goes lower.
double lowestEye(const CameraPlace& camera) {
  return std::min(kLowestEyeM, camera.eye.y);
}

/// The eye and the line of sight turned about the pivot, without limits.
CameraPlace turnedAbout(CameraPlace camera, const Vec3& pivot, double aroundDeg, double overDeg) {
  const double pan = camera.panDeg * kRad;
  const Vec3 level(std::sin(pan), 0, std::cos(pan)), right(std::cos(pan), 0, -std::sin(pan));
  const Vec3 from = eyeOf(camera) - pivot;
  const double away = from.dot(level), side = from.dot(right), up = from.y();
  const double c = std::cos(overDeg * kRad), s = std::sin(overDeg * kRad);
  const double awayNow = away * c + up * s, upNow = -away * s + up * c;
  const double panNow = pan + aroundDeg * kRad;
  const Vec3 levelNow(std::sin(panNow), 0, std::cos(panNow));
  const Vec3 rightNow(std::cos(panNow), 0, -std::sin(panNow));
  camera.eye = placeOf(pivot + awayNow * levelNow + side * rightNow + Vec3(0, upNow, 0));
  camera.panDeg = std::remainder(camera.panDeg + aroundDeg, 360.0);
  camera.pitchDeg -= overDeg;
  return camera;
}

/// The share of the way that `isLawful` allows, when the start is lawful.
template <class Made, class Lawful>
CameraPlace asFarAs(const Made& made, const Lawful& isLawful) {
  if (CameraPlace all = made(1.0); isLawful(all)) return all;
  double good = 0, bad = 1;
  for (int k = 0; k < 40; ++k) {
    const double middle = (good + bad) / 2;
    (isLawful(made(middle)) ? good : bad) = middle;
  }
  return made(good);
}

double heightSeen(const CameraPlace& camera, const Vec3& chin, const Vec3& crown, double aspect) {
  const Camera c(camera, aspect);
  const Point a = c.projectAlways(chin), b = c.projectAlways(crown);
  return std::hypot(a.x - b.x, a.y - b.y);
}

/// The eye moved so that the place stands there before it: camera space x right, y down, z away.
CameraPlace withPlaceAt(CameraPlace camera, const Vec3& place, const Vec3& inCamera,
                        double aspect) {
  const Camera c(camera, aspect);
  camera.eye = placeOf(place - c.rotation().transpose() * inCamera);
  return camera;
}

double elevationOf(const CameraPlace& camera, const Vec3& pivot) {
  const Vec3 from = eyeOf(camera) - pivot;
  return std::atan2(from.y(), std::hypot(from.x(), from.z())) / kRad;
}

EyeHeight eyeHeightOf(double elevation, ShotSize shot) {
  EyeHeight best = EyeHeight::Level;
  for (const EyeHeight eye : {EyeHeight::Worm, EyeHeight::Low, EyeHeight::High, EyeHeight::Bird})
    if (std::abs(elevationDeg(eye, shot) - elevation) <
        std::abs(elevationDeg(best, shot) - elevation))
      best = eye;
  return best;
}

/// Side and tilt as the choice has them. A set runs the way of the product of pan and side, and a
/// camera that goes past the middle must not turn the place about.
void followSide(const Staging& before, Staging& out) {
  constexpr double kLeastDeg = 0.01;
  const bool leftward = runsLeftward(before);
  double& pan = out.camera.panDeg;
  if (out.camera.rollDeg != before.camera.rollDeg)
    out.choice.tiltDeg = (leftward ? -1 : 1) * out.camera.rollDeg;
  if (pan == before.camera.panDeg) return;
  if (std::abs(pan) < kLeastDeg) pan = out.choice.mirrored == leftward ? 0 : kLeastDeg;
  out.choice.sideDeg = pan == 0 ? 0 : leftward ? pan : -pan;
}

/// What is seen names the shot and the eye's height; names that hold already stay.
void followSize(const StagedPanel& panel, const Staging& before, Staging& out) {
  const Scene scene = panel.sceneOf(before);
  const auto shotBy = [&](const Staging& staging) {
    return shotOfRatio(statureOverFrame(scene, panel.cameraOf(staging)));
  };
  if (const ShotSize now = shotBy(out); now != shotBy(before)) out.choice.shot = now;
  const Vec3 pivot = pivotOf(scene);
  const auto eyeBy = [&](const CameraPlace& camera) {
    return eyeHeightOf(elevationOf(camera, pivot), out.choice.shot);
  };
  if (const EyeHeight now = eyeBy(out.camera); now != eyeBy(before.camera)) out.choice.eye = now;
}

}  // namespace

CameraPlace orbited(CameraPlace camera, const Vec3& pivot, double aroundDeg, double overDeg) {
  const double least = lowestEye(camera);
  const double steepest = std::max(kSteepestPitchDeg, std::abs(camera.pitchDeg));
  return asFarAs(
      [&](double share) { return turnedAbout(camera, pivot, aroundDeg, share * overDeg); },
      [&](const CameraPlace& c) {
        return std::abs(c.pitchDeg) <= steepest && c.eye.y >= least - 1e-9;
      });
}

CameraPlace dollied(CameraPlace camera, const Vec3& pivot, double times) {
  const Vec3 from = eyeOf(camera) - pivot;
  const double far = from.norm();
  if (far < 1e-6 || times <= 0) return camera;
  double now = std::clamp(far * times, std::min(kNearestPivotM, far), kFarthestPivotM);
  const double least = lowestEye(camera);
  if (from.y() < 0 && pivot.y() + from.y() * now / far < least)
    now = std::min(now, far * (least - pivot.y()) / from.y());
  camera.eye = placeOf(pivot + from * (now / far));
  return camera;
}

CameraPlace turned(CameraPlace camera, double panDeg, double tiltDeg) {
  camera.panDeg = std::remainder(camera.panDeg + panDeg, 360.0);
  camera.pitchDeg = std::clamp(camera.pitchDeg + tiltDeg, -kSteepestPitchDeg, kSteepestPitchDeg);
  return camera;
}

CameraPlace rolled(CameraPlace camera, double byDeg) {
  camera.rollDeg = std::clamp(camera.rollDeg + byDeg, -kMostRollDeg, kMostRollDeg);
  return camera;
}

CameraPlace shifted(CameraPlace camera, Vector by) {
  const auto within = [](double now, double was) {
    const double most = std::max(kMostLensShift, std::abs(was));
    return std::clamp(now, -most, most);
  };
  camera.offsetX = within(camera.offsetX + by.x, camera.offsetX);
  camera.offsetY = within(camera.offsetY + by.y, camera.offsetY);
  return camera;
}

CameraPlace trucked(CameraPlace camera, const Vec3& pivot, Vector by, double aspect) {
  const Camera c(camera, aspect);
  const double metres = std::max(c.depth(pivot), kNearestPivotM) / c.intrinsics()(0, 0);
  const Vec3 way = -(c.rotation().row(0) * by.x + c.rotation().row(1) * by.y).transpose() * metres;
  Vec3 eye = eyeOf(camera) + way;
  eye.y() = std::max(eye.y(), lowestEye(camera));
  camera.eye = placeOf(eye);
  return camera;
}

CameraPlace aimed(CameraPlace camera, const Vec3& place, Point wanted, double aspect) {
  constexpr int kSteps = 20;
  constexpr double kProbeDeg = 0.01, kLongestDeg = 20;
  for (int k = 0; k < kSteps; ++k) {
    const auto seen = [&](double pan, double tilt) {
      return Camera(turned(camera, pan, tilt), aspect).projectAlways(place);
    };
    const Point at = seen(0, 0);
    const Vector miss = wanted - at;
    if (miss.length() < 1e-9) break;
    const Vector a = (seen(kProbeDeg, 0) - at) * (1 / kProbeDeg);
    const Vector b = (seen(0, kProbeDeg) - at) * (1 / kProbeDeg);
    const double det = a.x * b.y - a.y * b.x;
    if (std::abs(det) < 1e-12) break;
    const double pan = (miss.x * b.y - miss.y * b.x) / det;
    const double tilt = (a.x * miss.y - a.y * miss.x) / det;
    camera = turned(camera, std::clamp(pan, -kLongestDeg, kLongestDeg),
                    std::clamp(tilt, -kLongestDeg, kLongestDeg));
  }
  return camera;
}

CameraPlace raised(CameraPlace camera, const Vec3& pivot, double metres, RiseBy by, double aspect) {
  const Point was = Camera(camera, aspect).projectAlways(pivot);
  camera.eye.y = std::max(camera.eye.y + metres, lowestEye(camera));
  if (by == RiseBy::Tilt) return aimed(camera, pivot, was, aspect);
  const Point now = Camera(camera, aspect).projectAlways(pivot);
  return shifted(camera, was - now);
}

CameraPlace withLens(CameraPlace camera, double focalMm) {
  camera.focalMm = std::clamp(focalMm, kShortestLensMm, kLongestLensMm);
  return camera;
}

CameraPlace withLensKeeping(CameraPlace camera, double focalMm, const Vec3& chin, const Vec3& crown,
                            double aspect) {
  const Vec3 middle = (chin + crown) / 2;
  const double wanted = heightSeen(camera, chin, crown, aspect);
  const Vec3 was = Camera(camera, aspect).cameraFromWorld(middle);
  if (was.z() <= 0 || wanted <= 0) return withLens(camera, focalMm);
  const CameraPlace lens = withLens(camera, focalMm);
  const double times = lens.focalMm / camera.focalMm;
  CameraPlace out = lens;
  double depth = was.z() * times;
  for (int k = 0; k < 12; ++k) {
    depth = std::clamp(depth, kNearestPivotM, kFarthestPivotM);
    const double across = depth / (was.z() * times);  // the middle keeps its place in the frame
    out = withPlaceAt(lens, middle, {was.x() * across, was.y() * across, depth}, aspect);
    depth *= heightSeen(out, chin, crown, aspect) / wanted;
  }
  out.eye.y = std::max(out.eye.y, lowestEye(camera));
  return out;
}

std::optional<CameraPlace> fitted(CameraPlace camera, const Rect& frame, const Fit& fit) {
  const double lens = camera.focalMm * fit.scale;
  if (fit.mirrored || lens < kShortestLensMm || lens > kLongestLensMm) return std::nullopt;
  const double halfHigh = 0.5 * frame.height() / frame.width();
  const auto moved = [&](double centre, double edge, double move) {
    return fit.scale * centre + (fit.scale * edge + move - edge) / frame.width();
  };
  camera.focalMm = lens;
  camera.offsetX = moved(0.5 + camera.offsetX, frame.min.x, fit.move.x) - 0.5;
  camera.offsetY = moved(halfHigh + camera.offsetY, frame.min.y, fit.move.y) - halfHigh;
  return camera;
}

Vec3 pivotOf(const Scene& scene) {
  if (scene.focus < 0) return scene.subject.middle();
  const Actor& actor = scene.actors[static_cast<std::size_t>(scene.focus)];
  return scene.handIsSubject ? workingPalm(actor) : headMiddle(actor.skeleton);
}

Staging seenBy(const StagedPanel& panel, const Staging& staging, const CameraPlace& camera) {
  Staging out = staging;
  out.camera = camera;
  followSize(panel, staging, out);
  if (std::abs(camera.focalMm - staging.camera.focalMm) > kSameLensMm)
    out.choice.lensMm = camera.focalMm;
  followSide(staging, out);
  return out;
}

}  // namespace tw
