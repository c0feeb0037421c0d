#include "desk/score_card_panel.h"

#include <QLabel>
#include <QListWidget>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include <cmath>

#include "desk/controls.h"
#include "desk/in_qt.h"
#include "desk/lined_rows.h"

namespace tw {

namespace {

constexpr double kTold = 0.05;  // a smaller cost or difference shows as 0.0

QString number(double cost) {
  return QString::number(cost, 'f', 1);
}

QString signedNumber(double difference) {
  return (difference < 0 ? QStringLiteral("−") : QStringLiteral("+")) +
         number(std::abs(difference));
}

double costOf(const Rough& rough, const CardLine& line) {
  double out = 0;
  for (const CardLine& each : rough.card)
    if (each.rule == line.rule && each.panel == line.panel) out += each.cost;
  return out;
}

QString lineWords(const CardLine& line, double difference) {
  QStringList head{qt(line.rule)};
  if (line.panel > 0) head << ScoreCardPanel::tr("panel %1").arg(line.panel);
  head << number(line.cost);
  if (std::abs(difference) >= kTold) head << signedNumber(difference);
  return head.join(QStringLiteral("  ·  ")) + QLatin1Char('\n') + qt(line.reason);
}

}  // namespace

ScoreCardPanel::ScoreCardPanel(Document& document, Engine& engine, PageView& view, QWidget* parent)
    : QWidget(parent), document_(document), engine_(engine), view_(view) {
  setObjectName(QStringLiteral("scoreCardPanel"));
  auto* down = new QVBoxLayout(this);
  down->setContentsMargins(0, 0, 0, 0);
  head_ = heading({}, this);
  head_->setObjectName(QStringLiteral("scoreHead"));
  head_->setWordWrap(true);
  down->addWidget(head_);
  list_ = new QListWidget(this);
  list_->setObjectName(QStringLiteral("scoreCard"));
  list_->setAccessibleName(tr("Score card of the rough"));
  list_->setItemDelegate(new LinedRows(LinedRows::First::Bold, list_));
  list_->setResizeMode(QListView::Adjust);
  list_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  list_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);  // rows wrap at one width
  down->addWidget(list_, 1);
  connect(list_, &QListWidget::currentRowChanged, this, &ScoreCardPanel::pointOut);
  connect(&engine_, &Engine::measured, this, &ScoreCardPanel::takeMeasured);
  connect(&engine_, &Engine::busyChanged, this, &ScoreCardPanel::takeMeasured);
  takeMeasured();
}

void ScoreCardPanel::takeMeasured() {
  const MeasurementPtr& m = engine_.latest();
  const QSignalBlocker quiet(list_);
  const int row = list_->currentRow();
  list_->clear();
  panels_.clear();
  const Rough* kept = document_.rough();
  if (!m || !m->measured || kept == nullptr || m->page != document_.page().number) {
    head_->setText(engine_.isBusy() ? tr("The rough is being measured …") : tr("Nothing measured"));
    return;
  }
  const Rough& now = m->roughNow();
  showHead(now, *kept);
  QStringList fine;
  for (const CardLine& line : now.card) {
    if (line.cost < kTold) {
      if (!fine.contains(qt(line.rule))) fine << qt(line.rule);
      continue;
    }
    list_->addItem(lineWords(line, m->isPreview ? line.cost - costOf(*kept, line) : 0));
    panels_.push_back(line.panel);
  }
  list_->addItem(tr("Nothing against it\n%1").arg(fine.join(QStringLiteral(", "))));
  panels_.push_back(0);
  if (row < list_->count()) list_->setCurrentRow(row);
}

void ScoreCardPanel::showHead(const Rough& now, const Rough& kept) {
  const bool differs = engine_.latest()->isPreview && std::abs(now.score - kept.score) >= kTold;
  QString words = differs ? tr("Score %1, %2 to what is kept")
                                .arg(number(now.score), signedNumber(now.score - kept.score))
                          : tr("Score %1; less is better").arg(number(now.score));
  if (engine_.isBusy()) words += tr(" · being measured again …");
  head_->setText(words);
}

void ScoreCardPanel::pointOut(int row) {
  const auto index = static_cast<std::size_t>(row);
  const MeasurementPtr& m = engine_.latest();
  if (row < 0 || index >= panels_.size() || panels_[index] == 0 || !m || !m->measured) return;
  const auto panel = static_cast<std::size_t>(panels_[index]) - 1;
  if (panel >= m->roughNow().panels.size()) return;
  view_.pointOut(m->roughNow().panels[panel].outline);
  document_.selectPanel(panel);
}

}  // namespace tw
