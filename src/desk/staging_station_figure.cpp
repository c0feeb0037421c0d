#include "desk/staging_station_figure.h"

#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include <algorithm>

#include "desk/controls.h"
#include "desk/in_qt.h"
#include "desk/merge_ids.h"
#include "stage/balance.h"

namespace tw {

namespace {}  // namespace

FigureControls::FigureControls(PanelInHand& hand, QWidget* parent) : QWidget(parent), hand_(hand) {
  setObjectName(QStringLiteral("figureControls"));
  auto* down = new QVBoxLayout(this);
  down->setContentsMargins(0, 0, 0, 0);
  down->setSpacing(4);
  who_ = new QComboBox(this);
  who_->setObjectName(QStringLiteral("figureWho"));
  who_->setAccessibleName(tr("Figure"));
  connect(who_, qOverload<int>(&QComboBox::activated), &hand_, &PanelInHand::selectFigure);
  down->addWidget(who_);
  addDials();
  looksAt_ = new QComboBox(this);
  looksAt_->setObjectName(QStringLiteral("figureLooksAt"));
  looksAt_->setAccessibleName(tr("Looks at"));
  connect(looksAt_, qOverload<int>(&QComboBox::activated), this, &FigureControls::lookAt);
  down->addWidget(looksAt_);
  addButtons();
  auto* help = new QLabel(
      tr("Drag a handle, or walk them with Tab and move them with the arrows (Shift more, Ctrl "
         "less; full stop nearer to the eye, comma farther). K pins what is held. Round: hand; "
         "square: foot; diamond: hips; triangle: gaze; flat ring: where it stands. Filled is the "
         "figure's left. With Shift, figures and things go up and down."),
      this);
  help->setProperty("quiet", true);
  help->setWordWrap(true);
  down->addWidget(help);
  down->addStretch();
  connect(&hand_, &PanelInHand::changed, this, &FigureControls::refresh);
  connect(&hand_, &PanelInHand::holdChanged, this, &FigureControls::refresh);
  refresh();
}

void FigureControls::turnDial(NumberDial* dial, const QString& what, int merge,
                              Staging (FigureControls::*made)(const Staging&, double) const) {
  layout()->addWidget(dial);
  connect(dial, &NumberDial::turned, this, [=, this](double value, bool meant) {
    if (!hand_.isReady() || hand_.figure() < 0) return;
    set((this->*made)(hand_.staging(), value), what, meant, kMergeFigure + merge);
  });
}

void FigureControls::addDials() {
  heading_ = new NumberDial(tr("Turned"), QStringLiteral("figureHeading"), tr("°"),
                            {-180, 180, 5, 1, false, true}, this);
  heading_->setToolTip(tr("0 is toward the reader; more is the figure's own left"));
  turnDial(heading_, tr("turn the figure"), 1, &FigureControls::headed);
  gaze_ = new NumberDial(tr("Looks aside"), QStringLiteral("figureGaze"), tr("°"), {-75, 75, 5, 1},
                         this);
  turnDial(gaze_, tr("turn the head"), 2, &FigureControls::gazing);
  height_ = new NumberDial(tr("Above ground"), QStringLiteral("figureHeight"), tr(" m"),
                           {-2, 6, 0.05, 2}, this);
  turnDial(height_, tr("raise the figure"), 3, &FigureControls::risen);
}

void FigureControls::addButtons() {
  auto* grid = new QGridLayout;
  flip_ = new QPushButton(tr("Flip the pose"), this);
  flip_->setObjectName(QStringLiteral("flipPose"));
  asPosed_ = new QPushButton(tr("As the library has it"), this);
  asPosed_->setObjectName(QStringLiteral("asPosed"));
  asPosed_->setToolTip(tr("Takes back every joint that was turned by hand"));
  pin_ = new QPushButton(tr("Pin what is held"), this);
  pin_->setObjectName(QStringLiteral("pinHeld"));
  pin_->setCheckable(true);
  pin_->setToolTip(tr("It stays where it is while other parts are drawn (K)"));
  grid->addWidget(flip_, 0, 0);
  grid->addWidget(asPosed_, 0, 1);
  grid->addWidget(pin_, 1, 0, 1, 2);
  static_cast<QVBoxLayout*>(layout())->addLayout(grid);
  connect(flip_, &QPushButton::clicked, this, [this] {
    if (!hand_.isReady() || hand_.figure() < 0) return;
    set(flippedFigure(hand_.stage(), hand_.staging(), static_cast<std::size_t>(hand_.figure())),
        tr("flip the pose"), true, -1);
  });
  connect(asPosed_, &QPushButton::clicked, this, [this] {
    if (!hand_.isReady() || hand_.figure() < 0) return;
    SetFigure figure = present();
    figure.turnsDeg.clear();
    set(withFigure(hand_.stage(), hand_.staging(), static_cast<std::size_t>(hand_.figure()),
                   figure),
        tr("pose as the library has it"), true, -1);
  });
  connect(pin_, &QPushButton::clicked, this, [this] {
    if (hand_.held() != nullptr) hand_.togglePin(*hand_.held());
  });
}

SetFigure FigureControls::present() const {
  return hand_.staging().figures[static_cast<std::size_t>(hand_.figure())];
}

void FigureControls::set(const Staging& staging, const QString& what, bool meant, int merge) {
  hand_.attempt(staging);
  if (meant) hand_.keep(tr("%1: %2").arg(hand_.nameOfFigure(hand_.figure()), what), merge);
}

Staging FigureControls::headed(const Staging& from, double deg) const {
  return turnedFigure(hand_.stage(), from, static_cast<std::size_t>(hand_.figure()), deg);
}

Staging FigureControls::gazing(const Staging& from, double deg) const {
  Staging out = from;
  out.figures[static_cast<std::size_t>(hand_.figure())].gazeDeg = deg;
  return out;
}

Staging FigureControls::risen(const Staging& from, double metres) const {
  SetFigure figure = from.figures[static_cast<std::size_t>(hand_.figure())];
  figure.at.y = metres;
  return withFigure(hand_.stage(), from, static_cast<std::size_t>(hand_.figure()), figure);
}

void FigureControls::lookAt(int index) {
  if (!hand_.isReady() || hand_.figure() < 0 || index <= 0) return;
  const Staging& staging = hand_.staging();
  Vec3 place(staging.camera.eye.x, staging.camera.eye.y, staging.camera.eye.z);
  QString whom = tr("the reader");
  int at = 1;
  for (const Handle& handle : hand_.handles()) {
    const bool other = handle.grab == Grab::Head && handle.figure != hand_.figure();
    if (!other && handle.grab != Grab::Thing) continue;
    if (++at != index) continue;
    place = handle.world;
    whom = other ? hand_.nameOfFigure(handle.figure)
                 : hand_.nameOfThing(static_cast<std::size_t>(handle.thing));
  }
  const Dragged turned =
      gazedAt(hand_.stage(), staging, static_cast<std::size_t>(hand_.figure()), place);
  set(turned.staging, tr("looks at %1").arg(whom), true, -1);
  emit hand_.said(qt(turned.shortfall));
}

void FigureControls::listFigures() {
  QStringList now;
  for (std::size_t i = 0; i < hand_.staging().figures.size(); ++i)
    now << hand_.nameOfFigure(static_cast<int>(i));
  QStringList targets{tr("Look at …"), tr("the reader")};
  for (const Handle& handle : hand_.handles())
    if (handle.grab == Grab::Thing)
      targets << hand_.nameOfThing(static_cast<std::size_t>(handle.thing));
    else if (handle.grab == Grab::Head && handle.figure != hand_.figure())
      targets << hand_.nameOfFigure(handle.figure);
  if (now + targets != listed_) {
    listed_ = now + targets;
    who_->clear();
    who_->addItems(now);
    looksAt_->clear();
    looksAt_->addItems(targets);
  }
  who_->setCurrentIndex(hand_.figure());
  looksAt_->setCurrentIndex(0);
}

void FigureControls::refresh() {
  const bool has = hand_.isReady() && hand_.figure() >= 0;
  setEnabled(has && !hand_.isReadOnly());
  if (!has) return;
  listFigures();
  const SetFigure figure = present();
  heading_->show(figure.headingDeg);
  gaze_->show(figure.gazeDeg);
  height_->show(figure.at.y);
  asPosed_->setEnabled(!figure.turnsDeg.empty());
  const Handle* held = hand_.held();
  pin_->setEnabled(held != nullptr && hand_.pinOf(*held).has_value());
  pin_->setChecked(held != nullptr && hand_.isPinned(*held));
}

FigureMeasures::FigureMeasures(PanelInHand& hand, Engine& engine, QWidget* parent)
    : QWidget(parent), hand_(hand), engine_(engine) {
  setObjectName(QStringLiteral("figureMeasures"));
  auto* down = new QVBoxLayout(this);
  down->setContentsMargins(0, 4, 0, 0);
  down->setSpacing(2);
  name_ = heading({}, this);
  words_ = new QLabel(this);
  words_->setObjectName(QStringLiteral("figureWords"));
  words_->setWordWrap(true);
  state_ = new QLabel(this);
  state_->setObjectName(QStringLiteral("figureState"));
  state_->setProperty("quiet", true);
  down->addWidget(name_);
  down->addWidget(words_);
  down->addWidget(state_);
  connect(&hand_, &PanelInHand::measuresChanged, this, &FigureMeasures::refresh);
  connect(&hand_, &PanelInHand::changed, this, &FigureMeasures::refresh);
  refresh();
}

QString FigureMeasures::rankInWords() const {
  const auto& figures = hand_.measurement()->roughNow().panels[hand_.panel()].figures;
  const double own = hand_.seen()->headMm;
  const auto larger = std::ranges::count_if(
      figures, [&](const SeenFigure& each) { return each.headMm > 1.02 * own; });
  if (figures.size() < 2) return tr("the only figure");
  return larger == 0 ? tr("the largest of %1").arg(figures.size())
                     : tr("number %1 of %2 by size").arg(larger + 1).arg(figures.size());
}

QString FigureMeasures::poseInWords() const {
  const SetFigure& set = hand_.staging().figures[static_cast<std::size_t>(hand_.figure())];
  const Body& body = hand_.stager().bodyOf(set.who, hand_.stage().beat->id);
  const Pose pose = withTurns(hand_.stager().poses().orStand(set.pose), set.turnsDeg);
  QString out = pose.held.empty()
                    ? qt(balanceOf(body, pose, posed(body, pose, set), set.at.y).label)
                    : tr("Held up %1").arg(qt(pose.held));
  const std::vector<std::string> limits = atLimit(pose, hand_.stager().limits());
  for (std::size_t i = 0; i < limits.size() && i < 3; ++i)
    out += tr("; at its limit: %1").arg(qt(limits[i]));
  return out;
}

QString FigureMeasures::cutInWords(const SeenFigure& seen) {
  if (seen.cut == "whole") return tr("whole in the frame");
  return seen.cutAtJoint ? tr("cut on the joint: %1").arg(qt(seen.cut))
                         : tr("cut at the %1").arg(qt(seen.cut));
}

void FigureMeasures::refresh() {
  const SeenFigure* seen = hand_.seen();
  const bool busy = engine_.isBusy();
  state_->setText(seen == nullptr ? QString() : busy ? tr("being measured …") : tr("measured"));
  name_->setText(hand_.nameOfFigure(hand_.figure()));
  words_->setEnabled(!busy);
  if (seen == nullptr) {
    words_->setText(hand_.isReady() ? tr("Nobody stands in this panel.")
                                    : tr("Select a panel to stage it."));
    return;
  }
  words_->setText(
      tr("Head %1 mm high, %2; %3 % of the figure seen, %4.\nLimbs show %5 % of their length; the "
         "outline alone tells %6 of head, hands and feet.\n%7")
          .arg(seen->headMm, 0, 'f', 1)
          .arg(rankInWords())
          .arg(100 * seen->visible, 0, 'f', 0)
          .arg(cutInWords(*seen))
          .arg(100 * seen->reach, 0, 'f', 0)
          .arg(seen->tipsSeen == 5 ? tr("all") : tr("%1").arg(seen->tipsSeen))
          .arg(poseInWords()));
}

}  // namespace tw
