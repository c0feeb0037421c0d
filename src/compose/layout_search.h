// All arrangements of a page, sized, and the promising and unlike ones among them.
#pragma once

#include <cstdint>
#include <vector>

#include "arrange/layout.h"
#include "base/progress.h"
#include "compose/pins_met.h"
#include "review/score_card.h"

namespace tw {

struct LayoutCandidate {
  Layout layout;
  OrderReading order;
  double cost = 0;  ///< layout rules and reading order, weighted
};

struct LayoutSearch {
  std::uint64_t counted = 0, sized = 0;
  bool exhaustive = true;
  std::vector<LayoutCandidate> kept;  ///< cheapest first
};

/// A pinned arrangement or treatment is the only one that is laid out.
LayoutSearch searchLayouts(const PageCase& page, const RuleBook& book, std::uint64_t seed,
                           unsigned threads, std::size_t keep, Progress& progress,
                           const PinsMet& pins = {});

/// How unlike two layouts are: 0 the same, about 1 nothing in common. Mean move of the panels'
/// centres and change of their sides, over a quarter of the page's diagonal.
double unlikeness(const Layout& a, const Layout& b, const Sheet& sheet);
/// Two layouts that are less unlike are one idea.
inline constexpr double kTooNear = 0.10;

}  // namespace tw
