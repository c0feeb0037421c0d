#include "press/reading_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "geometry/polygon.h"
#include "press/finding_mark.h"
#include "press/overlays.h"

namespace tw {

namespace {

constexpr double kCellMm = 2.2, kSpreadMm = 3.2;  // of the heat
constexpr double kLeastHeat = 0.06;
constexpr Ink kHeatInk{0.86, 0.62, 0.30};
constexpr double kMarkMm = kFindingMarkMm, kKeyPt = 6.5;
constexpr double kPathMm = 0.22;

/// How long eyes rest around each cell of a grid over the page, the most 1.
class Heat {
 public:
  Heat(const Rect& page, const std::vector<EyeRest>& rests)
      : page_(page),
        width_(std::max(1, static_cast<int>(page.width() / kCellMm))),
        height_(std::max(1, static_cast<int>(page.height() / kCellMm))),
        value_(static_cast<std::size_t>(width_ * height_)) {
    for (const EyeRest& rest : rests) add(rest);
    const double most = *std::ranges::max_element(value_);
    if (most > 0)
      for (double& v : value_) v /= most;
  }

  template <class Visit>
  void each(Visit visit) const {
    for (int y = 0; y < height_; ++y)
      for (int x = 0; x < width_; ++x) visit(middle(x, y), value_[index(x, y)]);
  }

 private:
  std::size_t index(int x, int y) const { return static_cast<std::size_t>(y * width_ + x); }
  Point middle(int x, int y) const {
    return page_.min + Vector{(x + 0.5) * kCellMm, (y + 0.5) * kCellMm};
  }
  void add(const EyeRest& rest) {
    const int reach = static_cast<int>(3 * kSpreadMm / kCellMm);
    const int cx = static_cast<int>((rest.at.x - page_.min.x) / kCellMm);
    const int cy = static_cast<int>((rest.at.y - page_.min.y) / kCellMm);
    for (int y = std::max(0, cy - reach); y <= std::min(height_ - 1, cy + reach); ++y)
      for (int x = std::max(0, cx - reach); x <= std::min(width_ - 1, cx + reach); ++x) {
        const double d = (middle(x, y) - rest.at).length() / kSpreadMm;
        value_[index(x, y)] += rest.milliseconds * std::exp(-d * d / 2);
      }
  }

