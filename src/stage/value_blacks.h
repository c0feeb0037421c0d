// Which areas of a panel to fill solid black, and how the focus stands against its ground.
#pragma once

#include <vector>

#include "stage/value_cells.h"
#include "stage/value_plan.h"

namespace tw {

/// How the focus stands out from what lies around it.
struct Standing {
  double focusLightness = 0, groundLightness = 0, apart = 0;
  double figuresApart = 1;  ///< of all figures' outlines together
};

/// The places at which the focus is judged; made once, read often.
class FocusBorder {
 public:
  FocusBorder(const Cells& cells, const std::vector<Solid>& solids);
  bool hasFocus() const { return inside_ > 0; }
  /// With the cells of `black` (1 per cell, or empty) filled.
  Standing standing(const Cells& cells, const std::vector<std::uint8_t>& black) const;

 private:
  struct Pair {
    std::uint32_t in, out;
  };
  std::vector<Pair> pairs_, figures_;
  std::vector<std::uint32_t> body_, around_;
  std::size_t inside_ = 0;
};

/// Sets sky, ground, set and things a step darker or lighter where figures and things then stand
/// out better: the choice an artist makes before any black is spotted.
void chooseGrounds(Cells& cells, const std::vector<Solid>& solids);

/// Fills blacks into the cells, the ones that help the focus most first, and tells which.
std::vector<SpottedBlack> spotBlacks(Cells& cells, const LitScene& scene,
                                     const FocusBorder& border);

/// The whole plan of a rendered panel.
ValuePlan valuePlanOf(const LitScene& scene, const Polygon& panel);

/// Neighbours with one value along most of their border.
std::vector<RunTogether> runningTogether(const Cells& cells, const std::vector<Solid>& solids);

}  // namespace tw
