// How the artist's own lines are drawn in the window: as press prints them.
#pragma once

#include "job/rough.h"

class QPainter;

namespace tw {

/// The painter's user space is mm on the page.
void drawStroke(QPainter& painter, const PenStroke& stroke);

}  // namespace tw
