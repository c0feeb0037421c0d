#include "desk/history_panel.h"

#include <QDateTime>
#include <QFileInfo>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QUndoView>
#include <QVBoxLayout>

#include <filesystem>

#include "base/files.h"
#include "desk/controls.h"
#include "desk/in_qt.h"
#include "job/document.h"
#include "job/history.h"

namespace tw {

namespace {

constexpr int kWidePx = 370;  // over a station's right column

}  // namespace

HistoryPanel::HistoryPanel(Document& document, QWidget* parent)
    : QWidget(parent), document_(document) {
  setObjectName(QStringLiteral("historyPanel"));
  setFixedWidth(kWidePx);
  auto* down = new QVBoxLayout(this);
  down->setContentsMargins(12, 0, 0, 0);
  down->addWidget(heading(tr("Steps of this session"), this));
  auto* steps = new QUndoView(&document_.undoStack(), this);
  steps->setObjectName(QStringLiteral("steps"));
  steps->setEmptyLabel(tr("as it was opened"));
  steps->setAccessibleName(tr("Steps of this session"));
  down->addWidget(steps, 1);
  down->addWidget(heading(tr("Earlier states of this page"), this));
  former_ = new QListWidget(this);
  former_->setObjectName(QStringLiteral("formerStates"));
  former_->setAccessibleName(tr("Earlier states of this page"));
  down->addWidget(former_, 1);
  auto* back = new QPushButton(tr("Bring back"), this);
  back->setObjectName(QStringLiteral("bringBack"));
  back->setToolTip(tr("Puts the page back as it was then; undo takes you forward again."));
  connect(back, &QPushButton::clicked, this, &HistoryPanel::bringBack);
  connect(former_, &QListWidget::itemActivated, this, &HistoryPanel::bringBack);
  down->addWidget(back);
  connect(&document_, &Document::shownChanged, this, &HistoryPanel::listFormerStates);
  connect(&document_, &Document::saved, this, &HistoryPanel::listFormerStates);
  listFormerStates();
}

void HistoryPanel::listFormerStates() {
  const auto file =
      std::filesystem::path("pages") /
      QStringLiteral("%1.json").arg(document_.page().number, 2, 10, QLatin1Char('0')).toStdString();
  const auto states = formerStates(document_.folder(), file);
  former_->clear();
  for (auto state = states.rbegin(); state != states.rend(); ++state) {
    const QString path = qt(state->file.string());
    const QDateTime when = QFileInfo(path).lastModified();
    auto* item = new QListWidgetItem(
        tr("as it was until %1").arg(QLocale().toString(when, QLocale::ShortFormat)), former_);
    item->setData(Qt::UserRole, path);
  }
}

void HistoryPanel::bringBack() {
  const QListWidgetItem* item = former_->currentItem();
  if (item == nullptr) return;
  const std::string path = item->data(Qt::UserRole).toString().toStdString();
  const auto bytes = readFile(path);
  if (!bytes) {
    emit document_.troubled(qt(bytes.error()));
    return;
  }
  const auto page = readPageText(*bytes, path);
  if (!page)
    emit document_.troubled(qt(page.error()));
  else
    document_.change(tr("bring back an earlier state"), *page);
}

}  // namespace tw
