#include "desk/panel_numbers.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QToolButton>
#include <QVBoxLayout>

#include <utility>

#include "compose/staging_moves.h"
#include "desk/in_qt.h"
#include "desk/page_edit_tool.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kTiltDeg = 7;

QLabel* quietLabel(const QString& words, QWidget* parent) {
  auto* label = new QLabel(words, parent);
  label->setProperty("quiet", true);
  return label;
}

std::array<double, 4> numbersOf(const Rect& box) {
  return {box.min.x, box.min.y, box.width(), box.height()};
}

}  // namespace

PanelNumberForm::PanelNumberForm(Document& document, Engine& engine, QWidget* parent)
    : QWidget(parent),
      document_(document),
      engine_(engine),
      preview_(document, engine),
      aim_(engine, preview_) {
  setObjectName(QStringLiteral("panelNumbers"));
  auto* down = new QVBoxLayout(this);
  down->setContentsMargins(0, 0, 0, 0);
  down->addWidget(makeHead());
  controls_ = new QWidget(this);
  auto* inside = new QVBoxLayout(controls_);
  inside->setContentsMargins(0, 0, 0, 0);
  inside->addWidget(makeFields());
  inside->addWidget(makeBleeds());
  inside->addWidget(makeMoves());
  down->addWidget(controls_);
  said_ = quietLabel({}, this);
  said_->setObjectName(QStringLiteral("panelNumbersSaid"));
  said_->setWordWrap(true);
  said_->setMinimumHeight(2 * fontMetrics().lineSpacing());
  said_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  down->addWidget(said_);
  for (const auto signal : {&Document::jobChanged, &Document::shownChanged})
    connect(&document_, signal, this, &PanelNumberForm::takeDocument);
  connect(&document_, &Document::pageChanged, this, &PanelNumberForm::takeDocument);
  connect(&engine_, &Engine::busyChanged, this, &PanelNumberForm::runNext);
  connect(&engine_, &Engine::measured, this, &PanelNumberForm::followTried);
  connect(&preview_, &EditPreview::settled, this, [this] {
    takeDocument();
    runNext();
  });
  connect(&preview_, &EditPreview::forgotten, this, [this] { waiting_.clear(); });
  connect(&aim_, &LeadAim::said, this, &PanelNumberForm::say);
  connect(&aim_, &LeadAim::ended, this, &PanelNumberForm::runNext);
  takeDocument();
}

QWidget* PanelNumberForm::makeFields() {
  struct Naming {
    const char *name, *label, *spoken, *what;
    EditMove (PageEdit::*set)(std::size_t, double) const;
  };
  const Naming names[] = {{"panelLeft", QT_TR_NOOP("left"), QT_TR_NOOP("Left border of the panel"),
                           QT_TR_NOOP("set left border"), &PageEdit::withLeft},
                          {"panelTop", QT_TR_NOOP("top"), QT_TR_NOOP("Upper border of the panel"),
                           QT_TR_NOOP("set upper border"), &PageEdit::withTop},
                          {"panelWidth", QT_TR_NOOP("width"), QT_TR_NOOP("Width of the panel"),
                           QT_TR_NOOP("set width"), &PageEdit::withWidth},
                          {"panelHeight", QT_TR_NOOP("height"), QT_TR_NOOP("Height of the panel"),
                           QT_TR_NOOP("set height"), &PageEdit::withHeight}};
  auto* out = new QWidget(controls_);
  auto* grid = new QGridLayout(out);
  grid->setContentsMargins(0, 0, 0, 0);
  for (std::size_t i = 0; i < 4; ++i) {
    auto* edit = new QLineEdit(out);
    edit->setObjectName(QLatin1String(names[i].name));
    edit->setAccessibleName(tr(names[i].spoken));
    edit->setToolTip(tr("%1: 12.5, 12.5 mm, 3.25 in, 3 1/4 in").arg(tr(names[i].spoken)));
    fields_[i] = {edit, names[i].set, tr(names[i].what)};
    const int row = static_cast<int>(i / 2), column = 2 * static_cast<int>(i % 2);
    grid->addWidget(quietLabel(tr(names[i].label), out), row, column);
    grid->addWidget(edit, row, column + 1);
    connect(edit, &QLineEdit::editingFinished, this, [this, i] { typed(fields_[i]); });
  }
  return out;
}

