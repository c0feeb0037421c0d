// The cast with the reference pictures of each: a picture file dropped on somebody, or pasted while
// they are chosen, is kept in the job and attached to them as one undo step.
#pragma once

#include <QListWidget>

#include <filesystem>

#include "desk/document.h"

namespace tw {

class CastShelf final : public QListWidget {
  Q_OBJECT

 public:
  explicit CastShelf(Document& document, QWidget* parent = nullptr);

  /// False, and Document::troubled, when it is no picture or the job cannot be written.
  bool attach(const std::string& who, const std::filesystem::path& picture);

 protected:
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dragMoveEvent(QDragMoveEvent* event) override;
  void dropEvent(QDropEvent* event) override;

 private:
  void refresh();

  Document& document_;
};

}  // namespace tw
