// What a hand tries on the measured page, in the engine's words.
#pragma once

#include <utility>
#include <variant>
#include <vector>

#include "job/rough.h"

namespace tw {

struct RestageWish {
  std::size_t panel = 0;
  Staging staging;
};
struct ReshapeWish {
  std::vector<std::pair<std::size_t, Polygon>> outlines;
};
struct PanelWishNow {
  std::size_t panel = 0;
  RoughPanel changed;
};
using TryWish = std::variant<RestageWish, ReshapeWish, PanelWishNow>;

}  // namespace tw
