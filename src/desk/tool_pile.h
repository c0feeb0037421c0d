// Several tools on one page view: the first that takes a press has the hand until it lets go, and
// each draws over those below it.
#pragma once

#include <vector>

#include "desk/page_tool.h"

namespace tw {

class ToolPile final : public PageTool {
 public:
  /// Borrowed; the first is asked first.
  explicit ToolPile(std::vector<PageTool*> tools) : tools_(std::move(tools)) {}

  void hover(PageView& view, const PenPoint& point) override;
  bool press(PageView& view, const PenPoint& point) override;
  void move(PageView& view, const PenPoint& point) override;
  void release(PageView& view, const PenPoint& point) override;
  void cancel(PageView& view) override;
  bool key(PageView& view, const QKeyEvent& event) override;
  void paint(PageView& view, QPainter& painter) override;

 private:
  std::vector<PageTool*> tools_;
  PageTool* holds_ = nullptr;
};

}  // namespace tw
