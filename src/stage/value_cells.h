// A panel's picture as a coarse grid of cells, each with who is there, how light it is and its
// value step: what a value plan is made on.
#pragma once

#include <cstdint>
#include <vector>

#include "stage/garment_lines.h"
#include "stage/light.h"
#include "stage/lightness.h"
#include "stage/panel_view.h"
#include "stage/set_lines.h"
#include "stage/shade.h"

namespace tw {

/// All that was rendered of a panel.
struct LitScene {
  const std::vector<Solid>& solids;
  const PanelView& view;             ///< light: the key's, cast shadows taken away
  const std::vector<float>& others;  ///< light of the other lamps, per pixel
  const Field& groundShadow;         ///< at half the picture's width
  const Mood& mood;
  const Lighting& light;
};

struct Cells {
  static constexpr std::int16_t kSky = -1, kGround = -2, kOutside = -3;  ///< besides solids

  int width = 0, height = 0;
  double mmPerCell = 1;
  std::vector<std::int16_t> who;   ///< index of a solid or one of the above
  std::vector<float> local;        ///< luminance of its own, fully lit
  std::vector<float> lit;          ///< share of that which the light gives, 0 … 1
  std::vector<std::uint8_t> step;  ///< a ValueStep

  std::size_t count() const { return who.size(); }
  bool isInside(std::size_t i) const { return who[i] != kOutside; }
};

/// Every other pixel of the picture; cells whose middle lies outside the panel are kOutside.
Cells cellsOf(const LitScene& scene, const Polygon& panel);

/// Gives areas of one step that are smaller than this to the step that most surrounds them.
void cleanSpecks(Cells& cells, double leastMm2);

/// Under this share of light a place counts as in shadow.
inline constexpr float kInShadow = 0.42f;

}  // namespace tw
