// Outlines and stagings that are being tried, handed to the engine in the right order: what a hand
// begins while the edit before it is still being measured waits until that one is kept, so that
// two edits never become one by accident.
#pragma once

#include <QObject>
#include <QString>

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <utility>

#include "desk/engine.h"

namespace tw {

class EditPreview final : public QObject {
  Q_OBJECT

 public:
  EditPreview(Document& document, Engine& engine, QObject* parent = nullptr);

  /// An edit has been kept whose measures are still on their way, or something waits behind it.
  bool isPending() const { return keeping_ || waiting_; }

  void show(std::vector<std::pair<std::size_t, Polygon>> outlines);
  void show(std::size_t panel, Staging staging);
  void keep(const QString& what, int merge = -1);
  void drop();

 signals:
  /// Nothing is on its way any more.
  void settled();
  /// Another page or rough is shown: whatever was held or waited belongs to the former one.
  void forgotten();

 private:
  void send(std::function<void()> wish);
  void look();
  void checkShown();

  Document& document_;
  Engine& engine_;
  std::pair<int, std::string> shown_;  ///< page and rough
  bool keeping_ = false;
  std::function<void()> waiting_;
  std::optional<std::pair<QString, int>> waitingKeep_;
};

}  // namespace tw
