// From stretches of contour to lines as a pen would draw them.
//
//  1 An outline that runs on over its own body, where one volume enters another, is cut back.
//  2 Folds that run close beside the body's outline are taken away: they would double it.
//  3 Ends that meet are joined, nearest and straightest first, each end once; where the two run
//    past each other both are cut at their closest points.
//  4 What is still short is dropped; the rest is smoothed (1-2-1 along the line), ends kept.
//
// Cost: the square of the number of ends (a few dozen a body), and linear in points. Does badly:
// where three lines meet it takes the straightest pair and leaves the third its own.
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>

#include "stage/visible_lines.h"

namespace tw {

namespace {

constexpr double kLeastStretchMm = 0.7;
constexpr double kLeastFoldMm = 1.6;
constexpr double kJoinMm = 1.1;
constexpr double kJoinM = 0.011;  // the same on the body
constexpr double kTickMm = 2.2, kTickM = 0.022;
constexpr double kSmoothMm = 0.28;
constexpr double kDoubleMm = 1.1;     // a fold nearer than this to the outline only doubles it
constexpr double kOutlineGapM = 0.6;  // a step this deep is an outline, not a fold of the body

void reverse(SeenLine& line) {
  std::reverse(line.points.begin(), line.points.end());
  std::swap(line.first, line.last);
}

/// Direction in which the line leaves at its end, over about a millimetre.
Vector leaving(const SeenLine& line, bool atLast, double mmPerPx) {
  const auto n = line.points.size();
  const auto back = std::min(n - 1, static_cast<std::size_t>(1 + 1.2 / mmPerPx));
  const Point tip = atLast ? line.points[n - 1].at : line.points[0].at;
  const Point before = atLast ? line.points[n - 1 - back].at : line.points[back].at;
  return (tip - before).unit();
}

/// An outline that runs on a little over the body, where one volume enters another, is cut back to
/// where it leaves the open ground; so ends meet and no ticks stand out.
void cutTicks(SeenLine& line, double mostMm) {
  if (line.closed || line.kind != LineKind::Contour) return;
  std::vector<SeenPoint>& p = line.points;
  for (int side = 0; side < 2; ++side) {
    double length = 0;
    std::size_t i = 0;
    while (i + 1 < p.size() && p[i].gap <= kOutlineGapM && length < mostMm) {
      length += (p[i + 1].at - p[i].at).length();
      ++i;
    }
    if (line.first == LineEnd::Free && i + 3 < p.size() && length < mostMm)
      p.erase(p.begin(), p.begin() + static_cast<std::ptrdiff_t>(i));
    reverse(line);
  }
}

/// The end of a line: 2·line for its first, one more for its last point.
using End = std::size_t;

struct Join {
  double cost;
  End a, b;
  auto operator<=>(const Join&) const = default;
};

struct OpenEnd {
  End end;
  Point tip;
  Vector leaving;
};

std::vector<OpenEnd> openEnds(const std::vector<SeenLine>& lines, double mmPerPx) {
  std::vector<OpenEnd> out;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const SeenLine& line = lines[i];
    if (line.closed || line.kind != LineKind::Contour) continue;
    if (line.first == LineEnd::Free)
      out.push_back({2 * i, line.points.front().at, leaving(line, false, mmPerPx)});
    if (line.last == LineEnd::Free)
      out.push_back({2 * i + 1, line.points.back().at, leaving(line, true, mmPerPx)});
  }
  return out;
}

/// Farther for close views, where the page shows a hand's breadth large.
double joinReach(const std::vector<SeenLine>& lines, double mmPerPx) {
  double mmPerM = 0;
  for (const SeenLine& line : lines) mmPerM = std::max(mmPerM, line.mmPerM);
  return std::max({kJoinMm, 5 * mmPerPx, kJoinM * mmPerM});
}

std::vector<Join> possibleJoins(const std::vector<SeenLine>& lines, double mmPerPx) {
  const double most = joinReach(lines, mmPerPx);
  const std::vector<OpenEnd> ends = openEnds(lines, mmPerPx);
  std::vector<Join> joins;
  for (std::size_t i = 0; i < ends.size(); ++i)
    for (std::size_t j = i + 1; j < ends.size(); ++j) {
      const Vector apart = ends[j].tip - ends[i].tip;
      if (std::abs(apart.x) > most || apart.length() > most) continue;
      const bool itself = ends[i].end / 2 == ends[j].end / 2;
      if (itself && lengthOf(lines[ends[i].end / 2]) < 4 * most) continue;
      const double straight = -dot(ends[i].leaving, ends[j].leaving);
      if (straight < (apart.length() < most / 3 ? -0.5 : 0.0)) continue;
      joins.push_back({apart.length() + most * (1 - straight), ends[i].end, ends[j].end});
    }
  std::sort(joins.begin(), joins.end());
  return joins;
}

/// Two lines that meet run a little past each other; both are cut where they come closest.
void cutOvershoot(std::vector<SeenPoint>& a, std::vector<SeenPoint>& b) {
  const std::size_t reach = std::min({a.size() / 2, b.size() / 2, std::size_t{14}});
  double best = std::numeric_limits<double>::infinity();
  std::size_t cutA = 0, cutB = 0;
  for (std::size_t i = 0; i < reach; ++i)
    for (std::size_t j = 0; j < reach; ++j) {
      const double d = (a[a.size() - 1 - i].at - b[j].at).length();
      if (d < best) {
        best = d;
        cutA = i;
        cutB = j;
      }
    }
  a.resize(a.size() - cutA);
  b.erase(b.begin(), b.begin() + static_cast<std::ptrdiff_t>(cutB));
}

/// Follows the partners from the end `from` of a line and returns all it passes as one line.
SeenLine strung(std::vector<SeenLine>& lines, const std::vector<std::ptrdiff_t>& partner,
                std::vector<bool>& used, End from) {
  SeenLine out;
  for (std::ptrdiff_t at = static_cast<std::ptrdiff_t>(from); at >= 0;) {
    const End end = static_cast<End>(at);
    if (used[end / 2]) {
      out.closed = true;
      break;
    }
    used[end / 2] = true;
    SeenLine& piece = lines[end / 2];
    if (end % 2 == 1) reverse(piece);
    if (out.points.empty()) {
      out = std::move(piece);
    } else {
      cutOvershoot(out.points, piece.points);
      out.points.insert(out.points.end(), piece.points.begin(), piece.points.end());
      out.last = piece.last;
    }
    at = partner[end ^ 1];
  }
  return out;
}

/// Joins cheapest pairs first, each end once, and strings the pieces together.
std::vector<SeenLine> joined(std::vector<SeenLine> lines, double mmPerPx) {
  std::vector<std::ptrdiff_t> partner(2 * lines.size(), -1);
  for (const Join& j : possibleJoins(lines, mmPerPx)) {
    if (partner[j.a] >= 0 || partner[j.b] >= 0) continue;
    partner[j.a] = static_cast<std::ptrdiff_t>(j.b);
    partner[j.b] = static_cast<std::ptrdiff_t>(j.a);
  }
  std::vector<bool> used(lines.size(), false);
  std::vector<SeenLine> out;
  for (End end = 0; end < partner.size(); ++end)
    if (!used[end / 2] && partner[end] < 0) out.push_back(strung(lines, partner, used, end));
  for (End end = 0; end < partner.size(); ++end)
    if (!used[end / 2]) out.push_back(strung(lines, partner, used, end));
  return out;
}

void smoothAlong(SeenLine& line, double mmPerPx) {
  const double px = std::max(1.6, kSmoothMm / mmPerPx);
  const int rounds = std::clamp(static_cast<int>(2 * px * px), 2, 60);
  std::vector<SeenPoint>& p = line.points;
  const std::size_t n = p.size();
  std::vector<SeenPoint> next = p;
  for (int r = 0; r < rounds; ++r) {
    for (std::size_t i = 0; i < n; ++i) {
      if (!line.closed && (i == 0 || i + 1 == n)) continue;
      const SeenPoint &a = p[(i + n - 1) % n], &b = p[(i + 1) % n];
      next[i].at = {(a.at.x + 2 * p[i].at.x + b.at.x) / 4, (a.at.y + 2 * p[i].at.y + b.at.y) / 4};
      next[i].outward = a.outward + p[i].outward * 2 + b.outward;
      next[i].outward = next[i].outward * 0.25;
      next[i].gap = (a.gap + 2 * p[i].gap + b.gap) / 4;
    }
    p.swap(next);
  }
  for (SeenPoint& point : p) point.outward = point.outward.unit();
}

/// Outline points of a body against open ground, sorted into squares of the page.
class OutlineMap {
 public:
  OutlineMap(const std::vector<SeenLine>& lines, double reach) : reach_(reach) {
    for (const SeenLine& line : lines)
      for (std::size_t i = 1; i < line.points.size(); ++i)
        if (line.points[i].gap > kOutlineGapM)
          spots_.push_back({cellOf(line.points[i].at), line.points[i].at,
                            (line.points[i].at - line.points[i - 1].at).unit()});
    std::sort(spots_.begin(), spots_.end(),
              [](const Spot& a, const Spot& b) { return a.cell < b.cell; });
  }

