#include "desk/finding_view.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "desk/in_qt.h"
#include "job/amount_words.h"

namespace tw {

namespace {

QString levelWord(Severity severity) {
  switch (severity) {
    case Severity::Must:
      return FindingView::tr("Must");
    case Severity::Should:
      return FindingView::tr("Should");
    case Severity::Look:
      return FindingView::tr("Look");
  }
  return {};
}

QString amount(double value, const Finding& finding) {
  return qt(amountInWords(value, finding.unit));
}

QString measureWords(const Finding& finding) {
  QString out =
      FindingView::tr("Measured: %1: %2, limit %3.")
          .arg(qt(finding.measure), amount(finding.value, finding), amount(finding.limit, finding));
  out += QLatin1Char(' ') + FindingView::tr("Evidence: %1").arg(qt(nameOf(finding.evidence)));
  out += finding.source.empty() ? QStringLiteral(".") : QStringLiteral(": ") + qt(finding.source);
  return out;
}

QPushButton* button(QWidget* parent, const QString& words, const QString& name) {
  auto* out = new QPushButton(words, parent);
  out->setObjectName(name);
  return out;
}

}  // namespace

QString findingTitle(const Finding& finding) {
  const QString where =
      finding.panel > 0 ? FindingView::tr("panel %1").arg(finding.panel) : FindingView::tr("page");
  return QStringLiteral("%1, %2: %3").arg(levelWord(finding.severity), where, qt(finding.reason));
}

FindingView::FindingView(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("findingView"));
  down_ = new QVBoxLayout(this);
  down_->setContentsMargins(8, 6, 8, 6);
  where_ = addLabel("findingWhere", "heading");
  reason_ = addLabel("findingReason");
  state_ = addLabel("remedyState", "quiet");
  remedies_ = new QWidget(this);
  down_->addWidget(remedies_);
  tried_ = addLabel("remedyTried");
  drop_ = button(this, tr("Drop what is tried"), QStringLiteral("dropRemedy"));
  down_->addWidget(drop_);
  remedy_ = addLabel("findingRemedy");
  measure_ = addLabel("findingMeasure", "quiet");
  trouble_ = addLabel("findingTrouble", "warn");
  answer_ = addLabel("findingAnswer");
  auto* across = new QHBoxLayout;
  why_ = new QLineEdit(this);
  why_->setObjectName(QStringLiteral("silenceReason"));
  why_->setAccessibleName(tr("Why this finding is meant to be so"));
  why_->setPlaceholderText(tr("It is meant so, because …"));
  silence_ = button(this, tr("Answer"), QStringLiteral("silenceFinding"));
  unsilence_ = button(this, tr("Take the answer back"), QStringLiteral("unsilenceFinding"));
  across->addWidget(why_, 1);
  across->addWidget(silence_);
  across->addWidget(unsilence_);
  down_->addLayout(across);
  down_->addStretch(1);
  connect(drop_, &QPushButton::clicked, this, &FindingView::dropAsked);
  connect(silence_, &QPushButton::clicked, this, [this] { emit silenceAsked(why_->text()); });
  connect(why_, &QLineEdit::returnPressed, this, [this] { emit silenceAsked(why_->text()); });
  connect(unsilence_, &QPushButton::clicked, this, &FindingView::unsilenceAsked);
  showFinding(nullptr, RemedyState::Resting);
}

QLabel* FindingView::addLabel(const char* name, const char* property) {
  auto* label = new QLabel(this);
  label->setObjectName(QLatin1String(name));
  label->setWordWrap(true);
  label->setTextFormat(Qt::PlainText);
  if (property != nullptr) label->setProperty(property, true);
  down_->addWidget(label);
  return label;
}

