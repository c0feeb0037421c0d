// The mark that a finding wears wherever it is drawn: on reading sheets, on the story's map and in
// their lists. Levels are told apart by shape as well as by colour.
#pragma once

#include <cstddef>

#include "job/finding.h"
#include "press/surface.h"

namespace tw {

inline constexpr double kFindingMarkMm = 2.1;  ///< half its side

/// A filled diamond for must, a filled square for should, an open ring for look; grey when it is
/// silenced. Number 0 leaves it bare, for keys.
void drawFindingMark(Surface& surface, Point at, Severity severity, std::size_t number,
                     bool silenced = false);

}  // namespace tw
