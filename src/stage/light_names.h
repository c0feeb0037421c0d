// The lights of presets/lexicon/light.json by name, for lists to choose from.
#pragma once

#include <string>
#include <vector>

#include "base/result.h"

namespace tw {

struct LightName {
  std::string name;   ///< "back", as lightAsked takes it
  std::string title;  ///< "from behind: dark figures with a lit edge"
};

/// In the file's order.
Result<std::vector<LightName>> lightNames();

}  // namespace tw
