// The whole distribution of readers.
//
// Idea. What a reader does next depends only on where she stands, what is unread and the little
// she remembers (ReaderState). So instead of drawing readers, carry the share of all readers that
// is in each state, and move it along the choices of next_panel.cpp. After k moves every reader
// has read k panels, so the states of one step never mix with those of another.
//
// Words. *State*: ReaderState. *Step*: all states with the same number of panels read.
//
// Steps.
//   1. sort the panels by place, so that the order they are given in does not matter;
//   2. from the one state "not begun", for each step: send the share of each state to the states
//      after its choices, adding up where two ways lead to the same state, and add it to the move;
//   3. drop states with less than kSmallest of the readers and all but the kMostStates strongest;
//      their share is told as `lost`;
//   4. a move's share is its readers over all that stood at its panel.
// The likeliest order is searched by itself (likely_order.h): it is the one whole path with the
// greatest product, not the chain of the likeliest moves.
//
// Cost: states × choices; a page of six panels has some 100 states.
// Badly done: on a heap of 64 panels the strongest 1024 states do not hold all readers.
// The crowd draws single readers with the same choices, remembering those of each state per block
// of readers; readers are seeded by their number, so blocks and threads do not matter.

#include "read/page_reading.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <tuple>

#include "base/parallel.h"
#include "base/random.h"
#include "base/result.h"
#include "geometry/polygon.h"
#include "read/likely_order.h"
#include "read/next_panel.h"

namespace tw {

namespace {

constexpr double kSmallest = 1e-6;  // of all readers
constexpr std::size_t kMostStates = 1024;
constexpr int kReadersPerBlock = 512;

auto keyOf(const ReaderState& s) {
  return std::tuple(s.unread, s.at, s.passedOver, s.wentDown, s.keepsRows);
}

struct StateLess {
  bool operator()(const ReaderState& a, const ReaderState& b) const { return keyOf(a) < keyOf(b); }
};
using Shares = std::map<ReaderState, double, StateLess>;

/// Panels by place: top, left, bottom, right of the outer box. `given[i]` is where number i stood.
struct SortedPage {
  std::vector<Polygon> panels;
  std::vector<int> given;

  SortedPage(const std::vector<Polygon>& from, ReadingDirection direction) : given(from.size()) {
    std::iota(given.begin(), given.end(), 0);
    const auto place = [&](int i) {
      const Rect box = readingBox(from[i], direction);
      return std::tuple(box.min.y, box.min.x, box.max.y, box.max.x);
    };
    std::stable_sort(given.begin(), given.end(), [&](int a, int b) { return place(a) < place(b); });
    for (const int i : given) panels.push_back(from[i]);
  }
};

ReaderState outside(int count) {
  ReaderState state;
  state.unread = allOf(count);
  return state;
}

/// Share of readers per move, and per move the cause that most of them had.
class Moves {
 public:
  explicit Moves(int count) : count_(count), cells_((count + 1) * count), stood_(count + 1) {}

  void stand(int at, double share) { stood_[at + 1] += share; }
  void add(int from, int to, double share, const char* cause) {
    Cell& cell = cells_[(from + 1) * count_ + to];
    cell.share += share;
    if (share > cell.strongest) {
      cell.strongest = share;
      cell.cause = cause;
    }
  }
  std::vector<Move> told(const std::vector<int>& order, const std::vector<int>& given) const;

