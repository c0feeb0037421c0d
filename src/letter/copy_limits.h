// How much copy is too much: the trade's word limits, as findings.
#pragma once

#include <vector>

#include "letter/lettering.h"

namespace tw {

/// Common practice, facts on lettering: 20–25 words a balloon.
inline constexpr int kMostWordsPerBalloon = 25;
/// Common practice: balloons over 40–50 % of their panel crowd it.
inline constexpr double kMostAreaShare = 0.45;

int wordsIn(const CopyItem& item);

/// Balloons and panels with too many words.
std::vector<CopyFinding> wordFindings(const std::vector<CopyItem>& items, int panelsOnPage);

}  // namespace tw
