// The words and figures of the rules about one panel or two panels running: what was measured,
// what was wanted, where on the page.
#pragma once

#include "review/called.h"
#include "review/card_writer.h"
#include "review/score_card.h"

namespace tw {

/// Panel and pair rules, paid through payPanel and payPair.
void addPanelRules(CardWriter& card, const Measured& measured, const PageCase& page);
void addPairRules(CardWriter& card, const Measured& measured, const PageCase& page);

/// What a rule about one panel measures there, kept or not; nothing for other rules.
std::optional<Found> panelFound(RuleId rule, const Measured& measured, const PageCase& page,
                                std::size_t panel);

}  // namespace tw
