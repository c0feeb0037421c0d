// The job that the desk has open: one state in memory, always equal to what its files say. Every
// change is one undoable edit and is saved at once, off the window's thread.
#pragma once

#include <QObject>
#include <QString>
#include <QUndoStack>

#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>

#include "desk/saver.h"
#include "job/job.h"
#include "job/job_fields.h"

namespace tw {

class Document final : public QObject {
  Q_OBJECT

 public:
  static Result<std::unique_ptr<Document>> open(const std::filesystem::path& folder);
  /// Finishes saving.
  ~Document() override;

  const std::filesystem::path& folder() const;
  const Job& job() const { return job_; }
  /// Another program holds the job, or its folder cannot be written: every change is refused.
  bool isReadOnly() const;

  /// What is shown: a page, one of its roughs, one of its panels.
  const Page& page() const;
  /// Index of the shown rough; nothing when the page has none.
  std::optional<std::size_t> roughIndex() const;
  const Rough* rough() const;
  /// Index of the selected panel of the shown rough.
  std::optional<std::size_t> panel() const { return panel_; }

  /// With the rough and the panel that were shown there last.
  void showPage(int number);
  void showRough(const std::string& name);
  void selectPanel(std::optional<std::size_t> panel);

  /// Replaces a page of the job by `after`, as one edit called `what` ("move gutter"). Edits that
  /// follow each other with the same `merge` ≥ 0 become one. False when refused; troubled() says
  /// why.
  bool change(const QString& what, const Page& after, int merge = -1);
  /// The same for everything but pages: title, cast, scenes, sheet.
  bool changeJob(const QString& what, const Job& after, int merge = -1);

  QUndoStack& undoStack() { return undo_; }
  /// Counts up whenever something changes that stagings depend on besides a rough: cast, scenes,
  /// beats, corrections, briefs.
  std::uint64_t wishesEdition() const { return wishesEdition_; }
  /// Returns when all edits are on disk; says why when some cannot be written.
  Result<void> finishSaving();

 signals:
  void pageChanged(int number);
  void jobChanged();
  /// Another page, rough or panel is shown.
  void shownChanged();
  /// A sentence for the artist.
  void troubled(const QString& sentence);
  void saved();

 private:
  friend class TextEdit;
  Document(JobFolder folder, Job job);
  /// The text of pages/NN.json, or of job.json for 0.
  const std::string& textOf(int file) const { return texts_.at(file); }
  bool changeText(const QString& what, int file, std::string text, int merge);
  /// Makes that text the present one and saves it.
  void takeText(int file, std::string text);
  void takePage(Page page);
  void takeJob(JobFile file);
  void keepShown();

  Saver saver_;
  Job job_;
  std::map<int, std::string> texts_;
  int shown_ = 0;
  std::string rough_;  ///< name; empty: the chosen one, else the first
  std::optional<std::size_t> panel_;
  std::map<int, std::pair<std::string, std::optional<std::size_t>>> left_;  ///< by page
  std::uint64_t wishesEdition_ = 1;
  QUndoStack undo_;
};

}  // namespace tw
