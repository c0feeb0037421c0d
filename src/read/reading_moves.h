// Where a reader goes from panel to panel on a page with content: the shares of the layout's own
// preferences (next_panel.h), changed a little by copy and leads. Grown as a tree while readers
// walk it, because thousands of them take the same few ways.
#pragma once

#include <vector>

#include "read/eye_page.h"
#include "read/next_panel.h"

namespace tw {

struct MoveShare {
  int panel = -1;
  double share = 0;
};

/// All unread panels with their shares, which make 1; the likeliest by layout first.
std::vector<MoveShare> movesFrom(const ReaderState& state, const EyePage& page);

/// Draws orders of panels. Not for several threads at once.
class MoveTree {
 public:
  explicit MoveTree(const EyePage& page);
  /// Begins a new reader.
  void restart() { node_ = 0; }
  /// The next panel for a draw from [0, 1), or −1 when all are taken.
  int next(double draw);

 private:
  struct Branch {
    int panel;
    double upTo;
    int node;  ///< −1: not grown yet
  };
  struct Node {
    ReaderState state;
    std::vector<Branch> branches;
  };
  int grow(const ReaderState& state);

  const EyePage& page_;
  std::vector<Node> nodes_;
  int node_ = 0;
};

}  // namespace tw