QWidget* PanelNumberForm::makeHead() {
  auto* out = new QWidget(this);
  auto* across = new QHBoxLayout(out);
  across->setContentsMargins(0, 0, 0, 0);
  head_ = new QLabel(out);
  head_->setObjectName(QStringLiteral("panelNumbersHead"));
  head_->setProperty("heading", true);
  across->addWidget(head_, 1);
  auto* inches = new QToolButton(out);
  inches->setObjectName(QStringLiteral("useInches"));
  inches->setText(tr("inches"));
  inches->setCheckable(true);
  inches->setToolTip(tr("Show lengths in inches"));
  across->addWidget(inches);
  connect(inches, &QToolButton::toggled, this, [this](bool on) {
    unit_ = on ? LengthUnit::Inches : LengthUnit::Millimetres;
    takeDocument();
  });
  return out;
}

QWidget* PanelNumberForm::makeBleeds() {
  const std::pair<const char*, const char*> names[] = {{"bleedLeft", QT_TR_NOOP("left")},
                                                       {"bleedRight", QT_TR_NOOP("right")},
                                                       {"bleedTop", QT_TR_NOOP("top")},
                                                       {"bleedBottom", QT_TR_NOOP("bottom")}};
  auto* out = new QWidget(controls_);
  auto* across = new QHBoxLayout(out);
  across->setContentsMargins(0, 0, 0, 0);
  across->addWidget(quietLabel(tr("bleeds"), out));
  for (std::size_t i = 0; i < 4; ++i) {
    auto* button = new QToolButton(out);
    button->setObjectName(QLatin1String(names[i].first));
    button->setText(tr(names[i].second));
    button->setAccessibleName(tr("Bleeds: %1").arg(tr(names[i].second)));
    button->setCheckable(true);
    bleeds_[i] = button;
    across->addWidget(button, 1);
    connect(button, &QToolButton::clicked, this,
            [this, side = kPageSides[i]](bool on) { setBleed(side, on); });
  }
  return out;
}

QToolButton* PanelNumberForm::addMove(QWidget* parent, const char* name, const QString& words,
                                      const QString& tip, const std::function<void()>& act) {
  auto* button = new QToolButton(parent);
  button->setObjectName(QLatin1String(name));
  button->setText(words);
  button->setToolTip(tip);
  button->setAccessibleName(tip);
  button->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  connect(button, &QToolButton::clicked, this, [this, act] { whenMeasured(act); });
  return button;
}

QWidget* PanelNumberForm::makeMoves() {
  auto* out = new QWidget(controls_);
  auto* grid = new QGridLayout(out);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->addWidget(addMove(out, "mirrorPicture", tr("Mirror"), tr("Mirror the panel's picture"),
                          [this] { mirror(); }),
                  0, 0);
  grid->addWidget(addMove(out, "tiltLess", tr("Tilt −7°"), tr("Tilt the horizon by −7°"),
                          [this] { tilt(-kTiltDeg); }),
                  0, 1);
  grid->addWidget(
      addMove(out, "tiltLevel", tr("Level"), tr("Set the horizon level"), [this] { tilt({}); }), 0,
      2);
  grid->addWidget(addMove(out, "tiltMore", tr("Tilt +7°"), tr("Tilt the horizon by +7°"),
                          [this] { tilt(kTiltDeg); }),
                  0, 3);
  grid->addWidget(addMove(out, "aimLeadAtNext", tr("Lead to the next panel"),
                          tr("Aim the panel's lead at the next panel; or drag its arrow"),
                          [this] { aimAtNext(); }),
                  1, 0, 1, 4);
  return out;
}

void PanelNumberForm::say(const QString& words) {
  said_->setText(words);
}

void PanelNumberForm::takeDocument() {
  const auto edit = pageEditOf(document_);
  const auto panel = document_.panel();
  const bool shows = edit && panel && *panel < edit->panels().size();
  controls_->setEnabled(shows && !document_.isReadOnly());
  head_->setText(shows ? tr("Panel %1").arg(*panel + 1) : tr("No panel is selected"));
  if (shows) showNumbers(numbersOf(bounds(edit->panels()[*panel].outline)));
  for (std::size_t i = 0; i < 4; ++i) {
    if (!shows) fields_[i].edit->clear();
    const PageSide side = kPageSides[i];
    const bool can = shows && edit->canBleed(*panel, side);
    bleeds_[i]->setEnabled(can);
    bleeds_[i]->setChecked(shows && edit->bleeds(*panel, side));
    bleeds_[i]->setToolTip(can || !shows ? tr("This side runs to the bleed")
                                         : tr("Another panel stands on this side"));
  }
}

