// The score card of a finished rough: every rule, its cost, its reason in words with figures, the
// remedy, and the panel. A rule that is kept has one line at cost 0.
#pragma once

#include <string>
#include <vector>

#include "letter/lettering.h"
#include "read/handed_on.h"
#include "read/reading_order.h"
#include "review/page_case.h"
#include "review/panel_rules.h"
#include "review/rules.h"

namespace tw {

/// A rough with everything that was measured of it. Vectors run in reading order.
struct Measured {
  Rough rough;
  Layout layout;
  std::vector<Variant> variants;
  std::vector<Arrival> arrivals;
  std::vector<LetterResult> copy;
  std::vector<double> covered;  ///< share of each focus figure under balloons and insets
  OrderReading order;
  std::vector<Finding> findings;  ///< filled by judge(): one for each line that costs
};

/// Fills card, score and reading of measured.rough, and the findings.
void judge(Measured& measured, const PageCase& page, const RuleBook& book);

/// The demands of the brief that the card says are missed, in words with the amount.
std::vector<std::string> missedDemands(const Rough& rough, const RuleBook& book);

/// What a layout costs before anything is staged; the card's layout rules share it.
struct LayoutCosts {
  double area = 0, shape = 0, least = 0, dominant = 0;
  double sum() const { return area + shape + least + dominant; }
};
LayoutCosts layoutCosts(const Layout& layout, const PageCase& page, const RuleBook& book);

}  // namespace tw
