// Marks are polylines in head coordinates (see HeadMarks), laid on an elliptic face plane per
// height; each point is kept where the surface there turns to the eye and the picture shows this
// head, not hair or another thing, at about that depth. Sizes of features by the half-and-third
// rule of drawing schools (eyes at half height, nose at a third); common practice, no source.
#include "stage/face_lines.h"

#include <algorithm>
#include <cmath>

#include "geometry/polygon.h"
#include "stage/pen.h"

namespace tw {

namespace {

constexpr double kLeastHeadMm = 5;
constexpr double kFullFaceMm = 9;  // from here on lids, nose and mouth are drawn in full
constexpr double kDepthSlackM = 0.03;

struct FacePoint {
  double x, y;
};

/// Front and back reach of the face at a height above the chin, head depths; from the head's build.
struct Slice {
  double y, front, back;
};
constexpr Slice kFace[] = {{0.0, 0.38, -0.20}, {0.13, 0.42, -0.02}, {0.22, 0.425, 0.10},
                           {0.32, 0.43, 0.26}, {0.50, 0.415, 0.47}, {0.60, 0.455, 0.51},
                           {0.80, 0.40, 0.50}};

Vec3 onFace(const HeadMarks& head, FacePoint p) {
  const Slice* low = kFace;
  while (low + 2 < std::end(kFace) && low[1].y < p.y) ++low;
  const double t = std::clamp((p.y - low[0].y) / (low[1].y - low[0].y), 0.0, 1.0);
  const double front = low[0].front + t * (low[1].front - low[0].front);
  const double back = low[0].back + t * (low[1].back - low[0].back);
  const double round = std::sqrt(std::max(0.0, 1 - p.x * p.x));
  return head.at(p.x, p.y, (front - back) / 2 + (front + back) / 2 * round);
}

class FaceArtist {
 public:
  FaceArtist(const HeadMarks& head, int index, const PanelView& view, double lineMm)
      : head_(head), index_(index), view_(view) {
    const auto chin = view.camera.project(head.at(0, 0, 0));
    const auto crown = view.camera.project(head.at(0, 1, 0));
    const double depth = view.camera.depth(head.at(0, 0.5, 0));
    // A head seen from above is short on the page; its size is judged by depth then.
    const double byDepth = view.camera.intrinsics()(0, 0) * head.axes.col(1).norm() /
                           std::max(0.05, depth) * view.frame.width();
    headMm_ = chin && crown ? byDepth : 0;
    lineMm_ = lineMm * std::clamp(headMm_ / 16, 0.45, 1.15);
  }

  FaceDrawing draw() {
    if (headMm_ < kLeastHeadMm) return {};
    for (const double side : {-1.0, 1.0}) drawEye(side);
    if (headMm_ >= kFullFaceMm * 0.75) drawNose();
    drawMouth();
    return std::move(out_);
  }

 private:
  bool turnedToEye(FacePoint p) const {
    const double round = std::sqrt(std::max(0.0, 1 - p.x * p.x));
    const Vec3 outward =
        head_.axes.col(0).normalized() * p.x + head_.axes.col(2).normalized() * (round + 0.05);
    return outward.normalized().dot((view_.camera.eye() - onFace(head_, p)).normalized()) > 0.12;
  }

  bool isSeen(FacePoint p, Point& page) const {
    const Vec3 world = onFace(head_, p);
    const auto place = view_.camera.project(world);
    if (!place || !turnedToEye(p)) return false;
    const Point px{place->x * view_.picture.width, place->y * view_.picture.width};
    page = view_.pageFromPx(px);
    const std::size_t i = view_.pixelAt(px);
    return view_.picture.solid[i] == index_ &&
           view_.picture.part[i] == static_cast<std::uint8_t>(BodyPart::Head) &&
           std::abs(view_.picture.depth[i] - view_.camera.depth(world)) < kDepthSlackM;
  }

