// Two roughs of a page set against each other: rule by rule what each costs, and panel by panel how
// shape and staging differ, in words. Also what speaks most for and against a rough.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "job/job.h"

namespace tw {

struct RuleDifference {
  std::string rule;
  double costA = 0, costB = 0;        ///< over all panels
  std::string reasonA, reasonB;       ///< of the dearest line of that rule; empty: nothing found
  std::vector<int> panelsA, panelsB;  ///< where it costs; 0 = the page
  /// > 0: B costs more.
  double difference() const { return costB - costA; }
};

struct PanelDifference {
  std::string beat;
  int panelA = 0, panelB = 0;        ///< from 1; 0: this rough does not show the beat
  double outlineMm = 0;              ///< farthest that one outline is from the other
  std::vector<std::string> shape;    ///< "12 mm wider, 8 mm lower": B against A
  std::vector<std::string> staging;  ///< "shot: close-up, there medium"
  bool differs() const { return !shape.empty() || !staging.empty() || panelA == 0 || panelB == 0; }
};

struct RoughComparison {
  std::string a, b;
  double scoreA = 0, scoreB = 0;
  std::vector<RuleDifference> rules;    ///< the largest difference first; equal ones left out
  std::vector<PanelDifference> panels;  ///< in A's reading order, then what only B shows
};

RoughComparison compareRoughs(const Job& job, const Rough& a, const Rough& b);

/// What of its score card tells a rough from the others of its page.
struct Standing {
  std::string rule;
  int panel = 0;               ///< where it shows most; 0 = the page
  double cost = 0, usual = 0;  ///< here, and the mean of the page's other roughs
  std::string words;           ///< a sentence without its stop
};

/// The rule by which it is furthest below the others' mean. By itself, or when it is nowhere
/// better: empty rule, and words that say so.
Standing strongestOf(const Rough& rough, const std::vector<Rough>& all);
/// The dearest line of its card.
Standing weakestOf(const Rough& rough, const std::vector<Rough>& all);

}  // namespace tw
