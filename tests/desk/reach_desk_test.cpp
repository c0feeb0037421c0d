// Whoever works by keyboard, by pen or with a screen reader reaches everything at every station.
#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAbstractSpinBox>
#include <QComboBox>
#include <QLineEdit>
#include <QSet>
#include <QSlider>
#include <QTest>
#include <QTranslator>

#include "command/roughs.h"
#include "desk_case.h"

using namespace tw;

namespace {

constexpr const char* kStops[] = {"goScript", "goRoughs", "goStaging", "goCopy", "goBoard"};

/// Marks every sentence that goes through the translation system.
class MarkingTranslator final : public QTranslator {
 public:
  bool isEmpty() const override { return false; }
  QString translate(const char*, const char* source, const char*, int) const override {
    return QStringLiteral("⁂") + QString::fromUtf8(source);
  }
};

bool isControl(const QWidget* widget) {
  return qobject_cast<const QAbstractButton*>(widget) || qobject_cast<const QSlider*>(widget) ||
         qobject_cast<const QAbstractSpinBox*>(widget) || qobject_cast<const QComboBox*>(widget) ||
         qobject_cast<const QAbstractItemView*>(widget);
}

/// Parts that Qt itself makes inside its controls.
bool isInner(const QWidget* widget) {
  for (const QWidget* up = widget->parentWidget(); up != nullptr; up = up->parentWidget())
    if (isControl(up) || up->inherits("QScrollBar")) return true;
  return widget->objectName().startsWith(QLatin1String("qt_")) || widget->inherits("QScrollBar");
}

QList<QWidget*> controlsOf(const QWidget& window) {
  QList<QWidget*> out;
  for (QWidget* widget : window.findChildren<QWidget*>())
    if (widget->isVisible() && isControl(widget) && !isInner(widget)) out.append(widget);
  return out;
}

QString nameOf(const QWidget* widget) {
  if (!widget->accessibleName().isEmpty()) return widget->accessibleName();
  const auto* button = qobject_cast<const QAbstractButton*>(widget);
  return button ? button->text() : QString();
}

QString described(const QWidget* widget) {
  return QStringLiteral("%1 \"%2\" in %3")
      .arg(QString::fromLatin1(widget->metaObject()->className()), widget->objectName(),
           widget->parentWidget()->objectName());
}

}  // namespace

class ReachTest final : public QObject {
  Q_OBJECT

 private slots:
  void initTestCase();
  void everyControlHasANameForScreenReaders();
  void everyControlIsHighEnoughForAPen();
  void everyStationFitsASmallScreen();
  void noKeyCallsTwoCommandsAtOneStation();
  void wordsGoThroughTheTranslationSystem();

 private:
  void visit(const std::function<void(const QString&)>& check);
  std::unique_ptr<DeskCase> desk_;
};

void ReachTest::initTestCase() {
  desk_ = std::make_unique<DeskCase>();
  Progress progress;
  QVERIFY(makeRoughs({desk_->folder(), 4, {.keep = 2}, {}}, progress).has_value());
  QVERIFY(desk_->open());
  desk_->document().showPage(4);
  QVERIFY(desk_->settled());
  desk_->document().selectPanel(1);
}

void ReachTest::visit(const std::function<void(const QString&)>& check) {
  for (const char* stop : kStops) {
    if (!desk_->act(stop)) continue;
    QVERIFY(desk_->settled());
    QTest::qWait(100);
    check(QString::fromLatin1(stop));
  }
}

void ReachTest::everyControlHasANameForScreenReaders() {
  QStringList nameless;
  visit([&](const QString& stop) {
    for (const QWidget* widget : controlsOf(desk_->window))
      if (nameOf(widget).isEmpty())
        nameless.append(stop + QStringLiteral(": ") + described(widget));
  });
  QVERIFY2(nameless.isEmpty(), qPrintable(nameless.join(QLatin1Char('\n'))));
}

void ReachTest::everyControlIsHighEnoughForAPen() {
  QStringList low;
  visit([&](const QString& stop) {
    for (const QWidget* widget : controlsOf(desk_->window))
      if (widget->height() < kTouchPx - 4)
        low.append(
            QStringLiteral("%1: %2, %3 px").arg(stop, described(widget)).arg(widget->height()));
  });
  QVERIFY2(low.isEmpty(), qPrintable(low.join(QLatin1Char('\n'))));
}

void ReachTest::everyStationFitsASmallScreen() {
  visit([&](const QString& stop) {
    const QSize least = desk_->window.minimumSizeHint();
    QVERIFY2(
        least.width() <= 1366 && least.height() <= 730,
        qPrintable(
            QStringLiteral("%1 needs %2 × %3").arg(stop).arg(least.width()).arg(least.height())));
  });
}

void ReachTest::noKeyCallsTwoCommandsAtOneStation() {
  QStringList doubled;
  visit([&](const QString& stop) {
    QHash<QString, QString> called;
    QSet<QAction*> seen;
    QList<QWidget*> widgets = desk_->window.findChildren<QWidget*>();
    widgets.append(&desk_->window);
    for (const QWidget* widget : widgets) {
      if (!widget->isVisible()) continue;
      for (QAction* action : widget->actions()) {
        if (action->shortcut().isEmpty() || seen.contains(action)) continue;
        seen.insert(action);
        const QString key = action->shortcut().toString();
        if (called.contains(key))
          doubled.append(QStringLiteral("%1: %2 calls %3 and %4")
                             .arg(stop, key, called[key], action->objectName()));
        called[key] = action->objectName();
      }
    }
  });
  QVERIFY2(doubled.isEmpty(), qPrintable(doubled.join(QLatin1Char('\n'))));
}

void ReachTest::wordsGoThroughTheTranslationSystem() {
  MarkingTranslator marking;
  QCoreApplication::installTranslator(&marking);
  DeskWindow window;
  window.show();
  QVERIFY(window.openJob(QString::fromStdString(desk_->folder().string())));
  QStringList untranslated;
  for (const QAction* action : window.findChildren<QAction*>())
    if (!action->text().isEmpty() && !action->objectName().isEmpty() &&
        !action->objectName().startsWith(QLatin1String("_q_")) &&
        !action->text().contains(QChar(0x2042)))
      untranslated.append(action->objectName() + QStringLiteral(": ") + action->text());
  QCoreApplication::removeTranslator(&marking);
  QVERIFY2(untranslated.isEmpty(), qPrintable(untranslated.join(QLatin1Char('\n'))));
}

QTEST_MAIN(ReachTest)
#include "reach_desk_test.moc"