void FindingView::showFinding(const Finding* finding, RemedyState state) {
  for (QWidget* each : {static_cast<QWidget*>(where_), static_cast<QWidget*>(reason_),
                        static_cast<QWidget*>(measure_), static_cast<QWidget*>(remedy_)})
    each->setVisible(finding != nullptr);
  showTried(std::nullopt, {});
  showTrouble({});
  const bool answered = finding != nullptr && !finding->silencedWhy.empty();
  answer_->setVisible(answered);
  unsilence_->setVisible(answered);
  why_->setVisible(finding != nullptr && !answered);
  silence_->setVisible(finding != nullptr && !answered);
  showProgress(state == RemedyState::Running ? tr("Remedies are being tried …")
               : state == RemedyState::Resting && finding != nullptr && finding->silencedWhy.empty()
                   ? tr("Remedies are tried when the page rests.")
                   : QString());
  delete remedies_;
  remedies_ = new QWidget(this);
  down_->insertWidget(down_->indexOf(state_) + 1, remedies_);
  if (finding == nullptr) {
    showProgress(tr("Choose a finding to see its place and what mends it."));
    return;
  }
  const QString where = finding->panel > 0 ? tr("Panel %1").arg(finding->panel) : tr("The page");
  where_->setText(
      QStringLiteral("%1 · %2 · %3").arg(where, levelWord(finding->severity), qt(finding->rule)));
  reason_->setText(qt(finding->reason));
  measure_->setText(measureWords(*finding));
  remedy_->setText(qt(finding->remedy));
  if (answered) answer_->setText(tr("Answered: %1").arg(qt(finding->silencedWhy)));
  if (state == RemedyState::Computed) fillRemedies(*finding);
}

void FindingView::fillRemedies(const Finding& finding) {
  auto* down = new QVBoxLayout(remedies_);
  down->setContentsMargins(0, 0, 0, 0);
  for (std::size_t i = 0; i < finding.tried.size(); ++i) down->addWidget(remedyRow(finding, i));
}

QWidget* FindingView::remedyRow(const Finding& finding, std::size_t index) {
  const TriedRemedy& tried = finding.tried[index];
  auto* row = new QWidget(remedies_);
  auto* across = new QHBoxLayout(row);
  across->setContentsMargins(0, 2, 0, 2);
  QString words =
      tr("%1: %2 → %3")
          .arg(qt(tried.change), amount(tried.before, finding), amount(tried.after, finding));
  if (!tried.aside.empty()) words += tr("; it costs: %1").arg(qt(tried.aside));
  auto* label = new QLabel(words, row);
  label->setWordWrap(true);
  label->setTextFormat(Qt::PlainText);
  across->addWidget(label, 1);
  const QString number = QString::number(index + 1);
  auto* tryIt = button(row, tr("Try"), QStringLiteral("tryRemedy") + number);
  auto* keep = button(row, tr("Keep"), QStringLiteral("keepRemedy") + number);
  tryIt->setAccessibleName(tr("Try: %1").arg(words));
  keep->setAccessibleName(tr("Keep: %1").arg(words));
  tryIt->setCheckable(true);
  across->addWidget(tryIt);
  across->addWidget(keep);
  connect(tryIt, &QPushButton::clicked, this, [this, index](bool on) {
    if (on)
      emit tryAsked(index);
    else
      emit dropAsked();
  });
  connect(keep, &QPushButton::clicked, this, [this, index] { emit keepAsked(index); });
  return row;
}

void FindingView::showTried(std::optional<std::size_t> remedy, const QString& words) {
  drop_->setVisible(remedy.has_value());
  tried_->setVisible(remedy.has_value());
  tried_->setText(words);
  const QString pressed =
      remedy ? QStringLiteral("tryRemedy") + QString::number(*remedy + 1) : QString();
  for (QPushButton* each : remedies_->findChildren<QPushButton*>())
    if (each->isCheckable()) each->setChecked(each->objectName() == pressed);
}

void FindingView::showProgress(const QString& words) {
  state_->setText(words);
  state_->setVisible(!words.isEmpty());
}

void FindingView::showTrouble(const QString& words) {
  trouble_->setText(words);
  trouble_->setVisible(!words.isEmpty());
}

}  // namespace tw
