#include "desk/staging_station.h"

#include <QAction>
#include <QActionGroup>
#include <QButtonGroup>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QScrollArea>
#include <QStackedWidget>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

#include "desk/controls.h"
#include "desk/flow_layout.h"
#include "desk/in_qt.h"
#include "desk/look.h"
#include "desk/staging_station_camera.h"
#include "desk/staging_station_figure.h"
#include "desk/staging_station_fit.h"
#include "desk/staging_station_light.h"
#include "desk/staging_station_poses.h"
#include "desk/staging_station_things.h"
#include "desk/staging_station_variants.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr int kControlsWide = 364, kThumbHigh = 44, kPagesAcross = 4;

struct ModeInfo {
  StagingMode mode;
  const char* name;
  const char* key;
  const char* help;
};
constexpr std::array<ModeInfo, kStagingModes> kModes{
    {{StagingMode::Pose, "modePose", "P",
      QT_TRANSLATE_NOOP("StagingModes", "Draw joints, gaze, figures and things")},
     {StagingMode::Orbit, "modeOrbit", "R",
      QT_TRANSLATE_NOOP("StagingModes", "Draw the camera round what it looks at")},
     {StagingMode::Dolly, "modeDolly", "D",
      QT_TRANSLATE_NOOP("StagingModes", "Up goes nearer, down farther")},
     {StagingMode::Slide, "modeSlide", "M",
      QT_TRANSLATE_NOOP("StagingModes", "Move the eye across its line of sight")},
     {StagingMode::Turn, "modeTurn", "N",
      QT_TRANSLATE_NOOP("StagingModes", "Turn the camera where it stands")}}};

QToolButton* checkable(const QString& text, const char* name, QWidget* parent) {
  auto* button = new QToolButton(parent);
  button->setText(text);
  button->setObjectName(QString::fromLatin1(name));
  button->setAccessibleName(text);
  button->setCheckable(true);
  return button;
}

}  // namespace

StagingStation::StagingStation(Document& document, Engine& engine, QWidget* parent)
    : Station(document, engine, parent), hand_(new PanelInHand(document, engine, this)) {
  setObjectName(QStringLiteral("stagingStation"));
  tool_ = std::make_unique<StagingTool>(*hand_);
  auto* across = new QHBoxLayout(this);
  across->setContentsMargins(0, 0, 0, 0);
  across->addWidget(makeStage(), 1);
  across->addWidget(makeControls());
  connect(&document_, &Document::shownChanged, this, &StagingStation::listPanels);
  connect(&document_, &Document::pageChanged, this, &StagingStation::listPanels);
  connect(&engine_, &Engine::measured, this, &StagingStation::drawPanelButtons);
  connect(hand_, &PanelInHand::changed, view_, qOverload<>(&QWidget::update));
  connect(hand_, &PanelInHand::holdChanged, view_, qOverload<>(&QWidget::update));
  connect(hand_, &PanelInHand::said, said_, &QLabel::setText);
  const auto step = [this](const char* name, const QString& text, const QString& key, int by) {
    QAction* action = actionOn(*this, text, name, QKeySequence(key));
    connect(action, &QAction::triggered, this, [this, by] { stepPanel(by); });
  };
  step("nextPanel", tr("Next panel"), QStringLiteral("Alt+Right"), 1);
  step("panelBefore", tr("Panel before"), QStringLiteral("Alt+Left"), -1);
  listPanels();
}

StagingStation::~StagingStation() {
  view_->setTool(nullptr);
}

QWidget* StagingStation::makeStage() {
  auto* stage = new QWidget(this);
  auto* down = new QVBoxLayout(stage);
  down->setContentsMargins(0, 0, 0, 0);
  down->setSpacing(4);
  panels_ = new FlowLayout;
  panelGroup_ = new QButtonGroup(this);
  connect(panelGroup_, &QButtonGroup::idClicked, this, [this](int index) {
    document_.selectPanel(static_cast<std::size_t>(index));
    view_->setFocus();
  });
  down->addLayout(panels_);
  auto* modes = new QHBoxLayout;
  addModes(modes);
  view_ = new PageView(document_, engine_, stage);
  view_->setObjectName(QStringLiteral("stagingView"));
  view_->setTool(tool_.get());
  down->addWidget(view_, 1);
  down->addLayout(modes);
  said_ = new QLabel(stage);
  said_->setObjectName(QStringLiteral("stagingSaid"));
  said_->setMinimumHeight(20);
  down->addWidget(said_);
  return stage;
}

void StagingStation::addModes(QLayout* row) {
  auto* group = new QActionGroup(this);
  for (const ModeInfo& info : kModes) {
    QAction* action = choice(group, nameOf(info.mode), info.name, QString::fromLatin1(info.key),
                             QCoreApplication::translate("StagingModes", info.help));
    action->setChecked(info.mode == StagingMode::Pose);
    connect(action, &QAction::triggered, this, [this, mode = info.mode] { showMode(mode); });
    row->addWidget(wideButtonFor(action, this));
  }
}

