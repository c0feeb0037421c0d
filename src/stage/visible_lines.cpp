// Hidden lines by the depth buffer, robustly.
//
//  1 Project each chain and walk it pixel by pixel (samples).
//  2 A sample is seen when the picture holds, within one pixel, something no nearer than the line
//    (plus a tolerance): at a contour the pixel outside is farther, so being off by a pixel does
//    no harm.
//  3 Look two pixels outward: what lies there tells how deep the step is. A fold with a step under
//    kFaintFoldM is where two volumes of a body melt together, not a line; a nearer thing there
//    means that the line disappears behind it.
//  4 A majority over neighbouring samples removes flicker; short gaps are closed, short stretches
//    dropped.
//  5 Ends of stretches of the same body that meet are joined, nearest and straightest first, the
//    whole line is smoothed (1-2-1), its ends kept.
//
// Cost: a few pixel look-ups per pixel of line. Does badly: things thinner than two pixels lose
// their hidden lines' exactness; where three lines meet the join takes the straightest pair.
#include "stage/visible_lines.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace tw {

namespace {

constexpr double kDepthToleranceM = 0.008;
constexpr double kDepthToleranceShare = 0.002;
constexpr double kFaintFoldM = 0.022;
constexpr double kOutwardPx = 2.0;
constexpr double kFrameMarginPx = 6;  // lines run on so that the border cuts them, not we
constexpr int kMajorityReach = 3;     // samples to either side
constexpr double kClosedGapMm = 0.5;
constexpr double kLeastStretchMm = 0.7;
constexpr double kLeastFoldMm = 1.6;
constexpr double kJoinMm = 1.1;
constexpr double kSmoothMm = 0.28;

struct Sample {
  Point px;
  double depth = 0;
  Vector outward;
  double gap = kOpenGap;
  bool seen = false;
  bool inFrame = true;
  bool otherInFront = false;  ///< hidden by another solid
};

/// A chain on the picture before sampling; broken where it passes the lens.
struct FlatPoint {
  Point px;
  double depth = 0;
  Vector outward;
};

std::vector<std::vector<FlatPoint>> flattened(const ContourChain& chain, const PanelView& view) {
  std::vector<std::vector<FlatPoint>> out(1);
  const auto add = [&](const ContourPoint& p) {
    const double depth = view.camera.depth(p.at);
    const auto seen = view.camera.project(p.at);
    if (!seen || depth < 0.05) {
      if (!out.back().empty()) out.emplace_back();
      return;
    }
    const Vec3 n = view.camera.rotation() * p.normal;
    const double scale = view.picture.width;
    out.back().push_back({{seen->x * scale, seen->y * scale}, depth, Vector{n.x(), n.y()}.unit()});
  };
  for (const ContourPoint& p : chain.points) add(p);
  if (chain.closed && out.size() == 1) add(chain.points.front());
  return out;
}

bool nearFrame(const PanelView& view, Point px) {
  return px.x > -kFrameMarginPx && px.y > -kFrameMarginPx &&
         px.x < view.picture.width + kFrameMarginPx && px.y < view.picture.height + kFrameMarginPx;
}

/// Deepest thing within a pixel of the place, m; infinity where some of it is empty.
float deepestAround(const PanelView& view, Point px) {
  float deepest = 0;
  for (int dy = -1; dy <= 1; ++dy)
    for (int dx = -1; dx <= 1; ++dx)
      deepest = std::max(deepest, view.picture.depth[view.pixelAt({px.x + dx, px.y + dy})]);
  return deepest;
}

void judge(Sample& s, int index, LineKind kind, const PanelView& view) {
  s.inFrame = nearFrame(view, s.px);
  if (!s.inFrame) return;
  const double tolerance = kDepthToleranceM + kDepthToleranceShare * s.depth;
  s.seen = s.depth <= deepestAround(view, s.px) + tolerance;
  const std::int16_t here = view.picture.solid[view.pixelAt(s.px)];
  s.otherInFront = !s.seen && here >= 0 && here != index;
  if (kind == LineKind::Crease || !s.seen) return;
  const std::size_t outside = view.pixelAt(s.px + s.outward * kOutwardPx);
  const double behind = view.picture.depth[outside] - s.depth;
  s.gap = std::min(kOpenGap, behind);
  if (view.picture.solid[outside] == index) {
    s.gap = std::max(0.0, s.gap);
  } else if (behind < -tolerance) {
    s.seen = false;
    s.otherInFront = true;
  } else {
    s.gap = std::max(s.gap, 4 * kFaintFoldM);  // another thing: always a line
  }
}

std::vector<Sample> sampled(const std::vector<FlatPoint>& flat, int index, LineKind kind,
                            const PanelView& view) {
  std::vector<Sample> out;
  double carry = 0;
  for (std::size_t i = 0; i + 1 < flat.size(); ++i) {
    const FlatPoint &a = flat[i], &b = flat[i + 1];
    const double length = (b.px - a.px).length();
    for (; carry < length; carry += 1) {
      const double t = carry / length;
      Sample s;
      s.px = between(a.px, b.px, t);
      if (!nearFrame(view, s.px) && !out.empty() && !out.back().inFrame) continue;
      s.depth = a.depth + t * (b.depth - a.depth);
      s.outward = (a.outward * (1 - t) + b.outward * t).unit();
      judge(s, index, kind, view);
      out.push_back(s);
    }
    carry -= length;
  }
  return out;
}

/// Mean step around each sample decides whether a fold is worth a line.
void dropFaintFolds(std::vector<Sample>& samples, double mmPerPx) {
  const int reach = std::max(2, static_cast<int>(0.6 / mmPerPx));
  const int n = static_cast<int>(samples.size());
  std::vector<double> mean(samples.size(), 0);
  for (int i = 0; i < n; ++i) {
    double sum = 0;
    int count = 0;
    for (int j = std::max(0, i - reach); j <= std::min(n - 1, i + reach); ++j) {
      if (!samples[static_cast<std::size_t>(j)].seen) continue;
      sum += std::min(samples[static_cast<std::size_t>(j)].gap, 5 * kFaintFoldM);
      ++count;
    }
    mean[static_cast<std::size_t>(i)] = count > 0 ? sum / count : 0;
  }
  for (std::size_t i = 0; i < samples.size(); ++i)
    if (mean[i] < kFaintFoldM) samples[i].seen = false;
}

void settleByMajority(std::vector<Sample>& samples) {
  std::vector<bool> settled(samples.size());
  const int n = static_cast<int>(samples.size());
  for (int i = 0; i < n; ++i) {
    int votes = 0, count = 0;
    for (int j = std::max(0, i - kMajorityReach); j <= std::min(n - 1, i + kMajorityReach); ++j) {
      votes += samples[static_cast<std::size_t>(j)].seen;
      ++count;
    }
    settled[static_cast<std::size_t>(i)] = 2 * votes > count;
  }
  for (std::size_t i = 0; i < samples.size(); ++i) samples[i].seen = settled[i];
}

void closeShortGaps(std::vector<Sample>& samples, double mmPerPx) {
  const auto most = static_cast<std::size_t>(kClosedGapMm / mmPerPx);
  for (std::size_t i = 0; i < samples.size();) {
    std::size_t j = i;
    while (j < samples.size() && samples[j].seen == samples[i].seen) ++j;
    if (!samples[i].seen && i > 0 && j < samples.size() && j - i <= most)
      for (std::size_t k = i; k < j; ++k) samples[k].seen = true;
    i = j;
  }
}

LineEnd endBeyond(const std::vector<Sample>& samples, std::ptrdiff_t at) {
  if (at < 0 || at >= static_cast<std::ptrdiff_t>(samples.size())) return LineEnd::Free;
  const Sample& s = samples[static_cast<std::size_t>(at)];
  if (!s.inFrame) return LineEnd::Frame;
  return s.otherInFront ? LineEnd::Behind : LineEnd::Free;
}

bool allSeen(const std::vector<Sample>& samples) {
  return std::all_of(samples.begin(), samples.end(), [](const Sample& s) { return s.seen; });
}

/// Turns a closed chain so that it starts where it is hidden, and stretches are not cut in two.
void startHidden(std::vector<Sample>& samples) {
  const auto hidden =
      std::find_if(samples.begin(), samples.end(), [](const Sample& s) { return !s.seen; });
  std::rotate(samples.begin(), hidden, samples.end());
}

void addStretches(const std::vector<Sample>& samples, LineKind kind, const PanelView& view,
                  std::vector<SeenLine>& out) {
  for (std::size_t i = 0; i < samples.size();) {
    std::size_t j = i;
    while (j < samples.size() && samples[j].seen == samples[i].seen) ++j;
    if (samples[i].seen && j - i >= 3) {
      SeenLine line;
      line.kind = kind;
      line.first = endBeyond(samples, static_cast<std::ptrdiff_t>(i) - 1);
      line.last = endBeyond(samples, static_cast<std::ptrdiff_t>(j));
      for (std::size_t k = i; k < j; ++k)
        line.points.push_back(
            {view.pageFromPx(samples[k].px), samples[k].depth, samples[k].outward, samples[k].gap});
      out.push_back(std::move(line));
    }
    i = j;
  }
}

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

struct Join {
  double cost;
  std::size_t a, b;
  bool aLast, bLast;
};

bool mayJoin(const SeenLine& line, bool atLast) {
  return !line.closed && line.kind == LineKind::Contour &&
         (atLast ? line.last : line.first) == LineEnd::Free;
}

std::vector<Join> possibleJoins(const std::vector<SeenLine>& lines, double mmPerPx) {
  const double most = std::max(kJoinMm, 5 * mmPerPx);
  std::vector<Join> joins;
  for (std::size_t a = 0; a < lines.size(); ++a)
    for (std::size_t b = a; b < lines.size(); ++b)
      for (int which = 0; which < 4; ++which) {
        const bool aLast = which & 1, bLast = which & 2;
        if (a == b && (aLast || !bLast)) continue;
        if (!mayJoin(lines[a], aLast) || !mayJoin(lines[b], bLast)) continue;
        const Point p = aLast ? lines[a].points.back().at : lines[a].points.front().at;
        const Point q = bLast ? lines[b].points.back().at : lines[b].points.front().at;
        const double distance = (q - p).length();
        if (distance > most || (a == b && lengthOf(lines[a]) < 4 * most)) continue;
        const double straight =
            -dot(leaving(lines[a], aLast, mmPerPx), leaving(lines[b], bLast, mmPerPx));
        if (straight < (distance < most / 3 ? -0.5 : 0.0)) continue;
        joins.push_back({distance + most * (1 - straight), a, b, aLast, bLast});
      }
  std::sort(joins.begin(), joins.end(), [](const Join& x, const Join& y) {
    return std::tie(x.cost, x.a, x.b, x.aLast, x.bLast) <
           std::tie(y.cost, y.a, y.b, y.aLast, y.bLast);
  });
  return joins;
}

/// Joins the cheapest pair until none is left. Few lines, so starting over each time is cheap.
void joinMeeting(std::vector<SeenLine>& lines, double mmPerPx) {
  for (;;) {
    const std::vector<Join> joins = possibleJoins(lines, mmPerPx);
    if (joins.empty()) return;
    const Join& j = joins.front();
    if (j.a == j.b) {
      lines[j.a].closed = true;
      continue;
    }
    if (!j.aLast) reverse(lines[j.a]);
    if (j.bLast) reverse(lines[j.b]);
    SeenLine& a = lines[j.a];
    a.points.insert(a.points.end(), lines[j.b].points.begin(), lines[j.b].points.end());
    a.last = lines[j.b].last;
    lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(j.b));
  }
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

std::vector<SeenLine> visibleLines(const Solid& solid, int index, const PanelView& view) {
  std::vector<ContourChain> chains = smoothContours(solid.mesh, view.camera.eye());
  if (solid.figure < 0)
    for (ContourChain& chain : creases(solid.mesh, view.camera.eye()))
      chains.push_back(std::move(chain));
  std::vector<SeenLine> lines;
  for (const ContourChain& chain : chains)
    for (const auto& flat : flattened(chain, view)) {
      std::vector<Sample> samples = sampled(flat, index, chain.kind, view);
      if (samples.empty()) continue;
      if (chain.kind == LineKind::Contour) dropFaintFolds(samples, view.mmPerPx());
      settleByMajority(samples);
      closeShortGaps(samples, view.mmPerPx());
      const bool whole = chain.closed && allSeen(samples);
      if (chain.closed && !whole) startHidden(samples);
      addStretches(samples, chain.kind, view, lines);
      if (whole && !lines.empty()) lines.back().closed = true;
    }
  joinMeeting(lines, view.mmPerPx());
  std::erase_if(lines, tooShort);
  for (SeenLine& line : lines) smoothAlong(line, view.mmPerPx());
  return lines;
}

}  // namespace tw
