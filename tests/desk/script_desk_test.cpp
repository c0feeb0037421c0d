// Script and beats side by side: links both ways, corrections and the brief, each one step.
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QTest>
#include <QTextBlock>

#include "base/files.h"
#include "desk/script_station.h"
#include "desk/script_station_text.h"
#include "desk_case.h"

using namespace tw;

class ScriptDeskTest final : public QObject {
  Q_OBJECT

 private slots:
  void aLineShowsItsPanelAndAPanelItsLine();
  void aLineOfAnotherPageTurnsToIt();
  void aCorrectionIsOneStepAndGoesBackToTheScript();
  void aRefusedValueSaysWhyBesideIt();
  void theBriefIsAskedInPlainWords();
};

namespace {

bool begin(DeskCase& desk, int page) {
  if (!desk.open()) return false;
  desk.document().showPage(page);
  if (!desk.act("goScript")) return false;
  auto* station = static_cast<ScriptStation*>(desk.window.station());
  return QTest::qWaitFor([station] { return station->isReady(); }, 30000);
}

ScriptStation& station(DeskCase& desk) {
  return *static_cast<ScriptStation*>(desk.window.station());
}

void goToLine(ScriptSheet& sheet, const QString& words) {
  QTextCursor found = sheet.document()->find(words);
  QVERIFY(!found.isNull());
  found.clearSelection();
  sheet.setTextCursor(found);
}

void pick(QComboBox& box, const QString& value) {
  const int at = box.findData(value);
  QVERIFY2(at >= 0, qPrintable(value));
  box.setCurrentIndex(at);
  emit box.activated(at);
}

}  // namespace

void ScriptDeskTest::aLineShowsItsPanelAndAPanelItsLine() {
  DeskCase desk;
  QVERIFY(begin(desk, 1));
  auto* sheet = desk.part<ScriptSheet>("scriptText");
  auto* beats = desk.part<QListWidget>("scriptBeats");
  goToLine(*sheet, QStringLiteral("That it?"));
  QCOMPARE(station(desk).beat(), std::string("p1-2"));
  QCOMPARE(beats->currentRow(), 1);
  beats->setCurrentRow(3);
  QCOMPARE(station(desk).beat(), std::string("p1-4"));
  const auto line = static_cast<std::size_t>(sheet->textCursor().blockNumber());
  QCOMPARE(sheet->script().lines[line].beat, std::string("p1-4"));
}

void ScriptDeskTest::aLineOfAnotherPageTurnsToIt() {
  DeskCase desk;
  QVERIFY(begin(desk, 1));
  goToLine(*desk.part<ScriptSheet>("scriptText"), QStringLiteral("The chain was warm."));
  QCOMPARE(desk.document().page().number, 2);
  QCOMPARE(station(desk).beat(), std::string("p2-4"));
}

void ScriptDeskTest::aCorrectionIsOneStepAndGoesBackToTheScript() {
  DeskCase desk;
  QVERIFY(begin(desk, 1));
  desk.part<QListWidget>("scriptBeats")->setCurrentRow(1);
  const auto file = desk.folder() / "pages" / "01.json";
  const auto before = readFile(file);
  pick(*desk.part<QComboBox>("beat_shot"), QStringLiteral("close-up"));
  QCOMPARE(desk.document().undoStack().count(), 1);
  QCOMPARE(desk.document().page().correctedBeats()[1].shot, std::optional(ShotSize::CloseUp));
  desk.part<QDoubleSpinBox>("beat_weight")->setValue(2.5);
  QCOMPARE(desk.document().page().correctedBeats()[1].weight, 2.5);
  pick(*desk.part<QComboBox>("beat_drop"), QStringLiteral("teo"));
  QCOMPARE(desk.document().page().correctedBeats()[1].figures.size(), std::size_t{1});
  QCOMPARE(desk.document().undoStack().count(), 3);
  desk.part<QPushButton>("back_shot")->click();
  QVERIFY(desk.document().page().correctedBeats()[1].shot != std::optional(ShotSize::CloseUp));
  for (int i = 0; i < 4; ++i) QVERIFY(desk.act("undo"));
  desk.document().finishSaving();
  QCOMPARE(*readFile(file), *before);
}

void ScriptDeskTest::aRefusedValueSaysWhyBesideIt() {
  DeskCase desk;
  QVERIFY(begin(desk, 1));
  auto* light = desk.part<QComboBox>("beat_light");
  light->setEditText(QStringLiteral("wibble"));
  emit light->lineEdit()->editingFinished();
  QCOMPARE(desk.document().undoStack().count(), 0);
  auto* told = desk.part<QLabel>("trouble_light");
  QTRY_VERIFY(told->isVisibleTo(&station(desk)));
  QVERIFY(told->text().contains(QStringLiteral("wibble")));
}

void ScriptDeskTest::theBriefIsAskedInPlainWords() {
  DeskCase desk;
  QVERIFY(begin(desk, 6));
  pick(*desk.part<QComboBox>("brief_focus"), QStringLiteral("teo"));
  QCOMPARE(desk.document().page().brief.focus, std::string("teo"));
  auto* head = desk.part<QLineEdit>("brief_head-mm");
  head->setText(QStringLiteral("8"));
  emit head->editingFinished();
  QCOMPARE(desk.document().page().brief.leastHeadMm, 8.0);
  auto* panels = desk.part<QLineEdit>("brief_small-panels");
  panels->setText(QStringLiteral("5-3"));
  emit panels->editingFinished();
  QVERIFY(!desk.document().page().brief.leastSmallPanels.has_value());
  QVERIFY(!desk.part<QLabel>("briefTrouble_small-panels")->text().isEmpty());
  panels->setText(QStringLiteral("9"));  // the page has six panels
  emit panels->editingFinished();
  QVERIFY(desk.part<QLabel>("briefContradictions")->property("warn").toBool());
  auto* zones = desk.part<QLineEdit>("brief_keep-clear");
  zones->setText(QStringLiteral("the logo:10,10,60,20; credits:10,230,80,12"));
  emit zones->editingFinished();
  QCOMPARE(desk.document().page().brief.keepClear.size(), std::size_t{2});
  QCOMPARE(desk.document().undoStack().count(), 4);
}

QTEST_MAIN(ScriptDeskTest)
#include "script_desk_test.moc"
