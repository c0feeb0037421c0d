#include "compose/hand_work.h"

#include <algorithm>

namespace tw {

bool hasHandWork(const Rough& rough) {
  return std::ranges::any_of(rough.panels, [](const RoughPanel& panel) {
    return !panel.strokes.empty() || std::ranges::any_of(panel.balloons, &PlacedBalloon::byHand);
  });
}

}  // namespace tw
