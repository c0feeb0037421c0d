#include "read/panel_relations.h"

#include <algorithm>
#include <limits>

#include "geometry/polygon.h"
#include "read/preferences.h"

namespace tw {
namespace {

constexpr double kSpreadShape =
    1.25;                            // width over height from which two pages may lie side by side
constexpr int kFewestOnSpread = 5;   // panels; fewer cannot be told from one page with a gap
constexpr double kFoldGap = 2;       // times the usual gap down, at least
constexpr double kFoldPlace = 0.06;  // of the width, off the middle at most
constexpr double kMostOfBase = 0.5;  // of its base's area; a larger panel is no inset
constexpr double kSmallOnBase = 0.35;  // of its base's area; half of it on the base is enough

double shared(double aFrom, double aTo, double bFrom, double bTo) {
  return std::max(0.0, std::min(aTo, bTo) - std::max(aFrom, bFrom));
}

/// Share of the smaller extent that both have.
double sharedExtent(double aFrom, double aTo, double bFrom, double bTo) {
  const double smaller = std::min(aTo - aFrom, bTo - bFrom);
  return smaller > 0 ? shared(aFrom, aTo, bFrom, bTo) / smaller : 0;
}

double middleOf(std::vector<double>& v) {
  std::nth_element(v.begin(), v.begin() + static_cast<std::ptrdiff_t>(v.size() / 2), v.end());
  return v[v.size() / 2];
}

/// From where to where the outline reaches on the line at `at`; `upright` lines are x = at.
/// Nothing (from > to) where the line misses it.
struct Reach {
  double from = 1e300, to = -1e300;
};
Reach reachAt(const Polygon& panel, double at, bool upright) {
  Reach reach;
  const std::size_t n = panel.points.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Point a = panel.points[i], b = panel.points[(i + 1) % n];
    const double aAt = upright ? a.x : a.y, bAt = upright ? b.x : b.y;
    if ((aAt < at) == (bAt < at)) continue;
    const double aOn = upright ? a.y : a.x, bOn = upright ? b.y : b.x;
    const double on = aOn + (bOn - aOn) * (at - aAt) / (bAt - aAt);
    reach.from = std::min(reach.from, on);
    reach.to = std::max(reach.to, on);
  }
  return reach;
}

/// The middle one of what lines across the outline meet first and last, so that a figure breaking
/// out or a corner cut off does not count; four corners need only the middle line.
Reach usualReach(const Polygon& panel, double from, double to, bool upright) {
  const int lines = panel.points.size() <= 4 ? 1 : 15;
  std::vector<double> starts, ends;
  for (int i = 0; i < lines; ++i) {
    const double at = from + (to - from) * (i + 0.5) / lines;
    const Reach reach = reachAt(panel, at, upright);
    if (reach.from > reach.to) continue;
    starts.push_back(reach.from);
    ends.push_back(reach.to);
  }
  if (starts.empty()) return {};
  return {middleOf(starts), middleOf(ends)};
}

/// The box that a reader takes the panel for: sides where they usually are.
Rect usualBox(const Polygon& panel, const Rect& outer) {
  const Reach x = usualReach(panel, outer.min.y, outer.max.y, false);
  const Reach y = usualReach(panel, outer.min.x, outer.max.x, true);
  return x.to > x.from && y.to > y.from ? Rect{{x.from, y.from}, {x.to, y.to}} : outer;
}

/// Largest rectangle inside `whole` that keeps clear of all `holes`: every pair of possible
/// sides, then the tallest gap between the holes that reach in.
Rect largestClearRect(const Rect& whole, const std::vector<Rect>& holesByTop) {
  std::vector<double> xs{whole.min.x, whole.max.x};
  for (const Rect& h : holesByTop) {
    xs.push_back(std::clamp(h.min.x, whole.min.x, whole.max.x));
    xs.push_back(std::clamp(h.max.x, whole.min.x, whole.max.x));
  }
  std::sort(xs.begin(), xs.end());
  Rect best{whole.min, whole.min};
  for (std::size_t l = 0; l < xs.size(); ++l) {
    for (std::size_t r = xs.size() - 1; r > l; --r) {
      if ((xs[r] - xs[l]) * whole.height() <= best.area()) break;
      double top = whole.min.y;
      const auto keep = [&](double bottom) {
        const Rect gap{{xs[l], top}, {xs[r], bottom}};
        if (bottom > top && gap.area() > best.area()) best = gap;
      };
      for (const Rect& h : holesByTop) {
        if (h.max.x <= xs[l] || h.min.x >= xs[r]) continue;
        keep(h.min.y);
        top = std::max(top, h.max.y);
      }
      keep(whole.max.y);
    }
  }
  return best.area() > 0 ? best : whole;
}

/// Four corners with upright and level sides.
bool isBox(const Polygon& panel) {
  if (panel.points.size() != 4) return false;
  for (std::size_t i = 0; i < 4; ++i) {
    const Point a = panel.points[i], b = panel.points[(i + 1) % 4];
    if (a.x != b.x && a.y != b.y) return false;
  }
  return true;
}

/// The panel's upper or lower edge near its sides: the line through places of it, drawn out, so
/// that slanted sides do not cut it short; its slope and height are medians (Theil 1950, Sen
/// 1968), so that a figure breaking out does not bend it.
struct EdgeLine {
  std::vector<double> at, y;

