// One step of the stochastic reader: from the panel just read and those still unread, which
// panels come next and how likely. The preferences and their sources stand in preferences.h, the
// rules in next_panel.cpp.
#pragma once

#include <array>

#include "read/panel_relations.h"

namespace tw {

struct Choice {
  int panel = -1;
  double share = 0;
  const char* cause = "";
};

/// The sensible next panels, the likeliest first; the others that are unread share what is left.
/// All shares together make 1.
struct Choices {
  std::array<Choice, 6> list;
  int size = 0;
  PanelSet others = 0;  ///< unread and not in the list

  bool isFull() const { return size == static_cast<int>(list.size()); }
  void add(int panel, double share, const char* cause);
  /// Gives what is left, and no less than `stray`, to the others and sorts; call it at the end.
  void close(PanelSet unread, double stray);
  double shareOf(int panel) const;
  double shareOfEachOther() const { return each_; }
  /// The cause at which the best and `panel` part.
  const char* causeAgainst(int panel) const;

 private:
  double each_ = 0;
};

/// Where a reader is and what she remembers.
struct ReaderState {
  int at = -1;  ///< −1: not begun
  PanelSet unread = 0;
  PanelSet passedOver = 0;  ///< panels across that she left aside
  bool wentDown = false;
  bool keepsRows = false;  ///< she went across although she could have gone down
  bool operator==(const ReaderState&) const = default;
};

Choices choicesFrom(const ReaderState& state, const PanelRelations& page);

/// Why a reader in this state goes to `panel`, in plain words; never empty.
const char* causeOf(const ReaderState& state, int panel, const Choices& choices,
                    const PanelRelations& page);

/// The reader after taking `panel`.
ReaderState after(const ReaderState& state, int panel, const PanelRelations& page);

}  // namespace tw
