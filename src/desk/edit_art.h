// How what can be dragged is drawn over the page: grips, the line under the hand, resting places.
// Everything is told apart by its shape; colours only help.
#pragma once

#include <QPointF>
#include <QString>

#include "arrange/page_edit.h"

class QPainter;

namespace tw {

class PageView;

enum class GripState { Shown, Hovered, Held };

void drawGrip(QPainter& painter, const PageView& view, const EditHandle& handle, GripState state);
void drawSnap(QPainter& painter, const PageView& view, const SnapLine& line);
/// Outlines that are being moved, before anything of them is measured.
void drawMoved(QPainter& painter, const PageView& view, const std::vector<EditedPanel>& panels);
/// A panel's lead as an arrow that can be taken at its tip.
void drawLeadGrip(QPainter& painter, const PageView& view, Point from, Point tip, GripState state);
/// A few words on a plate beside a place, kept inside the view.
void drawWords(QPainter& painter, const PageView& view, QPointF at, const QString& words);

/// "gutter between panels 1 and 3", "corner of panel 2".
QString wordsFor(const PageEdit& edit, const EditHandle& handle);
/// Its name in the list of edits: "move gutter".
QString editNameFor(const EditHandle& handle);

}  // namespace tw
