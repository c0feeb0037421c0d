// The stochastic reader.
//
// Idea. People who number empty panels follow neither a plain Z nor plain grouping, but a few
// preferences: finish a group before leaving it, move smoothly, do not jump over a panel, leave
// none behind (Cohn 2013). Each step therefore sets the candidates that those preferences allow
// against each other and gives each a share of the readers.
//
// Words. *Across*: the nearest unread panel to the reading side, the topmost of a stack.
// *Down*: the nearest unread panel below, the first of a row. *Fresh*: where the entry rule would
// start among the unread, which is how the next row or column begins. *Stranding*: a move that
// leaves an unread panel above or before its target.
//
// Steps, the first that applies:
//   1. not begun: the panel in the reading corner; without one, the highest or the leftmost;
//   2. unread insets on this panel, or beside it on the same base, come before all others;
//   3. across and down both open: acrossShare(stagger, gap, overlap) decides, each looked at where
//      the panels meet, unless one of them strands a panel, the reader is on her way down a stack,
//      or what lies below spans the row;
//   4. only across: across; 5. only down: down against fresh, by how far down begins above
//      fresh; 6. neither: fresh.
// A base panel that was chosen shares its readers with the first inset on it. Of two pages side by
// side the first is read before the second, but for a few who go on along the row.
//
// Cost: a few set operations per step, the relations being known.
// Badly done: balloons and pictures, which settle ambiguous layouts (Kirtley et al. 2023), are
// not looked at; the strengths between the published end points are ours.

#include "read/next_panel.h"

#include <algorithm>
#include <bit>
#include <cstring>
#include <limits>
#include <string_view>

#include "base/result.h"
#include "read/preferences.h"
#include "read/reading_order.h"

namespace tw {
namespace {

template <class Visit>
void each(PanelSet set, Visit visit) {
  for (; set; set &= set - 1) visit(std::countr_zero(set));
}

constexpr double kHigherUp = 0.2;  // of this panel's height; a panel beside that begins higher

/// One choice among `unread`; `at` is the panel stood on, for the purpose of its neighbours.
class Step {
 public:
  Step(const PanelRelations& page, const ReaderState& state, int at, PanelSet unread)
      : page_(page), likes_(page.likes), state_(state), at_(at), unread_(unread) {}

  Choices choose() const;
  Choices enter() const;

 private:
  const Rect& box(int panel) const {
    const bool onBase = at_ >= 0 && page_.base[at_] == panel;
    return onBase ? page_.free[panel] : page_.boxes[panel];
  }
  const Rect& here() const { return page_.boxes[at_]; }
  bool higher(int a, int b) const;
  bool lefter(int a, int b) const;
  int across() const;
  int down() const;
  int fresh() const;
  int rowStart(int panel) const;
  double stagger(int side, int under) const;
  bool crossing(int side, int under) const;
  double gapRatio(int side, int under) const;
  double lap(const Rect& other) const;
  PanelSet open() const;
  Choices acrossOrDown(int side, int under) const;
  Choices downOrFresh(int under, int start) const;
  Choices one(int panel, int other) const;

