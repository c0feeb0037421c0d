#include <algorithm>
#include <bit>
#include <cstring>

#include "read/next_panel.h"

namespace tw {

void Choices::add(int panel, double share, const char* cause) {
  if (panel < 0 || isFull()) return;
  list[size++] = {panel, share, cause};
}

void Choices::close(PanelSet unread, double stray) {
  double sum = 0;
  others = unread;
  for (int i = 0; i < size; ++i) {
    sum += list[i].share;
    others &= ~only(list[i].panel);
  }
  const int count = std::popcount(others);
  const double rest = count > 0 ? std::max(stray, 1 - sum) : 0;
  each_ = count > 0 ? rest / count : 0;
  for (int i = 0; i < size; ++i) list[i].share *= (1 - rest) / sum;
  std::stable_sort(list.begin(), list.begin() + size,
                   [](const Choice& a, const Choice& b) { return a.share > b.share; });
}

double Choices::shareOf(int panel) const {
  for (int i = 0; i < size; ++i) {
    if (list[i].panel == panel) return list[i].share;
  }
  return others & only(panel) ? each_ : 0;
}

const char* Choices::causeAgainst(int panel) const {
  for (int i = 0; i < size; ++i) {
    if (list[i].panel == panel && std::strlen(list[i].cause) > 0) return list[i].cause;
  }
  const bool known = size > 0 && std::strlen(list[0].cause) > 0;
  return known ? list[0].cause : "jumps over a panel";
}

const char* causeOf(const ReaderState& state, int panel, const Choices& choices,
                    const PanelRelations& page) {
  for (int i = 0; i < choices.size; ++i) {
    if (choices.list[i].panel != panel || choices.list[i].cause[0] == 0) continue;
    return choices.list[i].cause;
  }
  if (choices.others & only(panel)) {
    const bool strands = (page.above[panel] | page.left[panel]) & state.unread;
    return strands ? "jumps over a panel" : "a panel left behind";
  }
  if (state.at < 0) return "the panel at the entry corner";
  if (std::popcount(state.unread) == 1) return "the last panel";
  if (page.onTop[state.at] & only(panel)) return "inset";
  if (page.right[state.at] & only(panel)) return "next in the row";
  if (page.below[state.at] & only(panel)) return "next below";
  return "start of the next row or column";
}

}  // namespace tw