  /// An outline runs beside the place in about that direction.
  bool runsBeside(Point at, Vector along) const {
    for (int dy = -1; dy <= 1; ++dy)
      for (int dx = -1; dx <= 1; ++dx) {
        const auto cell = cellOf(at + Vector{dx * reach_, dy * reach_});
        auto i = std::lower_bound(spots_.begin(), spots_.end(), cell,
                                  [](const Spot& s, std::int64_t c) { return s.cell < c; });
        for (; i != spots_.end() && i->cell == cell; ++i)
          if ((i->at - at).length() < reach_ && std::abs(dot(i->along, along)) > 0.75) return true;
      }
    return false;
  }

 private:
  struct Spot {
    std::int64_t cell;
    Point at;
    Vector along;
  };
  std::int64_t cellOf(Point p) const {
    return static_cast<std::int64_t>(std::floor(p.y / reach_)) * 1000003 +
           static_cast<std::int64_t>(std::floor(p.x / reach_));
  }
  double reach_;
  std::vector<Spot> spots_;
};

/// Folds that run close beside the outline would make it look doubled; those stretches go.
std::vector<SeenLine> withoutDoubles(const std::vector<SeenLine>& lines, double reach) {
  const OutlineMap map(lines, reach);
  std::vector<SeenLine> out;
  for (const SeenLine& line : lines) {
    SeenLine run = line;
    run.points.clear();
    run.closed = false;
    bool whole = true;
    const auto flush = [&](LineEnd end) {
      run.last = end;
      if (run.points.size() >= 3) out.push_back(run);
      run.points.clear();
      run.first = LineEnd::Free;
    };
    for (std::size_t i = 0; i < line.points.size(); ++i) {
      const SeenPoint& p = line.points[i];
      const Point next = line.points[std::min(i + 1, line.points.size() - 1)].at;
      const Point before = line.points[i > 0 ? i - 1 : 0].at;
      const bool doubles = line.kind == LineKind::Contour && p.gap <= kOutlineGapM &&
                           map.runsBeside(p.at, (next - before).unit());
      if (!doubles) {
        run.points.push_back(p);
        continue;
      }
      whole = false;
      flush(LineEnd::Free);
    }
    flush(line.last);
    if (whole && line.closed && !out.empty()) out.back().closed = true;
  }
  return out;
}

bool tooShort(const SeenLine& line) {
  double gap = 0;
  for (const SeenPoint& p : line.points) gap = std::max(gap, p.gap);
  const bool fold = line.kind == LineKind::Contour && gap < kOpenGap / 2;
  return lengthOf(line) < (fold ? kLeastFoldMm : kLeastStretchMm);
}

}  // namespace

double lengthOf(const SeenLine& line) {
  double sum = 0;
  for (std::size_t i = 1; i < line.points.size(); ++i)
    sum += (line.points[i].at - line.points[i - 1].at).length();
  return sum;
}

std::vector<SeenLine> asDrawn(std::vector<SeenLine> lines, double mmPerPx) {
  for (SeenLine& line : lines) cutTicks(line, std::max(kTickMm, kTickM * line.mmPerM));
  lines = withoutDoubles(lines, std::max(kDoubleMm, 4 * mmPerPx));
  lines = joined(std::move(lines), mmPerPx);
  std::erase_if(lines, tooShort);
  for (SeenLine& line : lines) smoothAlong(line, mmPerPx);
  return lines;
}

}  // namespace tw
