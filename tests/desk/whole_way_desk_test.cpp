// The whole way at the desk, by actions found by their object names: open, edit, undo, redo, save.
#include <QAbstractButton>
#include <QLabel>
#include <QMouseEvent>
#include <QSpinBox>
#include <QTest>

#include <algorithm>
#include <map>

#include "base/files.h"
#include "command/roughs.h"
#include "desk/page_edit_tool.h"
#include "desk/page_view.h"
#include "desk/staging_station_hand.h"
#include "desk_case.h"
#include "geometry/polygon.h"

using namespace tw;

namespace {

constexpr int kLongMs = 60000;
using Files = std::map<std::string, std::string>;

Files pagesOf(const std::filesystem::path& job) {
  Files out;
  for (const auto& entry : std::filesystem::directory_iterator(job / "pages"))
    out[entry.path().filename().string()] = readFile(entry.path()).value_or("");
  return out;
}

/// With Ctrl held nothing snaps.
void drag(PageView& view, QPointF from, QPointF to) {
  QTest::mousePress(&view, Qt::LeftButton, Qt::ControlModifier, from.toPoint());
  for (int k = 1; k <= 4; ++k) {
    const QPointF at = from + (to - from) * (k / 4.0);
    QMouseEvent move(QEvent::MouseMove, at, view.mapToGlobal(at), Qt::LeftButton, Qt::LeftButton,
                     Qt::ControlModifier);
    QCoreApplication::sendEvent(&view, &move);
  }
  QTest::mouseRelease(&view, Qt::LeftButton, Qt::ControlModifier, to.toPoint());
}

}  // namespace

class WholeWayTest final : public QObject {
  Q_OBJECT

 private slots:
  void fromOpeningTheDemoToTheBoardAndBack();
  void aDrawnLineIsOneStepAndUndoneLeavesTheFileAsItWas();
};

void WholeWayTest::fromOpeningTheDemoToTheBoardAndBack() {
  DeskCase desk;
  std::filesystem::remove_all(
      QStandardPaths::writableLocation(QStandardPaths::AppDataLocation).toStdString());
  desk.window.resize(1366, 768);
  desk.window.show();
  desk.part<QAbstractButton>("openDemo")->click();
  QVERIFY(desk.window.document() != nullptr);
  Document& document = desk.document();
  const auto hasSteps = [&](int steps) {
    return QTest::qWaitFor(
        [&] { return document.undoStack().index() == steps && !desk.engine().isBusy(); }, kLongMs);
  };
  const Files start = pagesOf(document.folder());

  QVERIFY(desk.act("goRoughs"));
  while (document.page().number < 4) QVERIFY(desk.act("laterPage"));
  desk.part<QSpinBox>("keepRoughs")->setValue(2);
  QVERIFY(desk.act("findRoughs"));
  QVERIFY(hasSteps(1) && document.page().roughs.size() == 2);
  QVERIFY(desk.act("pickRough"));
  QCOMPARE(document.page().choice, document.rough()->name);

  auto* page = desk.window.station()->findChild<PageView*>();
  const auto edit = pageEditOf(document);
  const auto gutter = std::ranges::find_if(edit->handles(), [](const EditHandle& each) {
    return each.kind == HandleKind::Gutter && each.usual;
  });
  const Point grip = between(gutter->from, gutter->to, 0.31);
  drag(*page, page->toView(grip), page->toView(grip + gutter->runs * 4));
  QVERIFY(hasSteps(3));

  document.selectPanel(4);
  QVERIFY(desk.act("goStaging"));
  auto* hand = desk.part<PanelInHand>("panelInHand");
  auto* staging = desk.part<PageView>("stagingView");
  QVERIFY(QTest::qWaitFor([&] { return hand->isReady() && !desk.engine().isBusy(); }, kLongMs));
  const auto joint = std::ranges::find(hand->handles(), Grab::LeftHand, &Handle::grab);
  QVERIFY(joint != hand->handles().end());
  const QPointF at = staging->toView(joint->page);
  drag(*staging, at, at + QPointF(-12, -18));
  QVERIFY(hasSteps(4));

  QVERIFY(desk.act("goBoard") && desk.act("writeBoard"));
  auto* said = desk.part<QLabel>("printed");
  QVERIFY(
      QTest::qWaitFor([&] { return said->text().startsWith(QLatin1String("Written")); }, kLongMs));
  const auto board = readFile(document.folder() / "out" / "boards" / "page-04.pdf", 64u << 20);
  QVERIFY(board.has_value() && board->starts_with("%PDF-"));

  document.finishSaving();
  const Files done = pagesOf(document.folder());
  QVERIFY(done != start);
  for (int i = 0; i < 4; ++i) QVERIFY(desk.act("undo"));
  document.finishSaving();
  QVERIFY2(pagesOf(document.folder()) == start, "undone, the files are as they were");
  for (int i = 0; i < 4; ++i) QVERIFY(desk.act("redo"));
  document.finishSaving();
  QVERIFY2(pagesOf(document.folder()) == done, "done again, they are as they had become");
}

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
