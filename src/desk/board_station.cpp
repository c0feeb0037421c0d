#include "desk/board_station.h"

#include <QAction>
#include <QActionGroup>
#include <QApplication>
#include <QClipboard>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QLabel>
#include <QMimeData>
#include <QScrollArea>
#include <QScrollBar>
#include <QSlider>
#include <QToolButton>
#include <QVBoxLayout>

#include <cmath>

#include "command/pictures.h"
#include "desk/in_qt.h"
#include "desk/layer_bar.h"
#include "desk/underlay_edit.h"
#include "desk/workbench.h"
#include "geometry/polygon.h"
#include "press/board_sheet.h"

namespace tw {

namespace {

constexpr int kColumnPx = 230;
constexpr double kWidthSteps = 20;  // of the slider, a millimetre
constexpr double kLarger = 1.1;

/// Writes the board into the job's out folder; the sentence for the artist.
QString boardWritten(const std::filesystem::path& folder, const Workbench::Work& work, int number,
                     const std::string& rough) {
  const auto file =
      folder / "out" / "boards" /
      QStringLiteral("page-%1.pdf").arg(number, 2, 10, QLatin1Char('0')).toStdString();
  const auto workshop = work.workshop();
  if (!workshop) return qt(workshop.error());
  const auto picture = pictureOf(work.job(), *work.job().page(number), rough, (*workshop)->stager);
  if (!picture) return qt(picture.error());
  const auto done = writeBoard(file, *picture, {});
  return done ? BoardStation::tr("Written: %1").arg(qt(file.string())) : qt(done.error());
}

}  // namespace

BoardStation::BoardStation(Document& document, Engine& engine, QWidget* parent)
    : Station(document, engine, parent), pen_(document), printing_(this) {
  setObjectName(QStringLiteral("boardStation"));
  auto* across = new QHBoxLayout(this);
  across->setContentsMargins(0, 0, 0, 0);
  view_ = new PageView(document, engine, this);
  view_->setTool(&pen_);
  auto* left = new QVBoxLayout;
  left->addWidget(view_, 1);
  left->addWidget(new LayerBar(*view_, this));
  across->addLayout(left, 1);
  auto* side = new QWidget(this);
  auto* scroll = new QScrollArea(this);  // on a small screen the column is higher than the station
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setWidgetResizable(true);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setFixedWidth(kColumnPx + scroll->verticalScrollBar()->sizeHint().width());
  scroll->setStyleSheet(QStringLiteral("QScrollArea { border: none; }"));
  auto* column = new QVBoxLayout(side);
  column->setContentsMargins(0, 0, 0, 0);
  across->addWidget(scroll);
  makePrinting(*column);
  makePens(*column);
  makeUnderlays(*column);
  column->addStretch();
  scroll->setWidget(side);
  connect(&document_, &Document::shownChanged, this, &BoardStation::showState);
  connect(&document_, &Document::pageChanged, this, &BoardStation::showState);
  showState();
}

void BoardStation::arrive() {
  view_->setFocus();
}

QAction* BoardStation::command(const QString& words, const char* name, const char* key) {
  auto* action = new QAction(words, this);
  action->setObjectName(QString::fromLatin1(name));
  if (key != nullptr) action->setShortcut(QKeySequence(QString::fromLatin1(key)));
  addAction(action);
  return action;
}

void BoardStation::heading(QBoxLayout& column, const QString& words) {
  auto* label = new QLabel(words, this);
  label->setProperty("heading", true);
  column.addSpacing(8);
  column.addWidget(label);
}

void BoardStation::addButton(QBoxLayout& column, QAction* action) {
  auto* button = new QToolButton(this);
  button->setDefaultAction(action);
  button->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  button->setAccessibleName(action->text());
  column.addWidget(button);
}

void BoardStation::makePens(QBoxLayout& column) {
  heading(column, tr("Your own lines"));
  auto* pens = new QActionGroup(this);
  struct PenChoice {
    QString words;
    const char* name;
    const char* key;
    bool black, erases;
  };
  for (const PenChoice& each : {PenChoice{tr("Blue pen"), "bluePen", "B", false, false},
                                PenChoice{tr("Black pen"), "blackPen", "K", true, false},
                                PenChoice{tr("Eraser"), "eraser", "X", false, true}}) {
    QAction* action = command(each.words, each.name, each.key);
    action->setCheckable(true);
    pens->addAction(action);
    connect(action, &QAction::triggered, this, [this, each] {
      pen_.setting.black = each.black;
      pen_.setting.erases = each.erases;
    });
    addButton(column, action);
  }
  pens->actions().front()->setChecked(true);
  penWidth_ = new QLabel(this);
  auto* width = new QSlider(Qt::Horizontal, this);
  width->setObjectName(QStringLiteral("penWidth"));
  width->setAccessibleName(tr("Width of the pen"));
  width->setRange(2, 60);
  connect(width, &QSlider::valueChanged, this, [this](int steps) {
    pen_.setting.widthMm = steps / kWidthSteps;
    penWidth_->setText(tr("Pen %1 mm").arg(pen_.setting.widthMm, 0, 'f', 2));
  });
  width->setValue(static_cast<int>(pen_.setting.widthMm * kWidthSteps));
  column.addWidget(penWidth_);
  column.addWidget(width);
  QAction* mirror = command(tr("Mirror the panel's lines"), "mirrorLines", "M");
  QAction* larger = command(tr("Larger lines"), "largerLines", "Ctrl++");
  QAction* smaller = command(tr("Smaller lines"), "smallerLines", "Ctrl+-");
  clear_ = command(tr("Clear the panel's lines"), "clearLines", "Ctrl+Backspace");
  connect(mirror, &QAction::triggered, this, [this] {
    changeStrokes(tr("mirror lines"), [](PenStroke stroke, const Rect& panel) {
      return mirroredAcross(std::move(stroke), panel.centre().x);
    });
  });
  connect(larger, &QAction::triggered, this, [this] {
    changeStrokes(tr("enlarge lines"), [](PenStroke stroke, const Rect& panel) {
      return scaledAbout(std::move(stroke), panel.centre(), kLarger);
    });
  });
  connect(smaller, &QAction::triggered, this, [this] {
    changeStrokes(tr("reduce lines"), [](PenStroke stroke, const Rect& panel) {
      return scaledAbout(std::move(stroke), panel.centre(), 1 / kLarger);
    });
  });
  connect(clear_, &QAction::triggered, this, &BoardStation::clearStrokes);
  for (QAction* action : {mirror, larger, smaller, clear_}) addButton(column, action);
}

void BoardStation::makeUnderlays(QBoxLayout& column) {
  heading(column, tr("Picture to work over"));
  QAction* open = command(tr("Lay a file under …"), "layUnder", "Ctrl+U");
  QAction* paste = command(tr("Paste a picture"), "pastePicture", "Ctrl+V");
  takeAway_ = command(tr("Take it away"), "takeUnderlayAway", "Ctrl+Shift+U");
  connect(open, &QAction::triggered, this, [this] {
    const QString file =
        QFileDialog::getOpenFileName(this, tr("Picture"), {}, tr("Pictures (*.png *.jpg *.jpeg)"));
    if (!file.isEmpty()) layUnder(document_, file.toStdString());
  });
  connect(paste, &QAction::triggered, this, [this] {
    const QImage picture = QApplication::clipboard()->image();
    if (picture.isNull())
      emit document_.troubled(tr("There is no picture to paste. Copy one first."));
    else
      layUnder(document_, picture);
  });
  connect(takeAway_, &QAction::triggered, this, [this] { tw::takeUnderlayAway(document_); });
  for (QAction* action : {open, paste, takeAway_}) addButton(column, action);
  column.addWidget(new QLabel(tr("Strength of the picture"), this));
  strength_ = new QSlider(Qt::Horizontal, this);
  strength_->setObjectName(QStringLiteral("underlayStrength"));
  strength_->setAccessibleName(tr("Strength of the picture"));
  strength_->setRange(0, 100);
  strength_->setTracking(false);  // one edit when it is let go
  connect(strength_, &QSlider::valueChanged, this,
          [this](int percent) { strengthenUnderlay(document_, percent / 100.0); });
  column.addWidget(strength_);
}

void BoardStation::makePrinting(QBoxLayout& column) {
  heading(column, tr("Board"));
  QAction* out = command(tr("Write the board as PDF"), "writeBoard", "Ctrl+P");
  out->setToolTip(
      tr("At the original's size, the rough in non-photo blue: into the job's out folder"));
  connect(out, &QAction::triggered, this, &BoardStation::print);
  addButton(column, out);
  printed_ = new QLabel(this);
  printed_->setObjectName(QStringLiteral("printed"));
  printed_->setWordWrap(true);
  printed_->setProperty("quiet", true);
  printed_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  column.addWidget(printed_);
}

/// Of the selected panel, or else of all.
void BoardStation::changeStrokes(const QString& what, PenStroke (*change)(PenStroke, const Rect&)) {
  const auto rough = document_.roughIndex();
  if (!rough) return;
  Page page = document_.page();
  auto& panels = page.roughs[*rough].panels;
  for (std::size_t i = 0; i < panels.size(); ++i) {
    if (document_.panel() && *document_.panel() != i) continue;
    for (PenStroke& stroke : panels[i].strokes)
      stroke = change(std::move(stroke), bounds(panels[i].outline));
  }
  document_.change(what, page);
}

void BoardStation::clearStrokes() {
  const auto rough = document_.roughIndex();
  if (!rough) return;
  Page page = document_.page();
  auto& panels = page.roughs[*rough].panels;
  for (std::size_t i = 0; i < panels.size(); ++i)
    if (!document_.panel() || *document_.panel() == i) panels[i].strokes.clear();
  document_.change(tr("clear lines"), page);
}

void BoardStation::print() {
  if (document_.rough() == nullptr) {
    printed_->setText(tr("The page has no rough yet."));
    return;
  }
  printed_->setText(tr("Writing …"));
  printing_.start([folder = document_.folder(), work = Workbench::of(document_).work(),
                   number = document_.page().number, rough = document_.rough()->name](
                      Progress&) { return boardWritten(folder, work, number, rough); },
                  [this](const QString& sentence) { printed_->setText(sentence); });
}

void BoardStation::showState() {
  const auto strength = underlayStrength(document_);
  takeAway_->setEnabled(strength.has_value());
  strength_->setEnabled(strength.has_value());
  const QSignalBlocker quiet(strength_);
  strength_->setValue(static_cast<int>(std::lround(100 * strength.value_or(0.5))));
}

}  // namespace tw
