// The backdrop.
//
//  1 The setting's words give a mood: what the ground is, how dark sky, ground and set are.
//  2 The horizon is the camera's own (vanishing line of the ground); it splits the frame into sky
//    and ground for flat tones.
//  3 Ground marks are laid out in the world on rings of growing distance before the camera, so that
//    they crowd toward the horizon as real ones do; each is a short stroke along the ground.
//  4 Every stroke is broken where the picture shows something nearer, with a margin around figures
//    so that these stand clear.
// Placement comes from a seeded source whose seed is the camera's place and the mood, so the same
// panel gives the same marks. Cost: a few hundred look-ups.
#include "stage/set_lines.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <limits>
#include <numbers>

#include "base/random.h"
#include "geometry/polygon.h"
#include "stage/pen.h"

namespace tw {

namespace {

constexpr double kClearMm = 0.7;  // between a figure's outline and set lines
constexpr double kStepMm = 0.4;
constexpr double kRunOutMm = 0.4;  // past the frame, so that the border cuts the lines

bool says(const std::string& words, std::initializer_list<const char*> any) {
  return std::any_of(any.begin(), any.end(),
                     [&](const char* w) { return words.find(w) != std::string::npos; });
}

std::string lowered(std::string text) {
  for (char& c : text)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return text;
}

/// The part of a convex polygon where a·x + b·y + c ≥ 0.
Polygon cutByLine(const Polygon& polygon, const Vec3& line) {
  Polygon out;
  const auto value = [&](Point p) { return line.x() * p.x + line.y() * p.y + line.z(); };
  const std::size_t n = polygon.points.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Point &a = polygon.points[i], &b = polygon.points[(i + 1) % n];
    const double va = value(a), vb = value(b);
    if (va >= 0) out.points.push_back(a);
    if ((va >= 0) != (vb >= 0)) out.points.push_back(between(a, b, va / (va - vb)));
  }
  return out;
}

class Backdrop {
 public:
  Backdrop(const PanelView& view, const Mood& mood, double lineMm)
      : view_(view), mood_(mood), lineMm_(lineMm), random_(seedOf(view, mood)) {
    const Vec3 h = view.camera.horizon();
    // From frame units to mm: x_frame = (x_mm − min) / width.
    const double w = view.frame.width();
    horizon_ = Vec3(h.x() / w, h.y() / w,
                    h.z() - (h.x() * view.frame.min.x + h.y() * view.frame.min.y) / w);
  }

  SetDrawing draw() {
    if (mood_.underwater) {
      drawWater();
    } else {
      drawTones();
      if (mood_.sky) drawHorizon();
      if (mood_.sky && mood_.skyDark < 0.5) drawClouds();
    }
    if (mood_.ground != Ground::None) drawGroundMarks();
    if (mood_.rain) drawRain();
    return std::move(out_);
  }

 private:
  static std::uint64_t seedOf(const PanelView& view, const Mood& mood) {
    const Vec3& e = view.camera.eye();
    const double mixed = e.x() * 7.3 + e.y() * 13.1 + e.z() * 3.7 + view.camera.aspect() * 11;
    return static_cast<std::uint64_t>(std::llround(std::abs(mixed) * 1000)) * 8 +
           static_cast<std::uint64_t>(mood.ground);
  }

  double between01(double low, double high) { return low + (high - low) * random_.uniform(); }

  void tone(Polygon polygon, double darkness) {
    if (darkness > 0 && polygon.points.size() >= 3)
      out_.tones.push_back({{std::move(polygon)}, darkness});
  }

  /// A thing nearer than `depth` stands there; figures keep a margin.
  bool isCovered(Point page, double depth) const {
    constexpr std::array<Vector, 5> around{
        {{0, 0}, {kClearMm, 0}, {-kClearMm, 0}, {0, kClearMm}, {0, -kClearMm}}};
    for (const Vector& v : around)
      if (view_.picture.depth[view_.pixelAt(view_.pxFromPage(page + v))] < depth) return true;
    return false;
  }

  /// Draws the line, broken where covered. One depth for all of it.
  void line(const std::vector<Point>& points, double depth, double weight, double darkness = 1,
            double taper = 2) {
    std::vector<Point> run;
    const auto flush = [&] {
      if (run.size() >= 4)
        out_.strokes.push_back(drawnLine(run, lineMm_ * weight, darkness, taper));
      run.clear();
    };
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
      const double length = (points[i + 1] - points[i]).length();
      const int steps = std::max(1, static_cast<int>(length / kStepMm));
      for (int k = 0; k < steps; ++k) {
        const Point p = between(points[i], points[i + 1], static_cast<double>(k) / steps);
        if (view_.frame.outset(kRunOutMm).contains(p) && !isCovered(p, depth))
          run.push_back(p);
        else
          flush();
      }
    }
    flush();
  }

