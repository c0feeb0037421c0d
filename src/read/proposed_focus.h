// A focus and a lead for a panel that is known only as a picture: a proposal from its attention
// map, with how sure it is, that the artist's own marks replace.
#pragma once

#include <optional>

#include "read/attention.h"

namespace tw {

struct ProposedFocus {
  Point at;
  Rect box;
  double sure = 0;  ///< 0 … 1; 1 when marked
  bool marked = false;
  std::string why;  ///< "marked", "strongest spot: contrast", …
};

/// The lead's `strength` says how sure it is: never over kSurestLead unless marked.
struct ProposedLead {
  Lead lead;
  bool marked = false;
};

/// What the artist says of a panel; anything left out is proposed.
struct MarkedFocus {
  std::optional<Point> focus;
  std::optional<Vector> lead;
};

inline constexpr double kSurestFocus = 0.7, kSurestLead = 0.4;

/// The strongest place that is no copy; copy when there is nothing else; the panel's middle, quite
/// unsure, when there is nothing at all.
ProposedFocus focusOf(const PanelAttention& attention, const Polygon& outline,
                      const MarkedFocus& marked = {});
ProposedLead leadOf(const PanelAttention& attention, const ProposedFocus& focus,
                    const MarkedFocus& marked = {});

}  // namespace tw
