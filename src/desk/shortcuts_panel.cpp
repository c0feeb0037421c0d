#include "desk/shortcuts_panel.h"

#include "desk/controls.h"

#include <QAction>
#include <QHeaderView>
#include <QLabel>
#include <QTableWidget>
#include <QVBoxLayout>

namespace tw {

namespace {

constexpr int kWidePx = 370;  // over a station's right column

QList<QAction*> keyedActions(const QWidget& desk) {
  QList<QAction*> out;
  QList<const QWidget*> widgets{&desk};
  for (const QWidget* each : desk.findChildren<QWidget*>())
    if (each->isVisible()) widgets.append(each);
  for (const QWidget* each : widgets)
    for (QAction* action : each->actions())
      if (!action->shortcut().isEmpty() && !out.contains(action)) out.append(action);
  return out;
}

}  // namespace

ShortcutsPanel::ShortcutsPanel(QWidget& desk) : QWidget(&desk), desk_(desk) {
  setObjectName(QStringLiteral("shortcutsPanel"));
  setFixedWidth(kWidePx);
  auto* down = new QVBoxLayout(this);
  down->setContentsMargins(12, 0, 0, 0);
  down->addWidget(heading(tr("Keys of this station"), this));
  table_ = new QTableWidget(0, 2, this);
  table_->setObjectName(QStringLiteral("shortcuts"));
  table_->setAccessibleName(tr("Keys of this station"));
  table_->setHorizontalHeaderLabels({tr("Key"), tr("What it does")});
  table_->verticalHeader()->hide();
  table_->horizontalHeader()->setStretchLastSection(true);
  table_->setEditTriggers(QAbstractItemView::NoEditTriggers);
  down->addWidget(table_, 1);
  refresh();
}

void ShortcutsPanel::refresh() {
  const QList<QAction*> actions = keyedActions(desk_);
  table_->setRowCount(static_cast<int>(actions.size()));
  for (int i = 0; i < actions.size(); ++i) {
    table_->setItem(
        i, 0, new QTableWidgetItem(actions[i]->shortcut().toString(QKeySequence::NativeText)));
    table_->setItem(i, 1, new QTableWidgetItem(actions[i]->text().remove(QLatin1Char('&'))));
  }
}

}  // namespace tw
