// The cast with the reference pictures of each: a picture file dropped on somebody, or pasted while
// they are chosen, is kept in the job and attached to them as one undo step.
#pragma once

#include <QListWidget>

#include <filesystem>
#include <string>
#include <vector>

#include "desk/document.h"
#include "desk/errand.h"
#include "desk/file_pictures.h"

namespace tw {

class CastShelf final : public QListWidget {
  Q_OBJECT

 public:
  explicit CastShelf(Document& document, QWidget* parent = nullptr);

  /// Keeps the files in the job and attaches them as one edit, soon: a large one takes a moment.
  /// Document::troubled when one is no picture; then none is attached.
  void attach(const std::string& who, const std::vector<std::filesystem::path>& pictures);

 protected:
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dragMoveEvent(QDragMoveEvent* event) override;
  void dropEvent(QDropEvent* event) override;

 private:
  void refresh();
  void take(const std::string& who, const Result<std::vector<std::string>>& kept);

  Document& document_;
  FilePictures pictures_;
  Errand shelving_;
};

}  // namespace tw
