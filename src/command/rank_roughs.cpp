#include "command/rank_roughs.h"

#include <algorithm>

namespace tw {

bool moveRough(Page& page, const std::string& rough, int by) {
  const auto here = std::ranges::find(page.roughs, rough, &Rough::name);
  if (here == page.roughs.end()) return false;
  const auto to = (here - page.roughs.begin()) + by;
  if (to < 0 || to >= static_cast<std::ptrdiff_t>(page.roughs.size()) || by == 0) return false;
  const auto there = page.roughs.begin() + to;
  if (by < 0)
    std::rotate(there, here, here + 1);
  else
    std::rotate(here, here + 1, there + 1);
  return true;
}

bool dropRough(Page& page, const std::string& rough) {
  if (std::erase_if(page.roughs, [&](const Rough& each) { return each.name == rough; }) == 0)
    return false;
  if (page.choice == rough) page.choice.clear();
  return true;
}

}  // namespace tw
