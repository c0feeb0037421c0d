// How handles of a staged panel look: a shape of its own for each kind, so that nobody has to tell
// them by colour. Drawn in the view's pixels over white paper, with a pale edge to stand out from
// dark pictures.
#pragma once

#include <QPointF>
#include <QPolygonF>

#include <array>
#include <optional>
#include <vector>

#include "stage/handles.h"

class QPainter;

namespace tw {

struct HandleMark {
  Grab grab = Grab::Head;
  QPointF at;
  std::optional<QPointF> from;  ///< where its line begins: the head for a gaze
  bool isHeld = false, isHovered = false, isHidden = false, isPinned = false;
  bool isOther = false;  ///< of a figure that is not selected
};

void drawHandle(QPainter& painter, const HandleMark& mark);
void drawBone(QPainter& painter, const QPolygonF& line, double strength);
void drawPivot(QPainter& painter, QPointF at);
/// Joints that a line is drawn through, limb by limb.
const std::vector<std::vector<Joint>>& boneChains();

}  // namespace tw