  std::pair<double, double> ends() const {
    std::vector<double> slopes, heights;
    for (std::size_t i = 0; i < at.size(); ++i)
      for (std::size_t k = i + 1; k < at.size(); ++k)
        slopes.push_back((y[k] - y[i]) / (at[k] - at[i]));
    const double slope = slopes.empty() ? 0 : middleOf(slopes);
    for (std::size_t i = 0; i < at.size(); ++i) heights.push_back(y[i] - slope * at[i]);
    const double start = middleOf(heights);
    return {start, start + slope};
  }
};

Edges edgesOf(const Polygon& panel, const Rect& box, ReadingDirection direction) {
  const Edges own{box.min.y, box.min.y, box.max.y, box.max.y};
  if (isBox(panel)) return own;
  const double sign = direction == ReadingDirection::RightToLeft ? -1 : 1;
  EdgeLine top, bottom;
  for (const double share : {0.2, 0.35, 0.5, 0.65, 0.8}) {
    const Reach reach = reachAt(panel, sign * (box.min.x + box.width() * share), true);
    if (reach.from > reach.to) continue;
    top.at.push_back(share);
    top.y.push_back(reach.from);
    bottom.at.push_back(share);
    bottom.y.push_back(reach.to);
  }
  if (top.at.size() < 2) return own;
  const auto [topBefore, topAfter] = top.ends();
  const auto [bottomBefore, bottomAfter] = bottom.ends();
  return {topBefore, topAfter, bottomBefore, bottomAfter};
}

}  // namespace

Rect readingBox(const Polygon& panel, ReadingDirection direction) {
  Rect box = usualBox(panel, bounds(panel));
  if (direction == ReadingDirection::RightToLeft) {
    box = {{-box.max.x, box.min.y}, {-box.min.x, box.max.y}};
  }
  return box;
}

double overlapShare(const Rect& a, const Rect& b) {
  const double both =
      shared(a.min.x, a.max.x, b.min.x, b.max.x) * shared(a.min.y, a.max.y, b.min.y, b.max.y);
  const double smaller = std::min(a.area(), b.area());
  return smaller > 0 ? both / smaller : 0;
}

PanelRelations::PanelRelations(const std::vector<Polygon>& panels, ReadingDirection direction,
                               const std::vector<int>& layer, const ReaderPreferences& preferences)
    : likes(preferences), count(static_cast<int>(panels.size())) {
  sign_ = direction == ReadingDirection::RightToLeft ? -1 : 1;
  const auto n = panels.size();
  boxes.reserve(n);
  page_ = {{1e300, 1e300}, {-1e300, -1e300}};
  for (const Polygon& panel : panels) {
    const Rect box = readingBox(panel, direction);
    boxes.push_back(box);
    edges.push_back(edgesOf(panel, box, direction));
    isBox_.push_back(isBox(panel));
    page_.min = {std::min(page_.min.x, box.min.x), std::min(page_.min.y, box.min.y)};
    page_.max = {std::max(page_.max.x, box.max.x), std::max(page_.max.y, box.max.y)};
  }
  if (std::find(isBox_.begin(), isBox_.end(), false) != isBox_.end()) panels_ = panels;
  const double side = std::max(page_.width(), page_.height());
  aligned = likes.aligned * side;
  noticedGap = likes.noticedGap * side;
  noticedOverlap = likes.noticedOverlap * side;
  free = boxes;
  for (auto* sets : {&right, &below, &left, &above, &onTop}) sets->assign(n, 0);
  base.assign(n, -1);
  findBases(layer);
  findFreeParts();
  for (int a = 0; a < count; ++a) {
    for (int b = a + 1; b < count; ++b) relate(a, b);
  }
  findUsualGap();
  findFold();
}

