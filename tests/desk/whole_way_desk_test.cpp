// The whole way at the desk, by actions found by their object names: open, edit, undo, redo, save.
#include <QSignalSpy>
#include <QTest>

#include "base/files.h"
#include "command/roughs.h"
#include "desk/page_view.h"
#include "desk_case.h"
#include "geometry/polygon.h"

using namespace tw;

class WholeWayTest final : public QObject {
  Q_OBJECT

 private slots:
  void aDrawnLineIsOneStepAndUndoneLeavesTheFileAsItWas();
};

void WholeWayTest::aDrawnLineIsOneStepAndUndoneLeavesTheFileAsItWas() {
  DeskCase desk;
  Progress progress;
  QVERIFY(makeRoughs({desk.folder(), 4, {.keep = 2}, {}}, progress).has_value());
  const auto before = readFile(desk.folder() / "pages" / "04.json");
  QVERIFY(desk.open());
  desk.document().showPage(4);
  QVERIFY(desk.settled());
  QVERIFY(desk.act("goBoard"));
  auto* view = desk.window.station()->findChild<PageView*>(QStringLiteral("pageView"));
  QVERIFY(view != nullptr);
  QTest::qWait(50);
  const Point middle = bounds(desk.document().rough()->panels[0].outline).centre();
  const QPoint at = view->toView(middle).toPoint();
  QTest::mousePress(view, Qt::LeftButton, {}, at);
  QTest::mouseMove(view, at + QPoint(20, 5));
  QTest::mouseMove(view, at + QPoint(40, 15));
  QTest::mouseRelease(view, Qt::LeftButton, {}, at + QPoint(40, 15));
  QCOMPARE(desk.document().rough()->panels[0].strokes.size(), std::size_t{1});
  QCOMPARE(desk.document().undoStack().count(), 1);
  desk.document().finishSaving();
  QVERIFY(*readFile(desk.folder() / "pages" / "04.json") != *before);
  QVERIFY(desk.act("undo"));
  desk.document().finishSaving();
  QCOMPARE(*readFile(desk.folder() / "pages" / "04.json"), *before);
  QVERIFY(desk.act("redo"));
  QCOMPARE(desk.document().rough()->panels[0].strokes.size(), std::size_t{1});
}

QTEST_MAIN(WholeWayTest)
#include "whole_way_desk_test.moc"
