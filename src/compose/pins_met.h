// A page's pins as far as they can be met, and in words those that cannot. A pin is never dropped
// without saying so.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "arrange/layout.h"
#include "review/page_case.h"

namespace tw {

struct PinsMet {
  std::optional<PackedTree> tree;        ///< the only arrangement
  std::optional<Treatment> treatment;    ///< the only treatment
  std::vector<const Staging*> stagings;  ///< by panel; null: free. They point into the page.
  std::vector<std::string> unkept;       ///< a sentence each

  bool arrangesFreely() const { return !tree && !treatment; }
  const Staging* stagingOf(std::size_t panel) const {
    return panel < stagings.size() ? stagings[panel] : nullptr;
  }
};

PinsMet pinsMet(const PageCase& page);

/// Gives up the pinned treatment and says so.
void giveUpTreatment(PinsMet& pins);

}  // namespace tw
