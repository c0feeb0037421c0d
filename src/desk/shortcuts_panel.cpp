#include "desk/shortcuts_panel.h"

#include <QAction>
#include <QHeaderView>
#include <QLabel>
#include <QTableWidget>
#include <QVBoxLayout>

namespace tw {

namespace {

constexpr int kWidePx = 300;

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

ShortcutsPanel::ShortcutsPanel(QWidget& desk) : QWidget(&desk) {
  setObjectName(QStringLiteral("shortcutsPanel"));
  setFixedWidth(kWidePx);
  const QList<QAction*> actions = keyedActions(desk);
  auto* down = new QVBoxLayout(this);
  down->setContentsMargins(0, 0, 0, 0);
  auto* heading = new QLabel(tr("Keys of this station"), this);
  heading->setProperty("heading", true);
  down->addWidget(heading);
  auto* table = new QTableWidget(static_cast<int>(actions.size()), 2, this);
  table->setObjectName(QStringLiteral("shortcuts"));
  table->setAccessibleName(tr("Keys of this station"));
  table->setHorizontalHeaderLabels({tr("Key"), tr("What it does")});
  table->verticalHeader()->hide();
  table->horizontalHeader()->setStretchLastSection(true);
  table->setEditTriggers(QAbstractItemView::NoEditTriggers);
  for (int i = 0; i < actions.size(); ++i) {
    table->setItem(i, 0,
                   new QTableWidgetItem(actions[i]->shortcut().toString(QKeySequence::NativeText)));
    table->setItem(i, 1, new QTableWidgetItem(actions[i]->text().remove(QLatin1Char('&'))));
  }
  down->addWidget(table, 1);
}

}  // namespace tw
