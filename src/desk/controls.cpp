#include "desk/controls.h"

#include <QAction>
#include <QLabel>
#include <QScrollArea>
#include <QToolButton>

namespace tw {

QAction* actionOn(QWidget& owner, const QString& words, const char* name, const QKeySequence& key,
                  const QString& tip) {
  auto* action = new QAction(words, &owner);
  action->setObjectName(QString::fromLatin1(name));
  action->setShortcut(key);
  action->setToolTip(QStringLiteral("%1 (%2)").arg(
      tip.isEmpty() ? words : tip, action->shortcut().toString(QKeySequence::NativeText)));
  owner.addAction(action);
  return action;
}

QToolButton* buttonFor(QAction* action, QWidget* parent) {
  auto* button = new QToolButton(parent);
  button->setDefaultAction(action);
  button->setToolButtonStyle(Qt::ToolButtonTextOnly);
  button->setObjectName(action->objectName());
  button->setAccessibleName(action->text());
  return button;
}

QToolButton* wideButtonFor(QAction* action, QWidget* parent) {
  QToolButton* button = buttonFor(action, parent);
  button->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  return button;
}

QLabel* heading(const QString& words, QWidget* parent) {
  auto* label = new QLabel(words, parent);
  label->setProperty("heading", true);
  return label;
}

QScrollArea* scrolled(QWidget* column, QWidget* parent) {
  auto* area = new QScrollArea(parent);
  area->setWidgetResizable(true);
  area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  area->setStyleSheet(QStringLiteral("QScrollArea { border: none; }"));
  area->setWidget(column);
  return area;
}

}  // namespace tw
