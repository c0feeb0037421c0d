// Finds places for all copy of one panel together: which setting of each item, and where.
#pragma once

#include <vector>

#include "letter/panel_room.h"
#include "letter/setting.h"
#include "letter/tail.h"

namespace tw {

/// Copy that stands where the artist put it.
struct HeldCopy {
  Setting setting;
  Point middle;
  TailLine tail;
  bool hasTail = false;   ///< of its own
  bool isJoined = false;  ///< to the balloon before it, instead
};

/// One item to place, with its settings.
struct CopyToPlace {
  const CopyItem* item = nullptr;
  const Settings* settings = nullptr;
  bool hasTail = false;
  bool hasMouth = false;  ///< else the tail goes to the panel's edge
  Point mouth;
  const HeldCopy* held = nullptr;  ///< placed already; nothing moves it
};

struct PlacedCopy {
  const Setting* setting = nullptr;
  Point middle;
  bool hasTail = false;
  TailLine tail;
  int bridgedTo = -1;    ///< index of the balloon that it is joined to instead of a tail
  double violation = 0;  ///< > 0: stands where it must not
};

struct Placement {
  std::vector<PlacedCopy> copy;  ///< by item; empty when no placement was found
  double cost = 0;
};

/// With `strict`, nothing forbidden happens or nothing is returned. Without, the least bad.
Placement placeCopy(const std::vector<CopyToPlace>& items, const PanelRoom& room,
                    ReadingDirection direction, const LetterStyle& style, bool strict);

/// Is the box `later` read after `earlier`? It must begin below, or stand to the reading side
/// and not begin higher. A little overlap is forgiven.
bool readsAfter(const Rect& earlier, const Rect& later, ReadingDirection direction);

}  // namespace tw
