// The strengths of the reading preferences. Published end points are marked with their source and
// with how surely we know them; everything between is our own choice, marked so.
// Cohn 2013: doi:10.3389/fpsyg.2013.00186. Cohn & Campbell 2015: doi:10.1002/acp.3086.
#pragma once

namespace tw::preference {

/// Across-then-down share at a plain grid: 95 % (Cohn & Campbell 2015, second-hand).
inline constexpr double kAcrossAtGrid = 0.95;
/// … and with the second column one tall panel: 31 % (Cohn & Campbell 2015, second-hand);
/// 32 % on Cohn 2013 in the author's own words.
inline constexpr double kAcrossAtBlockage = 0.31;
/// Floors for a very wide gap and for full overlap: published only as "falls"; our choice.
inline constexpr double kAcrossAtWideGap = 0.25;
inline constexpr double kAcrossAtOverlap = 0.40;
/// Where and how fast the three curves fall; our choice. Stagger in panel heights, gap as the
/// ratio across : down, overlap as a share of the smaller panel.
inline constexpr double kStaggerMiddle = 0.5, kStaggerSlope = 9;
inline constexpr double kGapMiddle = 1.75, kGapSlope = 5, kGapEnd = 4;
inline constexpr double kOverlapMiddle = 0.3, kOverlapSlope = 12;

/// Of those who do not go across, the share that goes straight down; 62–68 % of all at full
/// blockage (Cohn 2013, author's words), so a few go elsewhere.
inline constexpr double kDownOfRest = 0.96;
/// Rows staggered but kept: "high, a little below the grid" (Cohn 2013, from memory, low).
inline constexpr double kAcrossAtStaggeredRows = 0.93;
/// A tier that spans the panels above it leaves nothing to choose; our choice.
inline constexpr double kAcrossAboveTier = 0.985;
/// A reader who took one row across keeps to it: losses shrink to this share; our choice.
inline constexpr double kRowHabit = 0.2;
/// A reader who started down a stack finishes it ("grouped areas first"); our choice.
inline constexpr double kFinishStack = 0.94;
/// The only sensible next panel is taken almost always; our choice.
inline constexpr double kPlain = 0.995;
/// Any panel not among the sensible ones; our choice, so that no path is impossible.
inline constexpr double kStray = 0.003;

/// Entry: the panel in the reading corner, "large majority" (Cohn 2013, from memory, medium).
inline constexpr double kEntryAtCorner = 0.99;
/// No panel in the corner: split between the highest and the leftmost (same, from memory).
inline constexpr double kEntryHighest = 0.55, kEntryLeftmost = 0.42;
/// … and when the leftmost begins only below the highest; our choice.
inline constexpr double kEntryHigherTier = 0.75, kEntryLowerTier = 0.22;
/// The highest panel is out of the corner when it begins this share of the page's width in.
inline constexpr double kOutOfCorner = 0.15;
/// A base panel before what lies on it (Cohn 2013, from memory, low). An inset over the base's
/// reading corner is the panel in the corner, and that rule is better known (medium).
inline constexpr double kBaseFirst = 0.95, kBaseFirstCornerHidden = 0.45;

/// Two panels stand side by side when they share this much of the lower one's height; our choice.
inline constexpr double kSharedExtent = 0.25;
/// Edges nearer than this share of the page's larger side count as aligned; our choice.
inline constexpr double kAligned = 0.02;
/// Panels that cover each other by no more than this share of the smaller only touch.
inline constexpr double kTouching = 0.02;
/// Steps taken by fewer than this are reported.
inline constexpr double kWorthTelling = 0.95;

}  // namespace tw::preference
