// What a panel leaves free.
//
// Idea. The search asks thousands of places, so every question must be answered in well under a
// microsecond. A balloon is known as a few strips (rectangles that together contain it); what it
// must not cover is known as strips too, and rectangles are compared. Bodies, which may be covered
// at a price, are drawn on a grid once and summed up (summed-area table), so that the cells under
// a strip are four look-ups.
// Cost: one inward offset and one intersection by Clipper per panel, about 30 µs.
// Badly done: strips are a little larger than the shapes, so balloons keep a little more distance
// than they must; hidden bodies are counted in cells of a forty-eighth of the panel.
// Source: summed-area tables, Crow 1984, from memory, high.

#include "letter/panel_room.h"

#include <algorithm>

#include "geometry/polygon.h"
#include "letter/balloon_shape.h"

namespace tw {
namespace {

constexpr int kFaceStrips = 6, kInsetStrips = 8;
/// From the panel's outline to where tails stop: the border's weight and a hair.
constexpr double kTailInsideMm = 0.6;
constexpr int kCellsAcross = 48;  ///< of the body grid, along the panel's larger side

Rect shifted(const Rect& r, Point by) {
  return {{r.min.x + by.x, r.min.y + by.y}, {r.max.x + by.x, r.max.y + by.y}};
}

double commonArea(const Rect& a, const Rect& b) {
  const double w = std::min(a.max.x, b.max.x) - std::max(a.min.x, b.min.x);
  const double h = std::min(a.max.y, b.max.y) - std::max(a.min.y, b.min.y);
  return w > 0 && h > 0 ? w * h : 0;
}

const Polygon& largest(const Region& region) {
  return *std::max_element(region.begin(), region.end(),
                           [](const Polygon& a, const Polygon& b) { return area(a) < area(b); });
}

/// The part of the panel in which outlines may stand. Type keeps to the live area; the outline
/// around it may reach a little beyond.
Polygon allowedPart(const LetterRequest& request, const LetterStyle& style) {
  const Region inset = offset({request.panel}, -style.gapMm);
  // The least padding is that above the smallest type; a little less keeps type well inside.
  const double beyond = style.paddingMm * 0.6 * style.smallestPt / style.sizePt;
  const Region live{polygonOf(request.live.outset(beyond))};
  Region part = common(inset, live);
  if (part.empty()) part = inset;
  return part.empty() ? request.panel : largest(part);
}

/// Everything inside the border; the panel itself when it is too small to have an inside.
Polygon insideBorder(const Polygon& panel) {
  const Region inside = offset({panel}, -kTailInsideMm);
  return inside.empty() ? panel : largest(inside);
}

}  // namespace

bool segmentMeets(const Rect& r, Point a, Point b) {
  double in = 0, out = 1;
  const auto slab = [&](double from, double step, double low, double high) {
    if (step == 0) return from >= low && from <= high;
    const double s = (low - from) / step, t = (high - from) / step;
    in = std::max(in, std::min(s, t));
    out = std::min(out, std::max(s, t));
    return in <= out;
  };
  return slab(a.x, b.x - a.x, r.min.x, r.max.x) && slab(a.y, b.y - a.y, r.min.y, r.max.y);
}

bool segmentsCross(Point a, Point b, Point c, Point d) {
  const auto side = [](Point p, Point q, Point r) { return cross(q - p, r - p); };
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

PanelRoom::PanelRoom(const LetterRequest& request, const LetterStyle& style)
    : panel_(request.panel),
      allowed_(allowedPart(request, style)),
      tailRoom_(insideBorder(request.panel)),
      box_(bounds(allowed_)),
      panelBox_(bounds(request.panel)) {
  diagonal_ = std::hypot(panelBox_.width(), panelBox_.height());
  isBox_ = area(allowed_) > box_.area() * (1 - 1e-6);
  for (const Polygon& face : request.faces) {
    if (face.points.size() < 3) continue;
    faces_.push_back({bounds(face), stripsOf(face, kFaceStrips), face});
    for (const Rect& strip : faces_.back().strips) keepOff(strip);
  }
  for (const Rect& zone : request.keepClear) keepOff(zone);
  for (const Polygon& inset : request.covered) {
    if (inset.points.size() < 3) continue;
    for (const Polygon& around : offset({inset}, style.gapMm)) insets_.push_back(around);
    for (const Rect& strip : stripsOf(inset, kInsetStrips)) keepOff(strip.outset(style.gapMm));
  }
  rasterBodies(request.bodies);
}

void PanelRoom::rasterBodies(const std::vector<Region>& bodies) {
  if (bodies.empty()) return;
  cell_ = std::max({panelBox_.width(), panelBox_.height(), 1e-6}) / kCellsAcross;
  columns_ = std::max(1, static_cast<int>(std::ceil(panelBox_.width() / cell_)));
  rows_ = std::max(1, static_cast<int>(std::ceil(panelBox_.height() / cell_)));
  std::vector<char> covered(static_cast<std::size_t>(columns_) * rows_, 0);
  for (const Region& body : bodies) {
    for (int row = 0; row < rows_; ++row) rasterRow(body, row, covered);
  }
  sumUp(covered);
}

/// Marks the cells of one row between each pair of crossings (even-odd rule).
void PanelRoom::rasterRow(const Region& body, int row, std::vector<char>& covered) const {
  const double y = panelBox_.min.y + (row + 0.5) * cell_;
  std::vector<double> crossings;
  for (const Polygon& outline : body) {
    const std::size_t n = outline.points.size();
    for (std::size_t i = 0, j = n - 1; i < n; j = i++) {
      const Point p = outline.points[j], q = outline.points[i];
      if ((p.y < y) == (q.y < y)) continue;
      crossings.push_back(p.x + (q.x - p.x) * (y - p.y) / (q.y - p.y));
    }
  }
  std::sort(crossings.begin(), crossings.end());
  const auto column = [&](double x) {
    const double c = std::round((x - panelBox_.min.x) / cell_);
    return static_cast<std::ptrdiff_t>(std::clamp(c, 0.0, static_cast<double>(columns_)));
  };
  const auto from = covered.begin() + static_cast<std::ptrdiff_t>(row) * columns_;
  for (std::size_t k = 0; k + 1 < crossings.size(); k += 2) {
    std::fill(from + column(crossings[k]), from + column(crossings[k + 1]), char{1});
  }
}

void PanelRoom::sumUp(const std::vector<char>& covered) {
  const int wide = columns_ + 1;
  sums_.assign(static_cast<std::size_t>(wide) * (rows_ + 1), 0);
  for (int r = 0; r < rows_; ++r) {
    for (int c = 0; c < columns_; ++c) {
      sums_[(r + 1) * wide + c + 1] = covered[r * columns_ + c] + sums_[r * wide + c + 1] +
                                      sums_[(r + 1) * wide + c] - sums_[r * wide + c];
    }
  }
}

std::pair<double, double> PanelRoom::reachBetween(double top, double bottom) const {
  double left = box_.min.x, right = box_.max.x;
  if (isBox_) return {left, right};
  const std::size_t n = allowed_.points.size();
  for (const double y : {top, bottom}) {
    double low = 1e300, high = -1e300;
    for (std::size_t i = 0; i < n; ++i) {
      const Point p = allowed_.points[i], q = allowed_.points[(i + 1) % n];
      if ((p.y < y) == (q.y < y)) continue;
      const double x = p.x + (q.x - p.x) * (y - p.y) / (q.y - p.y);
      low = std::min(low, x);
      high = std::max(high, x);
    }
    if (high <= low) continue;
    left = std::max(left, low);
    right = std::min(right, high);
  }
  return {left, right};
}

double PanelRoom::outside(const std::vector<Rect>& strips, Point at) const {
  constexpr double kSlack = 1e-6, kInward = 1e-4;  // a corner on the outline is inside
  const Rect room = box_.outset(kSlack);
  int out = 0;
  for (const Rect& strip : strips) {
    const Rect r = shifted(strip, at);
    for (const Point corner : {r.min, Point{r.max.x, r.min.y}, r.max, Point{r.min.x, r.max.y}}) {
      const bool inside = room.contains(corner) &&
                          (isBox_ || contains(allowed_, between(corner, box_.centre(), kInward)));
      if (!inside) ++out;
    }
  }
  return out / (4.0 * static_cast<double>(strips.size()));
}

double PanelRoom::forbidden(const std::vector<Rect>& strips, Point at) const {
  double sum = 0;
  for (const Rect& obstacle : obstacles_) {
    const Rect local = shifted(obstacle, {-at.x, -at.y});
    if (local.max.y < strips.front().min.y || local.min.y > strips.back().max.y) continue;
    const double reach = strips[strips.size() / 2].max.x;  // the middle strip is the widest
    if (local.min.x > reach || local.max.x < -reach) continue;
    for (const Rect& strip : strips) sum += commonArea(strip, local);
  }
  return sum;
}

double PanelRoom::bodies(const std::vector<Rect>& strips, Point at) const {
  if (sums_.empty()) return 0;
  const int wide = columns_ + 1;
  const auto index = [&](double v, double from, int most) {
    return std::clamp(static_cast<int>(std::lround((v - from) / cell_)), 0, most);
  };
  int cells = 0;
  for (const Rect& strip : strips) {
    const int l = index(strip.min.x + at.x, panelBox_.min.x, columns_);
    const int r = index(strip.max.x + at.x, panelBox_.min.x, columns_);
    const int t = index(strip.min.y + at.y, panelBox_.min.y, rows_);
    const int b = index(strip.max.y + at.y, panelBox_.min.y, rows_);
    cells += sums_[b * wide + r] - sums_[t * wide + r] - sums_[b * wide + l] + sums_[t * wide + l];
  }
  return cells * cell_ * cell_;
}

double PanelRoom::distanceToFace(const Ray& ray, Point mouth) const {
  constexpr double kFar = 1e9;
  for (const Face& face : faces_) {
    if (!face.box.contains(mouth)) continue;
    if (const auto hit = firstHit(ray, face.outline)) return *hit;
  }
  return kFar;
}

bool PanelRoom::shows(Point p) const {
  return contains(tailRoom_, p) &&
         std::none_of(insets_.begin(), insets_.end(),
                      [&](const Polygon& inset) { return contains(inset, p); });
}

double PanelRoom::wayInside(const Ray& ray) const {
  if (!shows(ray.from)) return 0;
  double way = firstHit(ray, tailRoom_).value_or(0);
  for (const Polygon& inset : insets_) way = std::min(way, firstHit(ray, inset).value_or(way));
  return way;
}

Polygon PanelRoom::keptInside(const Polygon& tail) const {
  const bool inside =
      isConvex(tailRoom_) && std::all_of(tail.points.begin(), tail.points.end(),
                                         [&](Point p) { return contains(tailRoom_, p); });
  if (inside || tail.points.empty()) return tail;
  const Region kept = common({tail}, {tailRoom_});
  return kept.empty() ? Polygon{} : largest(kept);
}

Point PanelRoom::nearerSide(Point from) const {
  const auto toward = [&](double step) {
    return firstHit({from, {step, 0}}, panel_).value_or(panelBox_.width());
  };
  const double left = toward(-1), right = toward(1);
  return left < right ? Point{from.x - left, from.y} : Point{from.x + right, from.y};
}

bool PanelRoom::crossesFace(Point a, Point b, Point mouth) const {
  for (const Face& face : faces_) {
    if (face.box.contains(mouth) || !segmentMeets(face.box, a, b)) continue;
    for (const Rect& strip : face.strips) {
      if (segmentMeets(strip, a, b)) return true;
    }
  }
  return false;
}

}  // namespace tw
