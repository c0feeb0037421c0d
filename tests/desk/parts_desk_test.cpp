// The desk's own parts: the document, errands, the pen, edits that become one.
#include <QAbstractButton>
#include <QListWidget>
#include <QTest>

#include <chrono>
#include <cmath>
#include <thread>

#include "desk/errand.h"
#include "desk/pen_tool.h"
#include "desk_case.h"

using namespace tw;

class PartsTest final : public QObject {
  Q_OBJECT

 private slots:
  void aJobThatAnotherProgramHoldsIsShownAndNotChanged();
  void editsOfOneHandBecomeOneStepThatUndoTakesBackWhole();
  void anEarlierStateOfAPageIsKeptForTheHistory();
  void workThatIsStartedAnewForgetsTheResultBefore();
  void stoppedWorkSaysSo();
  void aSimplifiedLineStaysWhereItWasDrawn();
  void linesMirroredTwiceAndScaledBackAreAsBefore();
  void theEraserTouchesWhatIsNearItsMiddle();
};

void PartsTest::aJobThatAnotherProgramHoldsIsShownAndNotChanged() {
  DeskCase desk;
  const auto other = JobFolder::open(desk.folder());
  QVERIFY(other.has_value() && !other->readOnly());
  QVERIFY(desk.open());
  QVERIFY(desk.document().isReadOnly());
  QString told;
  connect(&desk.document(), &Document::troubled, this, [&](const QString& words) { told = words; });
  Page page = desk.document().page();
  page.note = "changed";
  QVERIFY(!desk.document().change(QStringLiteral("note"), page));
  QVERIFY(!told.isEmpty());
  QVERIFY(desk.document().page().note != "changed");
  QCOMPARE(desk.document().undoStack().count(), 0);
}

void PartsTest::editsOfOneHandBecomeOneStepThatUndoTakesBackWhole() {
  DeskCase desk;
  QVERIFY(desk.open());
  Document& document = desk.document();
  const Page before = document.page();
  for (const char* note : {"a", "ab", "other words", "the end"}) {
    Page page = document.page();
    page.note = note;
    QVERIFY(document.change(QStringLiteral("note"), page, 17));
  }
  QCOMPARE(document.undoStack().count(), 1);
  QCOMPARE(document.page().note, std::string("the end"));
  document.undoStack().undo();
  QVERIFY(document.page() == before);
  document.undoStack().redo();
  QCOMPARE(document.page().note, std::string("the end"));
}

void PartsTest::anEarlierStateOfAPageIsKeptForTheHistory() {
  DeskCase desk;
  QVERIFY(desk.open());
  Page page = desk.document().page();
  page.note = "changed";
  QVERIFY(desk.document().change(QStringLiteral("note"), page));
  desk.document().finishSaving();
  QVERIFY(desk.act("history"));
  QVERIFY(desk.part<QListWidget>("formerStates")->count() > 0);
  desk.part<QListWidget>("formerStates")->setCurrentRow(0);
  desk.part<QAbstractButton>("bringBack")->click();
  QVERIFY(desk.document().page().note != "changed");
  QCOMPARE(desk.document().undoStack().count(), 2);
}

void PartsTest::workThatIsStartedAnewForgetsTheResultBefore() {
  Errand errand;
  std::vector<int> ended;
  for (int turn = 1; turn <= 3; ++turn)
    errand.start([turn](Progress&) { return turn; }, [&](int result) { ended.push_back(result); });
  QVERIFY(QTest::qWaitFor([&] { return !errand.isRunning(); }));
  QCOMPARE(ended, std::vector<int>{3});
}

void PartsTest::stoppedWorkSaysSo() {
  Errand errand;
  bool wasStopped = false;
  errand.start(
      [](Progress& progress) {
        while (!progress.isStopped()) std::this_thread::sleep_for(std::chrono::milliseconds(1));
        return true;
      },
      [&](bool stopped) { wasStopped = stopped; });
  QVERIFY(errand.isRunning());
  errand.stop();
  QVERIFY(QTest::qWaitFor([&] { return wasStopped; }));
  QVERIFY(!errand.isRunning());
}

void PartsTest::aSimplifiedLineStaysWhereItWasDrawn() {
  PenStroke drawn;
  for (int i = 0; i <= 200; ++i) {
    drawn.points.push_back({i * 0.2, 5 * std::sin(i * 0.05)});
    drawn.widthsMm.push_back(0.4);
  }
  const PenStroke kept = simplified(drawn, 0.05);
  QVERIFY(kept.points.size() < drawn.points.size() / 4);
  QCOMPARE(kept.points.size(), kept.widthsMm.size());
  for (const Point& p : drawn.points) QVERIFY(touches(kept, p, 0.05 + 1e-9));
}

void PartsTest::linesMirroredTwiceAndScaledBackAreAsBefore() {
  const PenStroke drawn{{{1, 2}, {3, 5}}, {0.4, 0.6}, true};
  QVERIFY(mirroredAcross(mirroredAcross(drawn, 7), 7) == drawn);
  const PenStroke back = scaledAbout(scaledAbout(drawn, {2, 2}, 2), {2, 2}, 0.5);
  QVERIFY((back.points[1] - drawn.points[1]).length() < 1e-12);
}

void PartsTest::theEraserTouchesWhatIsNearItsMiddle() {
  const PenStroke line{{{0, 0}, {10, 0}}, {1, 1}, false};
  QVERIFY(touches(line, {5, 1.9}, 2));
  QVERIFY(!touches(line, {5, 2.1}, 2));
  QVERIFY(!touches(line, {12.1, 0}, 2));
  QVERIFY(touches({{{3, 3}}, {1}, true}, {3, 4}, 2));
}

QTEST_MAIN(PartsTest)
#include "parts_desk_test.moc"
