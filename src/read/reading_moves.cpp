// Outlines decide most of where readers go; copy settled the order of one ambiguous layout and no
// clear one (Kirtley, Murray, Vaughan, Tatler 2023). So near copy counts at a fork in proportion as
// the fork is open: fully when the likeliest panel has half of the readers, not at all from
// fork_closed_at on. Leads count everywhere and weakly, by the published effect of a seen gaze.
// That a drawn gaze sends anybody to another panel was never measured; it is our choice to let it.

#include "read/reading_moves.h"

#include <algorithm>
#include <bit>
#include <cmath>

namespace tw {
namespace {

constexpr double kHalf = 0.5;

std::vector<MoveShare> layoutMoves(const ReaderState& state, const PanelRelations& page) {
  const Choices choices = choicesFrom(state, page);
  std::vector<MoveShare> moves;
  PanelSet rest = state.unread;
  for (int i = 0; i < choices.size; ++i) {
    const Choice& choice = choices.list[static_cast<std::size_t>(i)];
    moves.push_back({choice.panel, choice.share});
    rest &= ~only(choice.panel);
  }
  for (; rest; rest &= rest - 1) {
    const int panel = std::countr_zero(rest);
    moves.push_back({panel, choices.shareOf(panel)});
  }
  return moves;
}

void scaleToOne(std::vector<MoveShare>& moves) {
  double sum = 0;
  for (const MoveShare& move : moves) sum += move.share;
  for (MoveShare& move : moves) move.share /= sum;
}

}  // namespace

std::vector<MoveShare> movesFrom(const ReaderState& state, const EyePage& page) {
  std::vector<MoveShare> moves = layoutMoves(state, page.relations());
  scaleToOne(moves);
  if (state.at < 0 || moves.size() < 2) return moves;
  double top = 0;
  for (const MoveShare& move : moves) top = std::max(top, move.share);
  const double closed = page.model().forkClosedAt;
  const double open = std::clamp((closed - top) / std::max(closed - kHalf, 1e-9), 0.0, 1.0);
  for (MoveShare& move : moves) {
    move.share *=
        std::exp(open * page.copyPull(state.at, move.panel) + page.leadPull(state.at, move.panel));
  }
  scaleToOne(moves);
  return moves;
}

MoveTree::MoveTree(const EyePage& page) : page_(page) {
  grow({-1, allOf(page.count()), 0, false, {}});
}

int MoveTree::grow(const ReaderState& state) {
  Node node{state, {}};
  if (state.unread) {
    double sum = 0;
    for (const MoveShare& move : movesFrom(state, page_)) {
      sum += move.share;
      node.branches.push_back({move.panel, sum, -1});
    }
  }
  nodes_.push_back(std::move(node));
  return static_cast<int>(nodes_.size()) - 1;
}

int MoveTree::next(double draw) {
  Node& node = nodes_[static_cast<std::size_t>(node_)];
  if (node.branches.empty()) return -1;
  std::size_t i = 0;
  while (i + 1 < node.branches.size() && draw >= node.branches[i].upTo) ++i;
  const int panel = node.branches[i].panel;
  int onward = node.branches[i].node;
  if (onward < 0) {
    onward = grow(after(node.state, panel, page_.relations()));
    nodes_[static_cast<std::size_t>(node_)].branches[i].node = onward;
  }
  node_ = onward;
  return panel;
}

}  // namespace tw
