#include "desk/script_station_brief.h"

#include <QComboBox>
#include <QEvent>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

#include "desk/in_qt.h"
#include "desk/look.h"
#include "job/brief_keys.h"

namespace tw {

namespace {

const QString kNone = QStringLiteral("none");
constexpr std::size_t kAboutLetters = 34;

constexpr std::array<std::string_view, 7> kListed{"dominant", "focus",  "largest",  "whole",
                                                  "liftable", "bleeds", "direction"};

bool isListed(const QString& key) {
  return std::ranges::find(kListed, key.toStdString()) != kListed.end();
}

QString sentence(const std::string& meaning) {
  QString out = qt(meaning);
  if (!out.isEmpty()) out[0] = out[0].toUpper();
  return out;
}

QString exampleFor(const QString& key) {
  if (key == QLatin1String("small-panels")) return BriefForm::tr("for example 3-5");
  if (key == QLatin1String("due")) return BriefForm::tr("for example 2027-01-15");
  if (key == QLatin1String("keep-clear"))
    return BriefForm::tr("for example logo:10,10,60,20; credits:…");
  return BriefForm::tr("not asked");
}

}  // namespace

BriefForm::BriefForm(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("briefForm"));
  auto* down = new QVBoxLayout(this);
  down->setContentsMargins(10, 8, 10, 8);
  contradictions_ = new QLabel(this);
  contradictions_->setObjectName(QStringLiteral("briefContradictions"));
  contradictions_->setWordWrap(true);
  down->addWidget(contradictions_);
  auto* form = new QFormLayout;
  form->setVerticalSpacing(4);
  form->setRowWrapPolicy(QFormLayout::WrapAllRows);
  form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  for (const BriefEntry& entry : describeBrief({}))
    addRow(*form, qt(entry.key), sentence(entry.meaning));
  down->addLayout(form);
  down->addStretch();
}

void BriefForm::addRow(QFormLayout& form, const QString& key, const QString& meaning) {
  Row row;
  row.control = makeControl(key);
  row.control->setAccessibleName(meaning);
  auto* field = new QWidget(this);
  auto* down = new QVBoxLayout(field);
  down->setContentsMargins(0, 0, 0, 0);
  down->setSpacing(0);
  down->addWidget(row.control);
  row.trouble = new QLabel(field);
  row.trouble->setObjectName(QStringLiteral("briefTrouble_") + key);
  row.trouble->setProperty("warn", true);
  row.trouble->setWordWrap(true);
  row.trouble->hide();
  down->addWidget(row.trouble);
  auto* label = new QLabel(meaning, this);
  label->setBuddy(row.control);
  form.addRow(label, field);
  rows_.emplace(key, row);
}

QWidget* BriefForm::makeControl(const QString& key) {
  QWidget* out = nullptr;
  if (isListed(key)) {
    auto* box = new QComboBox(this);
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    connect(box, &QComboBox::activated, this,
            [this, box, key](int at) { send(key, box->itemData(at).toString()); });
    box->installEventFilter(this);
    box->setFocusPolicy(Qt::StrongFocus);
    out = box;
  } else {
    auto* line = new QLineEdit(this);
    line->setPlaceholderText(exampleFor(key));
    connect(line, &QLineEdit::editingFinished, this, [this, line, key] {
      const QString typed = line->text().trimmed();
      send(key, typed.isEmpty() ? kNone : typed);
    });
    out = line;
  }
  out->setObjectName(QStringLiteral("brief_") + key);
  return out;
}

std::vector<BriefForm::Word> BriefForm::wordsFor(const QString& key, const Page& page,
                                                 const Job& job) const {
  std::vector<Word> out;
  if (key == QLatin1String("dominant")) {
    out.push_back({kNone, tr("as the script marks it")});
    for (const Beat& beat : page.beats) {
      QString about = qt(beat.description).simplified();
      if (about.size() > static_cast<qsizetype>(kAboutLetters))
        about = about.left(kAboutLetters) + QStringLiteral("…");
      out.push_back({qt(beat.id), tr("panel %1: %2").arg(beat.panel).arg(about)});
    }
  } else if (key == QLatin1String("focus")) {
    out.push_back({kNone, tr("whoever a panel names first")});
    for (const Character& who : job.cast) out.push_back({qt(who.id), qt(who.name)});
  } else if (key == QLatin1String("direction")) {
    out.push_back({QStringLiteral("left-to-right"), tr("left to right")});
    out.push_back({QStringLiteral("right-to-left"), tr("right to left")});
  } else {
    out.push_back({QStringLiteral("yes"), tr("yes")});
    out.push_back({QStringLiteral("no"), tr("no")});
  }
  return out;
}

void BriefForm::fill(const QString& key, Row& row, const Page& page, const Job& job) {
  if (auto* box = qobject_cast<QComboBox*>(row.control)) {
    box->clear();
    for (const Word& word : wordsFor(key, page, job)) box->addItem(word.shown, word.value);
    box->setCurrentIndex(box->findData(row.value));
  } else if (auto* line = qobject_cast<QLineEdit*>(row.control)) {
    line->setText(row.value == kNone ? QString() : row.value);
  }
  row.trouble->hide();
}

/// Zones to keep clear, each as it is typed, with signs between them that no name holds.
QString BriefForm::zonesIn(const Brief& brief) {
  QStringList out;
  for (const KeepClear& zone : brief.keepClear) {
    Brief alone;
    alone.keepClear = {zone};
    for (const BriefEntry& entry : describeBrief(alone))
      if (entry.key == "keep-clear") out << qt(entry.value);
  }
  return out.isEmpty() ? kNone : out.join(QStringLiteral("; "));
}

void BriefForm::show(const Page& page, const Job& job) {
  filling_ = true;
  for (const BriefEntry& entry : describeBrief(page.brief)) {
    const auto row = rows_.find(qt(entry.key));
    if (row == rows_.end()) continue;
    row->second.value = entry.key == "keep-clear" ? zonesIn(page.brief) : qt(entry.value);
    fill(row->first, row->second, page, job);
  }
  filling_ = false;
  QStringList told;
  for (const Problem& problem : contradictionsOf(page.brief, page, job))
    told << QStringLiteral("• ") + qt(Problems{problem});
  contradictions_->setProperty("warn", !told.isEmpty());
  contradictions_->setText(told.isEmpty() ? tr("What is asked can be worked to.")
                                          : told.join(QLatin1Char('\n')));
  contradictions_->setStyleSheet(
      told.isEmpty() ? QString() : QStringLiteral("color: %1").arg(deskColours().warn.name()));
}

void BriefForm::tell(const QString& key, const QString& words) {
  const auto row = rows_.find(key);
  if (row == rows_.end()) return;
  row->second.trouble->setText(words);
  row->second.trouble->setVisible(!words.isEmpty());
}

void BriefForm::send(const QString& key, const QString& value) {
  if (!filling_ && value != rows_[key].value) emit asked(key, value);
}

bool BriefForm::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::Wheel && !static_cast<QWidget*>(watched)->hasFocus()) {
    event->ignore();
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace tw
