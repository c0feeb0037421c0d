// A staged rough as a reader's eye meets it: what the rough keeps about faces, bodies, props and
// lettering, turned into the one form that all reading measures take. Hands are left out: the
// rough keeps how much of them is seen, but not where.
#pragma once

#include "job/beat.h"
#include "read/seen_page.h"

namespace tw {

/// `beats` are those of the page, with the artist's corrections; a panel whose beat is not among
/// them is known by its picture and lettering alone. `trim` in mm.
SeenPage seenPageOf(const Rough& rough, const std::vector<Beat>& beats, Rect trim,
                    ReadingDirection direction);

}  // namespace tw
