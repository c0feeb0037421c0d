#include "desk/stroke_art.h"

#include <QPainter>
#include <QPainterPath>

#include "desk/painter_surface.h"
#include "press/stroke_ink.h"

namespace tw {

void drawStroke(QPainter& painter, const PenStroke& stroke) {
  painter.fillPath(painterPath(Path(outlineOf(stroke))), colourOf(inkOf(stroke)));
}

}  // namespace tw
