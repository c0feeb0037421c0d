#include "compose/merge_found.h"

#include <algorithm>

#include "compose/rough_names.h"

namespace tw {

Page withFound(const Page& now, const Page& found, const RoughsBefore& before) {
  const auto isNamed = [](const auto& names, const std::string& name) {
    return std::ranges::find(names, name) != names.end();
  };
  Page out = now;
  std::erase_if(out.roughs, [&](const Rough& rough) {  // those that came meanwhile are left
    return isNamed(before.kept, rough.name) ||
           (isNamed(before.all, rough.name) && rough.name != now.choice);
  });
  std::vector<Rough> list;
  for (Rough rough : found.roughs) {
    const auto here = std::ranges::find(now.roughs, rough.name, &Rough::name);
    if (isNamed(before.kept, rough.name) && here != now.roughs.end()) {
      rough = *here;
    } else if (std::ranges::find(out.roughs, rough.name, &Rough::name) != out.roughs.end()) {
      std::vector<Rough> taken = found.roughs;
      taken.insert(taken.end(), out.roughs.begin(), out.roughs.end());
      taken.insert(taken.end(), list.begin(), list.end());
      rough.name = freeRoughName(taken);
    }
    list.push_back(std::move(rough));
  }
  out.roughs.insert(out.roughs.begin(), list.begin(), list.end());
  return out;
}

}  // namespace tw
