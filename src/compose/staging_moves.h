// Changes of one panel's staging that a hand asks for by name: mirror the picture, tilt the
// horizon, another choice of camera or blocking. What the artist set by hand (a joint, a gaze, the
// light, the camera's place) stays. The page is not changed: the answer is another staging for it.
#pragma once

#include <optional>

#include "compose/measured_page.h"

namespace tw {

inline constexpr double kMostTiltDeg = 25;
inline constexpr double kMostGazeDeg = 70;  ///< farther no neck turns

/// True when the panel's staging is not the one that its choice would be solved to.
bool isStagedByHand(const MeasuredPage& page, std::size_t panel);

/// The staging that this choice gives the panel, with what was set by hand carried over.
Staging stagedAs(const MeasuredPage& page, std::size_t panel, const StagingChoice& choice);

/// The picture turned left to right.
Staging mirroredPicture(const MeasuredPage& page, std::size_t panel);
/// Exactly in the looking-glass, the light left where it is. Twice is as before.
Staging inLookingGlass(Staging staging);

/// The horizon tilted by so many degrees more, as StagingChoice counts them; nothing when it would
/// be tilted by more than kMostTiltDeg.
std::optional<Staging> tiltedPicture(const MeasuredPage& page, std::size_t panel, double byDeg);
/// "tilt the horizon 7°, left side down": by so many degrees more.
std::string tiltInWords(const Staging& staging, double byDeg);
/// The horizon straight.
Staging levelPicture(const MeasuredPage& page, std::size_t panel);

}  // namespace tw
