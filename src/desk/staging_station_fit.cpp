#include "desk/staging_station_fit.h"

#include <QDoubleSpinBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "desk/in_qt.h"
#include "geometry/calm_outline.h"
#include "geometry/polygon.h"
#include "review/called.h"

namespace tw {

namespace {

// Of the traced outline: width, what is finer goes, and how far thinning may move it.
constexpr double kTraceMm = 0.5, kTraceCalmMm = 1.5, kTraceOffMm = 0.05;
constexpr std::array<const char*, 3> kNames{"takeWhole", "takeCut", "takeOver"};

}  // namespace

FitControls::FitControls(PanelInHand& hand, QWidget* parent) : QWidget(parent), hand_(hand) {
  setObjectName(QStringLiteral("fitControls"));
  auto* down = new QVBoxLayout(this);
  down->setContentsMargins(0, 0, 0, 0);
  down->setSpacing(6);
  auto* row = new QHBoxLayout;
  ask_ = new QPushButton(tr("How large can it be?"), this);
  ask_->setObjectName(QStringLiteral("askFit"));
  row->addWidget(ask_, 1);
  margin_ = new QDoubleSpinBox(this);
  margin_->setObjectName(QStringLiteral("fitMargin"));
  margin_->setAccessibleName(tr("Margin to the border"));
  margin_->setToolTip(tr("Kept between the figure and every border that does not cut it"));
  margin_->setRange(0, 30);
  margin_->setDecimals(1);
  margin_->setValue(2);
  margin_->setPrefix(tr("margin "));
  margin_->setSuffix(tr(" mm"));
  row->addWidget(margin_);
  down->addLayout(row);
  state_ = new QLabel(this);
  state_->setProperty("quiet", true);
  state_->setWordWrap(true);
  down->addWidget(state_);
  const std::array<QString, 3> words{tr("Take it whole"), tr("Take it cut"),
                                     tr("Trace it over the border")};
  for (std::size_t i = 0; i < 3; ++i) {
    sentences_[i] = new QLabel(this);
    sentences_[i]->setWordWrap(true);
    sentences_[i]->setTextInteractionFlags(Qt::TextSelectableByMouse);
    down->addWidget(sentences_[i]);
    takes_[i] = new QPushButton(words[i], this);
    takes_[i]->setObjectName(QString::fromLatin1(kNames[i]));
    connect(takes_[i], &QPushButton::clicked, this, [this, i] { take(static_cast<Answer>(i)); });
    down->addWidget(takes_[i]);
  }
  down->addStretch();
  connect(ask_, &QPushButton::clicked, this, &FitControls::ask);
  connect(&errand_, &Errand::runningChanged, this, &FitControls::refresh);
  connect(&hand_, &PanelInHand::changed, this, &FitControls::refresh);
  connect(&hand_, &PanelInHand::holdChanged, this, &FitControls::refresh);
  refresh();
}

void FitControls::ask() {
  if (!hand_.isReady() || hand_.figure() < 0) return;
  hand_.drop();
  FitRequest request;
  request.page = hand_.document().page().number;
  request.rough = hand_.document().rough()->name;
  request.panel = static_cast<int>(hand_.panel()) + 1;
  request.who = hand_.staging().figures[static_cast<std::size_t>(hand_.figure())].who;
  request.marginMm = margin_->value();
  askedIn_ = hand_.storedPanel().staging;
  errand_.start(
      [m = hand_.measurement(), job = hand_.document().job(), request](Progress&) {
        return fitFigure(job, m->staged->workshop->stager, m->staged->lights, request);
      },
      [this](Result<FitAnswers> answers) {
        trouble_ = answers ? QString() : qt(answers.error());
        answers_.reset();
        if (answers) answers_ = std::move(*answers);
        refresh();
      });
}

std::optional<Fit> FitControls::fitOf(Answer answer) const {
  if (!answers_) return {};
  if (answer == Whole && answers_->whole) return answers_->whole->fit;
  if (answer == Cut && answers_->cut) return answers_->cut->options[answers_->cut->best].fit;
  return {};
}

QString FitControls::whyNot(Answer answer) const {
  if (!hand_.isReady() || !answers_) return tr("Ask first.");
  if (askedIn_ != hand_.storedPanel().staging) return tr("The panel has changed: ask again.");
  if (answer == Over) return answers_->over ? QString() : tr("There is no such answer here.");
  const auto fit = fitOf(answer);
  if (!fit) return tr("There is no such answer here.");
  if (!fitted(hand_.storedPanel().staging.camera, hand_.stage().frame, *fit))
    return tr("It would need a lens that there is not.");
  return {};
}

/// Another figure may be selected by now.
QString FitControls::answeredFor() const {
  return qt(calledIn(hand_.document().job(), answers_->figure.who));
}

/// A rough keeps its figures in their panels: what stands over the border is traced in blue, to be
/// drawn so on the board.
void FitControls::trace() {
  const auto index = hand_.document().roughIndex();
  if (!index || !answers_->over) return;
  Page after = hand_.document().page();
  auto& strokes = after.roughs[*index].panels[hand_.panel()].strokes;
  for (const Polygon& part : answers_->figure.ownShapes) {
    PenStroke stroke;
    stroke.points =
        simplified(calmOutline(answers_->over->fit.placed(part), kTraceCalmMm).points, kTraceOffMm);
    if (stroke.points.size() < 3) continue;
    stroke.points.push_back(stroke.points.front());
    stroke.widthsMm.assign(stroke.points.size(), kTraceMm);
    strokes.push_back(std::move(stroke));
  }
  hand_.changePage(tr("trace %1 over the border").arg(answeredFor()), after);
}

void FitControls::take(Answer answer) {
  if (answer == Over && whyNot(answer).isEmpty()) return trace();
  const auto fit = fitOf(answer);
  if (!fit || !whyNot(answer).isEmpty()) return;
  const Staging& from = hand_.storedPanel().staging;
  const auto camera = fitted(from.camera, hand_.stage().frame, *fit);
  hand_.apply(seenBy(hand_.stage(), from, *camera),
              answer == Whole ? tr("%1 whole in the panel").arg(answeredFor())
                              : tr("%1 cut by the border").arg(answeredFor()));
}

void FitControls::refresh() {
  const bool has = hand_.isReady() && hand_.figure() >= 0;
  ask_->setEnabled(has && !errand_.isRunning());
  const bool fresh = has && answers_ && askedIn_ == hand_.storedPanel().staging;
  if (!has)
    state_->setText(tr("Select a panel with a figure."));
  else if (errand_.isRunning())
    state_->setText(tr("trying places for %1 …").arg(hand_.nameOfFigure(hand_.figure())));
  else if (!trouble_.isEmpty())
    state_->setText(trouble_);
  else if (answers_ && !fresh)
    state_->setText(tr("Answered for the panel as it was before."));
  else
    state_->setText(tr("For %1. An answer is taken with the lens and its shift: all of the picture "
                       "grows with the figure.")
                        .arg(hand_.nameOfFigure(hand_.figure())));
  const std::vector<std::string> words =
      answers_ ? fitSentences(*answers_) : std::vector<std::string>(3);
  for (std::size_t i = 0; i < 3; ++i) {
    sentences_[i]->setText(qt(words[i]));
    sentences_[i]->setEnabled(fresh);
    const QString why = whyNot(static_cast<Answer>(i));
    takes_[i]->setEnabled(why.isEmpty() && !errand_.isRunning() && !hand_.isReadOnly());
    takes_[i]->setToolTip(
        !why.isEmpty() ? why
        : i == Over    ? tr("Its outline in blue, to be drawn so on the board: a rough keeps "
                               "its figures in their panels")
                       : tr("One edit; undo brings the camera back"));
  }
}

}  // namespace tw
