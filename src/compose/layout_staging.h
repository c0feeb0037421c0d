// The cheapest ways to stage one layout: one variant per panel, by what each costs in its panel and
// what two running cost. Exact for the estimates of the quick measures.
#pragma once

#include <vector>

#include "arrange/layout.h"
#include "compose/chain.h"
#include "compose/staging_table.h"
#include "review/panel_rules.h"

namespace tw {

/// A layout with a choice for every panel.
struct StagedLayout {
  std::size_t layout = 0;  ///< index among those searched
  std::vector<StagingChoice> choices;
  double cost = 0;
};

/// A choice for every panel of a page.
using PageChoices = std::vector<StagingChoice>;

class LayoutStaging {
 public:
  /// All must outlive it.
  LayoutStaging(const PageCase& page, const RuleBook& book, const StagingTable& table,
                const Layout& layout);

  /// At most `most`, the cheapest first, each next one unlike those before and all of them unlike
  /// the pages `shown`, as far as that is worth its cost; empty when some panel has no variant.
  std::vector<StagedLayout> several(std::size_t most,
                                    const std::vector<PageChoices>& shown = {}) const;

 private:
  const Variant& variant(std::size_t panel, int choice) const {
    return (*variants_[panel])[static_cast<std::size_t>(choice)];
  }
  double unaryCost(std::size_t panel, const Variant& v) const;
  std::vector<double> pairCosts(std::size_t panel) const;
  ChainProblem problem() const;
  double rhythmCost(const Chain& chain) const;
  StagedLayout staged(const Chain& chain, double cost) const;
  StagedLayout best(const ChainProblem& problem) const;

  const PageCase& page_;
  const RuleBook& book_;
  const Layout& layout_;
  ArrivalField field_;
  std::vector<const std::vector<Variant>*> variants_;
};

/// Two choices that look alike to an editor: same shot, side, eye height and mirroring.
bool stagedAlike(const StagingChoice& a, const StagingChoice& b);

/// Share of a page's unlikeness that its shapes make; the stagings make the rest.
inline constexpr double kShapesCount = 0.7;  // an editor sees the shapes before the pictures

}  // namespace tw