 private:
  struct Cell {
    double share = 0, strongest = 0;
    const char* cause = "";
  };
  int count_;
  std::vector<Cell> cells_;
  std::vector<double> stood_;
};

std::vector<Move> Moves::told(const std::vector<int>& order, const std::vector<int>& given) const {
  std::vector<int> froms{-1};
  froms.insert(froms.end(), order.begin(), order.end());
  std::vector<Move> out;
  for (const int from : froms) {
    const std::size_t first = out.size();
    for (int to = 0; to < count_; ++to) {
      const Cell& cell = cells_[(from + 1) * count_ + to];
      const double share = stood_[from + 1] > 0 ? cell.share / stood_[from + 1] : 0;
      if (share >= kRareMove)
        out.push_back({from < 0 ? -1 : given[from], given[to], share, cell.cause});
    }
    std::stable_sort(out.begin() + static_cast<std::ptrdiff_t>(first), out.end(),
                     [](const Move& a, const Move& b) { return a.share > b.share; });
  }
  return out;
}

/// Drops the weakest; returns the share that goes with them.
double prune(Shares& states) {
  double lost = 0;
  std::vector<double> shares;
  for (const auto& [state, share] : states) shares.push_back(share);
  double least = kSmallest;
  if (shares.size() > kMostStates) {
    std::nth_element(shares.begin(), shares.begin() + kMostStates, shares.end(), std::greater<>());
    least = std::max(least, shares[kMostStates]);
  }
  std::erase_if(states, [&](const auto& entry) {
    if (entry.second > least) return false;
    lost += entry.second;
    return true;
  });
  return lost;
}

void step(const ReaderState& state, double share, const PanelRelations& page, Moves& moves,
          Shares& next) {
  const Choices choices = choicesFrom(state, page);
  const auto go = [&](int panel, double part) {
    if (part <= 0) return;
    moves.add(state.at, panel, share * part, causeOf(state, panel, choices, page));
    next[after(state, panel, page)] += share * part;
  };
  for (int i = 0; i < choices.size; ++i) go(choices.list[i].panel, choices.list[i].share);
  for (int panel = 0; panel < page.count; ++panel)
    if (choices.others & only(panel)) go(panel, choices.shareOfEachOther());
}

}  // namespace

bool catchesUp(const Move& move) {
  return move.cause == "the last panel" || move.cause == "a panel left behind" ||
         move.cause == "jumps over a panel";
}

PageReading readPage(const std::vector<Polygon>& panels, ReadingDirection direction,
                     const ReaderPreferences& likes) {
  PageReading result;
  if (panels.empty()) return result;
  ensure(panels.size() <= kMostPanels, "page reading: more panels than the reader can hold");
  const SortedPage sorted(panels, direction);
  const PanelRelations page(sorted.panels, direction, {}, likes);
  Moves moves(page.count);
  Shares now{{outside(page.count), 1.0}};
  for (int read = 0; read <= page.count; ++read) {
    Shares next;
    for (const auto& [state, share] : now) {
      moves.stand(state.at, share);
      if (state.unread) step(state, share, page, moves, next);
    }
    if (read < page.count) result.lost += prune(next);
    now = std::move(next);
  }
  const LikelyOrder likely = likelyOrder(page);
  result.followed = likely.share;
  result.moves = moves.told(likely.order, sorted.given);
  for (const int panel : likely.order) result.order.push_back(sorted.given[panel]);
  return result;
}

double followedShare(const std::vector<Polygon>& panels, ReadingDirection direction,
                     const std::vector<int>& order, const ReaderPreferences& likes) {
  ensure(order.size() == panels.size(), "page reading: an order names every panel once");
  if (panels.empty()) return 0;
  const SortedPage sorted(panels, direction);
  std::vector<int> numberOf(panels.size());
  for (std::size_t i = 0; i < sorted.given.size(); ++i)
    numberOf[sorted.given[i]] = static_cast<int>(i);
  const PanelRelations page(sorted.panels, direction, {}, likes);
  ReaderState state = outside(page.count);
  double share = 1;
  for (const int panel : order) {
    share *= choicesFrom(state, page).shareOf(numberOf[panel]);
    state = after(state, numberOf[panel], page);
  }
  return share;
}

namespace {

using Remembered = std::map<ReaderState, Choices, StateLess>;

int drawn(const Choices& choices, double at) {
  int last = -1;
  for (int i = 0; i < choices.size; ++i) {
    last = choices.list[i].panel;
    at -= choices.list[i].share;
    if (at < 0) return last;
  }
  for (PanelSet rest = choices.others; rest; rest &= rest - 1) {
    if (choices.shareOfEachOther() <= 0) break;
    last = std::countr_zero(rest);
    at -= choices.shareOfEachOther();
    if (at < 0) return last;
  }
  return last;
}

std::vector<int> readOnce(const PanelRelations& page, Remembered& known, Random& random) {
  std::vector<int> order;
  for (ReaderState state = outside(page.count); state.unread;) {
    auto found = known.find(state);
    if (found == known.end()) found = known.emplace(state, choicesFrom(state, page)).first;
    const int panel = drawn(found->second, random.uniform());
    order.push_back(panel);
    state = after(state, panel, page);
  }
  return order;
}

}  // namespace

CrowdReading simulateReaders(const std::vector<Polygon>& panels, ReadingDirection direction,
                             int readers, std::uint64_t seed, unsigned threads,
                             const ReaderPreferences& likes) {
  CrowdReading crowd;
  crowd.readers = readers;
  if (panels.empty() || readers <= 0) return crowd;
  ensure(panels.size() <= kMostPanels, "page reading: more panels than the reader can hold");
  const SortedPage sorted(panels, direction);
  const PanelRelations page(sorted.panels, direction, {}, likes);
  using Orders = std::map<std::vector<int>, int>;
  std::vector<Orders> blocks((readers + kReadersPerBlock - 1) / kReadersPerBlock);
  parallelFor(blocks.size(), threads, [&](std::size_t block) {
    Remembered known;
    const int first = static_cast<int>(block) * kReadersPerBlock;
    const int end = std::min(readers, first + kReadersPerBlock);
    for (int reader = first; reader < end; ++reader) {
      Random seeds(seed + static_cast<std::uint64_t>(reader));
      Random random(seeds.next());
      ++blocks[block][readOnce(page, known, random)];
    }
  });
  Orders all;
  for (const Orders& block : blocks)
    for (const auto& [order, takers] : block) all[order] += takers;
  crowd.moves.assign(panels.size() + 1, std::vector<int>(panels.size()));
  std::vector<std::pair<int, std::vector<int>>> ranked;
  for (const auto& [order, takers] : all) {
    std::vector<int> given;
    for (const int panel : order) given.push_back(sorted.given[panel]);
    for (std::size_t i = 0; i < given.size(); ++i)
      crowd.moves[i == 0 ? 0 : given[i - 1] + 1][given[i]] += takers;
    ranked.emplace_back(takers, std::move(given));
  }
  std::stable_sort(ranked.begin(), ranked.end(),
                   [](const auto& a, const auto& b) { return a.first > b.first; });
  for (auto& [takers, order] : ranked) {
    crowd.takers.push_back(takers);
    crowd.orders.push_back(std::move(order));
  }
  return crowd;
}

}  // namespace tw
