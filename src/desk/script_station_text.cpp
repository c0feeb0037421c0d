#include "desk/script_station_text.h"

#include <QEvent>
#include <QPainter>
#include <QScrollBar>
#include <QTextBlock>

#include "desk/in_qt.h"
#include "desk/look.h"

namespace tw {

namespace {

constexpr int kBarPx = 5, kMarkAlpha = 30, kItemAlpha = 62;

QColor faint(QColor colour, int alpha) {
  colour.setAlpha(alpha);
  return colour;
}

}  // namespace

ScriptSheet::ScriptSheet(QWidget* parent) : QPlainTextEdit(parent) {
  setObjectName(QStringLiteral("scriptText"));
  setAccessibleName(tr("The script"));
  setReadOnly(true);
  setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  document()->setDocumentMargin(12);
  connect(this, &QPlainTextEdit::cursorPositionChanged, this, [this] {
    if (!marking_ && !script_.lines.empty()) emit lineChosen(textCursor().blockNumber());
  });
}

void ScriptSheet::take(ScriptText script) {
  script_ = std::move(script);
  QStringList lines;
  for (const ScriptTextLine& line : script_.lines) lines << qt(line.text);
  marking_ = true;
  setPlainText(lines.join(QLatin1Char('\n')));
  marking_ = false;
  showMarks();
}

void ScriptSheet::mark(const std::string& beat, const std::string& item) {
  beat_ = beat;
  item_ = item;
  const auto line = item.empty() ? script_.lineOfBeat(beat) : script_.lineOfItem(item);
  const auto here = static_cast<std::size_t>(textCursor().blockNumber());
  const bool isThere = here < script_.lines.size() && script_.lines[here].beat == beat &&
                       (item.empty() || script_.lines[here].item == item);
  if (line && !isThere) {
    marking_ = true;
    setTextCursor(QTextCursor(document()->findBlockByNumber(static_cast<int>(*line))));
    centerCursor();
    marking_ = false;
  }
  showMarks();
}

/// Heads of pages are underlined; the rest is painted.
void ScriptSheet::showMarks() {
  QList<QTextEdit::ExtraSelection> marks;
  for (const ScriptTextLine& line : script_.lines) {
    if (!line.pageHead) continue;
    QTextEdit::ExtraSelection mark;
    mark.cursor = QTextCursor(document()->findBlockByNumber(line.number - 1));
    mark.cursor.select(QTextCursor::BlockUnderCursor);
    mark.format.setFontUnderline(true);
    marks.append(mark);
  }
  setExtraSelections(marks);
  viewport()->update();
}

void ScriptSheet::changeEvent(QEvent* event) {
  QPlainTextEdit::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) showMarks();
}

/// The chosen panel's lines tinted, with a bar beside them, so that the mark is a shape as well as
/// a colour; a second bar at the chosen copy.
void ScriptSheet::paintEvent(QPaintEvent* event) {
  QPlainTextEdit::paintEvent(event);
  if (beat_.empty()) return;
  QPainter painter(viewport());
  const QColor accent = deskColours().accent;
  for (QTextBlock block = firstVisibleBlock(); block.isValid(); block = block.next()) {
    const QRectF at = blockBoundingGeometry(block).translated(contentOffset());
    if (at.top() > viewport()->height()) break;
    const auto number = static_cast<std::size_t>(block.blockNumber());
    if (number >= script_.lines.size() || script_.lines[number].beat != beat_) continue;
    const bool item = !item_.empty() && script_.lines[number].item == item_;
    const QRectF line(0, at.top(), viewport()->width(), at.height());
    painter.fillRect(line, faint(accent, item ? kItemAlpha : kMarkAlpha));
    painter.fillRect(QRectF(0, at.top(), item ? 2 * kBarPx : kBarPx, at.height()), accent);
  }
}

}  // namespace tw