  Rect page_;
  int width_, height_;
  std::vector<double> value_;
};

Point centreOf(const RoughPicture& picture, int panel) {
  if (panel <= 0) return picture.sheet.trimRect().min + Vector{4, 4};
  return bounds(picture.rough.panels[static_cast<std::size_t>(panel) - 1].outline).centre();
}

void label(Surface& surface, Point at, const std::string& text, const Typesetter& typesetter) {
  const double half = typesetter.widthOf(text, Face::Bold, kKeyPt) / 2 + 0.7;
  surface.fill(Path(Rect{at - Vector{half, 1.5}, at + Vector{half, 1.5}}), kPaper,
               FillRule::NonZero);
  surface.type({.text = text,
                .face = Face::Bold,
                .sizePt = kKeyPt,
                .at = at + Vector{0, 0.8},
                .align = Align::Centre,
                .ink = kLeadInk});
}

/// A dashed bow with an arrow head.
void drawBow(Surface& surface, Point from, Point to) {
  const Vector along = (to - from).unit(), side{-along.y, along.x};
  const double bend = 0.12 * (to - from).length();
  Path bow;
  bow.moveTo(from);
  bow.curveTo(from + (to - from) * 0.33 + side * bend, from + (to - from) * 0.67 + side * bend, to);
  surface.line(bow, {.ink = kPaper, .width = 1.1, .round = true});
  surface.line(bow, {.ink = kLeadInk, .width = 0.45, .dashes = {1.8, 1.1}});
  const Vector in = (to - (from + (to - from) * 0.67 + side * bend)).unit(), across{-in.y, in.x};
  const Polygon head{{to, to - in * 3 + across, to - in * 3 - across}};
  surface.fill(Path(head), kLeadInk, FillRule::NonZero);
}

/// The corner of the outline that lies lowest on the left.
Point lowerLeft(const Polygon& outline) {
  return *std::ranges::min_element(outline.points, {}, [](Point p) { return p.x - p.y; });
}

/// Where a finding's mark would best stand: at the lower right of its place, so that the place
/// itself stays in sight, or in a corner of its panel.
Point wishedPlace(const RoughPicture& picture, const Finding& finding) {
  if (!finding.place.points.empty()) return bounds(finding.place).max;
  const RoughPanel& panel = picture.rough.panels[static_cast<std::size_t>(finding.panel) - 1];
  return lowerLeft(panel.outline) + Vector{1.6 * kMarkMm, -1.8 * kMarkMm};
}

/// The next free place to the side of the wished one, then the row above.
Point freePlace(Point wished, const Rect& page, const std::vector<Point>& taken) {
  const double step = 2.5 * kMarkMm;
  const auto isFree = [&](Point at) {
    return std::ranges::none_of(taken, [&](Point t) { return (t - at).length() < 2.3 * kMarkMm; });
  };
  for (int row = 0; row < 12; ++row)
    for (int column = 0; column < 10; ++column) {
      const Point at = wished + Vector{column * step, -row * step};
      if (at.x < page.max.x && at.y > page.min.y && isFree(at)) return at;
    }
  return wished;
}

}  // namespace

void drawRests(Surface& surface, const RoughPicture& picture, const std::vector<EyeRest>& rests) {
  if (rests.empty()) return;
  Heat(picture.sheet.trimRect(), rests).each([&](Point at, double heat) {
    if (heat < kLeastHeat) return;
    const double r = 0.42 * kCellMm * std::sqrt(heat);
    surface.fill(Path(ellipse(at, r, r, 12)), kHeatInk, FillRule::NonZero);
  });
}

void drawPath(Surface& surface, const std::vector<EyeRest>& path) {
  if (path.empty()) return;
  Path line;
  std::vector<Point> points;
  for (const EyeRest& rest : path) points.push_back(rest.at);
  line.add(points, false);
  surface.line(line, {.ink = kPaper, .width = 0.7, .round = true});
  surface.line(line, {.ink = kEyeInk, .width = kPathMm, .round = true});
  for (const EyeRest& rest : path) {
    const double r = std::clamp(0.045 * std::sqrt(rest.milliseconds), 0.35, 1.5);
    const Path dot(ellipse(rest.at, r, r, 24));
    surface.fill(dot, rest.onCopy ? kPaper : kEyeInk, FillRule::NonZero);
    surface.line(dot, {.ink = kEyeInk, .width = kPathMm});
  }
}

void drawPartings(Surface& surface, const RoughPicture& picture,
                  const std::vector<PanelMove>& partings, const Typesetter& typesetter) {
  for (const PanelMove& move : partings) {
    const Point from = centreOf(picture, move.from), to = centreOf(picture, move.to);
    if ((to - from).length() < 8) continue;
    drawBow(surface, from, to);
    label(surface, between(from, to, 0.5), fmt::format("{:.0f} %", 100 * move.share), typesetter);
  }
}

void drawFindingMarks(Surface& surface, const RoughPicture& picture,
                      const std::vector<Finding>& findings) {
  std::vector<Point> taken;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    if (findings[i].panel <= 0) continue;
    const Point at = freePlace(wishedPlace(picture, findings[i]), picture.sheet.trimRect(), taken);
    taken.push_back(at);
    drawFindingMark(surface, at, findings[i].severity, i + 1, !findings[i].silencedWhy.empty());
  }
}

void drawReadingKey(Surface& surface, const RoughPicture& picture) {
  double x = picture.sheet.trimRect().min.x + 3;
  const double y = picture.sheet.bleedRect().min.y - kSlugMm / 2;
  const auto word = [&](const std::string& text, double to, Ink ink) {
    surface.type({.text = text, .sizePt = kKeyPt, .at = {x, y + 0.8}, .ink = ink});
    x += to;
  };
  for (int i = 0; i < 3; ++i) {
    const double r = 0.35 + 0.3 * i;
    surface.fill(Path(ellipse({x + 2.3 * i, y}, r, r, 16)), kHeatInk, FillRule::NonZero);
  }
  x += 7;
  word("where eyes rest", 25, kEyeInk);
  drawPath(surface, {{{x, y}, 250, false}, {{x + 6, y}, 230, true}});
  x += 8;
  word("one reader's path, open on copy", 42, kEyeInk);
  drawBow(surface, {x, y}, {x + 8, y});
  x += 9.5;
  word("readers part", 20, kLeadInk);
}

}  // namespace tw
