// The small parts all stations are put together from, made one way.
#pragma once

#include <QKeySequence>
#include <QString>

class QAction;
class QLabel;
class QScrollArea;
class QToolButton;
class QWidget;

namespace tw {

/// An action that its key calls while `owner` is seen. The tool tip says `tip`, or else the words,
/// and the key.
QAction* actionOn(QWidget& owner, const QString& words, const char* name, const QKeySequence& key,
                  const QString& tip = {});
/// A button with the action's words, named alike for screen readers.
QToolButton* buttonFor(QAction* action, QWidget* parent);
/// The same, as wide as its column.
QToolButton* wideButtonFor(QAction* action, QWidget* parent);
QLabel* heading(const QString& words, QWidget* parent);
/// Shows a column that may be higher than there is room for.
QScrollArea* scrolled(QWidget* column, QWidget* parent);

}  // namespace tw
