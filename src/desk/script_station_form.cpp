#include "desk/script_station_form.h"

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QEvent>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

#include "desk/in_qt.h"
#include "desk/look.h"

namespace tw {

namespace {

const QString kGuess = QStringLiteral("guess");
constexpr int kDecimals = 1;
constexpr double kStep = 0.5;

bool sameWords(const BeatChoice& a, const BeatChoice& b) {
  const auto same = [](const ChoiceWord& x, const ChoiceWord& y) {
    return x.value == y.value && x.meaning == y.meaning;
  };
  return std::ranges::equal(a.words, b.words, same);
}

void offer(QComboBox& box, const BeatChoice& choice) {
  box.clear();
  for (const ChoiceWord& word : choice.words)
    box.addItem(qt(word.meaning.empty() ? word.value : word.meaning), qt(word.value));
}

}  // namespace

BeatForm::BeatForm(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("beatForm"));
  auto* down = new QVBoxLayout(this);
  down->setContentsMargins(0, 0, 6, 0);
  down->addStretch();
}

void BeatForm::show(const std::vector<BeatChoice>& choices) {
  const bool sameRows = std::ranges::equal(
      rows_, choices, [](const Row& row, const BeatChoice& c) { return row.choice.key == c.key; });
  if (!sameRows) build(choices);
  filling_ = true;
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    auto* box = qobject_cast<QComboBox*>(rows_[i].control);
    if (box != nullptr && !sameWords(rows_[i].choice, choices[i])) offer(*box, choices[i]);
    rows_[i].choice = choices[i];
    fill(rows_[i]);
  }
  filling_ = false;
}

void BeatForm::build(const std::vector<BeatChoice>& choices) {
  if (body_ != nullptr) {
    body_->hide();
    body_->setParent(nullptr);
    if (sending_ > 0)
      body_->deleteLater();  // one of its own is calling
    else
      delete body_;
  }
  rows_.clear();
  body_ = new QWidget(this);
  static_cast<QVBoxLayout*>(layout())->insertWidget(0, body_);
  auto* form = new QFormLayout(body_);
  form->setContentsMargins(0, 0, 0, 0);
  form->setVerticalSpacing(4);
  form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  for (const BeatChoice& choice : choices) {
    Row row{choice, makeControl(choice), nullptr, nullptr};
    auto* field = new QWidget(body_);
    auto* down = new QVBoxLayout(field);
    down->setContentsMargins(0, 0, 0, 0);
    down->setSpacing(0);
    auto* across = new QHBoxLayout;
    across->addWidget(row.control, 1);
    if (choice.kind != ChoiceKind::Act) {
      row.back = new QPushButton(tr("As script"), field);
      row.back->setObjectName(QStringLiteral("back_") + qt(choice.key));
      row.back->setAccessibleName(tr("%1 as the script says").arg(qt(choice.label)));
      connect(row.back, &QPushButton::clicked, this,
              [this, key = choice.key] { send(key, kGuess); });
      across->addWidget(row.back);
    }
    down->addLayout(across);
    row.trouble = new QLabel(field);
    row.trouble->setObjectName(QStringLiteral("trouble_") + qt(choice.key));
    row.trouble->setProperty("warn", true);
    row.trouble->setWordWrap(true);
    row.trouble->hide();
    down->addWidget(row.trouble);
    auto* label = new QLabel(qt(choice.label), body_);
    label->setMinimumHeight(kTouchPx);  // level with its control
    label->setBuddy(row.control);
    form->addRow(label, field);
    rows_.push_back(row);
  }
}

QWidget* BeatForm::makeControl(const BeatChoice& choice) {
  QWidget* out = nullptr;
  if (choice.kind == ChoiceKind::Number) {
    auto* box = new QDoubleSpinBox(body_);
    box->setDecimals(kDecimals);
    box->setSingleStep(kStep);
    box->setRange(choice.least - kStep, choice.most);  // the lowest stands for "not said"
    box->setSpecialValueText(tr("not said"));
    box->setKeyboardTracking(false);
    if (!choice.unit.empty()) box->setSuffix(QStringLiteral(" ") + qt(choice.unit));
    connect(box, &QDoubleSpinBox::valueChanged, this, [this, box, key = choice.key](double value) {
      send(key, value <= box->minimum() ? kGuess : QString::number(value));
    });
    out = box;
  } else {
    auto* box = new QComboBox(body_);
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(10);
    box->setMaxVisibleItems(20);
    offer(*box, choice);
    const bool open = choice.kind == ChoiceKind::Words || choice.key == "prop.add";
    box->setEditable(open);
    if (open) box->setInsertPolicy(QComboBox::NoInsert);
    connect(box, &QComboBox::activated, this, [this, box, key = choice.key](int index) {
      if (index >= 0) send(key, box->itemData(index).toString());
    });
    if (open)
      connect(box->lineEdit(), &QLineEdit::editingFinished, this, [this, box, key = choice.key] {
        const int known = box->findText(box->currentText());
        const QString typed =
            known >= 0 ? box->itemData(known).toString() : box->currentText().trimmed();
        if (!typed.isEmpty()) send(key, typed);
      });
    out = box;
  }
  out->setObjectName(QStringLiteral("beat_") + qt(choice.key));
  out->setAccessibleName(qt(choice.label));
  out->setFocusPolicy(Qt::StrongFocus);
  out->installEventFilter(this);
  return out;
}

void BeatForm::fill(Row& row) {
  const BeatChoice& c = row.choice;
  if (auto* spin = qobject_cast<QDoubleSpinBox*>(row.control)) {
    spin->setValue(c.value.empty() ? spin->minimum() : qt(c.value).toDouble());
  } else if (auto* box = qobject_cast<QComboBox*>(row.control)) {
    const int at = box->findData(qt(c.value));
    box->setCurrentIndex(c.kind == ChoiceKind::Act ? -1 : at);
    if (box->isEditable()) {
      box->setEditText(c.kind == ChoiceKind::Act ? QString()
                       : at >= 0                 ? box->itemText(at)
                                                 : qt(c.value));
      box->lineEdit()->setPlaceholderText(c.kind == ChoiceKind::Act ? tr("choose or type")
                                                                    : tr("not said"));
      box->lineEdit()->setCursorPosition(0);
    } else {
      box->setPlaceholderText(c.kind == ChoiceKind::Act ? tr("choose") : tr("not said"));
    }
    box->setEnabled(box->isEditable() || box->count() > 0);
  }
  if (row.back != nullptr) {
    row.back->setEnabled(c.corrected);
    row.back->setToolTip(c.asScript.empty() ? tr("The script does not say")
                                            : tr("The script says: %1").arg(qt(c.asScript)));
  }
  row.trouble->hide();
}

void BeatForm::tell(const QString& key, const QString& sentence) {
  for (Row& row : rows_) {
    if (qt(row.choice.key) != key) continue;
    row.trouble->setText(sentence);
    row.trouble->setVisible(!sentence.isEmpty());
  }
}

void BeatForm::send(const std::string& key, const QString& value) {
  if (filling_) return;
  const auto row =
      std::ranges::find_if(rows_, [&](const Row& each) { return each.choice.key == key; });
  if (row == rows_.end()) return;
  const bool same = value.toStdString() == row->choice.value;
  if (same && row->choice.kind != ChoiceKind::Act) return;
  if (value == kGuess && !row->choice.corrected) return;
  ++sending_;
  emit corrected(qt(key), value);
  --sending_;
}

/// The wheel scrolls the form; it does not change what it passes over.
bool BeatForm::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::Wheel && !static_cast<QWidget*>(watched)->hasFocus()) {
    event->ignore();
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace tw
