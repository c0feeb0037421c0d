#include "desk/copy_station.h"

#include <QAction>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

#include "command/letter_again.h"
#include "desk/controls.h"
#include "desk/copy_meter.h"
#include "desk/in_qt.h"
#include "desk/lined_rows.h"
#include "desk/look.h"
#include "letter/copy_limits.h"
#include "letter/copy_space.h"
#include "script/count_words.h"

namespace tw {

namespace {

constexpr int kSidePx = 330, kWordsPx = 84;
constexpr int kRowRole = Qt::UserRole;
constexpr std::array<std::string_view, 10> kCopyRules{
    "room for copy", "speakers in order", "words on the page",   "words in a panel",
    "copy fits",     "copy covers",       "tail to the speaker", "copy in the fold",
    "keep clear",    "faces in the fold"};

QString kindInWords(CopyKind kind) {
  switch (kind) {
    case CopyKind::Caption:
      return CopyStation::tr("Caption");
    case CopyKind::Sfx:
      return CopyStation::tr("Sound");
    case CopyKind::Title:
      return CopyStation::tr("Title");
    case CopyKind::Whisper:
      return CopyStation::tr("whispers");
    case CopyKind::Shout:
      return CopyStation::tr("shouts");
    case CopyKind::Thought:
      return CopyStation::tr("thinks");
    default:
      return {};
  }
}

struct CopyFound {
  const Page* page;
  const Beat* beat;
  const CopyItem* item;
};
std::optional<CopyFound> copyIn(const Job& job, const std::string& id) {
  for (const Page& page : job.pages)
    for (const Beat& beat : page.beats)
      for (const CopyItem& item : beat.copy)
        if (item.id == id) return CopyFound{&page, &beat, &item};
  return std::nullopt;
}

}  // namespace

CopyStation::CopyStation(Document& document, Engine& engine, QWidget* parent)
    : Station(document, engine, parent) {
  setObjectName(QStringLiteral("copyStation"));
  tool_ = new CopyTool(document, engine, this);
  view_ = new PageView(document, engine, this);
  view_->setTool(tool_);
  auto* across = new QHBoxLayout(this);
  across->setContentsMargins(0, 0, 0, 0);
  auto* left = new QVBoxLayout;
  left->addWidget(makeBar());
  left->addWidget(view_, 1);
  told_ = new QLabel(this);
  told_->setObjectName(QStringLiteral("copyTold"));
  told_->setProperty("quiet", true);
  told_->setText(
      tr("Drag a balloon or the end of its tail. Tab: next balloon; arrows: nudge it, with "
         "Alt its tail, with Shift farther."));
  left->addWidget(told_);
  across->addLayout(left, 1);
  across->addWidget(makeSide());
  connect(tool_, &CopyTool::lookChanged, view_, qOverload<>(&QWidget::update));
  connect(tool_, &CopyTool::chosenChanged, this, &CopyStation::showChosen);
  connect(tool_, &CopyTool::told, told_, &QLabel::setText);
  connect(&engine_, &Engine::measured, this, [this] {
    if (!isVisible()) return;
    listFindings();
    showMeter();
    showChosen();
  });
  const auto again = [this] {
    if (!isVisible()) return;
    listCopy();
    showMeter();
    showChosen();
  };
  connect(&document_, &Document::pageChanged, this, again);
  connect(&document_, &Document::shownChanged, this, again);
}

void CopyStation::arrive() {
  listCopy();
  listFindings();
  showMeter();
  showChosen();
  view_->setFocus();
}

void CopyStation::leave() {
  setWords();
}

QWidget* CopyStation::makeBar() {
  auto* bar = new QWidget(this);
  auto* across = new QHBoxLayout(bar);
  across->setContentsMargins(0, 0, 0, 0);
  broader_ = actionOn(*this, tr("Broader"), "balloonBroader", QKeySequence(Qt::Key_B));
  narrower_ = actionOn(*this, tr("Narrower"), "balloonNarrower", QKeySequence(Qt::Key_N));
  aim_ = actionOn(*this, tr("Aim tail"), "balloonAimTail", QKeySequence(Qt::Key_I));
  place_ =
      actionOn(*this, tr("Let the program place it"), "balloonPlaceAgain", QKeySequence(Qt::Key_P));
  QAction* numbers = actionOn(*this, tr("Order numbers"), "copyNumbers", QKeySequence(Qt::Key_U));
  numbers->setCheckable(true);
  connect(broader_, &QAction::triggered, this, [this] { tool_->reshape(-1); });
  connect(narrower_, &QAction::triggered, this, [this] { tool_->reshape(1); });
  connect(aim_, &QAction::triggered, this, [this] { tool_->aimTail(); });
  connect(place_, &QAction::triggered, this, [this] { tool_->placeAgain(); });
  connect(numbers, &QAction::toggled, this, [this](bool on) { tool_->showNumbers(on); });
  for (QAction* action : QList{broader_, narrower_, aim_, place_, numbers} + view_->sizeActions())
    across->addWidget(buttonFor(action, bar));
  across->addStretch();
  return bar;
}

QWidget* CopyStation::makeWords() {
  auto* box = new QWidget(this);
  auto* down = new QVBoxLayout(box);
  down->setContentsMargins(0, 0, 0, 0);
  about_ = heading(tr("No balloon chosen"), box);
  about_->setObjectName(QStringLiteral("copyAbout"));
  down->addWidget(about_);
  words_ = new QPlainTextEdit(box);
  words_->setObjectName(QStringLiteral("copyWords"));
  words_->setAccessibleName(tr("Words of the balloon"));
  words_->setFixedHeight(kWordsPx);
  words_->setTabChangesFocus(true);
  words_->installEventFilter(this);
  down->addWidget(words_);
  count_ = new QLabel(box);
  count_->setObjectName(QStringLiteral("copyCount"));
  down->addWidget(count_);
  auto* across = new QHBoxLayout;
  set_ = actionOn(*this, tr("Set words"), "copySetWords", QKeySequence(Qt::CTRL | Qt::Key_Return));
  asScript_ =
      actionOn(*this, tr("As the script says"), "copyAsScript", QKeySequence(Qt::CTRL | Qt::Key_R));
  across->addWidget(buttonFor(set_, box));
  across->addWidget(buttonFor(asScript_, box));
  across->addStretch();
  down->addLayout(across);
  connect(set_, &QAction::triggered, this, &CopyStation::setWords);
  connect(asScript_, &QAction::triggered, this, [this] {
    const CopyItem* item = chosenScriptItem();
    if (item == nullptr) return;
    words_->setPlainText(qt(item->text));
    retype(*filledFor_, item->text);
  });
  connect(words_, &QPlainTextEdit::textChanged, this, &CopyStation::countWords);
  return box;
}

QWidget* CopyStation::makeSide() {
  auto* side = new QWidget(this);
  side->setFixedWidth(kSidePx);
  auto* down = new QVBoxLayout(side);
  down->setContentsMargins(0, 0, 0, 0);
  down->addWidget(heading(tr("Copy of the page"), side));
  list_ = new QListWidget(side);
  list_->setObjectName(QStringLiteral("copyList"));
  list_->setAccessibleName(tr("Copy of the page in reading order"));
  list_->setItemDelegate(new LinedRows(LinedRows::First::Plain, list_));
  list_->setResizeMode(QListView::Adjust);
  list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  down->addWidget(list_, 3);
  down->addWidget(makeWords());
  meter_ = new CopyMeter(side);
  down->addWidget(meter_);
  down->addWidget(heading(tr("Found about copy"), side));
  findings_ = new QListWidget(side);
  findings_->setObjectName(QStringLiteral("copyFindings"));
  findings_->setAccessibleName(tr("Findings about copy"));
  findings_->setItemDelegate(new LinedRows(LinedRows::First::Plain, findings_));
  findings_->setResizeMode(QListView::Adjust);
  findings_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  down->addWidget(findings_, 2);
  connect(list_, &QListWidget::currentRowChanged, this, &CopyStation::chooseRow);
  connect(findings_, &QListWidget::itemClicked, this, [this](QListWidgetItem* item) {
    const auto index = static_cast<std::size_t>(findings_->row(item));
    if (index < places_.size()) view_->pointOut(places_[index]);
  });
  return side;
}

const CopyItem* CopyStation::scriptItem(const CopyPlace& place) const {
  for (const Beat& beat : document_.page().beats)
    for (const CopyItem& item : beat.copy)
      if (item.id == place.item) return &item;
  return nullptr;
}

const CopyItem* CopyStation::chosenScriptItem() const {
  return filledFor_ ? scriptItem(*filledFor_) : nullptr;
}

std::string CopyStation::wordsNow(const CopyPlace& place) const {
  for (const auto& [beat, change] : document_.page().overrides)
    if (const auto own = change.copy.find(place.item); own != change.copy.end())
      return own->second.text;
  const CopyItem* item = scriptItem(place);
  return item == nullptr ? std::string() : item->text;
}

/// Every item of the page, panel by panel; those that are left out too, to be had back.
void CopyStation::listCopy() {
  filling_ = true;
  list_->clear();
  rows_.clear();
  const Page& page = document_.page();
  int number = 0;
  for (std::size_t i = 0; i < page.beats.size(); ++i) {
    for (const CopyItem& item : page.beats[i].copy) {
      const CopyPlace place{i, item.id};
      const std::string words = wordsNow(place);
      const Character* who = document_.job().character(item.speaker);
      QString speaker = who ? qt(who->name) : qt(item.speaker);
      if (const QString kind = kindInWords(item.kind); !kind.isEmpty())
        speaker = speaker.isEmpty() ? kind : QStringLiteral("%1 (%2)").arg(speaker, kind);
      if (item.offPanel) speaker += tr(" (not seen)");
      QString line = words.empty() ? tr("left out: %1").arg(qt(item.text)) : qt(words);
      if (!words.empty() && words != item.text) line += tr("  (retyped)");
      auto* row = new QListWidgetItem(
          words.empty() ? QStringLiteral("–  %1: %2").arg(speaker, line)
                        : QStringLiteral("%1  %2: %3").arg(++number).arg(speaker, line),
          list_);
      row->setToolTip(tr("Panel %1").arg(i + 1));
      row->setData(kRowRole, static_cast<int>(rows_.size()));
      rows_.push_back({place, page.beats[i].id, words.empty()});
    }
  }
  filling_ = false;
}

void CopyStation::chooseRow(int row) {
  if (filling_ || row < 0 || row >= static_cast<int>(rows_.size())) return;
  tool_->choose(rows_[static_cast<std::size_t>(row)].place);
}

void CopyStation::showChosen() {
  const auto& chosen = tool_->chosen();
  const PlacedBalloon* balloon = tool_->balloon();
  broader_->setEnabled(balloon != nullptr);
  narrower_->setEnabled(balloon != nullptr);
  aim_->setEnabled(balloon != nullptr);
  place_->setEnabled(balloon != nullptr && balloon->byHand);
  filling_ = true;
  int row = -1;
  for (std::size_t i = 0; i < rows_.size(); ++i)
    if (chosen && rows_[i].place == *chosen) row = static_cast<int>(i);
  list_->setCurrentRow(row);
  filling_ = false;
  words_->setEnabled(chosen.has_value());
  set_->setEnabled(chosen.has_value());
  if (filledFor_ == chosen && words_->document()->isModified()) {
    countWords();  // somebody is typing
    return;
  }
  if (filledFor_ != chosen) setWords();
  filledFor_ = chosen;
  const QString words = chosen ? qt(wordsNow(*chosen)) : QString();
  if (words_->toPlainText() != words) words_->setPlainText(words);
  words_->document()->setModified(false);
  about_->setText(!chosen              ? tr("No balloon chosen")
                  : balloon == nullptr ? tr("Panel %1, left out").arg(chosen->panel + 1)
                  : balloon->byHand    ? tr("Panel %1, placed by hand").arg(chosen->panel + 1)
                                    : tr("Panel %1, placed by the program").arg(chosen->panel + 1));
  countWords();
}

void CopyStation::countWords() {
  const CopyItem* item = chosenScriptItem();
  asScript_->setEnabled(item != nullptr && words_->toPlainText().toStdString() != item->text);
  if (item == nullptr) {
    count_->clear();
    return;
  }
  const int words = WordCounter().count(words_->toPlainText().toStdString());
  const bool over = words > kMostWordsPerBalloon;
  count_->setText(
      over ? tr("%1 words; more than %2 tire the reader").arg(words).arg(kMostWordsPerBalloon)
           : tr("%1 of %2 words").arg(words).arg(kMostWordsPerBalloon));
  count_->setProperty("warn", over);
  count_->setStyleSheet(over ? QStringLiteral("color: %1").arg(deskColours().warn.name())
                             : QString());
}

void CopyStation::setWords() {
  if (!filledFor_ || !words_->document()->isModified()) return;
  words_->document()->setModified(false);
  const std::string typed = words_->toPlainText().trimmed().toStdString();
  if (typed != wordsNow(*filledFor_)) retype(*filledFor_, typed);
}

/// On whichever page the copy stands: it may have been left while somebody typed.
void CopyStation::retype(const CopyPlace& place, const std::string& words) {
  const auto where = copyIn(document_.job(), place.item);
  const MeasurementPtr& m = engine_.latest();
  if (!where) return;
  Page after = *where->page;
  const std::string& beat = where->beat->id;
  BeatOverride& change = after.overrides[beat];
  if (words == where->item->text)
    change.copy.erase(place.item);
  else
    change.copy[place.item] = {words, WordCounter().count(words)};
  if (change == BeatOverride{}) after.overrides.erase(beat);
  if (m && m->staged)
    if (auto done = letterAgain(after, document_.job(), beat, m->staged->workshop->letterer); !done)
      told_->setText(qt(done.error()));
  if (!document_.change(tr("Retype copy"), after)) words_->setPlainText(qt(wordsNow(place)));
}

void CopyStation::showMeter() {
  std::vector<MeterBar> bars;
  const Page& page = document_.page();
  const auto add = [&](const QString& label, double now, double most, const QString& unit) {
    bars.push_back({label, tr("%1 of %2%3").arg(now, 0, 'f', 0).arg(most, 0, 'f', 0).arg(unit),
                    most > 0 ? now / most : 0});
  };
  const MeasurementPtr& m = engine_.latest();
  const auto panel = tool_->chosen() ? std::optional(tool_->chosen()->panel) : document_.panel();
  if (m && m->measured && panel && *panel < m->roughNow().panels.size() && m->page == page.number) {
    const LetterRequest request = m->measured->letterRequestOf(*panel);
    const CopySpace space = copySpace(request, m->staged->workshop->letterer);
    const QString name = tr("panel %1").arg(*panel + 1);
    add(tr("Room in %1").arg(name), space.wantedMm2, space.freeMm2, tr(" mm²"));
    add(tr("Words in %1").arg(name), space.words, space.mostWords, {});
    add(tr("Longest balloon"), space.longest, space.mostInBalloon, {});
  }
  int words = 0;
  for (const Beat& beat : page.correctedBeats()) words += beat.words();
  add(tr("Words on the page"), words, page.brief.mostWords, {});
  meter_->show(std::move(bars));
}

void CopyStation::listFindings() {
  findings_->clear();
  places_.clear();
  const MeasurementPtr& m = engine_.latest();
  if (!m || !m->measured) return;
  for (const Finding& finding : m->findings) {
    if (std::ranges::find(kCopyRules, finding.rule) == kCopyRules.end()) continue;
    if (!finding.silencedWhy.empty()) continue;
    const QString where = finding.panel > 0 ? tr("Panel %1: ").arg(finding.panel) : tr("Page: ");
    auto* row = new QListWidgetItem(where + qt(finding.reason), findings_);
    row->setToolTip(qt(finding.remedy));
    Polygon place = finding.place;
    if (place.points.empty() && finding.panel > 0)
      place = m->roughNow().panels[static_cast<std::size_t>(finding.panel) - 1].outline;
    places_.push_back(std::move(place));
  }
  if (places_.empty()) new QListWidgetItem(tr("Nothing."), findings_);
}

bool CopyStation::eventFilter(QObject* watched, QEvent* event) {
  if (watched == words_ && event->type() == QEvent::FocusOut) setWords();
  return Station::eventFilter(watched, event);
}

}  // namespace tw
