// How a character looks: values and cut of the clothes, hair, beard and hat. Told by the words of
// the cast list through the wardrobe (presets/wardrobe), drawn by garment_mesh and garment_lines.
// A plain Look is the bare lay figure; what people wear is always the wardrobe's choice.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace tw {

enum class Hair : std::uint8_t { Short, Curly, Bun, Bob, Long, Tail, Bald };
enum class Hat : std::uint8_t { None, Cap, Brim, Helmet, Hood };
enum class Collar : std::uint8_t { None, Round, Shirt, Stand, Wide };
enum class Front : std::uint8_t { None, Buttons, Zip, Lapels };
enum class Cut : std::uint8_t { Long, Short, Bare };

/// A mark on the body or on what covers it; kind and place by name as in presets/wardrobe/marks.
struct LookMark {
  std::string kind, place;
  double side = 0;  ///< −1 the figure's own left, +1 its right, 0 the middle
};

struct Look {
  /// Values, 0 paper … 1 black.
  double top = 0, legs = 0, skirt = 0, shoes = 0, hands = 0, hair = 0.85, hat = 0.6, scarf = 0;

  bool clothed = false;                 ///< else nothing below holds but hair and hat
  double topEase = 0.5, legEase = 0.5;  ///< 0 skin-tight … 1 a heavy coat
  Cut sleeves = Cut::Long, legCut = Cut::Long;
  double skirtLength = 0;  ///< hang of coat, jacket or skirt: 0 none, 0.5 knee, 1 ankle
  double flare = 0.3;      ///< how far that stands off at the hem, 0 … 1
  Collar collar = Collar::None;
  Front front = Front::None;
  double boots = 0;  ///< share of the shank that they cover
  bool cuffs = false, belt = false, pockets = false, patches = false, gloves = false,
       scarfWorn = false, apron = false;

  Hair hairCut = Hair::Short;
  bool beard = false, moustache = false;
  Hat hatKind = Hat::None;
  std::vector<LookMark> marks;
};

}  // namespace tw
