#include "desk/desk_window.h"

#include <QAction>
#include <QActionGroup>
#include <QApplication>
#include <QCloseEvent>
#include <QDir>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QResizeEvent>
#include <QScreen>
#include <QSettings>
#include <QShortcut>
#include <QStackedWidget>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

#include "command/new_job.h"
#include "desk/controls.h"
#include "desk/desk_icon.h"
#include "desk/field_undo.h"
#include "desk/history_panel.h"
#include "desk/in_qt.h"
#include "desk/look.h"
#include "desk/page_words.h"
#include "desk/recent_jobs.h"
#include "desk/shortcuts_panel.h"
#include "desk/start_page.h"
#include "desk/stations.h"
#include "desk/story_strip.h"
#include "desk/way_bar.h"

namespace tw {

namespace {

const QString kNightKey = QStringLiteral("night");
const QString kGeometryKey = QStringLiteral("window");
constexpr int kFramePx = 32;  // of a window manager, at most

/// Within the screen, with its frame.
QSize usualSize() {
  const QSize room = QApplication::primaryScreen()->availableSize();
  return QSize(1280, 760).boundedTo(room - QSize(kFramePx, 2 * kFramePx));
}

}  // namespace

DeskWindow::DeskWindow() {
  setObjectName(QStringLiteral("desk"));
  setWindowTitle(QStringLiteral("Tierwright"));
  setWindowIcon(deskIcon());
  resize(usualSize());
  restoreGeometry(QSettings().value(kGeometryKey).toByteArray());
  QApplication::instance()->installEventFilter(new FieldUndo(this));
  places_ = new QStackedWidget(this);
  setCentralWidget(places_);
  start_ = new StartPage(places_);
  places_->addWidget(start_);
  connect(start_, &StartPage::jobAsked, this, &DeskWindow::openJob);
  connect(start_, &StartPage::demoAsked, this, &DeskWindow::openDemo);
  connect(start_, &StartPage::newJobAsked, this, &DeskWindow::newJobFrom);
}

DeskWindow::~DeskWindow() {
  closeJob();
}

Station* DeskWindow::station() const {
  return stack_ ? static_cast<Station*>(stack_->currentWidget()) : nullptr;
}

bool DeskWindow::openJob(const QString& folder) {
  auto opened = Document::open(folder.toStdString());
  if (!opened) {
    start_->tellTrouble(qt(opened.error()));
    return false;
  }
  closeJob();
  document_ = std::move(*opened);
  engine_ = std::make_unique<Engine>(*document_);
  rememberJob(folder, qt(document_->job().title));
  buildJob();
  goBackTo(placeLeft(folder));
  start_->tellTrouble({});
  return true;
}

void DeskWindow::openDemo() {
  QString trouble;
  const QString folder = demoJobFolder(trouble);
  if (folder.isEmpty())
    start_->tellTrouble(trouble);
  else
    openJob(folder);
}

void DeskWindow::newJobFrom(const QString& script) {
  const QFileInfo file(script);
  NewJobRequest request;
  request.script = script.toStdString();
  request.folder =
      file.dir().filePath(file.completeBaseName() + QStringLiteral("-job")).toStdString();
  const auto made = newJob(request);
  if (!made)
    start_->tellTrouble(qt(made.error()));
  else
    openJob(qt(request.folder.string()));
}

void DeskWindow::closeJob() {
  if (!document_) return;
  if (Station* present = station()) present->leave();
  engine_->finishKeeping();
  rememberPlace(
      qt(document_->folder().string()),
      {document_->page().number, document_->rough() ? qt(document_->rough()->name) : QString(),
       document_->panel() ? static_cast<int>(*document_->panel()) + 1 : 0,
       station() ? station()->actionName() : QString()});
  const Result<void> onDisk = document_->finishSaving();
  places_->setCurrentWidget(start_);
  delete desk_;  // the stations look at engine and document until here
  desk_ = side_ = nullptr;
  stack_ = nullptr;
  where_ = state_ = nullptr;
  stops_.clear();
  stations_.clear();
  engine_.reset();
  document_.reset();
  start_->refresh();
  start_->tellTrouble(onDisk ? QString() : tr("Not all is on disk. %1").arg(qt(onDisk.error())));
  setWindowTitle(QStringLiteral("Tierwright"));
}

void DeskWindow::buildJob() {
  desk_ = new QWidget(places_);
  auto* down = new QVBoxLayout(desk_);
  down->setContentsMargins(10, 6, 10, 6);
  down->setSpacing(6);
  stack_ = new QStackedWidget(desk_);
  stations_ = makeStations(*document_, *engine_, stack_);
  for (Station* each : stations_) stack_->addWidget(each);
  buildBar();
  stack_->installEventFilter(this);
  down->addWidget(stack_, 1);
  down->addWidget(makeStrip());
  state_ = new QLabel(desk_);
  state_->setObjectName(QStringLiteral("state"));
  state_->setProperty("quiet", true);
  down->addWidget(state_);
  connect(document_.get(), &Document::troubled, this, &DeskWindow::tell);
  connect(engine_.get(), &Engine::troubled, this, &DeskWindow::tell);
  connect(document_.get(), &Document::shownChanged, this, &DeskWindow::showState);
  connect(document_.get(), &Document::pageChanged, this, &DeskWindow::showState);
  connect(document_.get(), &Document::saved, this, [this] { tell(tr("Saved.")); });
  places_->addWidget(desk_);
  places_->setCurrentWidget(desk_);
  showState();
  goTo(0);
  if (document_->isReadOnly())
    tell(tr("Another program has this job open: you can look, but nothing will be changed."));
}

void DeskWindow::buildBar() {
  auto* band = new QWidget(desk_);
  band->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);  // as high at every station
  static_cast<QVBoxLayout*>(desk_->layout())->insertWidget(0, band);
  auto* bar = new QHBoxLayout(band);
  bar->setContentsMargins(0, 0, 0, 0);
  auto* group = new QActionGroup(desk_);
  QList<QAction*> stops;
  for (std::size_t i = 0; i < stations_.size(); ++i) {
    auto* stop = new QAction(stations_[i]->title(), group);
    stop->setObjectName(stations_[i]->actionName());
    stop->setCheckable(true);
    stop->setShortcut(QKeySequence(Qt::CTRL | static_cast<Qt::Key>(Qt::Key_1 + i)));
    stop->setToolTip(QStringLiteral("%1 (%2)").arg(
        stations_[i]->purpose(), stop->shortcut().toString(QKeySequence::NativeText)));
    connect(stop, &QAction::triggered, this, [this, i] { goTo(i); });
    desk_->addAction(stop);
    stops.append(stop);
    stops_.push_back(stop);
  }
  bar->addWidget(new WayBar(stops, desk_));
  bar->addStretch();
  where_ = new QLabel(desk_);
  where_->setObjectName(QStringLiteral("where"));
  bar->addWidget(where_);
  bar->addStretch();

