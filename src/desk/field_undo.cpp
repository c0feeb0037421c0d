#include "desk/field_undo.h"

#include <QAbstractSpinBox>
#include <QComboBox>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QTextDocument>
#include <QTimer>

namespace tw {

namespace {

/// The line that a field types into: its own, a number's or a choice's.
QLineEdit* lineOf(QObject* field) {
  if (auto* line = qobject_cast<QLineEdit*>(field)) return line;
  if (auto* choice = qobject_cast<QComboBox*>(field)) return choice->lineEdit();
  if (qobject_cast<QAbstractSpinBox*>(field) != nullptr) return field->findChild<QLineEdit*>();
  return nullptr;
}

bool isUndo(const QEvent* event) {
  const auto* key = static_cast<const QKeyEvent*>(event);
  return key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo);
}

bool isReturn(const QEvent* event) {
  const int key = static_cast<const QKeyEvent*>(event)->key();
  return key == Qt::Key_Return || key == Qt::Key_Enter;
}

}  // namespace

bool FieldUndo::eventFilter(QObject* watched, QEvent* event) {
  const QEvent::Type type = event->type();
  const bool ends = type == QEvent::FocusOut || (type == QEvent::KeyPress && isReturn(event));
  if (!ends && type != QEvent::ShortcutOverride) return false;
  if (QLineEdit* line = lineOf(watched)) {
    // What was typed becomes an edit, or is refused, while the event runs.
    if (ends) QTimer::singleShot(0, line, [line] { line->setModified(false); });
    return type == QEvent::ShortcutOverride && isUndo(event) && !line->isModified();
  }
  const auto* text = qobject_cast<QPlainTextEdit*>(watched);
  return text != nullptr && type == QEvent::ShortcutOverride && isUndo(event) &&
         !text->document()->isModified();
}

}  // namespace tw
