// What can be done with the roughs of the shown page, each as one undoable edit: pick, rank, drop,
// pin, mix. The station gives them keys and buttons.
#pragma once

#include <QObject>
#include <QString>

#include <string>

#include "desk/errand.h"
#include "desk/workbench.h"

namespace tw {

struct MixMade;

class RoughActs final : public QObject {
  Q_OBJECT

 public:
  explicit RoughActs(Document& document, QObject* parent = nullptr);

  /// Of the shown rough. Picked again it is picked no more.
  void pick();
  void rank(int by);
  void drop();
  void pinArrangement();
  /// Of a panel of the shown rough: pinned so already, the pin goes.
  void pinPanel(std::size_t panel);

  /// The panel of `into` staged as in `from`, or, without a panel, `into` in the arrangement of
  /// `from`; the new rough is shown. Measured off the window's thread.
  void mix(const std::string& from, const std::string& into, std::optional<std::size_t> panel);
  bool isMixing() const { return errand_.isRunning(); }

 signals:
  void said(const QString& words);
  void mixingChanged(bool mixing);
  /// A new rough was made and is shown.
  void mixed();

 private:
  bool change(const QString& what, const Page& after);
  void take(int page, const QString& what, Result<MixMade> made);

  Document& document_;
  Errand errand_;
};

}  // namespace tw
