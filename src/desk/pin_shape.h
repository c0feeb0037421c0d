// The shape that says a panel is pinned, wherever the panel is drawn: a nail seen from the side,
// filled when it is driven in.
#pragma once

#include <QPointF>

class QPainter;
class QColor;

namespace tw {

inline constexpr double kPinPx = 9;  ///< half its height

void drawPin(QPainter& painter, QPointF middle, bool driven, const QColor& colour, double size = 1);

}  // namespace tw
