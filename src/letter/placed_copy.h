// Reads a balloon as it stands on the page: its middle, where its tail ends, whether it still holds
// its item's words. And makes one from a setting and a middle.
#pragma once

#include <optional>

#include "letter/setting.h"

namespace tw {

/// Without a tail.
PlacedBalloon balloonOf(const CopyItem& item, const Setting& setting, Point middle);

/// The place that its lines stand about.
Point middleOf(const PlacedBalloon& balloon, const TypeMeasure& type);
/// The tail's farthest point; nothing when there is no tail.
std::optional<Point> tipOf(const PlacedBalloon& balloon, Point middle);

/// The same kind and the same letters with the same stress; spaces and hyphens at line ends do not
/// count.
bool holdsWords(const PlacedBalloon& balloon, const CopyItem& item, const LetterStyle& style);

PlacedBalloon shifted(PlacedBalloon balloon, Vector by);

}  // namespace tw
