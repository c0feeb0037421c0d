// The score card in words: what a rough costs, rule by rule, why, and what would help.
#pragma once

#include "press/proof.h"
#include "press/surface.h"
#include "press/typesetter.h"

namespace tw {

inline constexpr double kCardWidthMm = 68;

/// Draws the card of the rough into that column; what does not fit is summed up in one line.
void drawScoreCard(Surface& surface, const RoughPicture& picture, const Rect& column,
                   const Typesetter& typesetter);

/// The card's lines that cost something, dearest first; equal ones keep their order.
std::vector<CardLine> dearestFirst(const std::vector<CardLine>& card);

/// "92 % of readers keep the order. Leads hand on 71 %."
std::string readingInWords(const RoughReading& reading);
/// "2.48", "0.07"; never more digits than mean something.
std::string costInWords(double cost);

}  // namespace tw
