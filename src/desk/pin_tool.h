// Pins on the large page: a nail in the upper right corner of each pinned panel, a hollow one under
// the pointer; a click on it drives it in or pulls it out. Lies on top of the other tools.
#pragma once

#include <QObject>

#include <optional>

#include "desk/page_tool.h"
#include "desk/page_view.h"

namespace tw {

class PinTool final : public QObject, public PageTool {
  Q_OBJECT

 public:
  PinTool(Document& document, Engine& engine, QObject* parent = nullptr);

  /// Middle of the panel's nail, px in the view.
  QPointF placeOf(const PageView& view, std::size_t panel) const;

  void hover(PageView& view, const PenPoint& point) override;
  bool press(PageView& view, const PenPoint& point) override;
  void paint(PageView& view, QPainter& painter) override;

 signals:
  void toggled(std::size_t panel);

 private:
  const Rough* shown() const;
  std::optional<std::size_t> nailUnder(const PageView& view, Point at) const;

  Document& document_;
  Engine& engine_;
  std::optional<std::size_t> over_;
};

}  // namespace tw
