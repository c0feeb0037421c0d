// The artist's own pen over the page: non-photo blue or black, broader under pressure, and an
// eraser that takes whole lines away. Each line is one undo step. Enough to think in.
#pragma once

#include <QString>

#include <optional>

#include "desk/document.h"
#include "desk/page_tool.h"
#include "job/rough.h"

namespace tw {

struct PenSetting {
  bool black = false, erases = false;
  double widthMm = 0.6;  ///< under full pressure
};

class PenTool final : public PageTool {
 public:
  explicit PenTool(Document& document) : document_(document) {}

  PenSetting setting;

  void hover(PageView& view, const PenPoint& point) override;
  bool press(PageView& view, const PenPoint& point) override;
  void move(PageView& view, const PenPoint& point) override;
  void release(PageView& view, const PenPoint& point) override;
  void cancel(PageView& view) override;
  void paint(PageView& view, QPainter& painter) override;

 private:
  void eraseAt(Point at);
  void keepStroke();
  std::optional<std::size_t> nearestPanel(Point at) const;

  Document& document_;
  std::optional<std::size_t> panel_;
  PenStroke stroke_;
  std::optional<Page> erased_;  ///< the page without the lines taken away so far
  Point at_;
  bool isErasing_ = false;
};

/// Within that distance of its middle line.
bool touches(const PenStroke& stroke, Point at, double withinMm);
/// The stroke without points that tell nothing: none farther than `offMm` from what is left.
PenStroke simplified(const PenStroke& stroke, double offMm);
/// Left and right exchanged about that height line.
PenStroke mirroredAcross(PenStroke stroke, double x);
/// `factor` times as large about that place; widths stay.
PenStroke scaledAbout(PenStroke stroke, Point about, double factor);

}  // namespace tw
