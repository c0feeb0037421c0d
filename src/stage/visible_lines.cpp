// Hidden lines by the depth buffer, robustly.
//
//  1 Project each chain and walk it pixel by pixel (samples).
//  2 A sample is seen when the picture holds, within one pixel, something no nearer than the line
//    (plus a tolerance): at a contour the pixel outside is farther, so being off by a pixel does
//    no harm.
//  3 Look two pixels outward: what lies there tells how deep the step is. A fold with a small step
//    (in metres, and on the page) is where two volumes of a body melt together, not a line; a
//    nearer thing there means that the line disappears behind it.
//  4 A majority over neighbouring samples removes flicker; short gaps are closed. What is left in
//    one piece is a stretch; join_lines makes lines of them.
//
// Cost: a few pixel look-ups per pixel of line. Does badly: things thinner than two pixels lose
// their hidden lines' exactness.
#include "stage/visible_lines.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace tw {

namespace {

constexpr double kDepthToleranceM = 0.008;
constexpr double kDepthToleranceShare = 0.002;
constexpr double kFaintFoldM = 0.022;
constexpr double kFaintFoldFineM = 0.006;  // on heads and hands, whose forms are small
constexpr double kFaintFoldMm = 0.8;       // on the page: a smaller step is texture, not a form
constexpr double kOutwardPx = 2.0;
constexpr double kFrameMarginMm = 0.35;  // lines run on so that the border cuts them, not we
constexpr int kMajorityReach = 3;        // samples to either side
constexpr double kClosedGapMm = 0.5;

struct Sample {
  Point px;
  double depth = 0;
  Vector outward;
  double gap = kOpenGap;
  double leastGap = 0;  ///< m; a fold with less behind it is not drawn
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
  const double margin = kFrameMarginMm / view.mmPerPx();
  return px.x > -margin && px.y > -margin && px.x < view.picture.width + margin &&
         px.y < view.picture.height + margin;
}

/// Deepest thing within a pixel of the place, m; infinity where some of it is empty.
float deepestAround(const PanelView& view, Point px) {
  float deepest = 0;
  const int x = static_cast<int>(std::floor(px.x)), y = static_cast<int>(std::floor(px.y));
  if (x > 0 && y > 0 && x + 1 < view.picture.width && y + 1 < view.picture.height) {
    const auto w = static_cast<std::size_t>(view.picture.width);
    const float* row =
        &view.picture.depth[static_cast<std::size_t>(y - 1) * w + static_cast<std::size_t>(x - 1)];
    for (int i = 0; i < 3; ++i, row += w) deepest = std::max({deepest, row[0], row[1], row[2]});
    return deepest;
  }
  for (int dy = -1; dy <= 1; ++dy)
    for (int dx = -1; dx <= 1; ++dx)
      deepest = std::max(deepest, view.picture.depth[view.pixelAt({px.x + dx, px.y + dy})]);
  return deepest;
}

bool isFine(std::uint8_t part) {
  const auto p = static_cast<BodyPart>(part);
  return p == BodyPart::Head || p == BodyPart::LeftHand || p == BodyPart::RightHand;
}

/// Step behind a fold of a body that makes it worth a line, m.
double leastFold(const PanelView& view, const Sample& s) {
  const double mmPerM = view.camera.intrinsics()(0, 0) * view.frame.width() / s.depth;
  // Fine folds lie within the small form; where a wrist meets an arm there is no line.
  const std::uint8_t part = view.picture.part[view.pixelAt(s.px - s.outward)];
  const bool fine =
      isFine(part) && part == view.picture.part[view.pixelAt(s.px + s.outward * kOutwardPx)];
  return std::max(fine ? kFaintFoldFineM : kFaintFoldM, kFaintFoldMm / mmPerM);
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
    s.leastGap = leastFold(view, s);
  } else if (behind < -tolerance) {
    s.seen = false;
    s.otherInFront = true;
  } else {
    s.gap = std::max(s.gap, 4 * kFaintFoldM);  // another thing: always a line
    s.leastGap = 0;
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

/// The mean step around each sample decides whether a fold is worth a line.
void dropFaintFolds(std::vector<Sample>& samples, double mmPerPx) {
  const int reach = std::max(2, static_cast<int>(0.6 / mmPerPx));
  const int n = static_cast<int>(samples.size());
  std::vector<bool> faint(samples.size(), false);
  for (int i = 0; i < n; ++i) {
    double over = 0;
    for (int j = std::max(0, i - reach); j <= std::min(n - 1, i + reach); ++j) {
      const Sample& s = samples[static_cast<std::size_t>(j)];
      if (s.seen) over += std::min(s.gap, 3 * s.leastGap + 5 * kFaintFoldM) - s.leastGap;
    }
    faint[static_cast<std::size_t>(i)] = over < 0;
  }
  for (std::size_t i = 0; i < samples.size(); ++i)
    if (faint[i]) samples[i].seen = false;
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
  for (std::size_t i = 0; i < samples.size(); ++i)
    samples[i].seen = settled[i] && samples[i].inFrame;
}

void closeShortGaps(std::vector<Sample>& samples, double mmPerPx) {
  const auto most = static_cast<std::size_t>(kClosedGapMm / mmPerPx);
  for (std::size_t i = 0; i < samples.size();) {
    std::size_t j = i;
    while (j < samples.size() && samples[j].seen == samples[i].seen) ++j;
    const bool inFrame = std::all_of(samples.begin() + static_cast<std::ptrdiff_t>(i),
                                     samples.begin() + static_cast<std::ptrdiff_t>(j),
                                     [](const Sample& s) { return s.inFrame; });
    if (!samples[i].seen && inFrame && i > 0 && j < samples.size() && j - i <= most)
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
      line.mmPerM = view.camera.intrinsics()(0, 0) * view.frame.width() / samples[i].depth;
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

}  // namespace

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
  return asDrawn(std::move(lines), view.mmPerPx());
}

}  // namespace tw
