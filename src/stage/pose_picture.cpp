// The line of action runs from the crown through chest and hips to the foot that carries it on,
// as one curve through these four (Catmull and Rom 1974), a little longer than the body.
#include "stage/pose_picture.h"

#include <algorithm>
#include <cmath>

#include "geometry/polygon.h"
#include "stage/picture.h"
#include "stage/solid_shapes.h"

namespace tw {
namespace {

constexpr double kDistanceM = 8;  // long lens: little perspective
constexpr double kEyeM = 1.3;
constexpr double kFilmMm = 36;
constexpr int kPixelsAcross = 700;
constexpr double kLineMm = 0.22;
constexpr double kBeyond = 0.35;  // of the first and last step, where the line runs out

Solid solidOf(const PosedFigure& figure, int index) {
  const Skeleton skeleton = posed(figure.body, figure.pose, figure.set);
  Solid solid;
  solid.mesh = bodyMesh(figure.body, skeleton);
  solid.figure = index;
  solid.isFocus = index == 0;
  dress(solid, figure.body, skeleton);
  return solid;
}

Solid seatOf(const PosedFigure& figure) {
  const Vec3 hips = posed(figure.body, figure.pose, figure.set)[Joint::Pelvis];
  Solid seat;
  seat.mesh = placed(boxMesh({0.46, figure.pose.seat * figure.body.stature, 0.42}),
                     {hips.x(), figure.set.at.y, hips.z()}, figure.set.headingDeg);
  return seat;
}

double middleAcross(const std::vector<Solid>& solids) {
  double least = 1e9, most = -1e9;
  for (const Solid& solid : solids)
    for (const Vec3& p : solid.mesh.points) {
      least = std::min(least, p.x());
      most = std::max(most, p.x());
    }
  return (least + most) / 2;
}

CameraPlace cameraFor(double middle, const Rect& frame, double mmPerMetre, double groundMm) {
  const double wide = frame.width() / mmPerMetre, high = frame.height() / mmPerMetre;
  CameraPlace camera;
  camera.eye = {middle, kEyeM, -kDistanceM};
  camera.focalMm = kFilmMm * kDistanceM / wide;
  camera.offsetY = (high / 2 - groundMm / mmPerMetre - kEyeM) / wide;
  return camera;
}

Point along(const std::array<Point, 4>& p, double t) {
  const auto blend = [&](double a, double b, double c, double d) {
    return 0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t * t +
                  (3 * b - a - 3 * c + d) * t * t * t);
  };
  return {blend(p[0].x, p[1].x, p[2].x, p[3].x), blend(p[0].y, p[1].y, p[2].y, p[3].y)};
}

std::vector<Point> curveThrough(const std::vector<Point>& through) {
  constexpr int kSteps = 10;
  std::vector<Point> out;
  const Point first = through.front() + (through[0] - through[1]) * kBeyond;
  const Point last = through.back() + (through.back() - through[through.size() - 2]) * kBeyond;
  std::vector<Point> p{first};
  p.insert(p.end(), through.begin(), through.end());
  p.push_back(last);
  p.insert(p.begin(), first + (first - through.front()));
  p.push_back(last + (last - through.back()));
  for (std::size_t i = 0; i + 3 < p.size(); ++i)
    for (int k = 0; k <= kSteps; ++k)
      out.push_back(along({p[i], p[i + 1], p[i + 2], p[i + 3]}, k / static_cast<double>(kSteps)));
  return out;
}

std::vector<Point> lineOfAction(const PosedFigure& figure, const Camera& camera,
                                const Rect& frame) {
  const Skeleton s = posed(figure.body, figure.pose, figure.set);
  const Vec3 down = (s[Joint::Pelvis] - s[Joint::Chest]).normalized();
  const auto reach = [&](Joint ankle) { return (s[ankle] - s[Joint::Pelvis]).dot(down); };
  const Joint foot =
      reach(Joint::LeftAnkle) > reach(Joint::RightAnkle) ? Joint::LeftAnkle : Joint::RightAnkle;
  std::vector<Point> through;
  for (const Vec3& at : {s[Joint::Crown], s[Joint::Chest], s[Joint::Pelvis], s[foot]}) {
    const Point p = camera.projectAlways(at);
    through.push_back(frame.min + Vector{p.x, p.y} * frame.width());
  }
  return curveThrough(through);
}

/// Who is in the air, or hangs, is let down until the picture holds him.
void lowerInto(PosedFigure& figure, double room) {
  constexpr double kAirM = 0.06;
  if (figure.pose.support != "none") return;
  const Skeleton s = posed(figure.body, figure.pose, figure.set);
  double top = 0;
  for (const Vec3& at : s.at) top = std::max(top, at.y());
  figure.set.at.y -= std::clamp(top + kAirM - room, 0.0, figure.pose.lift * figure.body.stature);
}

}  // namespace

PosePicture posePicture(std::vector<PosedFigure> figures, const Rect& frame, double mmPerMetre,
                        double groundMm) {
  if (figures.size() == 1) lowerInto(figures[0], (frame.height() - groundMm) / mmPerMetre);
  std::vector<Solid> solids;
  for (std::size_t i = 0; i < figures.size(); ++i)
    solids.push_back(solidOf(figures[i], static_cast<int>(i)));
  const Camera camera(cameraFor(middleAcross(solids), frame, mmPerMetre, groundMm),
                      frame.width() / frame.height());
  for (const PosedFigure& figure : figures)
    if (figure.pose.seat > 0) solids.push_back(seatOf(figure));
  DrawOptions options;
  options.lineMm = kLineMm;
  options.setLines = false;
  options.width = kPixelsAcross;
  PosePicture out;
  out.drawing = drawPanel(solids, camera, frame, polygonOf(frame), options);
  for (const PosedFigure& figure : figures)
    out.actions.push_back(lineOfAction(figure, camera, frame));
  return out;
}

}  // namespace tw