  void drawTones() {
    const Polygon whole = polygonOf(view_.frame.outset(1));
    if (!mood_.sky) {
      tone(whole, mood_.skyDark);
      return;
    }
    tone(cutByLine(whole, horizon_), mood_.skyDark);
    tone(cutByLine(whole, -horizon_), mood_.groundDark);
  }

  void drawHorizon() {
    const Polygon strip = cutByLine(polygonOf(view_.frame.outset(1)), horizon_);
    std::vector<Point> on;
    for (const Point& p : strip.points)
      if (std::abs(horizon_.x() * p.x + horizon_.y() * p.y + horizon_.z()) < 1e-9) on.push_back(p);
    if (on.size() != 2) return;
    if (on[0].x > on[1].x) std::swap(on[0], on[1]);
    const double far = std::numeric_limits<double>::infinity();
    line({on[0], on[1]}, far, 0.55, 1, 0.5);
    if (mood_.ground == Ground::Land) drawRidge(on[0], on[1]);
  }

  /// A far line of hills: two slow waves above the horizon, over part of it.
  void drawRidge(Point a, Point b) {
    const double length = (b - a).length();
    const double high = between01(0.02, 0.05) * view_.frame.width();
    const double from = between01(-0.1, 0.25), to = from + between01(0.45, 0.8);
    const double p1 = between01(0, 6), p2 = between01(0, 6);
    std::vector<Point> points;
    const int n = 60;
    for (int i = 0; i <= n; ++i) {
      const double s = static_cast<double>(i) / n, t = from + (to - from) * s;
      const double rise = high * std::sin(std::numbers::pi * s) *
                          (0.7 + 0.3 * std::sin(7 * s + p1) + 0.12 * std::sin(19 * s + p2));
      points.push_back(between(a, b, t) + Vector{0, -std::max(0.0, rise)});
    }
    if (length > 10) line(points, std::numeric_limits<double>::infinity(), 0.42);
  }

  void drawClouds() {
    const double w = view_.frame.width();
    const int count = 2 + static_cast<int>(random_.uniform() * 2);
    for (int i = 0; i < count; ++i) {
      const double x = view_.frame.min.x + between01(0.02, 0.85) * w;
      const double y = view_.frame.min.y + between01(0.06, 0.4) * view_.frame.height();
      const double length = between01(0.12, 0.3) * w;
      const double phase = between01(0, 6);
      std::vector<Point> points;
      bool inSky = true;
      for (int k = 0; k <= 24; ++k) {
        const double t = k / 24.0;
        const Point p{x + t * length, y + 0.006 * w * std::sin(9 * t + phase) * (1 - t)};
        inSky = inSky && horizon_.x() * p.x + horizon_.y() * p.y + horizon_.z() > 0;
        points.push_back(p);
      }
      if (inSky) line(points, std::numeric_limits<double>::infinity(), 0.4, 1, 5);
    }
  }

  /// One short mark along the ground at a world place, sideways to the view.
  void groundMark(const Vec3& at, double halfLength) {
    const Vec3 across = view_.camera.rotation().row(0).transpose();
    const Vec3 flat = Vec3(across.x(), 0, across.z()).normalized();
    const double depth = view_.camera.depth(at);
    if (depth < 1) return;
    const bool water = mood_.ground == Ground::Water;
    std::vector<Point> points;
    const double phase = between01(0, 6), bend = between01(-1, 1);
    for (int k = 0; k <= 24; ++k) {
      const double t = k / 12.0 - 1;
      const double wave =
          (water ? 0.045 * std::sin(4.2 * t + phase) : 0.1 * (1 - t * t) * bend) * halfLength;
      const auto p = view_.camera.project(at + flat * (t * halfLength) + Vec3(0, wave, 0));
      if (p) points.push_back(view_.pageFromFrame(*p));
    }
    const double near = std::clamp(std::pow(4 / depth, 0.35), 0.55, 1.0);
    line(points, depth - 0.05, 0.5 * near, 1, 4);
  }

  void drawGroundMarks() {
    const Vec3 forward3 = view_.camera.rotation().row(2).transpose();
    const Vec3 forward = Vec3(forward3.x(), 0, forward3.z()).normalized();
    const Vec3 across(forward.z(), 0, -forward.x());
    const Vec3 foot(view_.camera.eye().x(), 0, view_.camera.eye().z());
    const bool water = mood_.ground == Ground::Water;
    const int rings = mood_.ground == Ground::Floor ? 4 : (water ? 9 : 7);
    double distance = 1.6;
    for (int ring = 0; ring < rings; ++ring, distance *= 1.55) {
      const double half = 0.55 * distance / view_.camera.intrinsics()(0, 0);
      const int marks = mood_.ground == Ground::Floor ? 2 : 3;
      for (int m = 0; m < marks; ++m) {
        const Vec3 at = foot + forward * (distance * between01(0.85, 1.25)) +
                        across * (half * between01(-1, 1));
        groundMark(at, half * (water ? between01(0.07, 0.2) : between01(0.05, 0.13)));
      }
    }
  }

