#include "desk/look.h"

#include <QAbstractSpinBox>
#include <QApplication>
#include <QComboBox>
#include <QPalette>
#include <QProxyStyle>
#include <QStyleFactory>

#include <algorithm>

namespace tw {

namespace {

const DeskColours kDay{QColor(0x8f, 0x94, 0x96), QColor(0xf4, 0xf2, 0xec), QColor(0x1d, 0x23, 0x26),
                       QColor(0x55, 0x5f, 0x63), QColor(0xc9, 0xc6, 0xbc), QColor(0x0d, 0x4c, 0x6b),
                       QColor(0xff, 0xff, 0xff), QColor(0xa3, 0x3a, 0x0c)};
const DeskColours kNight{QColor(0x16, 0x1a, 0x1c), QColor(0x23, 0x29, 0x2c),
                         QColor(0xe9, 0xe6, 0xde), QColor(0xa9, 0xb2, 0xb5),
                         QColor(0x43, 0x4c, 0x50), QColor(0x7c, 0xc4, 0xe0),
                         QColor(0x0b, 0x1a, 0x22), QColor(0xff, 0xa8, 0x70)};

DeskLight& present() {
  static DeskLight light = DeskLight::Day;  // the one application's own dress
  return light;
}

QPalette paletteOf(const DeskColours& c) {
  QPalette p;
  p.setColor(QPalette::Window, c.sheet);
  p.setColor(QPalette::WindowText, c.ink);
  p.setColor(QPalette::Base,
             c.sheet.lightness() > 128 ? c.sheet.lighter(104) : c.sheet.darker(115));
  p.setColor(QPalette::AlternateBase, c.sheet);
  p.setColor(QPalette::Text, c.ink);
  p.setColor(QPalette::Button, c.sheet);
  p.setColor(QPalette::ButtonText, c.ink);
  p.setColor(QPalette::Highlight, c.accent);
  p.setColor(QPalette::HighlightedText, c.onAccent);
  p.setColor(QPalette::PlaceholderText, c.quiet);
  p.setColor(QPalette::ToolTipBase, c.ink);
  p.setColor(QPalette::ToolTipText, c.sheet);
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    p.setColor(QPalette::Disabled, role, c.quiet);
  return p;
}

QString sheetOf(const DeskColours& c) {
  return QStringLiteral(
             "QPushButton, QToolButton {"
             " min-height: %1px; padding: 0 8px; border: 1px solid %2; border-radius: 3px;"
             " background: %3; color: %4; }"
             "QPushButton:hover, QToolButton:hover { border-color: %5; }"
             "QPushButton:focus, QToolButton:focus, QListView:focus, QPlainTextEdit:focus {"
             " border: 2px solid %5; }"
             "QPushButton:checked, QToolButton:checked { background: %5; color: %6; }"
             "QPushButton:disabled, QToolButton:disabled { color: %7; border-style: dashed; }"
             "QCheckBox, QRadioButton { min-height: %1px; spacing: 8px; }"
             "QCheckBox::indicator, QRadioButton::indicator {"
             " width: 16px; height: 16px; border: 1px solid %7; background: %3; }"
             "QCheckBox::indicator:checked, QRadioButton::indicator:checked {"
             " background: %5; border-color: %5; }"
             "QSlider { min-height: %1px; }"
             "QLabel[quiet=\"true\"] { color: %7; }"
             "#historyPanel, #shortcutsPanel { background: %3; border-left: 2px solid %5; }"
             "QLabel[heading=\"true\"] { font-weight: bold; }"
             "QLabel[warn=\"true\"] { color: %8; }"
             "QListView, QPlainTextEdit, QTextEdit, QScrollArea { border: 1px solid %2; }")
      .arg(kTouchPx - 4)
      .arg(c.line.name(), c.sheet.name(), c.ink.name(), c.accent.name(), c.onAccent.name(),
           c.quiet.name(), c.warn.name());
}

/// Controls that a style sheet would rob of their arrows get their height here.
class TouchStyle final : public QProxyStyle {
 public:
  TouchStyle() : QProxyStyle(QStyleFactory::create(QStringLiteral("Fusion"))) {}

  QSize sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& size,
                         const QWidget* widget) const override {
    QSize out = QProxyStyle::sizeFromContents(type, option, size, widget);
    if (type == CT_SpinBox || type == CT_ComboBox || type == CT_LineEdit)
      out.setHeight(std::max(out.height(), kTouchPx));
    return out;
  }
  void polish(QWidget* widget) override {
    QProxyStyle::polish(widget);
    if (qobject_cast<QAbstractSpinBox*>(widget) || qobject_cast<QComboBox*>(widget))
      widget->setMinimumHeight(kTouchPx);
  }
  using QProxyStyle::polish;
};

}  // namespace

const DeskColours& coloursOf(DeskLight light) {
  return light == DeskLight::Day ? kDay : kNight;
}

const DeskColours& deskColours() {
  return coloursOf(present());
}

void dress(QApplication& application, DeskLight light) {
  present() = light;
  application.setStyle(new TouchStyle);
  application.setPalette(paletteOf(coloursOf(light)));
  application.setStyleSheet(sheetOf(coloursOf(light)));
}

}  // namespace tw
