// The light of a staged panel set by hand: each lamp's direction is a point on a disc, fixed to the
// camera. The disc's middle is light from the camera itself, half way out is light from the side,
// the edge is light from behind. Moving one lamp leaves the others as they are.
#pragma once

#include <string>

#include "stage/light_wish.h"

namespace tw {

enum class LampName : std::uint8_t { Key, Fill, Rim };
std::string_view nameOf(LampName lamp);
const SetLamp& lampOf(const SetLight& light, LampName lamp);

inline constexpr double kMostLampStrength = 4;

/// x to the right, y up, both within the unit disc. Equal ways on the disc's radius are equal
/// angles (azimuthal equidistant projection).
Point onLightDisc(const Place3& from);
/// Places beyond the disc count as on its edge.
Place3 fromLightDisc(Point disc);

SetLight withLampFrom(SetLight light, LampName lamp, Point disc);
SetLight withLampStrength(SetLight light, LampName lamp, double strength);
SetLight withAmbient(SetLight light, double ambient);
/// As the beat's words have it.
SetLight wordsLight(const Beat& beat, const LightWords& known);
/// "from the left and above, behind".
std::string directionInWords(const Place3& from);

}  // namespace tw
