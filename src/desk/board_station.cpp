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
#include "desk/controls.h"
#include "desk/in_qt.h"
#include "desk/layer_bar.h"
#include "desk/underlay_edit.h"
#include "desk/workbench.h"
#include "geometry/polygon.h"
#include "press/board_sheet.h"

namespace tw {

namespace {

constexpr int kColumnPx = 230, kAboveHeadingPx = 8;
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
  auto* sizes = new QHBoxLayout;
  for (QAction* action : view_->sizeActions()) sizes->addWidget(buttonFor(action, this));
  sizes->addStretch();
  left->insertLayout(0, sizes);
  left->addWidget(new LayerBar(*view_, this));
  across->addLayout(left, 1);
  auto* side = new QWidget(this);
  // On a small screen the column is higher than the station.
  QScrollArea* scroll = scrolled(side, this);
  scroll->setFixedWidth(kColumnPx + scroll->verticalScrollBar()->sizeHint().width());
  auto* column = new QVBoxLayout(side);
  column->setContentsMargins(0, 0, 0, 0);
  across->addWidget(scroll);
  makePrinting(*column);
  makePens(*column);
  makeUnderlays(*column);
  column->addStretch();
  connect(&document_, &Document::shownChanged, this, &BoardStation::showState);
  connect(&document_, &Document::pageChanged, this, &BoardStation::showState);
  showState();
}

void BoardStation::arrive() {
  view_->setFocus();
}

void BoardStation::makePens(QBoxLayout& column) {
  column.addSpacing(kAboveHeadingPx);
  column.addWidget(heading(tr("Your own lines"), this));
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
    QAction* action =
        actionOn(*this, each.words, each.name, QKeySequence(QString::fromLatin1(each.key)));
    action->setCheckable(true);
    pens->addAction(action);
    connect(action, &QAction::triggered, this, [this, each] {
      pen_.setting.black = each.black;
      pen_.setting.erases = each.erases;
    });
    column.addWidget(wideButtonFor(action, this));
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
  QAction* mirror = actionOn(*this, tr("Mirror the panel's lines"), "mirrorLines",
                             QKeySequence(QStringLiteral("M")));
  QAction* larger =
      actionOn(*this, tr("Larger lines"), "largerLines", QKeySequence(QStringLiteral("Ctrl++")));
  QAction* smaller =
      actionOn(*this, tr("Smaller lines"), "smallerLines", QKeySequence(QStringLiteral("Ctrl+-")));
  clear_ = actionOn(*this, tr("Clear the panel's lines"), "clearLines",
                    QKeySequence(QStringLiteral("Ctrl+Backspace")));
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
  for (QAction* action : {mirror, larger, smaller, clear_})
    column.addWidget(wideButtonFor(action, this));
}

void BoardStation::makeUnderlays(QBoxLayout& column) {
  column.addSpacing(kAboveHeadingPx);
  column.addWidget(heading(tr("Picture to work over"), this));
  QAction* open =
      actionOn(*this, tr("Lay a file under …"), "layUnder", QKeySequence(QStringLiteral("Ctrl+U")));
  QAction* paste = actionOn(*this, tr("Paste a picture"), "pastePicture",
                            QKeySequence(QStringLiteral("Ctrl+V")));
  takeAway_ = actionOn(*this, tr("Take it away"), "takeUnderlayAway",
                       QKeySequence(QStringLiteral("Ctrl+Shift+U")));
  connect(open, &QAction::triggered, this, [this] {
    const QString file =
        QFileDialog::getOpenFileName(this, tr("Picture"), {}, tr("Pictures (*.png *.jpg *.jpeg)"));
    if (file.isEmpty()) return;
    lay([art = document_.folder() / "art", from = std::filesystem::path(file.toStdString())] {
      return shelved(art, from);
    });
  });
  connect(paste, &QAction::triggered, this, [this] {
    const QImage picture = QApplication::clipboard()->image();
    if (picture.isNull())
      emit document_.troubled(tr("There is no picture to paste. Copy one first."));
    else
      lay([art = document_.folder() / "art", picture] { return shelved(art, picture); });
  });
  connect(&shelving_, &Errand::runningChanged, this, [open, paste](bool running) {
    open->setEnabled(!running);
    paste->setEnabled(!running);
  });
  connect(takeAway_, &QAction::triggered, this, [this] { tw::takeUnderlayAway(document_); });
  for (QAction* action : {open, paste, takeAway_}) column.addWidget(wideButtonFor(action, this));
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

/// Where it was asked for, even when another page is shown by the time the picture is kept.
void BoardStation::lay(std::function<Result<ShelvedPicture>()> shelve) {
  if (document_.isReadOnly()) {
    document_.change({}, document_.page());  // tells why not
    return;
  }
  shelving_.start([shelve = std::move(shelve)](Progress&) { return shelve(); },
                  [this, place = underPlace(document_)](const Result<ShelvedPicture>& picture) {
                    layUnder(document_, place, picture);
                  });
}

void BoardStation::makePrinting(QBoxLayout& column) {
  column.addSpacing(kAboveHeadingPx);
  column.addWidget(heading(tr("Board"), this));
  QAction* out = actionOn(*this, tr("Write the board as PDF"), "writeBoard",
                          QKeySequence(QStringLiteral("Ctrl+P")));
  out->setToolTip(
      tr("At the original's size, the rough in non-photo blue: into the job's out folder"));
  connect(out, &QAction::triggered, this, &BoardStation::print);
  column.addWidget(wideButtonFor(out, this));
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
