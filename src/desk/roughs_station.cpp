#include "desk/roughs_station.h"

#include <QAction>
#include <QHBoxLayout>
#include <QLabel>
#include <QStackedWidget>
#include <QToolButton>
#include <QVBoxLayout>

#include "command/pin.h"
#include "desk/compare_panel.h"
#include "desk/controls.h"
#include "desk/edit_side.h"
#include "desk/flow_layout.h"
#include "desk/in_qt.h"
#include "desk/layer_bar.h"
#include "desk/rough_acts.h"
#include "desk/rough_gallery.h"
#include "desk/rough_search.h"

namespace tw {

namespace {

constexpr int kGalleryPx = 320, kSaidLines = 4;

}  // namespace

RoughsStation::RoughsStation(Document& document, Engine& engine, QWidget* parent)
    : Station(document, engine, parent) {
  setObjectName(QStringLiteral("roughsStation"));
  acts_ = new RoughActs(document, this);
  makeActs();
  auto* across = new QHBoxLayout(this);
  across->setContentsMargins(0, 0, 0, 0);
  across->setSpacing(8);
  across->addWidget(makeLeft());
  across->addWidget(makeMiddle(), 1);
  across->addWidget(new EditSide(document, engine, *view_, *edit_, this));
  connect(acts_, &RoughActs::said, this, &RoughsStation::say);
  connect(acts_, &RoughActs::mixed, compare_, &ComparePanel::putAway);
  connect(search_, &RoughSearch::said, this, &RoughsStation::say);
  connect(search_, &RoughSearch::unlikeAsked, this, &RoughsStation::findUnlike);
  connect(search_, &RoughSearch::runningChanged, this, &RoughsStation::showState);
  connect(acts_, &RoughActs::mixingChanged, this, &RoughsStation::showState);
  connect(gallery_, &RoughGallery::markedChanged, this, &RoughsStation::showState);
  const auto mix = [this](const QString& from, const QString& into, std::size_t panel) {
    acts_->mix(from.toStdString(), into.toStdString(), panel);
  };
  connect(gallery_, &RoughGallery::mixAsked, this, mix);
  connect(compare_, &ComparePanel::mixAsked, this, mix);
  connect(compare_, &ComparePanel::closed, this, &RoughsStation::showPage);
  connect(pins_, &PinTool::toggled, this, [this](std::size_t panel) { acts_->pinPanel(panel); });
  connect(&document_, &Document::shownChanged, this, &RoughsStation::showState);
  connect(&document_, &Document::pageChanged, this, [this] {
    say({});  // what was said was of another state
    showState();
    view_->update();
  });
  showState();
}

void RoughsStation::makeActs() {
  pick_ = actionOn(*this, tr("Pick"), "pickRough", QKeySequence(QStringLiteral("Ctrl+Return")),
                   tr("This is the rough to go on with; new ones leave it alone"));
  up_ = actionOn(*this, tr("Up"), "rankUp", QKeySequence(QStringLiteral("Ctrl+Up")),
                 tr("Rank it before the one above"));
  down_ = actionOn(*this, tr("Down"), "rankDown", QKeySequence(QStringLiteral("Ctrl+Down")),
                   tr("Rank it after the one below"));
  drop_ = actionOn(*this, tr("Drop"), "dropRough", QKeySequence(QStringLiteral("Ctrl+Backspace")),
                   tr("Take this rough away"));
  up_->setIconText(QStringLiteral("▲"));
  down_->setIconText(QStringLiteral("▼"));
  mark_ = actionOn(*this, tr("Mark"), "markRough", QKeySequence(QStringLiteral("Ctrl+M")),
                   tr("Mark the shown rough, or take the mark off"));
  compareAct_ =
      actionOn(*this, tr("Compare"), "compareRoughs", QKeySequence(QStringLiteral("Ctrl+D")),
               tr("The two marked roughs side by side, or the marked and the shown one"));
  pinPanel_ = actionOn(*this, tr("Pin panel"), "pinPanel", QKeySequence(QStringLiteral("Ctrl+P")),
                       tr("New roughs keep how the selected panel is staged"));
  pinArrangement_ = actionOn(*this, tr("Pin arrangement"), "pinArrangement",
                             QKeySequence(QStringLiteral("Ctrl+Shift+P")),
                             tr("New roughs keep this arrangement of panels"));
  takePanel_ =
      actionOn(*this, tr("Take panel"), "takePanel", QKeySequence(QStringLiteral("Ctrl+T")),
               tr("The selected panel as the marked rough stages it, in a new rough"));
  takeArrangement_ =
      actionOn(*this, tr("Take arrangement"), "takeArrangement",
               QKeySequence(QStringLiteral("Ctrl+Shift+T")),
               tr("The shown rough in the arrangement of the marked one, as a new rough"));
  pick_->setCheckable(true);
  mark_->setCheckable(true);
  pinPanel_->setCheckable(true);
  pinArrangement_->setCheckable(true);
  QAction* former = actionOn(*this, tr("Former rough"), "formerRough",
                             QKeySequence(QStringLiteral("Ctrl+Left")), tr("Show the one above"));
  QAction* next = actionOn(*this, tr("Next rough"), "nextRough",
                           QKeySequence(QStringLiteral("Ctrl+Right")), tr("Show the one below"));
  connect(former, &QAction::triggered, this, [this] { stepRough(-1); });
  connect(next, &QAction::triggered, this, [this] { stepRough(1); });
  connect(pick_, &QAction::triggered, this, [this] {
    acts_->pick();
    showState();  // also where it was refused
  });
  connect(up_, &QAction::triggered, this, [this] { acts_->rank(-1); });
  connect(down_, &QAction::triggered, this, [this] { acts_->rank(1); });
  connect(drop_, &QAction::triggered, acts_, &RoughActs::drop);
  connect(mark_, &QAction::triggered, this, &RoughsStation::mark);
  connect(compareAct_, &QAction::triggered, this, &RoughsStation::compare);
  connect(pinArrangement_, &QAction::triggered, this, [this] {
    acts_->pinArrangement();
    showState();
  });
  connect(pinPanel_, &QAction::triggered, this, [this] {
    if (document_.panel()) acts_->pinPanel(*document_.panel());
    showState();
  });
  connect(takePanel_, &QAction::triggered, this, [this] { takePanel(false); });
  connect(takeArrangement_, &QAction::triggered, this, [this] { takePanel(true); });
}

QWidget* RoughsStation::makeLeft() {
  auto* left = new QWidget(this);
  left->setFixedWidth(kGalleryPx);
  auto* down = new QVBoxLayout(left);
  down->setContentsMargins(0, 0, 0, 0);
  search_ = new RoughSearch(document_, left);
  down->addWidget(search_);
  gallery_ = new RoughGallery(document_, {pick_, up_, down_, drop_}, left);
  down->addWidget(gallery_, 1);
  auto* ways = new QWidget(left);
  auto* row = new FlowLayout(ways);
  for (QAction* action : {compareAct_, takePanel_, takeArrangement_})
    row->addWidget(buttonFor(action, ways));
  down->addWidget(ways);
  said_ = new QLabel(left);
  said_->setObjectName(QStringLiteral("roughsSaid"));
  said_->setWordWrap(true);
  said_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  said_->setAlignment(Qt::AlignTop);
  said_->setFixedHeight(kSaidLines * said_->fontMetrics().lineSpacing());  // nothing moves for it
  down->addWidget(said_);
  return left;
}

QWidget* RoughsStation::makeBar() {
  auto* bar = new QWidget(this);
  auto* row = new QHBoxLayout(bar);
  row->setContentsMargins(0, 0, 0, 0);
  for (QAction* action : QList{pinPanel_, pinArrangement_} + view_->sizeActions())
    row->addWidget(buttonFor(action, bar));
  row->addStretch();
  return bar;
}

QWidget* RoughsStation::makeMiddle() {
  middle_ = new QStackedWidget(this);
  auto* page = new QWidget(middle_);
  auto* down = new QVBoxLayout(page);
  down->setContentsMargins(0, 0, 0, 0);
  view_ = new PageView(document_, engine_, page);
  pins_ = new PinTool(document_, engine_, this);
  edit_ = new PageEditTool(document_, engine_, *view_, this);
  tools_.emplace(std::vector<PageTool*>{pins_, edit_});
  view_->setTool(&*tools_);
  down->addWidget(makeBar());
  down->addWidget(view_, 1);
  down->addWidget(new LayerBar(*view_, page));
  middle_->addWidget(page);
  compare_ = new ComparePanel(document_, middle_);
  middle_->addWidget(compare_);
  return middle_;
}

void RoughsStation::arrive() {
  showState();
  view_->setFocus();
}

void RoughsStation::leave() {
  showPage();
}

void RoughsStation::showPage() {
  middle_->setCurrentIndex(0);
}

void RoughsStation::say(const QString& words) {
  said_->setText(words);
  said_->setToolTip(words);  // all of it, where there are more lines than room
}

void RoughsStation::showState() {
  if (gallery_ == nullptr) return;
  const Page& page = document_.page();
  const Rough* rough = document_.rough();
  const bool has = rough != nullptr, panel = has && document_.panel();
  for (QAction* action : {pick_, up_, down_, drop_, mark_, pinArrangement_})
    action->setEnabled(has);
  pinPanel_->setEnabled(panel);
  nameTaking();
  takePanel_->setEnabled(panel && !acts_->isMixing());
  takeArrangement_->setEnabled(has && !acts_->isMixing());
  compareAct_->setEnabled(page.roughs.size() > 1);
  pick_->setChecked(has && page.choice == rough->name);
  mark_->setChecked(has && gallery_->isMarked(rough->name));
  pinArrangement_->setChecked(has && isArrangementPinned(page, *rough));
  pinPanel_->setChecked(panel && isPinned(page, *rough, *document_.panel()));
}

/// From where to where, as soon as both are known.
void RoughsStation::nameTaking() {
  const QString from = qt(otherMarked());
  const QString into = document_.rough() != nullptr ? qt(document_.rough()->name) : QString();
  if (from.isEmpty() || into.isEmpty()) {
    takePanel_->setText(tr("Take panel"));
    takeArrangement_->setText(tr("Take arrangement"));
    return;
  }
  takePanel_->setText(document_.panel()
                          ? tr("Panel %1: %2 into %3").arg(*document_.panel() + 1).arg(from, into)
                          : tr("Take panel"));
  takeArrangement_->setText(tr("Arrangement: %1 into %2").arg(from, into));
}

void RoughsStation::stepRough(int by) {
  const auto index = document_.roughIndex();
  if (!index) return;
  const auto to = static_cast<std::ptrdiff_t>(*index) + by;
  const auto& roughs = document_.page().roughs;
  if (to < 0 || to >= static_cast<std::ptrdiff_t>(roughs.size())) return;
  document_.showRough(roughs[static_cast<std::size_t>(to)].name);
}

void RoughsStation::mark() {
  if (const Rough* rough = document_.rough())
    gallery_->setMarked(rough->name, !gallery_->isMarked(rough->name));
  showState();
}

void RoughsStation::findUnlike() {
  std::vector<std::string> marked = gallery_->marked();
  if (marked.empty() && document_.rough() != nullptr) marked = {document_.rough()->name};
  if (marked.empty())
    say(tr("There is nothing yet to be unlike: find roughs first."));
  else
    search_->find(marked);
}

/// The one marked rough besides the shown one; empty when there is none or more.
std::string RoughsStation::otherMarked() const {
  std::string out;
  for (const std::string& name : gallery_->marked()) {
    if (document_.rough() != nullptr && name == document_.rough()->name) continue;
    if (!out.empty()) return {};
    out = name;
  }
  return out;
}

void RoughsStation::compare() {
  const std::vector<std::string> marked = gallery_->marked();
  const Rough* shown = document_.rough();
  std::string a = shown != nullptr ? shown->name : std::string(), b = otherMarked();
  if (marked.size() == 2) {
    a = marked[0];
    b = marked[1];
  }
  if (a.empty() || b.empty()) {
    say(tr("Mark one rough to compare the shown one with, or two."));
    return;
  }
  compare_->show(a, b);
  middle_->setCurrentWidget(compare_);
}

void RoughsStation::takePanel(bool arrangement) {
  const Rough* shown = document_.rough();
  const std::string from = otherMarked();
  if (shown == nullptr || from.empty()) {
    say(tr("Mark the one rough to take it from."));
    return;
  }
  if (arrangement)
    acts_->mix(from, shown->name, std::nullopt);
  else if (document_.panel())
    acts_->mix(from, shown->name, *document_.panel());
}

}  // namespace tw
