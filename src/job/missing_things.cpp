#include "job/missing_things.h"

#include <fmt/format.h>

namespace tw {

std::string thingsNotDrawn(const std::vector<Beat>& beats) {
  std::string out;
  for (const Beat& beat : beats) {
    if (beat.notDrawn.empty()) continue;
    out += fmt::format("{}{} (panel {})", out.empty() ? "" : "; ", fmt::join(beat.notDrawn, ", "),
                       beat.panel);
  }
  return out;
}

}  // namespace tw