  void line(const std::vector<FacePoint>& marks, double weight) {
    std::vector<Point> points;
    const auto flush = [&] {
      if (points.size() >= 3)
        out_.strokes.push_back(drawnLine(points, lineMm_ * weight, 1, headMm_ * 0.05));
      points.clear();
    };
    for (const FacePoint& mark : marks) {
      Point page;
      if (isSeen(mark, page))
        points.push_back(page);
      else
        flush();
    }
    flush();
  }

  void spot(const std::vector<FacePoint>& ring) {
    Tone tone;
    tone.darkness = 1;
    Polygon polygon;
    for (const FacePoint& p : ring) {
      Point page;
      if (!isSeen(p, page)) return;
      polygon.points.push_back(page);
    }
    tone.region = {polygon};
    out_.tones.push_back(std::move(tone));
  }

  static std::vector<FacePoint> arc(double x0, double x1, double y, double rise, double slope,
                                    int steps = 10) {
    std::vector<FacePoint> out;
    for (int i = 0; i <= steps; ++i) {
      const double t = static_cast<double>(i) / steps;
      out.push_back({x0 + (x1 - x0) * t, y + rise * 4 * t * (1 - t) + slope * (t - 0.5)});
    }
    return out;
  }

  static std::vector<FacePoint> disc(double x, double y, double rx, double ry) {
    std::vector<FacePoint> out;
    for (int i = 0; i < 14; ++i) {
      const double a = i * 2 * 3.14159265358979 / 14;
      out.push_back({x + rx * std::cos(a), y + ry * std::sin(a)});
    }
    return out;
  }

  void drawEye(double side) {
    const bool full = headMm_ >= kFullFaceMm;
    line(arc(side * 0.16, side * 0.70, 0.585, 0.028, 0.0), full ? 1.25 : 1.0);
    if (full) {
      line(arc(side * 0.20, side * 0.63, 0.478, 0.036, 0.006), 0.95);
      line(arc(side * 0.30, side * 0.52, 0.448, -0.010, 0), 0.45);
      spot(disc(side * 0.42, 0.484, 0.088, 0.030));
    } else {
      spot(disc(side * 0.42, 0.487, 0.11, 0.030));
    }
  }

  void drawNose() { line(arc(-0.14, 0.14, 0.288, -0.012, 0), 0.6); }

  void drawMouth() {
    const double open = head_.mouthOpen;
    if (open > 0.15) {
      spot(disc(0, 0.175 - 0.05 * open, 0.24, 0.02 + 0.065 * open));
      return;
    }
    line(arc(-0.28, 0.28, 0.185, -0.012, 0), 0.85);
    if (headMm_ >= kFullFaceMm) line(arc(-0.12, 0.12, 0.135, -0.008, 0), 0.45);
  }

  const HeadMarks& head_;
  int index_;
  const PanelView& view_;
  double headMm_ = 0, lineMm_ = 0.3;
  FaceDrawing out_;
};

}  // namespace

Vec3 facePlace(const HeadMarks& head, double x, double y) {
  return onFace(head, {std::clamp(x, -0.98, 0.98), y});
}

HeadMarks headMarks(const Body& body, const Skeleton& skeleton) {
  constexpr double kSkullBase = 0.24;  // head heights above the chin, as the skeleton has it
  constexpr double kWideOpenDeg = 24;
  const auto head = static_cast<std::size_t>(Joint::Head);
  HeadMarks marks;
  marks.axes = skeleton.frame[head];
  marks.axes.col(0) *= body.headBreadth / 2;
  marks.axes.col(1) *= body.headHeight;
  marks.axes.col(2) *= body.headDepth;
  marks.origin = skeleton.at[head] - kSkullBase * marks.axes.col(1);
  marks.mouthOpen = std::clamp(skeleton.jawDeg / kWideOpenDeg, 0.0, 1.0);
  return marks;
}

FaceDrawing faceLines(const Solid& solid, int index, const PanelView& view, double lineMm) {
  if (!solid.head) return {};
  return FaceArtist(*solid.head, index, view, lineMm).draw();
}

}  // namespace tw
