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

/// The sensible next panels, the likeliest first. Whatever is unread and not among them has
/// preference::kStray.
struct Choices {
  std::array<Choice, 4> list;
  int size = 0;

  void add(int panel, double share, const char* cause);
  double shareOf(int panel) const;
  /// The cause at which the best and `panel` part.
  const char* causeAgainst(int panel) const;
  void sort();
};

/// Where a reader is and what she remembers.
struct ReaderState {
  int at = -1;  ///< −1: not begun
  PanelSet unread = 0;
  PanelSet passedOver = 0;  ///< panels across that she left aside
  bool wentDown = false;
  int rowsKept = 0;  ///< times that she went across although she could have gone down
};

Choices choicesFrom(const ReaderState& state, const PanelRelations& page);

/// The reader after taking `panel`.
ReaderState after(const ReaderState& state, int panel, const PanelRelations& page);

}  // namespace tw
