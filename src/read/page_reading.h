// Where do readers go on this page, all of them? Follows the whole distribution of readers from
// panel to panel, exactly, and tells for each panel which share of those who stand there goes
// where, and why. Also a seeded crowd of single readers, which must agree with it.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "geometry/shapes.h"
#include "job/words.h"
#include "read/preferences.h"

namespace tw {

struct Move {
  int from = -1;  ///< index of a panel; −1: not begun
  int to = 0;
  double share = 0;   ///< of all readers who stand at `from`, those who end there among them
  std::string cause;  ///< "stack beside a tall panel", "wide gap", "next in the row", …
};

/// True of moves that readers make because of an earlier parting: they go to what they left.
bool catchesUp(const Move& move);

struct PageReading {
  std::vector<int> order;   ///< indices into the panels, the likeliest order
  double followed = 0;      ///< share of readers who take the whole of it
  std::vector<Move> moves;  ///< by the order of `from`, then by falling share
  double lost = 0;          ///< share of readers whose rare detours were not followed further
};

/// Moves made by fewer are not told.
inline constexpr double kRareMove = 0.01;

/// `panels` in any order; at most 64. The answer does not depend on the order they come in.
PageReading readPage(const std::vector<Polygon>& panels, ReadingDirection direction,
                     const ReaderPreferences& likes = shippedPreferences());

/// Share of readers who take the panels in this order, of indices, from first to last.
double followedShare(const std::vector<Polygon>& panels, ReadingDirection direction,
                     const std::vector<int>& order,
                     const ReaderPreferences& likes = shippedPreferences());

/// What a crowd of single readers did.
struct CrowdReading {
  int readers = 0;
  /// moves[from + 1][to] = readers who went that way; row 0 is the entry.
  std::vector<std::vector<int>> moves;
  std::vector<std::vector<int>> orders;  ///< distinct orders taken, the commonest first
  std::vector<int> takers;               ///< readers of each of them
};

/// Sends `readers` of them over the page; same seed, same answer at any number of threads.
CrowdReading simulateReaders(const std::vector<Polygon>& panels, ReadingDirection direction,
                             int readers, std::uint64_t seed, unsigned threads = 0,
                             const ReaderPreferences& likes = shippedPreferences());

}  // namespace tw
