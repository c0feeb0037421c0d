#include "desk/script_station.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QScrollArea>
#include <QSplitter>
#include <QTabWidget>
#include <QVBoxLayout>

#include <algorithm>

#include "command/beat_choices.h"
#include "command/page_wishes.h"
#include "desk/cast_shelf.h"
#include "desk/controls.h"
#include "desk/in_qt.h"
#include "desk/lined_rows.h"
#include "desk/page_words.h"
#include "desk/script_station_brief.h"
#include "desk/script_station_form.h"
#include "desk/script_station_text.h"
#include "job/brief_keys.h"

namespace tw {

namespace {

const Beat* beatOf(const Page& page, const std::string& id) {
  const auto found = std::ranges::find(page.beats, id, &Beat::id);
  return found == page.beats.end() ? nullptr : &*found;
}

}  // namespace

ScriptStation::ScriptStation(Document& document, Engine& engine, QWidget* parent)
    : Station(document, engine, parent) {
  setObjectName(QStringLiteral("scriptStation"));
  auto* across = new QHBoxLayout(this);
  across->setContentsMargins(0, 0, 0, 0);
  auto* split = new QSplitter(Qt::Horizontal, this);
  split->setChildrenCollapsible(false);
  text_ = new ScriptSheet(split);
  split->addWidget(text_);
  split->addWidget(makeMiddle());
  split->addWidget(makeForms());
  split->setSizes({480, 380, 440});
  across->addWidget(split);
  connect(text_, &ScriptSheet::lineChosen, this, &ScriptStation::chooseLine);
  connect(&document_, &Document::pageChanged, this, [this](int number) {
    if (number == document_.page().number && isVisible()) showAll();
  });
  connect(&document_, &Document::jobChanged, this, [this] {
    if (isVisible()) showAll();
  });
  connect(&document_, &Document::shownChanged, this, [this] {
    if (isVisible()) showAll();
  });
}

void ScriptStation::arrive() {
  if (!known_ && !errand_.isRunning()) readWords();
  showAll();
  text_->setFocus();
}

QWidget* ScriptStation::makeMiddle() {
  auto* middle = new QWidget(this);
  auto* down = new QVBoxLayout(middle);
  down->setContentsMargins(0, 0, 0, 0);
  pages_ = new QComboBox(middle);
  pages_->setObjectName(QStringLiteral("scriptPage"));
  pages_->setAccessibleName(tr("Page"));
  pages_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  down->addWidget(pages_);
  beats_ = new QListWidget(middle);
  beats_->setObjectName(QStringLiteral("scriptBeats"));
  beats_->setAccessibleName(tr("Panels of the page"));
  beats_->setItemDelegate(new LinedRows(LinedRows::First::Bold, beats_));
  beats_->setResizeMode(QListView::Adjust);
  beats_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  beats_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  down->addWidget(beats_, 1);
  down->addWidget(new CastShelf(document_, middle));
  connect(pages_, &QComboBox::activated, this, [this](int row) {
    beat_.clear();
    document_.showPage(pages_->itemData(row).toInt());
  });
  connect(beats_, &QListWidget::currentRowChanged, this, [this](int row) {
    const auto& list = document_.page().beats;
    if (!filling_ && row >= 0 && row < static_cast<int>(list.size()))
      chooseBeat(list[static_cast<std::size_t>(row)].id);
  });
  return middle;
}

QWidget* ScriptStation::makeForms() {
  forms_ = new QTabWidget(this);
  forms_->setObjectName(QStringLiteral("scriptForms"));
  auto* panel = new QWidget(forms_);
  auto* down = new QVBoxLayout(panel);
  about_ = heading({}, panel);
  about_->setWordWrap(true);
  down->addWidget(about_);
  notDrawn_ = new QLabel(panel);
  notDrawn_->setProperty("quiet", true);
  notDrawn_->setWordWrap(true);
  down->addWidget(notDrawn_);
  form_ = new BeatForm(panel);
  down->addWidget(form_);
  down->addStretch();
  brief_ = new BriefForm(forms_);
  forms_->addTab(scrolled(panel, forms_), tr("This panel"));
  forms_->addTab(scrolled(brief_, forms_), tr("What the page must do"));
  forms_->setMinimumWidth(330);
  connect(form_, &BeatForm::corrected, this, &ScriptStation::correct);
  connect(brief_, &BriefForm::asked, this, &ScriptStation::ask);
  return forms_;
}

void ScriptStation::readWords() {
  errand_.start(
      [folder = document_.folder()](Progress&) {
        return Words{knownWordsOf(folder), lightNames()};
      },
      [this](Words words) {
        if (!words.known) {
          emit document_.troubled(qt(words.known.error()));
          return;
        }
        known_ = std::move(*words.known);
        if (words.lights) lights_ = std::move(*words.lights);
        showForms();
      });
}

/// Again only when the job has another script.
void ScriptStation::readScript() {
  const Job& job = document_.job();
  if (!text_->script().lines.empty() && readFile_ == job.scriptFile) return;
  readFile_ = job.scriptFile;
  auto script = scriptTextOf(document_.folder(), job);
  if (!script) emit document_.troubled(qt(script.error()));
  text_->take(script ? std::move(*script) : ScriptText{});
}

void ScriptStation::showAll() {
  readScript();
  const Page& page = document_.page();
  const auto panel = document_.panel();
  // The panel that is selected at the other stations, unless copy of it was chosen here.
  if (const Rough* rough = document_.rough(); rough != nullptr && panel &&
                                              *panel < rough->panels.size() &&
                                              rough->panels[*panel].beat != beat_) {
    beat_ = rough->panels[*panel].beat;
    item_.clear();
  }
  if (beatOf(page, beat_) == nullptr) {
    beat_ = page.beats.empty() ? std::string() : page.beats.front().id;
    item_.clear();
  }
  listPages();
  listBeats();
  showForms();
  text_->mark(beat_, item_);
}

void ScriptStation::listPages() {
  pages_->clear();
  for (const Page& page : document_.job().pages) {
    QString words = tw::inWords(page);
    words[0] = words[0].toUpper();
    words += tr(", %1 panels").arg(page.beats.size());
    if (!page.title.empty()) words += QStringLiteral(": ") + qt(page.title);
    pages_->addItem(words, page.number);
  }
  pages_->setCurrentIndex(pages_->findData(document_.page().number));
}

QString ScriptStation::inWords(const Beat& beat, bool corrected) const {
  QStringList head{tr("%1").arg(beat.panel)};
  if (beat.shot) head << qt(nameOf(*beat.shot));
  if (beat.eye) head << qt(nameOf(*beat.eye));
  QStringList people;
  for (const BeatFigure& figure : beat.figures) {
    const Character* who = document_.job().character(figure.who);
    people << (who ? qt(who->name) : qt(figure.who));
  }
  if (!people.isEmpty()) head << people.join(QStringLiteral(", "));
  if (beat.dominant) head << tr("dominant");
  const QString about = qt(beat.description).simplified();
  QStringList foot;
  if (!beat.copy.empty())
    foot << (beat.copy.size() == 1 ? tr("1 piece of copy")
                                   : tr("%1 pieces of copy").arg(beat.copy.size()))
         << tr("%1 words").arg(beat.words());
  if (corrected) foot << tr("corrected");
  QString out = head.join(QStringLiteral("  ·  ")) + QLatin1Char('\n') + about;
  if (!foot.isEmpty()) out += QLatin1Char('\n') + foot.join(QStringLiteral(", "));
  return out;
}

void ScriptStation::listBeats() {
  filling_ = true;
  beats_->clear();
  const Page& page = document_.page();
  for (const Beat& beat : page.correctedBeats()) {
    beats_->addItem(inWords(beat, page.overrides.contains(beat.id)));
    if (beat.id == beat_) beats_->setCurrentRow(beats_->count() - 1);
  }
  filling_ = false;
}

void ScriptStation::showForms() {
  const Page& page = document_.page();
  brief_->show(page, document_.job());
  const Beat* beat = beatOf(page, beat_);
  about_->setText(beat == nullptr ? tr("No panel chosen")
                  : known_        ? tr("Panel %1").arg(beat->panel)
                           : tr("Panel %1: reading what can be corrected …").arg(beat->panel));
  QStringList missing;
  if (beat != nullptr)
    for (const std::string& thing : beat->notDrawn) missing << qt(thing);
  notDrawn_->setVisible(!missing.isEmpty());
  notDrawn_->setText(tr("Named but not drawn: %1").arg(missing.join(QStringLiteral(", "))));
  if (known_)
    form_->show(beat == nullptr ? std::vector<BeatChoice>{}
                                : beatChoices(page, beat_, document_.job(), *known_, lights_));
}

void ScriptStation::chooseBeat(const std::string& beat, const std::string& item) {
  beat_ = beat;
  item_ = item;
  const auto& list = document_.page().beats;
  const auto at = std::ranges::find(list, beat, &Beat::id);
  if (at == list.end()) return;
  filling_ = true;
  beats_->setCurrentRow(static_cast<int>(at - list.begin()));
  filling_ = false;
  text_->mark(beat_, item_);
  if (const Rough* rough = document_.rough()) {
    const auto panel = std::ranges::find(rough->panels, beat, &RoughPanel::beat);
    if (panel != rough->panels.end())
      document_.selectPanel(static_cast<std::size_t>(panel - rough->panels.begin()));
  }
  showForms();
}

void ScriptStation::chooseLine(int line) {
  const auto& lines = text_->script().lines;
  if (line < 0 || line >= static_cast<int>(lines.size())) return;
  const ScriptTextLine chosen = lines[static_cast<std::size_t>(line)];
  if (chosen.beat.empty()) return;
  for (const Page& page : document_.job().pages) {
    if (beatOf(page, chosen.beat) == nullptr) continue;
    beat_ = chosen.beat;
    item_ = chosen.item;
    if (page.number != document_.page().number) document_.showPage(page.number);
    chooseBeat(chosen.beat, chosen.item);
    return;
  }
}

void ScriptStation::correct(const QString& key, const QString& value) {
  if (!known_) return;
  Page after = document_.page();
  const std::string assignment = beat_ + "." + key.toStdString() + "=" + value.toStdString();
  const auto set = setOverrideKey(after, document_.job(), assignment, *known_);
  form_->tell(key, set ? QString() : qt(set.error()));
  if (set && after != document_.page() &&
      !document_.change(tr("Correct %1 of panel %2").arg(key, qt(beat_)), after))
    showForms();
}

void ScriptStation::ask(const QString& key, const QString& value) {
  Page after = document_.page();
  Problems problems;
  const auto set = [&](const QString& one) {
    const std::string assignment = (key + QLatin1Char('=') + one).toStdString();
    if (auto done = setBriefKey(after.brief, assignment); !done)
      problems.insert(problems.end(), done.error().begin(), done.error().end());
  };
  if (key == QLatin1String("keep-clear") && value != QLatin1String("none")) {
    set(QStringLiteral("none"));  // what stands in the field is all there is to be
    for (const QString& zone : value.split(QLatin1Char(';'), Qt::SkipEmptyParts))
      set(zone.trimmed());
  } else {
    set(value);
  }
  if (problems.empty()) problems = unknownNamesIn(after.brief, after, document_.job());
  brief_->tell(key, problems.empty() ? QString() : qt(problems));
  if (problems.empty() && after != document_.page() &&
      !document_.change(tr("Ask %1 of page %2").arg(key).arg(after.number), after))
    showForms();
}

}  // namespace tw
