#include "desk/tool_pile.h"

#include <ranges>
#include <utility>

namespace tw {

void ToolPile::hover(PageView& view, const PenPoint& point) {
  for (PageTool* tool : tools_) tool->hover(view, point);
}

bool ToolPile::press(PageView& view, const PenPoint& point) {
  holds_ = nullptr;
  for (PageTool* tool : tools_)
    if (tool->press(view, point)) {
      holds_ = tool;
      return true;
    }
  return false;
}

void ToolPile::move(PageView& view, const PenPoint& point) {
  if (holds_ != nullptr) holds_->move(view, point);
}

void ToolPile::release(PageView& view, const PenPoint& point) {
  if (PageTool* tool = std::exchange(holds_, nullptr)) tool->release(view, point);
}

void ToolPile::cancel(PageView& view) {
  if (PageTool* tool = std::exchange(holds_, nullptr)) tool->cancel(view);
}

bool ToolPile::key(PageView& view, const QKeyEvent& event) {
  for (PageTool* tool : tools_)
    if (tool->key(view, event)) return true;
  return false;
}

void ToolPile::paint(PageView& view, QPainter& painter) {
  for (PageTool* tool : tools_ | std::views::reverse) tool->paint(view, painter);
}

}  // namespace tw