  QAction* back = actionOn(*desk_, tr("Earlier page"), "earlierPage", QKeySequence(Qt::Key_PageUp));
  QAction* on = actionOn(*desk_, tr("Later page"), "laterPage", QKeySequence(Qt::Key_PageDown));
  connect(back, &QAction::triggered, this, [this] { turnPage(-1); });
  connect(on, &QAction::triggered, this, [this] { turnPage(1); });
  QUndoStack& undoStack = document_->undoStack();
  // Own actions: an edit that is still being measured is kept first, so undo takes back the last
  // one.
  QAction* undo = actionOn(*desk_, tr("Undo"), "undo", QKeySequence::Undo);
  QAction* redo = actionOn(*desk_, tr("Redo"), "redo", QKeySequence::Redo);
  connect(undo, &QAction::triggered, this, [this] {
    engine_->finishKeeping();
    document_->undoStack().undo();
  });
  connect(redo, &QAction::triggered, this, [this] {
    engine_->finishKeeping();
    document_->undoStack().redo();
  });
  const auto showSteps = [this, &undoStack, undo, redo] {
    undo->setEnabled(undoStack.canUndo() || engine_->isKeeping());
    redo->setEnabled(undoStack.canRedo());
    undo->setToolTip(tr("Undo: %1 (%2)").arg(undoStack.undoText(), undo->shortcut().toString()));
    redo->setToolTip(tr("Redo: %1 (%2)").arg(undoStack.redoText(), redo->shortcut().toString()));
  };
  connect(&undoStack, &QUndoStack::indexChanged, undo, showSteps);
  connect(engine_.get(), &Engine::keeping, undo, showSteps);
  connect(engine_.get(), &Engine::busyChanged, undo, showSteps);
  showSteps();
  QAction* history = actionOn(*desk_, tr("History"), "history", QKeySequence(Qt::Key_F7));
  QAction* keys = actionOn(*desk_, tr("Keys"), "keys", QKeySequence(Qt::Key_F1));
  QAction* night = actionOn(*desk_, tr("Night"), "night", QKeySequence(Qt::Key_F9));
  QAction* close =
      actionOn(*desk_, tr("Close job"), "closeJob", QKeySequence(Qt::CTRL | Qt::Key_W));
  connect(history, &QAction::triggered, this, &DeskWindow::showHistory);
  connect(keys, &QAction::triggered, this, &DeskWindow::showShortcuts);
  connect(night, &QAction::triggered, this, &DeskWindow::toggleNight);
  connect(close, &QAction::triggered, this, &DeskWindow::closeJob, Qt::QueuedConnection);
  for (QAction* action : {undo, redo, history, keys, night, close})
    bar->addWidget(buttonFor(action, desk_));
}

