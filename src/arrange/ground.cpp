#include "arrange/treatments.h"
namespace tw {
std::optional<Layout> groundLayout(const ArrangeRequest&, const Paper&, const PackedTree&) {
  return std::nullopt;
}
}  // namespace tw
