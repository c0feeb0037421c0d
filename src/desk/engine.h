// Measures what the document shows, off the window's thread. While a hand drags, only the latest
// wish counts; what is shown is either measured or said to be on its way.
#pragma once

#include <QObject>
#include <QString>
#include <QTimer>

#include <deque>
#include <functional>
#include <memory>
#include <utility>
#include <vector>

#include "desk/document.h"
#include "desk/measurement.h"
#include "desk/try_wish.h"

namespace tw {

class EngineThread;

class Engine final : public QObject {
  Q_OBJECT

 public:
  explicit Engine(Document& document);
  ~Engine() override;

  /// The latest that was measured; null before the first.
  const MeasurementPtr& latest() const { return latest_; }
  /// Something newer than latest() is being measured.
  bool isBusy() const { return latest_ == nullptr || latest_->turn < asked_; }
  /// Something is being tried that is not in the document.
  bool isTrying() const { return trying_; }
  /// An edit is being measured and will be kept.
  bool isKeeping() const { return keepAt_ != 0; }

  /// Previews, one after another on top of each other until kept or dropped. Panels by index. What
  /// is tried while an edit is still being measured waits until that one is kept: two edits never
  /// become one by accident.
  void tryRestage(std::size_t panel, Staging staging);
  /// Outlines are absolute.
  void tryReshape(std::vector<std::pair<std::size_t, Polygon>> outlines);
  /// The panel with everything in it that is not measured: bleed, staging, balloons, strokes.
  void tryPanel(std::size_t panel, RoughPanel changed);
  /// Makes what is tried one edit of the document, as soon as it is measured. `merge`: see
  /// Document::change.
  void keep(const QString& what, int merge = -1);
  /// What is being kept stays; what waits behind it is forgotten.
  void drop();
  /// Waits for the edits that are still being measured and keeps them; some 30 ms each. Before
  /// whatever would overtake them: undo, another page, the end.
  void finishKeeping();

  /// Of the images; the view that is seen sets it.
  void setPixelsPerMm(double pixelsPerMm);

 signals:
  /// An edit will be kept as soon as it is measured.
  void keeping();
  /// latest() is new.
  void measured();
  void busyChanged(bool busy);
  /// A preview has become an edit.
  void kept();
  void troubled(const QString& sentence);

 private:
  void showAgain();
  void take(MeasurementPtr measurement);
  void tryOut(TryWish wish);
  void keepNow();
  void goOn();
  void forgetKeeping();
  std::uint64_t ask();

  Document& document_;
  std::unique_ptr<EngineThread> thread_;
  MeasurementPtr latest_;
  std::uint64_t asked_ = 0;
  std::pair<int, std::string> shown_;  ///< page and rough that were asked for last
  bool trying_ = false, adopting_ = false, wasBusy_ = false;
  std::uint64_t keepAt_ = 0;  ///< turn after which the preview is kept; 0: not asked for
  QString keepAs_;
  int keepMerge_ = -1;
  std::deque<std::function<void()>> waiting_;  ///< tries and keeps after the one that is kept
};

}  // namespace tw
