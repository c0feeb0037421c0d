#include "arrange/edit_limits.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "arrange/clip_convex.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kRounding = 1e-6;  // mm
constexpr double kLeastBorder = 6;  // mm: a shorter one is a spike; our choice
constexpr double kOnBleed = 1e-3;   // mm

Point turned(Point p, Point about, double angle) {
  const Vector d = p - about;
  const double c = std::cos(angle), s = std::sin(angle);
  return about + Vector{c * d.x - s * d.y, s * d.x + c * d.y};
}

struct Straight {
  Point on;
  Vector along;
};

Straight moved(const SideLine& line, const RigidMove& move) {
  const Point a = turned(line.a + move.shift, move.pivot, move.turn);
  const Point b = turned(line.b + move.shift, move.pivot, move.turn);
  return {a, (b - a).unit()};
}

/// Box of what the reader sees of a panel.
Rect seenBox(const Polygon& outline, const Sheet& sheet) {
  const Polygon seen = clipped(outline, sheet.trimRect());
  return seen.points.empty() ? Rect{} : bounds(seen);
}

double shortestBorder(const Polygon& outline) {
  double least = 1e9;
  for (std::size_t i = 0; i < outline.points.size(); ++i)
    least = std::min(
        least, (outline.points[(i + 1) % outline.points.size()] - outline.points[i]).length());
  return least;
}

/// How far the outline lies outside the bleed, mm.
double outsideBleed(const Polygon& outline, const Sheet& sheet) {
  const Rect box = bounds(outline), bleed = sheet.bleedRect();
  return std::max({0.0, bleed.min.x - box.min.x, bleed.min.y - box.min.y, box.max.x - bleed.max.x,
                   box.max.y - bleed.max.y});
}

std::optional<std::string> ownComplaint(int number, const Polygon& before, const Polygon& after,
                                        const Sheet& sheet) {
  const double sense = turning(before) > 0 ? 1 : -1;
  if (sense * turning(after) <= 0 || !isConvex(after))
    return fmt::format("Panel {} would fold over itself.", number);
  const Rect was = seenBox(before, sheet), is = seenBox(after, sheet);
  if (is.width() < std::min(sheet.leastPanelWidth, was.width()) - kRounding)
    return fmt::format("Panel {} would be narrower than the sheet's least, {:.0f} mm.", number,
                       sheet.leastPanelWidth);
  if (is.height() < std::min(sheet.leastPanelHeight, was.height()) - kRounding)
    return fmt::format("Panel {} would be lower than the sheet's least, {:.0f} mm.", number,
                       sheet.leastPanelHeight);
  if (shortestBorder(after) < std::min(kLeastBorder, shortestBorder(before)) - kRounding)
    return fmt::format("A border of panel {} would shrink to a spike.", number);
  if (outsideBleed(after, sheet) > outsideBleed(before, sheet) + kRounding)
    return fmt::format("Panel {} would run out over the bleed.", number);
  return std::nullopt;
}

double widestAlong(const Polygon& a, const Polygon& b, const Sheet& sheet) {
  double best = -1e9;
  for (std::size_t i = 0; i < a.points.size(); ++i) {
    const SideLine line = sideLine(a, i);
    double nearest = 1e9;
    for (const Point p : b.points) nearest = std::min(nearest, dot(p - line.a, line.out));
    best = std::max(best, nearest - gutterFor(sheet, line.out));
  }
  return best;
}

}  // namespace

std::optional<std::vector<EditPanel>> withMoved(const std::vector<EditPanel>& panels,
                                                const std::vector<PanelSide>& sides,
                                                const RigidMove& move) {
  std::vector<EditPanel> out = panels;
  std::vector<std::vector<bool>> isMoved(panels.size());
  for (const PanelSide& id : sides) {
    isMoved[id.panel].resize(panels[id.panel].outline.points.size());
    isMoved[id.panel][id.side] = true;
  }
  for (std::size_t p = 0; p < panels.size(); ++p) {
    const Polygon& before = panels[p].outline;
    const std::size_t n = isMoved[p].size();
    const auto lineOf = [&](std::size_t s) {
      const SideLine line = sideLine(before, s);
      return isMoved[p][s] ? moved(line, move) : Straight{line.a, line.along};
    };
    for (std::size_t i = 0; i < n; ++i) {
      const std::size_t last = (i + n - 1) % n;
      if (!isMoved[p][i] && !isMoved[p][last]) continue;
      const Straight in = lineOf(last), on = lineOf(i);
      const auto corner = meeting(in.on, in.along, on.on, on.along);
      if (!corner) return std::nullopt;
      out[p].outline.points[i] = *corner;
    }
  }
  return out;
}

double spareGap(const Polygon& a, const Polygon& b, const Sheet& sheet) {
  return std::max(widestAlong(a, b, sheet), widestAlong(b, a, sheet));
}

std::optional<std::string> complaint(const std::vector<EditPanel>& before,
                                     const std::vector<EditPanel>& after, const Sheet& sheet) {
  std::vector<bool> changed(before.size());
  for (std::size_t i = 0; i < before.size(); ++i)
    changed[i] = before[i].outline != after[i].outline;
  for (std::size_t i = 0; i < before.size(); ++i) {
    if (!changed[i]) continue;
    const int number = static_cast<int>(i) + 1;
    if (auto words = ownComplaint(number, before[i].outline, after[i].outline, sheet)) return words;
  }
  for (std::size_t i = 0; i < before.size(); ++i)
    for (std::size_t j = i + 1; j < before.size(); ++j) {
      if ((!changed[i] && !changed[j]) || before[i].ground != before[j].ground) continue;
      const double was = spareGap(before[i].outline, before[j].outline, sheet);
      const double is = spareGap(after[i].outline, after[j].outline, sheet);
      if (is < std::min(0.0, was) - kRounding)
        return fmt::format("Panels {} and {} would come nearer than a gutter.", i + 1, j + 1);
    }
  return std::nullopt;
}

bool runsToBleed(const Polygon& outline, const Sheet& sheet) {
  const Rect trim = sheet.trimRect(), bleed = sheet.bleedRect();
  const auto ends = [&](const SideLine& line, auto beyond) {
    return beyond(line.a) && beyond(line.b);
  };
  const auto reach = [](double at, double trimAt, double bleedAt) {
    return at > trimAt + kOnBleed || at > bleedAt - kOnBleed;
  };
  for (std::size_t i = 0; i < outline.points.size(); ++i) {
    const SideLine line = sideLine(outline, i);
    if (ends(line, [&](Point p) { return reach(-p.x, -trim.min.x, -bleed.min.x); }) ||
        ends(line, [&](Point p) { return reach(-p.y, -trim.min.y, -bleed.min.y); }) ||
        ends(line, [&](Point p) { return reach(p.x, trim.max.x, bleed.max.x); }) ||
        ends(line, [&](Point p) { return reach(p.y, trim.max.y, bleed.max.y); }))
      return true;
  }
  return false;
}

}  // namespace tw
