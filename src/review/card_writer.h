// Collects what the rules find of one rough: a line of the score card with its cost, and the
// finding behind it with figures, place and evidence. Both are made here and nowhere else, so that
// they can never tell different things.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "job/finding.h"
#include "job/rough.h"
#include "review/rules.h"

namespace tw {

/// What a rule found, besides what its evidence says of every such finding.
struct Found {
  std::string reason;
  int panel = 0;  ///< in reading order from 1; 0 = the page
  double value = 0, limit = 0;
  Polygon place;                     ///< empty: the whole panel or page
  std::string remedy;                ///< empty: the rule's own
  std::optional<Severity> severity;  ///< absent: by the rule and its cost
};

/// The finding of a rule, with what its evidence says.
Finding findingOf(std::string_view rule, const RuleEvidence& evidence, Found found);

class CardWriter {
 public:
  CardWriter(const RuleBook& book, int page) : book_(book), page_(page) {}

  const RuleBook& book() const { return book_; }
  double weight(RuleId rule) const { return book_.weight(rule); }
  /// `weighted` is the cost times the rule's weight; nothing is told of what costs next to nothing.
  void add(RuleId rule, double weighted, Found found);
  /// Puts the card and score into the rough, the dearest line first, one line at cost 0 for every
  /// rule that nothing was found against; the findings worth telling in the same order.
  void finish(Rough& rough, std::vector<Finding>& findings);

 private:
  struct Entry {
    CardLine line;
    Finding finding;
    bool isFinding;
  };
  Severity severityOf(RuleId rule, double weighted) const;

  const RuleBook& book_;
  int page_;
  std::vector<Entry> entries_;
};

/// A cost under this, weighted, is not worth a line.
inline constexpr double kWorthALine = 0.005;
/// A line that costs less than this share of its rule's weight is not worth a finding, unless the
/// brief demands it; our choice.
inline constexpr double kWorthAFinding = 0.1;

}  // namespace tw
