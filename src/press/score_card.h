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

}  // namespace tw