  const PanelRelations& page_;
  const ReaderPreferences& likes_;
  const ReaderState& state_;
  int at_;
  PanelSet unread_;
};

/// a before b when read from the top, level ones from the reading corner.
bool Step::higher(int a, int b) const {
  const double d = page_.boxes[a].min.y - page_.boxes[b].min.y;
  if (std::abs(d) > page_.aligned) return d < 0;
  return page_.boxes[a].min.x < page_.boxes[b].min.x;
}

bool Step::lefter(int a, int b) const {
  const double d = page_.boxes[a].min.x - page_.boxes[b].min.x;
  if (std::abs(d) > page_.aligned) return d < 0;
  return page_.boxes[a].min.y < page_.boxes[b].min.y;
}

int Step::across() const {
  int best = -1;
  const PanelSet side = page_.right[at_] & unread_;
  each(side, [&](int j) {
    if (page_.left[j] & side) return;  // another one stands between
    if (best < 0 || higher(j, best)) best = j;
  });
  return best;
}

/// The first of the nearest row below.
int Step::down() const {
  const PanelSet under = page_.below[at_] & unread_;
  double rowEnds = std::numeric_limits<double>::infinity();
  each(under, [&](int j) { rowEnds = std::min(rowEnds, box(j).centre().y); });
  int best = -1;
  each(under, [&](int j) {
    if ((page_.above[j] & under) || box(j).min.y > rowEnds) return;
    if (best < 0 || lefter(j, best)) best = j;
  });
  return best;
}

/// Unread panels with no unread panel above or before them; all, where those go in a circle.
PanelSet Step::open() const {
  PanelSet result = 0;
  each(unread_, [&](int j) {
    if (!((page_.above[j] | page_.left[j]) & unread_)) result |= only(j);
  });
  return result ? result : unread_;
}

int Step::fresh() const {
  int best = -1;
  each(open(), [&](int j) {
    if (best < 0 || higher(j, best)) best = j;
  });
  return best;
}

Choices Step::enter() const {
  const int top = fresh();
  int side = top;
  double from = page_.boxes[top].min.x, to = page_.boxes[top].max.x;
  each(unread_, [&](int j) {
    if (lefter(j, side)) side = j;
    from = std::min(from, page_.boxes[j].min.x);
    to = std::max(to, page_.boxes[j].max.x);
  });
  Choices result;
  const Rect &t = page_.boxes[top], &s = page_.boxes[side];
  if (t.min.x - s.min.x <= likes_.outOfCorner * (to - from)) {
    result.add(top, likes_.entryAtCorner, "");
    return result;
  }
  const bool lowerTier = s.min.y > t.max.y - page_.aligned;
  const char* cause = "no panel at the entry corner";
  result.add(top, lowerTier ? likes_.entryHigherTier : likes_.entryHighest, cause);
  result.add(side, lowerTier ? likes_.entryLowerTier : likes_.entryLeftmost, cause);
  return result;
}

/// `panel` for nearly all; the small rest to `other` where that differs.
Choices Step::one(int panel, int other) const {
  Choices result;
  result.add(panel, likes_.plain, "");
  if (other >= 0 && other != panel)
    result.add(other, (1 - likes_.plain) * 0.8, "a panel left behind");
  return result;
}

const char* causeOfFork(const ReaderPreferences& likes, double stagger, double gapRatio,
                        double overlap) {
  const double byStagger = acrossShare(stagger, 1, 0, likes);
  const double byGap = acrossShare(0, gapRatio, 0, likes);
  const double byOverlap = acrossShare(0, 1, overlap, likes);
  const double least = std::min({byStagger, byGap, byOverlap});
  if (least > likes.acrossAtGrid - 0.02) return "rows or columns";
  if (least == byOverlap) return "overlap";
  if (least == byGap) return "wide gap";
  return stagger > 0.75 ? "stack beside a tall panel" : "stagger";
}

/// The first unread panel of the row in which `panel` stands.
int Step::rowStart(int panel) const {
  int first = panel;
  each(page_.left[panel] & unread_, [&](int j) {
    if (lefter(j, first)) first = j;
  });
  return first;
}

/// How far the line under this panel is from running on beside it: 0 level rows, 1 a full stack
/// beside a tall panel. Looked at where the two panels meet, so that a slanted gutter is one line.
/// A lower panel of the next column may be the one in the way.
double Step::stagger(int side, int under) const {
  const double line = page_.edges[at_].bottomAfter;
  const double depth = box(under).max.y - here().max.y;
  if (depth <= 0) return 0;
  const bool wholeSide = box(side) == page_.boxes[side];
  const double sideEnds = wholeSide ? page_.edges[side].bottomBefore : box(side).max.y;
  const double least = std::min(depth, here().height());
  double most = std::clamp((sideEnds - line) / least, 0.0, 1.0);
  const PanelSet column = page_.right[at_] & unread_;
  each(column & ~only(side), [&](int j) {
    if (page_.left[j] & column) return;
    const Edges& b = page_.edges[j];
    const double crossing = std::min(line - b.topBefore, b.bottomBefore - line);
    if (crossing <= 0) return;
    const double shift = crossing + page_.usualGapDown;
    most = std::max(most, std::min(1.0, shift / std::min(least, box(j).height())));
  });
  return most;
}

/// Whether the corners of four panels meet here: this one, those beside and below, and one more.
bool Step::crossing(int side, int under) const {
  const bool inLine = std::abs(box(under).max.x - here().max.x) < page_.aligned;
  return inLine && (page_.below[side] & page_.right[under] & unread_);
}

/// Gap across over gap down. Hairlines and a single uneven gutter make no ratio: a gap that
/// nobody notices is added to both, and the gap down counts at least as the page's usual one.
double Step::gapRatio(int side, int under) const {
  const auto gap = [&](int next, bool lower) {
    const Rect& b = box(next);
    if (b == page_.boxes[next]) return page_.gapBetween(at_, next, lower);
    return lower ? b.min.y - here().max.y : b.min.x - here().max.x;
  };
  const double across = std::max(gap(side, false), 0.0);
  const double down = std::max(gap(under, true), page_.usualGapDown);
  return (across + page_.noticedGap) / (down + page_.noticedGap);
}

/// Share of the smaller of this panel and another that both cover, less what nobody notices.
double Step::lap(const Rect& other) const {
  const auto seen = [&](const Rect& r) {
    return r.inset(std::min(page_.noticedOverlap, std::min(r.width(), r.height()) / 2) / 2);
  };
  return overlapShare(seen(here()), seen(other));
}

Choices Step::acrossOrDown(int side, int under) const {
  const Rect &r = box(side), &d = box(under);
  const double stagger = this->stagger(side, under);
  const double gap = gapRatio(side, under);
  // Panels that overlap on both sides are bound to neither.
  const double lapAcross = lap(r), lapDown = lap(d);
  const double overlap = std::max(lapAcross, lapDown) - std::min(lapAcross, lapDown) / 2;
  const char* cause = causeOfFork(likes_, stagger, gap, overlap);
  double share = acrossShare(stagger, gap, overlap, likes_);
  // How far what lies below also lies below the next one: at 1 it is the next tier.
  const double from = std::max(r.min.x, here().max.x);
  const double spanned = (std::min(r.max.x, d.max.x) - from) / std::max(r.max.x - from, 1e-9);
  const double tier = page_.above[under] & unread_ ? std::clamp(2 * spanned - 1, 0.0, 1.0) : 0;
  if (crossing(side, under) && std::string_view(cause) == "rows or columns")
    cause = "four-corner crossing";
  if ((state_.passedOver & only(side)) && !(page_.above[under] & unread_)) {
    // On her way down a stack, unless the line under this panel runs on and closes the group.
    // Uneven ends of a few hundredths of the page close it too.
    const double uneven = page_.aligned / std::max(std::min(here().height(), d.height()), 1e-9);
    const double onward =
        gap > likes_.gapMiddle ? 1 : std::clamp(5 * (stagger - 0.75 * uneven), 0.0, 1.0);
    share = likes_.plain + (1 - likes_.finishStack - likes_.plain) * onward;
  } else if (page_.above[side] & unread_) {
    share = 1 - likes_.plain;  // would leave a panel above it
    cause = "a panel left behind";
  } else if (page_.edges[side].topBefore <
             page_.edges[at_].topAfter - std::max(page_.aligned, here().height() * kHigherUp)) {
    share = likes_.plain;  // higher up
    cause = "a panel left behind";
  } else if (page_.above[under] & unread_) {
    share = std::min(share, likes_.acrossAtStaggeredRows);
    share += (likes_.acrossAboveTier - share) * tier;
    cause = "staggered rows";
  }
  if (share > 0.8 && state_.keepsRows) share = 1 - (1 - share) * likes_.rowHabit;
  // Where nothing else is left to read, all who do not go across go down.
  const int lower = rowStart(under);
  const bool elsewhere = state_.unread & ~(only(side) | only(lower));
  Choices result;
  result.add(side, share, cause);
  result.add(lower, (1 - share) * (elsewhere ? likes_.downOfRest : 1), cause);
  return result;
}

Choices Step::downOrFresh(int under, int start) const {
  if (under == start) return one(under, -1);
  const Rect &d = box(under), &f = box(start);
  const PanelSet before = page_.left[under] & unread_;
  // How far the panel below begins above the fresh one: 1 means that it finishes a stack.
  double ahead = std::clamp((f.min.y - d.min.y) / std::max(d.height(), 1e-9), 0.0, 1.0);
  double share = 1 - acrossShare(ahead, 1, 0, likes_) / likes_.acrossAtGrid * likes_.plain;
  if (!before && state_.wentDown) share = likes_.finishStack;
  if (page_.above[under] & unread_) share = 1 - likes_.plain;
  Choices result;
  result.add(under, share, "stagger");
  result.add(start, 1 - share, "stagger");
  return result;
}

Choices Step::choose() const {
  if (std::popcount(unread_) == 1) {
    Choices last;
    last.add(std::countr_zero(unread_), 1, "");
    return last;
  }
  const int side = across(), under = down(), start = fresh();
  if (side >= 0 && under >= 0) return acrossOrDown(side, under);
  if (side >= 0) {
    const bool strands = page_.above[side] & unread_;
    return strands ? one(start, side) : one(side, start);
  }
  if (under >= 0) return downOrFresh(under, start);
  return one(start, -1);
}

/// A base panel that nobody has begun shares its readers with the first inset on it.
void splitBases(Choices& choices, const PanelRelations& page, PanelSet unread) {
  for (int i = 0, n = choices.size; i < n; ++i) {
    const int base = choices.list[i].panel;
    const PanelSet insets = page.onTop[base] & unread;
    if (!insets || choices.isFull()) continue;
    const ReaderState outside{-1, insets, 0, false, false};
    const int first = Step(page, outside, -1, insets).enter().list[0].panel;
    const Rect &b = page.boxes[base], &inset = page.boxes[first];
    const bool hidden =
        inset.min.x < b.min.x + b.width() * 0.15 && inset.min.y < b.min.y + b.height() * 0.15;
    const double share = choices.list[i].share;
    const double baseFirst = hidden ? page.likes.baseFirstCornerHidden : page.likes.baseFirst;
    const char* cause = hidden ? "inset over the reading corner" : "inset";
    choices.list[i] = {base, share * baseFirst, cause};
    choices.add(first, share * (1 - baseFirst) * 0.95, cause);
  }
}

/// Unread panels that lie on the same base, the base itself among them. For base −1: those on
/// nothing, and insets left behind on a base already read.
PanelSet siblings(const PanelRelations& page, int base, PanelSet unread) {
  PanelSet result = 0;
  each(unread, [&](int j) {
    const int b = page.base[j];
    const bool leftBehind = base < 0 && b >= 0 && !(unread & only(b));
    if (b == base || j == base || leftBehind) result |= only(j);
  });
  return result;
}

/// A few go on along the row over the fold, although the first page is not finished.
void addAcrossFold(Choices& choices, const ReaderState& state, const PanelRelations& page) {
  if (state.at < 0 || choices.isFull()) return;
  const PanelSet beyond = page.right[state.at] & state.unread & ~page.beforeFold;
  int next = -1;
  each(beyond, [&](int j) {
    if (page.left[j] & state.unread & ~page.beforeFold) return;
    if (next < 0 || page.boxes[j].min.y < page.boxes[next].min.y) next = j;
  });
  if (next < 0) return;
  const double share = page.likes.acrossFold;
  for (int i = 0; i < choices.size; ++i) choices.list[i].share *= 1 - share;
  choices.add(next, share, "across the fold");
}

}  // namespace

Choices choicesFrom(const ReaderState& state, const PanelRelations& page) {
  Choices result;
  int at = state.at;
  const PanelSet before = state.unread & page.beforeFold;
  const bool folded = before && before != state.unread;
  const PanelSet unread = folded ? before : state.unread;
  PanelSet group = 0;
  const bool onFirst = at >= 0 && (page.beforeFold & only(at));
  const bool turns = page.beforeFold && at >= 0 && onFirst != (before != 0);  // to the other page
  if (at < 0 || turns) {
    group = siblings(page, -1, unread);
    result = Step(page, state, -1, group).enter();
  } else if ((group = page.onTop[at] & unread)) {
    result = Step(page, state, -1, group).enter();
  } else {
    for (; !(group = siblings(page, page.base[at], unread)); at = page.base[at]) {
      ensure(page.base[at] >= 0, "reader: an unread panel belongs to no group");
    }
    result = Step(page, state, at, group).choose();
  }
  splitBases(result, page, state.unread);
  if (folded) addAcrossFold(result, state, page);
  result.close(state.unread, page.likes.stray);
  return result;
}

ReaderState after(const ReaderState& state, int panel, const PanelRelations& page) {
  ReaderState next{panel, state.unread & ~only(panel), state.passedOver & ~only(panel), false,
                   state.keepsRows};
  if (state.at < 0) return next;
  next.wentDown = page.below[state.at] & only(panel);
  const bool across = page.right[state.at] & only(panel);
  if (across && (page.below[state.at] & state.unread)) next.keepsRows = true;
  if (!across) {
    PanelSet side = 0;  // insets do not count as passed over, nor do they hide their base
    each(page.right[state.at] & next.unread, [&](int j) {
      if (page.base[j] == page.base[state.at]) side |= only(j);
    });
    each(side, [&](int j) {
      if (!(page.left[j] & side)) next.passedOver |= only(j);
    });
  }
  return next;
}

}  // namespace tw
