// What stands beside a page that is edited: the selected panel by number, the page's findings with
// what mends them, and the score card. Says below what the hand on the page does.
#pragma once

#include <QWidget>

#include "desk/page_edit_tool.h"

namespace tw {

class EditSide final : public QWidget {
  Q_OBJECT

 public:
  /// The tool works on the same view.
  EditSide(Document& document, Engine& engine, PageView& view, PageEditTool& tool,
           QWidget* parent = nullptr);
};

}  // namespace tw
