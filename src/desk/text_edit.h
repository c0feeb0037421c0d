// One edit of the document as the stretch of one file's text that it exchanges, compressed: a few
// kilobytes for most edits, so that undo needs no bound.
#pragma once

#include <QByteArray>
#include <QUndoCommand>

#include <string>

namespace tw {

class Document;

class TextEdit final : public QUndoCommand {
 public:
  /// `file`: page number, or 0 for job.json. `what` is what the edit did, without the page.
  TextEdit(Document& document, const QString& what, int file, const std::string& before,
           const std::string& after, int merge);

  void undo() override;
  void redo() override;
  int id() const override { return merge_; }
  bool mergeWith(const QUndoCommand* other) override;
  /// Bytes that it holds.
  qsizetype size() const { return before_.size() + after_.size(); }

 private:
  void keep(const std::string& before, const std::string& after);
  std::string with(const std::string& text, const QByteArray& out, const QByteArray& in) const;

  void showRough(const std::string& name) const;

  Document& document_;
  int file_, merge_;
  std::string roughBefore_, roughAfter_;  ///< that were shown
  bool wasDone_ = false;                  ///< once, when it was made
  std::size_t at_ = 0;
  QByteArray before_, after_;
};

}  // namespace tw
