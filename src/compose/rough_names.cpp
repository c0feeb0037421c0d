#include "compose/rough_names.h"

#include <algorithm>

namespace tw {

std::string roughNameAt(std::size_t index) {
  std::string out(1, static_cast<char>('A' + index % 26));
  return index < 26 ? out : roughNameAt(index / 26 - 1) + out;
}

std::string freeRoughName(const std::vector<Rough>& taken) {
  for (std::size_t i = 0;; ++i) {
    const std::string name = roughNameAt(i);
    if (std::ranges::find(taken, name, &Rough::name) == taken.end()) return name;
  }
}

bool comesBefore(const std::string& a, const std::string& b) {
  return a.size() != b.size() ? a.size() < b.size() : a < b;
}

}  // namespace tw
