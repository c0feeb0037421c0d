// Shot sizes by where the frame cuts a standing body, and the words for those cut lines.
// The measure behind a name is stature over frame height at the figure's depth; the bands are
// those of docs/facts: midpoints between landmarks of Drillis & Contini 1966 with 8 % head room.
#pragma once

#include <array>
#include <string_view>

#include "job/words.h"

namespace tw {

/// A landmark of the standing body at which a frame may cut it, from the top down.
struct CutLine {
  double heightShare;  ///< height above the floor over stature
  std::string_view name;
  bool joint;  ///< a frame edge just here reads as an amputation (common practice)
};
inline constexpr std::array<CutLine, 10> kCutLines{{{0.936, "face", false},
                                                    {0.850, "neck", true},
                                                    {0.800, "shoulder", false},
                                                    {0.720, "chest", false},
                                                    {0.630, "waist", false},
                                                    {0.530, "hip", false},
                                                    {0.4075, "thigh", false},
                                                    {0.285, "knee", true},
                                                    {0.162, "shin", false},
                                                    {0.039, "ankle", true}}};

/// Stature over frame height: the band that carries the shot's name, and its middle use.
double leastRatio(ShotSize shot);
double mostRatio(ShotSize shot);
/// Height of the frame's bottom edge on the body over stature; below 0 for whole figures.
double usualCut(ShotSize shot);
/// The ratio that puts the usual cut line on the bottom edge under this much head room
/// (share of the frame's height), kept inside the band.
double ratioFor(ShotSize shot, double headRoom);
ShotSize shotOfRatio(double statureOverFrame);

/// The landmark nearest to a cut at this height over stature; "whole" below the sole.
std::string_view cutName(double heightShare);
/// True within `tolerance` (share of stature) of neck, knee or ankle.
bool cutsAtJoint(double heightShare, double tolerance = 0.018);

/// Steps between two sizes or eye heights.
int stepsBetween(ShotSize a, ShotSize b);
int stepsBetween(EyeHeight a, EyeHeight b);

}  // namespace tw