void StagingStation::showMode(StagingMode mode) {
  tool_->setMode(mode);
  view_->setFocus();
  view_->update();
}

QWidget* StagingStation::makeControls() {
  auto* side = new QWidget(this);
  side->setFixedWidth(kControlsWide);
  auto* down = new QVBoxLayout(side);
  down->setContentsMargins(6, 0, 0, 0);
  down->setSpacing(6);
  auto* choices = new QGridLayout;
  choices->setSpacing(4);
  pageButtons_ = choices;
  down->addLayout(choices);
  pages_ = new QStackedWidget(side);
  pageGroup_ = new QActionGroup(this);
  down->addWidget(pages_, 1);
  addPage(tr("Figure"), "pageFigure", scrolled(new FigureControls(*hand_, side), side));
  addPage(tr("Poses"), "pagePoses", new PoseShelf(*hand_, side));
  addPage(tr("What if"), "pageVariants", new VariantStrip(*hand_, side));
  addPage(tr("Size"), "pageFit", scrolled(new FitControls(*hand_, side), side));
  addPage(tr("Things"), "pageThings", scrolled(new ThingControls(*hand_, side), side));
  addPage(tr("Camera"), "pageCamera", scrolled(new CameraControls(*hand_, side), side));
  addPage(tr("Light"), "pageLight", scrolled(new LightControls(*hand_, side), side));
  down->addWidget(new FigureMeasures(*hand_, engine_, side));
  return side;
}

void StagingStation::addPage(const QString& title, const char* name, QWidget* page) {
  const int index = pages_->addWidget(page);
  QAction* action = choice(pageGroup_, title, name, QStringLiteral("Alt+%1").arg(index + 1), title);
  action->setChecked(index == 0);
  connect(action, &QAction::triggered, pages_, [this, index] { pages_->setCurrentIndex(index); });
  static_cast<QGridLayout*>(pageButtons_)
      ->addWidget(wideButtonFor(action, this), index / kPagesAcross, index % kPagesAcross);
}

/// A command that stays chosen until another of its group is.
QAction* StagingStation::choice(QActionGroup* group, const QString& title, const char* name,
                                const QString& key, const QString& help) {
  QAction* action = actionOn(*this, title, name, QKeySequence(key), help);
  action->setCheckable(true);
  group->addAction(action);
  return action;
}

void StagingStation::listPanels() {
  const Rough* rough = document_.rough();
  const int n = rough != nullptr ? static_cast<int>(rough->panels.size()) : 0;
  while (panelGroup_->buttons().size() > n) delete panelGroup_->buttons().last();
  for (int i = static_cast<int>(panelGroup_->buttons().size()); i < n; ++i) {
    QToolButton* button = checkable(QString::number(i + 1), "", this);
    button->setObjectName(QStringLiteral("stagePanel%1").arg(i + 1));
    button->setAccessibleName(tr("Panel %1").arg(i + 1));
    button->setToolTip(tr("Panel %1").arg(i + 1));
    button->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    button->setIconSize(QSize(static_cast<int>(1.6 * kThumbHigh), kThumbHigh));
    panelGroup_->addButton(button, i);
    panels_->addWidget(button);
  }
  for (int i = 0; i < n; ++i)
    panelGroup_->button(i)->setChecked(document_.panel() == static_cast<std::size_t>(i));
  drawPanelButtons();
}

/// Small pictures of the panels, once the engine rests.
void StagingStation::drawPanelButtons() {
  const MeasurementPtr& m = engine_.latest();
  if (!isVisible() || !m || engine_.isBusy()) return;
  for (int i = 0; i < panelGroup_->buttons().size(); ++i) {
    const auto k = static_cast<std::size_t>(i);
    if (k >= m->images.size() || !m->images[k] || m->images[k]->picture.isNull()) continue;
    const QImage small = m->images[k]->picture.scaled(
        panelGroup_->button(i)->iconSize() * 2, Qt::KeepAspectRatio, Qt::SmoothTransformation);
    panelGroup_->button(i)->setIcon(QIcon(QPixmap::fromImage(small)));
  }
}

/// The next or earlier panel; beyond the last it stays.
void StagingStation::stepPanel(int by) {
  const Rough* rough = document_.rough();
  if (rough == nullptr || rough->panels.empty()) return;
  const int now = document_.panel() ? static_cast<int>(*document_.panel()) : -by;
  const int to = std::clamp(now + by, 0, static_cast<int>(rough->panels.size()) - 1);
  document_.selectPanel(static_cast<std::size_t>(to));
}

void StagingStation::arrive() {
  if (document_.rough() != nullptr && !document_.panel()) {
    const auto& panels = document_.rough()->panels;
    const auto dominant = std::ranges::find(panels, true, &RoughPanel::dominant);
    document_.selectPanel(
        dominant == panels.end() ? 0 : static_cast<std::size_t>(dominant - panels.begin()));
  }
  view_->fitPanel();
  view_->setFocus();
  listPanels();
}

void StagingStation::leave() {
  hand_->drop();
}

}  // namespace tw
