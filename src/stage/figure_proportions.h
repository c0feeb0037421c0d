// Places inside the figure that the skeleton and the surface must agree on, as shares of the
// body's own lengths. Drawn from common anatomy, not measured.
#pragma once

namespace tw {

// Trunk: heights above the hips as shares of shoulder to hip, setbacks as shares of chest depth.
inline constexpr double kWaistUp = 0.27, kChestUp = 0.60, kNeckUp = 1.04;
inline constexpr double kChestBack = 0.05, kNeckBack = 0.14;
inline constexpr double kHipApart = 0.27;       // hip joint from the middle / hip breadth
inline constexpr double kShoulderApart = 0.44;  // shoulder joint from the middle / biacromial
inline constexpr double kCollarApart = 0.06;    // inner end of the collar bone / biacromial

// Head: heights above the chin as shares of head height, reaches as shares of head depth.
inline constexpr double kHeadUp = 0.24;  // skull base
inline constexpr double kChinFront = 0.40, kNoseFront = 0.53, kNoseUp = 0.33, kCrownBack = 0.06;

// Foot: shares of foot length before the ankle, and of ankle height above the sole.
inline constexpr double kBallForward = 0.50, kBallUp = 0.30;
inline constexpr double kHeelBack = 0.20, kToesLong = 0.22;

// The seat: a half of it as an egg in the pelvis's frame, shares of hip breadth (across) and of
// stature times (0.6 + 0.4 heft).
inline constexpr double kSeatApart = 0.25, kSeatUp = -0.016, kSeatBack = -0.030;
inline constexpr double kSeatAcross = 0.047, kSeatHigh = 0.052, kSeatDeep = 0.043;
inline constexpr double kSeatHers = 1.06, kSeatHis = 0.96;

}  // namespace tw
