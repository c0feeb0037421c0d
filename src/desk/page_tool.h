// What a hand does on the page: a station lays one tool over its page view. Places in mm on the
// page; a tool never blocks and never opens a question.
#pragma once

#include <Qt>

#include "geometry/shapes.h"

class QPainter;
class QKeyEvent;

namespace tw {

class PageView;

struct PenPoint {
  Point at;               ///< mm on the page
  double pressure = 1;    ///< 0 … 1; 1 for a mouse
  bool isEraser = false;  ///< the pen's other end
  Qt::KeyboardModifiers keys;
};

class PageTool {
 public:
  virtual ~PageTool() = default;
  virtual void hover(PageView&, const PenPoint&) {}
  /// True: the tool takes the press, and all moves until release.
  virtual bool press(PageView&, const PenPoint&) { return false; }
  virtual void move(PageView&, const PenPoint&) {}
  virtual void release(PageView&, const PenPoint&) {}
  /// The drag ends without effect.
  virtual void cancel(PageView&) {}
  /// True: the key is taken.
  virtual bool key(PageView&, const QKeyEvent&) { return false; }
  /// Over everything else, in the view's pixels; map with PageView::toView.
  virtual void paint(PageView&, QPainter&) {}
};

}  // namespace tw
