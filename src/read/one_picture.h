// The page as one picture at arm's length: which panel is the strongest, whether there is one
// centre or several that compete, how black is spread, and which neighbours' focuses fight.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "geometry/grey_picture.h"
#include "read/contrast_map.h"

namespace tw {

/// What is asked of a page: its panels in reading order.
struct OnePictureAsk {
  std::vector<Polygon> panels;
  std::vector<Point> focuses;   ///< one a panel, or none at all
  std::vector<int> layer;       ///< over 0: lies on another panel; empty: none does
  Rect page;                    ///< trim, mm
  std::optional<int> dominant;  ///< index of the panel that should be the strongest
};

struct PanelInPicture {
  double strength = 0;  ///< its highest contrast at the page's scale, 0 … 1
  double black = 0;     ///< share of it darker than kBlackLight
  double light = 1;     ///< mean, L* / 100
};

/// Two panels whose focuses stand in one glance, both strong.
struct FocusFight {
  int a = 0, b = 0;  ///< indices
  double apartMm = 0;
};

struct OnePicture {
  std::vector<PanelInPicture> panels;
  int strongest = -1;             ///< index of the strongest panel; −1 on a page without any
  double dominantHolds = 0.5;     ///< dominant's strength / (its own + the strongest other's)
  std::vector<Peak> centres;      ///< places within kCompetes of the best, that one first
  std::array<double, 4> black{};  ///< share of black: upper left, upper right, lower left, right
  Vector balance;                 ///< of the darkness about the middle, −1 … 1 each way
  std::vector<FocusFight> fights;
};

/// A place competes with the best when it reaches this share of its strength; our choice.
inline constexpr double kCompetes = 0.85;
/// L* / 100 below which ink counts as black; our choice.
inline constexpr double kBlackLight = 0.25;
/// Focuses nearer than this fall into one glance: 3 degrees at reading distance; our choice.
inline constexpr double kOneGlanceMm = 21;
/// … and fight when both reach this share of the page's strongest place; our choice.
inline constexpr double kFights = 0.6;

OnePicture onePictureOf(const GreyPicture& page, const OnePictureAsk& ask);

}  // namespace tw
