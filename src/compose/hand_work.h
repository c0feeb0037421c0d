// Whether the artist's own hand can be told in a rough: what must not be lost when others are made.
#pragma once

#include "job/rough.h"

namespace tw {

/// Lines drawn over it or balloons placed by hand. Dragged borders and stagings set by hand are not
/// told from what a search may set by itself: who wants to keep them picks the rough or pins.
bool hasHandWork(const Rough& rough);

}  // namespace tw