  void drawWater() {
    const Rect& f = view_.frame;
    tone(polygonOf(f.outset(1)), mood_.skyDark);
    const double w = f.width(), h = f.height();
    // Shafts of light fan out from one place above the frame; what lies between is darker.
    const Point sun{f.min.x + between01(0.15, 0.7) * w, f.min.y - 0.5 * h};
    double angle = between01(-0.75, -0.6);
    while (angle < 0.7) {
      const double wide = between01(0.03, 0.09), pause = between01(0.12, 0.3);
      const auto at = [&](double a, double r) {
        return Point{sun.x + std::sin(a) * r, sun.y + std::cos(a) * r};
      };
      const double reach = h * between01(1.05, 1.5);
      tone({{at(angle, 0.3 * h), at(angle + wide, 0.3 * h), at(angle + wide * 0.7, reach),
             at(angle + wide * 0.35, reach * 1.06)}},
           0.45 * mood_.skyDark);
      angle += wide + pause;
    }
    // The deep is dark: a rolling edge near the bottom.
    Polygon deep;
    const double level = f.max.y - between01(0.1, 0.16) * h, p = between01(0, 6);
    for (int i = 0; i <= 40; ++i) {
      const double t = i / 40.0;
      deep.points.push_back({f.min.x - 1 + t * (w + 2), level + 0.03 * h * std::sin(5 * t + p) +
                                                            0.015 * h * std::sin(13 * t)});
    }
    deep.points.push_back({f.max.x + 1, f.max.y + 1});
    deep.points.push_back({f.min.x - 1, f.max.y + 1});
    tone(deep, mood_.groundDark);
    drawBubbles();
  }

  void drawBubbles() {
    const Rect& f = view_.frame;
    const double x0 = f.min.x + between01(0.2, 0.8) * f.width();
    double y = f.max.y - between01(0.1, 0.3) * f.height();
    for (int i = 0; i < 9; ++i) {
      const double r = f.width() * between01(0.003, 0.009);
      const Point c{x0 + f.width() * 0.02 * std::sin(i * 1.9), y};
      std::vector<Point> ring;
      for (int k = 0; k <= 20; ++k) {
        const double a = k * 2 * std::numbers::pi / 20 - 1;
        ring.push_back({c.x + r * std::cos(a), c.y + r * std::sin(a)});
      }
      line(ring, std::numeric_limits<double>::infinity(), 0.45, 1, 0.8);
      y -= f.height() * between01(0.03, 0.09);
    }
  }

  void drawRain() {
    const Rect& f = view_.frame;
    const int count = static_cast<int>(30 + f.area() / 90);
    for (int i = 0; i < count; ++i) {
      const Point p{f.min.x + between01(-0.1, 1) * f.width(),
                    f.min.y + between01(-0.1, 1) * f.height()};
      const double length = between01(0.05, 0.13) * f.height();
      line({p, p + Vector{0.28 * length, length}}, std::numeric_limits<double>::infinity(), 0.4,
           mood_.skyDark > 0.5 ? 0 : 1);
    }
  }

  const PanelView& view_;
  const Mood& mood_;
  double lineMm_;
  Random random_;
  Vec3 horizon_;  ///< in mm, positive toward the sky
  SetDrawing out_;
};

}  // namespace

Mood moodOf(const std::string& setting) {
  const std::string words = lowered(setting);
  Mood mood;
  if (says(words, {"underwater", "under water", "sea floor", "seabed"})) {
    mood.underwater = true;
    mood.ground = Ground::Seabed;
    mood.sky = mood.castShadows = false;
    mood.skyDark = 0.22;
    mood.groundDark = 0.9;
    mood.setDark = 0.38;
    mood.setShade = 0.75;
    mood.figureShade = 0.42;
    return mood;
  }
  if (says(words, {"interior", "int.", "inside", "room", "kitchen", "cabin", "office", "cellar"})) {
    mood.ground = Ground::Floor;
    mood.sky = false;
  } else if (says(words,
                  {"lake", "sea", "boat", "harbour", "harbor", "river", "flooded", "water"})) {
    mood.ground = Ground::Water;
    mood.castShadows = false;
  } else if (words.empty() || says(words, {"none"})) {
    mood.ground = Ground::None;
    mood.sky = false;
  }
  if (says(words, {"night", "dark", "midnight", "moon"})) {
    mood.skyDark = mood.sky ? 0.92 : 0.55;
    mood.groundDark = 0.3;
    mood.setDark = 0.5;
    mood.setShade = 0.88;
    mood.figureShade = 0.45;
  } else if (says(words, {"dawn", "dusk", "evening", "sunset", "storm", "fog", "mist"})) {
    mood.skyDark = 0.1;
    mood.setDark = 0.16;
    mood.setShade = 0.34;
  }
  mood.rain = mood.sky && says(words, {"rain", "storm"});
  return mood;
}

SetDrawing setLines(const PanelView& view, const Mood& mood, double lineMm) {
  return Backdrop(view, mood, lineMm).draw();
}

}  // namespace tw