double PanelRelations::gapBetween(int panel, int next, bool lower) const {
  const Rect &a = boxes[panel], &b = boxes[next];
  const double boxGap = lower ? b.min.y - a.max.y : b.min.x - a.max.x;
  if (isBox_[panel] && isBox_[next]) return boxGap;
  const double from = lower ? std::max(a.min.x, b.min.x) : std::max(a.min.y, b.min.y);
  const double to = lower ? std::min(a.max.x, b.max.x) : std::min(a.max.y, b.max.y);
  constexpr int kLines = 5;
  std::array<double, kLines> gaps;
  int found = 0;
  for (int i = 0; i < kLines && to > from; ++i) {
    const double at = from + (to - from) * (i + 0.5) / kLines;
    const double line = lower ? sign_ * at : at;
    const Reach near = reachAt(panels_[panel], line, lower),
                far = reachAt(panels_[next], line, lower);
    if (near.from > near.to || far.from > far.to) continue;
    gaps[found++] = lower       ? far.from - near.to
                    : sign_ > 0 ? far.from - near.to
                                : near.from - far.to;
  }
  if (found == 0) return boxGap;
  std::nth_element(gaps.begin(), gaps.begin() + found / 2, gaps.begin() + found);
  return gaps[found / 2];
}

/// Two pages side by side: wide, and in the middle an upright strip of paper that no panel crosses,
/// clearly wider than the gaps between panels.
void PanelRelations::findFold() {
  const double width = page_.width(), middle = page_.centre().x;
  if (count < kFewestOnSpread || width < kSpreadShape * page_.height()) return;
  double from = page_.min.x, to = page_.max.x;
  PanelSet before = 0;
  for (int i = 0; i < count; ++i) {
    if (boxes[i].centre().x < middle) {
      before |= only(i);
      from = std::max(from, boxes[i].max.x);
    } else {
      to = std::min(to, boxes[i].min.x);
    }
  }
  const double gap = to - from;
  const bool inMiddle = std::abs((from + to) / 2 - middle) < kFoldPlace * width;
  if (inMiddle && gap > kFoldGap * usualGapDown && gap > noticedGap) beforeFold = before;
}

void PanelRelations::findUsualGap() {
  std::vector<double> gaps;
  for (int i = 0; i < count; ++i) {
    double least = std::numeric_limits<double>::infinity();
    for (int j = 0; j < count; ++j)
      if ((below[i] & only(j)) && base[i] == base[j])
        least = std::min(least, gapBetween(i, j, true));
    if (least < std::numeric_limits<double>::infinity()) gaps.push_back(std::max(0.0, least));
  }
  if (gaps.empty()) return;
  std::nth_element(gaps.begin(), gaps.begin() + static_cast<std::ptrdiff_t>(gaps.size() / 2),
                   gaps.end());
  usualGapDown = gaps[gaps.size() / 2];
}

void PanelRelations::findBases(const std::vector<int>& layer) {
  const bool layered = layer.size() == boxes.size();
  for (int i = 0; i < count; ++i) {
    double smallest = std::numeric_limits<double>::infinity();
    for (int j = 0; j < count; ++j) {
      if (i == j || boxes[j].area() <= boxes[i].area()) continue;
      if (!layered && boxes[i].area() > kMostOfBase * boxes[j].area()) continue;
      if (layered && layer[i] <= layer[j]) continue;
      // Told of layers, half is enough; untold, a large panel must lie inside to be an inset.
      const bool small = layered || boxes[i].area() < kSmallOnBase * boxes[j].area();
      if (overlapShare(boxes[i], boxes[j]) < (small ? 0.5 : 0.8)) continue;
      if (boxes[j].area() >= smallest) continue;
      smallest = boxes[j].area();
      base[i] = j;
    }
    if (base[i] >= 0) onTop[base[i]] |= only(i);
  }
}

void PanelRelations::findFreeParts() {
  for (int i = 0; i < count; ++i) {
    if (!onTop[i]) continue;
    std::vector<Rect> holes;
    for (int j = 0; j < count; ++j) {
      if (onTop[i] & only(j)) holes.push_back(boxes[j]);
    }
    std::sort(holes.begin(), holes.end(),
              [](const Rect& a, const Rect& b) { return a.min.y < b.min.y; });
    free[i] = largestClearRect(boxes[i], holes);
  }
}

void PanelRelations::relate(int a, int b) {
  // Against its own insets a base panel counts as the part of it that is seen.
  const Rect& p = base[b] == a ? free[a] : boxes[a];
  const Rect& q = base[a] == b ? free[b] : boxes[b];
  const double sideBySide = sharedExtent(p.min.y, p.max.y, q.min.y, q.max.y);
  const double stacked = sharedExtent(p.min.x, p.max.x, q.min.x, q.max.x);
  if (std::max(sideBySide, stacked) <= likes.sharedExtent) return;
  if (sideBySide >= stacked) {
    const bool bRight = q.centre().x >= p.centre().x;  // twins: as they stand in the list
    right[bRight ? a : b] |= only(bRight ? b : a);
    left[bRight ? b : a] |= only(bRight ? a : b);
  } else {
    const bool bBelow = q.centre().y >= p.centre().y;
    below[bBelow ? a : b] |= only(bBelow ? b : a);
    above[bBelow ? b : a] |= only(bBelow ? a : b);
  }
}

}  // namespace tw
