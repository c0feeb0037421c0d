// The desk's one window: the start page, or a job with its stations, pages, undo and history.
#pragma once

#include <QMainWindow>

#include <functional>
#include <memory>
#include <vector>

#include "desk/station.h"

class QAction;
class QActionGroup;
class QLabel;
class QStackedWidget;

namespace tw {

class StartPage;
struct PlaceLeft;

class DeskWindow final : public QMainWindow {
  Q_OBJECT

 public:
  DeskWindow();
  ~DeskWindow() override;

  /// False, and the start page says why, when the job cannot be opened.
  bool openJob(const QString& folder);
  void openDemo();
  void closeJob();
  Document* document() { return document_.get(); }
  Engine* engine() { return engine_.get(); }
  Station* station() const;

 public slots:
  void newJobFrom(const QString& script);

 protected:
  void closeEvent(QCloseEvent*) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void buildJob();
  void buildBar();
  void goTo(std::size_t station);
  void turnPage(int by);
  void tell(const QString& sentence);
  void showState();
  void toggleNight();
  QWidget* makeStrip();
  void showSide(const std::function<QWidget*()>& make);
  void closeSide();
  void placeSide();
  void goBackTo(const PlaceLeft& place);
  void showHistory();
  void showShortcuts();

  QStackedWidget* places_ = nullptr;
  StartPage* start_ = nullptr;
  std::unique_ptr<Document> document_;
  std::unique_ptr<Engine> engine_;
  QWidget* desk_ = nullptr;  ///< everything that belongs to the open job
  QStackedWidget* stack_ = nullptr;
  std::vector<Station*> stations_;
  std::vector<QAction*> stops_;
  QLabel *where_ = nullptr, *state_ = nullptr;
  QWidget* side_ = nullptr;  ///< history or shortcuts, when one of them is looked at
};

}  // namespace tw
