// What the words of a beat ask of the place: is it indoors, does a tower stand in it and how near,
// whose way leads through which opening. Found by plain words of the setting and the description,
// as an artist skims them.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "job/beat.h"

namespace tw {

std::string lowered(std::string text);
/// One of the words stands in the text, as it is written, also inside a longer word.
bool says(std::string_view text, std::initializer_list<std::string_view> words);

/// The setting's words, and the description's when nobody is in the picture; lower case.
std::string placeWords(const Beat& beat);
bool isIndoors(const Beat& beat);
/// Open water carries the scene.
bool isAfloat(const Beat& beat);

/// A tower, steeple, lighthouse or the like that the panel shows.
struct TowerWish {
  bool near = false;    ///< the figures are at its wall
  bool sunk = false;    ///< only its top stands out of the water
  bool broken = false;  ///< its top is torn off
};
std::optional<TowerWish> towerIn(const Beat& beat);

/// A door, window, arch, gate: what one can pass through.
bool isPassage(const Prop& prop);
/// Index of the figure that goes through the thing ("swims through the window"), or nothing.
std::optional<std::size_t> passerOf(const Beat& beat, std::size_t prop);
/// The passage has a round head.
bool isArched(const Beat& beat, const Prop& prop);

/// The words say that the thing has fallen over or lies on its side.
bool isFallen(const Beat& beat, const Prop& prop);

/// Part of the building rather than furniture: stands at the back, not beside the figures.
bool isBuilt(const Prop& prop);

}  // namespace tw