/// While a hand drags the fields show where the panel is by now.
void PanelNumberForm::followTried() {
  const MeasuredPage* page = measured();
  if (!engine_.isTrying() || page == nullptr || !engine_.latest()->isPreview) {
    if (std::exchange(follows_, false)) takeDocument();
    return;
  }
  follows_ = true;
  showNumbers(numbersOf(bounds(page->rough().panels[*document_.panel()].outline)));
}

void PanelNumberForm::showNumbers(const std::array<double, 4>& mm) {
  for (std::size_t i = 0; i < 4; ++i) {
    fields_[i].edit->setText(qt(lengthWords(mm[i], unit_)));
    fields_[i].edit->setModified(false);
  }
}

void PanelNumberForm::typed(const Field& field) {
  if (!field.edit->isModified()) return;
  field.edit->setModified(false);
  const auto mm = readLength(field.edit->text().toStdString(), unit_);
  if (!mm) {
    say(qt(mm.error()));
    return;
  }
  whenMeasured([this, set = field.set, what = field.what, mm = *mm] {
    const auto edit = pageEditOf(document_);
    if (edit && document_.panel()) make(((*edit).*set)(*document_.panel(), mm), what);
  });
}

void PanelNumberForm::setBleed(PageSide side, bool on) {
  whenMeasured([this, side, on] {
    const auto edit = pageEditOf(document_);
    if (!edit || !document_.panel()) return;
    const auto move = edit->withBleed(*document_.panel(), side, on);
    if (move)
      make(*move, on ? tr("bleed panel") : tr("take back bleed"));
    else
      say(qt(move.error()));
  });
}

/// Sends what changes to be measured and kept; says why it did not go all the way.
void PanelNumberForm::make(const EditMove& move, const QString& what) {
  say(qt(move.stopped));
  std::vector<std::pair<std::size_t, Polygon>> outlines;
  for (const EditedPanel& panel : move.panels) outlines.emplace_back(panel.panel, panel.outline);
  if (outlines.empty()) return takeDocument();
  preview_.show(std::move(outlines));
  preview_.keep(what);
}

const MeasuredPage* PanelNumberForm::measured() const {
  const MeasurementPtr& m = engine_.latest();
  const auto panel = document_.panel();
  const bool fits = m && m->measured && panel && m->page == document_.page().number &&
                    *panel < m->roughNow().panels.size();
  return fits ? m->measured.get() : nullptr;
}

void PanelNumberForm::stage(Staging staging, const QString& what) {
  say({});
  preview_.show(*document_.panel(), std::move(staging));
  preview_.keep(what);
}

void PanelNumberForm::mirror() {
  if (const MeasuredPage* page = measured())
    stage(mirroredPicture(*page, *document_.panel()), tr("mirror picture"));
}

void PanelNumberForm::tilt(std::optional<double> byDeg) {
  const MeasuredPage* page = measured();
  if (page == nullptr) return;
  const std::size_t panel = *document_.panel();
  if (!byDeg) return stage(levelPicture(*page, panel), tr("level horizon"));
  if (auto tilted = tiltedPicture(*page, panel, *byDeg))
    stage(std::move(*tilted), tr("tilt horizon"));
  else
    say(tr("The horizon is tilted as far as is meant: %1°.").arg(kMostTiltDeg));
}

void PanelNumberForm::aimAtNext() {
  const MeasuredPage* page = measured();
  if (page == nullptr) return;
  const std::size_t panel = *document_.panel();
  if (panel + 1 >= page->rough().panels.size()) {
    say(tr("This is the page's last panel."));
    return;
  }
  if (!aim_.begin(panel)) return;
  aim_.aimAt(page->rough().panels[panel + 1].focus);
  aim_.keep();
}

void PanelNumberForm::whenMeasured(std::function<void()> act) {
  waiting_.push_back(std::move(act));
  runNext();
}

void PanelNumberForm::runNext() {
  while (!waiting_.empty() && !engine_.isBusy() && !preview_.isPending() && !aim_.isAiming()) {
    const auto act = std::move(waiting_.front());
    waiting_.pop_front();
    act();
  }
}

}  // namespace tw