QWidget* DeskWindow::makeStrip() {
  return new StoryStrip(*document_, *engine_, desk_);
}

void DeskWindow::goTo(std::size_t index) {
  if (index >= stations_.size()) return;
  if (Station* present = station(); present != stations_[index]) present->leave();
  stack_->setCurrentWidget(stations_[index]);
  stops_[index]->setChecked(true);
  stations_[index]->arrive();
  if (auto* keys = qobject_cast<ShortcutsPanel*>(side_)) keys->refresh();
}

/// Where the job was left, as far as it is still there.
void DeskWindow::goBackTo(const PlaceLeft& place) {
  document_->showPage(place.page);
  if (document_->rough() != nullptr) {
    const auto& roughs = document_->page().roughs;
    const std::string name = place.rough.toStdString();
    if (std::ranges::find(roughs, name, &Rough::name) != roughs.end()) document_->showRough(name);
  }
  if (place.page == document_->page().number && place.panel > 0)
    document_->selectPanel(static_cast<std::size_t>(place.panel) - 1);
  for (std::size_t i = 0; i < stations_.size(); ++i)
    if (stations_[i]->actionName() == place.station) goTo(i);
}

void DeskWindow::turnPage(int by) {
  const auto& pages = document_->job().pages;
  const auto here = std::ranges::find(pages, document_->page().number, &Page::number);
  const auto to = (here - pages.begin()) + by;
  if (to >= 0 && to < static_cast<std::ptrdiff_t>(pages.size()))
    document_->showPage(pages[static_cast<std::size_t>(to)].number);
}

void DeskWindow::tell(const QString& sentence) {
  if (state_ != nullptr) state_->setText(sentence);
}

void DeskWindow::showState() {
  const Page& page = document_->page();
  QString words = inWords(page);
  if (const Rough* rough = document_->rough())
    words += tr(", rough %1").arg(qt(rough->name)) +
             (rough->name == page.choice ? tr(" (chosen)") : QString());
  if (document_->panel()) words += tr(", panel %1").arg(*document_->panel() + 1);
  where_->setText(words);
  const QString title = qt(document_->job().title);
  setWindowTitle(QStringLiteral("%1 – Tierwright").arg(title));
}

void DeskWindow::toggleNight() {
  const bool night = !QSettings().value(kNightKey).toBool();
  QSettings().setValue(kNightKey, night);
  dress(*static_cast<QApplication*>(QApplication::instance()),
        night ? DeskLight::Night : DeskLight::Day);
}

/// One side panel at a time; asked for again it goes.
void DeskWindow::showSide(const std::function<QWidget*()>& make) {
  const QString before = side_ ? side_->objectName() : QString();
  delete side_;
  side_ = make();
  if (side_->objectName() == before) return closeSide();
  auto* close = new QShortcut(QKeySequence(Qt::Key_Escape), side_);
  close->setContext(Qt::WidgetWithChildrenShortcut);
  connect(close, &QShortcut::activated, this, &DeskWindow::closeSide, Qt::QueuedConnection);
  side_->setAttribute(Qt::WA_StyledBackground);  // nothing shines through
  placeSide();
  side_->show();
  side_->raise();
  side_->setFocus();
}

void DeskWindow::closeSide() {
  delete side_;
  side_ = nullptr;
}

/// Over the right edge of the station: the window need not grow for it.
void DeskWindow::placeSide() {
  if (side_ == nullptr) return;
  const QRect room(stack_->mapTo(desk_, QPoint()), stack_->size());
  side_->setGeometry(room.right() + 1 - side_->width(), room.top(), side_->width(), room.height());
}

bool DeskWindow::eventFilter(QObject* watched, QEvent* event) {
  if (watched == stack_ && event->type() == QEvent::Resize) placeSide();
  return QMainWindow::eventFilter(watched, event);
}

void DeskWindow::showHistory() {
  showSide([this] { return new HistoryPanel(*document_, desk_); });
}

void DeskWindow::showShortcuts() {
  showSide([this] { return new ShortcutsPanel(*desk_); });
}

void DeskWindow::closeEvent(QCloseEvent* event) {
  QSettings().setValue(kGeometryKey, saveGeometry());
  closeJob();
  event->accept();
}

}  // namespace tw
