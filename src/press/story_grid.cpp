// Rows are tried from one to three; the number that shows the pages largest is kept. What a row
// needs beside its pages is fixed: a strip for reveals, numbers, the scene band, four lanes. The
// list of findings keeps a least height; what it does not need then makes the lanes taller.
#include "press/story_grid.h"

#include <algorithm>

namespace tw {

namespace {

constexpr int kMostRows = 3, kMostPairs = 13;  // 24 pages
constexpr double kLabelWide = 25, kPairGap = 7;
constexpr double kStrip = 5.5, kNumbers = 6, kBand = 15, kBeforeLanes = 3, kLaneGap = 3.5,
                 kLowLaneGap = 2.4;
constexpr double kRowGap = 5, kLeastList = 42, kWidestPage = 62;
constexpr double kHighLane = 17, kLowLane = 8, kTallestLane = 26, kBeforeList = 7;

double gapOf(double laneHigh) {
  return laneHigh < kHighLane ? kLowLaneGap : kLaneGap;
}

double besidePages(double laneHigh) {
  return kStrip + kNumbers + kBand + kBeforeLanes + kStoryLanes * (laneHigh + gapOf(laneHigh));
}

double contentLeft() {
  return StoryGrid::kMargin + kLabelWide;
}
double contentRight() {
  return StoryGrid::paper().max.x - StoryGrid::kMargin;
}

/// The pairs of one sheet; a story's first page may have nothing to its left, its last nothing to
/// its right.
struct Pairs {
  int count = 1;
  bool lacksFirst = false, lacksLast = false;
};

struct Fit {
  int perRow = 1;
  double pageWide = 0, laneHigh = 0;
};

/// The widest page with which that row fits across the sheet.
double widestIn(const Pairs& pairs, int perRow, int row) {
  const int inRow = std::min(perRow, pairs.count - row * perRow);
  const bool isLast = (row + 1) * perRow >= pairs.count;
  int pages = 2 * inRow - (row == 0 && pairs.lacksFirst ? 1 : 0);
  if (isLast && pairs.lacksLast) --pages;
  return (contentRight() - contentLeft() - (inRow - 1) * kPairGap) / std::max(1, pages);
}

Fit fitOf(const Pairs& pairs, int rows, double aspect) {
  Fit fit;
  fit.perRow = (pairs.count + rows - 1) / rows;
  fit.laneHigh = rows == 1 ? kHighLane : kLowLane;
  const double room = StoryGrid::paper().height() - 2 * StoryGrid::kMargin - StoryGrid::kHeadHigh -
                      StoryGrid::kKeyHigh - kLeastList;
  const double down = (room - (rows - 1) * kRowGap) / rows - besidePages(fit.laneHigh);
  fit.pageWide = std::min(down / aspect, kWidestPage);
  for (int row = 0; row * fit.perRow < pairs.count; ++row)
    fit.pageWide = std::min(fit.pageWide, widestIn(pairs, fit.perRow, row));
  return fit;
}

Pairs pairsOf(const StoryMap& map, int first, int count) {
  Pairs out{std::max(1, count), false, false};
  if (map.pages.empty()) return out;
  const int firstPage = map.pages.front().number;
  int lastPage = firstPage;
  for (const StoryMapPage& page : map.pages) lastPage = std::max(lastPage, page.lastNumber());
  out.lacksFirst = pairOf(firstPage) == first && firstPage % 2 == 1;
  out.lacksLast = pairOf(lastPage) == first + count - 1 && lastPage % 2 == 0;
  return out;
}

}  // namespace

StoryGrid::StoryGrid(const StoryMap& map, int firstPair, int pairs, double listHigh)
    : map_(map), first_(firstPair), pairs_(std::max(1, pairs)) {
  const double aspect = map.pageHigh / map.pageWide;
  const Pairs all = pairsOf(map, firstPair, pairs_);
  startsOnOdd_ = all.lacksFirst;
  Fit fit = fitOf(all, 1, aspect);
  for (int rows = 2; rows <= kMostRows; ++rows)
    if (const Fit other = fitOf(all, rows, aspect); other.pageWide > fit.pageWide + 1e-9)
      fit = other;
  perRow_ = fit.perRow;
  pageWide_ = fit.pageWide;
  pageHigh_ = fit.pageWide * aspect;
  laneHigh_ = fit.laneHigh;
  laneGap_ = gapOf(fit.laneHigh);
  scale_ = pageWide_ / map.pageWide;
  const int count = (pairs_ + perRow_ - 1) / perRow_;
  const auto topOf = [&](int row) {
    const double lanes = kStoryLanes * (laneHigh_ + laneGap_);
    return kMargin + kHeadHigh +
           row * (kStrip + kNumbers + kBand + kBeforeLanes + lanes + pageHigh_ + kRowGap);
  };
  const double foot = paper().max.y - kMargin - kKeyHigh - std::max(listHigh, kLeastList / 2);
  const double spare = foot - kBeforeList - (topOf(count) - kRowGap - laneGap_);
  laneHigh_ += std::clamp(spare / (count * kStoryLanes), 0.0, kTallestLane - laneHigh_);
  for (int row = 0; row < count; ++row) tops_.push_back(topOf(row));
}

bool StoryGrid::holds(int pageNumber) const {
  return pairOf(pageNumber) >= first_ && pairOf(pageNumber) < first_ + pairs_;
}

int StoryGrid::rowOf(int pageNumber) const {
  return (pairOf(pageNumber) - first_) / perRow_;
}

double StoryGrid::mirroredX(double x) const {
  const bool toTheLeft = map_.direction == ReadingDirection::RightToLeft;
  return toTheLeft ? contentLeft() + contentRight() - x : x;
}

Rect StoryGrid::slot(int pageNumber) const {
  const int inRow = (pairOf(pageNumber) - first_) % perRow_;
  double left = contentLeft() + inRow * (2 * pageWide_ + kPairGap);
  if (pageNumber % 2 == 1) left += pageWide_;
  if (startsOnOdd_ && rowOf(pageNumber) == 0) left -= pageWide_;
  const double a = mirroredX(left), b = mirroredX(left + pageWide_);
  const double top = tops_[static_cast<std::size_t>(rowOf(pageNumber))] + kStrip;
  return {{std::min(a, b), top}, {std::max(a, b), top + pageHigh_}};
}

Point StoryGrid::turnAfter(int oddPage) const {
  const Rect page = slot(oddPage);
  const bool toTheLeft = map_.direction == ReadingDirection::RightToLeft;
  const double x = toTheLeft ? page.min.x - kPairGap / 2 : page.max.x + kPairGap / 2;
  return {x, page.max.y - 0.12 * page.height()};
}

Span StoryGrid::column(const StoryMapPage& page, std::size_t panel) const {
  const bool isOpen = page.spread && pairOf(page.number) == pairOf(page.number + 1);
  const Rect own = slot(page.number), last = isOpen ? slot(page.number + 1) : own;
  const double from = std::min(own.min.x, last.min.x), to = std::max(own.max.x, last.max.x);
  const double wide =
      (to - from) / static_cast<double>(std::max<std::size_t>(1, page.panels.size()));
  const double i = static_cast<double>(panel);
  if (map_.direction == ReadingDirection::RightToLeft) return {to - (i + 1) * wide, to - i * wide};
  return {from + i * wide, from + (i + 1) * wide};
}

double StoryGrid::headLine(int row) const {
  return tops_[static_cast<std::size_t>(row)] + kStrip / 2 - 0.4;
}

double StoryGrid::numberLine(int row) const {
  return tops_[static_cast<std::size_t>(row)] + kStrip + pageHigh_ + 4.4;
}

Rect StoryGrid::band(int row) const {
  const double top = tops_[static_cast<std::size_t>(row)] + kStrip + pageHigh_ + kNumbers;
  return {{contentLeft(), top}, {contentRight(), top + kBand}};
}

Rect StoryGrid::lane(int row, StoryLane lane) const {
  const double top =
      band(row).max.y + kBeforeLanes + static_cast<int>(lane) * (laneHigh_ + laneGap_);
  return {{contentLeft(), top}, {contentRight(), top + laneHigh_}};
}

Rect StoryGrid::labels(int row, StoryLane which) const {
  const Rect own = lane(row, which);
  return {{kMargin, own.min.y}, {own.min.x - 2.5, own.max.y}};
}

Rect StoryGrid::list() const {
  const double top = lane(rows() - 1, StoryLane::Areas).max.y + kBeforeList;
  return {{kMargin, top}, {contentRight(), paper().max.y - kMargin - kKeyHigh}};
}

std::vector<std::pair<int, int>> storySheets(const StoryMap& map) {
  if (map.pages.empty()) return {};
  const int first = pairOf(map.pages.front().number);
  int last = first;
  for (const StoryMapPage& page : map.pages) last = std::max(last, pairOf(page.lastNumber()));
  const int pairs = last - first + 1, sheets = (pairs + kMostPairs - 1) / kMostPairs;
  const int each = (pairs + sheets - 1) / sheets;
  std::vector<std::pair<int, int>> out;
  for (int from = first; from <= last; from += each)
    out.emplace_back(from, std::min(each, last - from + 1));
  return out;
}

}  // namespace tw
