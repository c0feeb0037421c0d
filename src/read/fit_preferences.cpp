// Least squares of a few numbers on a few pages.
//
// Idea. The published shares are of readers of whole pages or at one fork; the reader's numbers
// are strengths at a fork, changed on the way by habits and by what is left. So set the numbers by
// reading pages with them: two plain grids of six, and the stack beside a tall panel alone and
// above a further tier.
// Steps. A miss is (found − published) over half the published range. The sum of squared misses is
// made small one number at a time by golden section (Kiefer 1953), a few rounds over.
// Cost: some 500 pages read, under a second.
// Badly done: whether the grid's share is of whole pages or of forks is not known, so both are
// aimed at. Alone, the stack leaves no third way, so its two shares make one, while the published
// ones make 0.97 with the rest gone elsewhere; the fit lies between and meets both ranges.

#include "read/fit_preferences.h"

#include <cmath>

#include "geometry/polygon.h"
#include "read/page_reading.h"

namespace tw {

namespace {

constexpr auto kDirection = ReadingDirection::LeftToRight;

Polygon box(double x, double y, double w, double h) {
  return polygonOf(Rect{{x, y}, {x + w, y + h}});
}

std::vector<Polygon> grid(int rows, int columns) {
  std::vector<Polygon> panels;
  for (int r = 0; r < rows; ++r)
    for (int c = 0; c < columns; ++c) panels.push_back(box(c * 54, r * 64, 50, 60));
  return panels;
}

std::vector<Polygon> blockage(bool withTier) {
  std::vector<Polygon> panels{box(0, 0, 50, 60), box(0, 64, 50, 60), box(54, 0, 50, 124)};
  if (withTier)
    for (const double x : {0.0, 54.0}) panels.push_back(box(x, 128, 50, 60));
  return panels;
}

double inRows(int rows, int columns, const ReaderPreferences& likes) {
  std::vector<int> order(static_cast<std::size_t>(rows * columns));
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = static_cast<int>(i);
  return followedShare(grid(rows, columns), kDirection, order, likes);
}

double atFork(const std::vector<Polygon>& panels, int to, const ReaderPreferences& likes) {
  for (const Move& move : readPage(panels, kDirection, likes).moves)
    if (move.from == 0 && move.to == to) return move.share;
  return 0;
}

double missOf(const ReaderPreferences& likes) {
  double sum = 0;
  for (const PublishedCheck& check : checkAgainstPublished(likes)) {
    const double half = (check.published.most - check.published.least) / 2;
    sum += std::pow((check.found - check.published.value) / half, 2);
  }
  return sum;
}

/// Where `value` makes the miss least between `low` and `high`.
double bestOf(double ReaderPreferences::*value, double low, double high, ReaderPreferences likes) {
  constexpr double kGolden = 0.6180339887498949;
  const auto miss = [&](double at) {
    likes.*value = at;
    return missOf(likes);
  };
  while (high - low > 1e-5) {
    const double a = high - kGolden * (high - low), b = low + kGolden * (high - low);
    (miss(a) < miss(b) ? high : low) = miss(a) < miss(b) ? b : a;
  }
  return (low + high) / 2;
}

}  // namespace

std::vector<PublishedCheck> checkAgainstPublished(const ReaderPreferences& likes) {
  return {
      {"grid of 2 rows of 3, across then down", likes.gridAcross, inRows(2, 3, likes)},
      {"grid of 3 rows of 2, across then down", likes.gridAcross, inRows(3, 2, likes)},
      {"first fork of the grid of 2 rows of 3, across", likes.gridAcross,
       atFork(grid(2, 3), 1, likes)},
      {"first fork of the grid of 3 rows of 2, across", likes.gridAcross,
       atFork(grid(3, 2), 1, likes)},
      {"stack beside a tall panel, across", likes.blockageAcross,
       atFork(blockage(false), 2, likes)},
      {"stack beside a tall panel, down", likes.blockageDown, atFork(blockage(false), 1, likes)},
      {"the same above a tier, across", likes.blockageAcross, atFork(blockage(true), 2, likes)},
      {"the same above a tier, down", likes.blockageDown, atFork(blockage(true), 1, likes)},
  };
}

ReaderPreferences fitPreferences(ReaderPreferences likes) {
  constexpr int kRounds = 4;
  for (int round = 0; round < kRounds; ++round) {
    likes.acrossAtGrid = bestOf(&ReaderPreferences::acrossAtGrid, 0.85, 0.995, likes);
    likes.acrossAtBlockage = bestOf(&ReaderPreferences::acrossAtBlockage, 0.2, 0.5, likes);
    likes.downOfRest = bestOf(&ReaderPreferences::downOfRest, 0.85, 0.999, likes);
  }
  return likes;
}

}  // namespace tw
