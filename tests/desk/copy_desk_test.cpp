// Copy by hand at the desk: balloons dragged, nudged, reshaped, retyped, given back; every edit one
// step that undo takes back to the file as it was.
#include <QListWidget>
#include <QPlainTextEdit>
#include <QTest>

#include <algorithm>

#include "base/files.h"
#include "command/roughs.h"
#include "desk/copy_meter.h"
#include "desk/copy_station.h"
#include "desk_case.h"
#include "geometry/polygon.h"
#include "letter/placed_copy.h"

using namespace tw;

class CopyDeskTest final : public QObject {
  Q_OBJECT

 private slots:
  void initTestCase();
  void aDraggedBalloonStaysWhereItWasPutAndUndoGivesTheFileBack();
  void aDraggedTipIsKept();
  void arrowsNudgeAsOneStep();
  void broaderAndBackToTheProgram();
  void retypedWordsStandInTheBalloonAndComeBack();
  void wordsTakenAwayLeaveTheBalloonOutUntilTheyAreGivenBack();
  void altArrowsMoveTheTail();
  void ctrlZTakesBackLettersAndThenTheEdit();
  void theMeterSaysWhatIsTooMuch();

 private:
  /// The demo's page 1 with one rough, shown at the copy station.
  void begin(DeskCase& desk) const;
  QString rough_;  ///< text of the page's file
};

namespace {

std::filesystem::path pageFile(const DeskCase& desk) {
  return desk.folder() / "pages" / "01.json";
}

CopyStation& station(DeskCase& desk) {
  return *static_cast<CopyStation*>(desk.window.station());
}

const PlacedBalloon& stored(DeskCase& desk, std::size_t panel, std::size_t balloon) {
  return desk.document().rough()->panels[panel].balloons[balloon];
}

const PlacedBalloon* storedOf(DeskCase& desk, const CopyPlace& place) {
  const auto& list = desk.document().rough()->panels[place.panel].balloons;
  const auto found = std::ranges::find(list, place.item, &PlacedBalloon::item);
  return found == list.end() ? nullptr : &*found;
}

void drag(PageView& view, QPoint from, QPoint by) {
  QTest::mousePress(&view, Qt::LeftButton, {}, from);
  for (int i = 1; i <= 4; ++i) QTest::mouseMove(&view, from + by * i / 4);
  QTest::mouseRelease(&view, Qt::LeftButton, {}, from + by);
}

std::string wordsIn(const PlacedBalloon& balloon) {
  std::string out;
  for (const CopyLine& line : balloon.lines) out += (out.empty() ? "" : " ") + line.text;
  return out;
}

}  // namespace

void CopyDeskTest::initTestCase() {
  DeskCase desk;
  Progress progress;
  QVERIFY(makeRoughs({desk.folder(), 1, {.keep = 1}, {}}, progress).has_value());
  rough_ = QString::fromStdString(*readFile(pageFile(desk)));
}

void CopyDeskTest::begin(DeskCase& desk) const {
  QVERIFY(writeFileAtomically(pageFile(desk), rough_.toStdString()).has_value());
  QVERIFY(desk.open());
  desk.document().showPage(1);
  QVERIFY(desk.act("goCopy"));
  QVERIFY(desk.settled());
  QTest::qWait(30);
}

void CopyDeskTest::aDraggedBalloonStaysWhereItWasPutAndUndoGivesTheFileBack() {
  DeskCase desk;
  begin(desk);
  PageView& view = station(desk).view();
  const PlacedBalloon was = stored(desk, 1, 0);
  const QPoint by(9, 7);
  drag(view, view.toView(bounds(was.outline).centre()).toPoint(), by);
  QVERIFY(desk.settled());
  QTRY_COMPARE(desk.document().undoStack().count(), 1);
  const PlacedBalloon& is = stored(desk, 1, 0);
  QVERIFY(is.byHand);
  const Vector moved = bounds(is.outline).centre() - bounds(was.outline).centre();
  QVERIFY(std::abs(moved.x - by.x() / view.pixelsPerMm()) < 0.6);
  QVERIFY(std::abs(moved.y - by.y() / view.pixelsPerMm()) < 0.6);
  QVERIFY(!is.tail.points.empty());
  desk.document().finishSaving();
  const auto changed = readFile(pageFile(desk));
  QVERIFY(*changed != rough_.toStdString());
  QVERIFY(desk.act("undo"));
  desk.document().finishSaving();
  QCOMPARE(*readFile(pageFile(desk)), rough_.toStdString());
  QVERIFY(desk.act("redo"));
  desk.document().finishSaving();
  QCOMPARE(*readFile(pageFile(desk)), *changed);
}

void CopyDeskTest::aDraggedTipIsKept() {
  DeskCase desk;
  begin(desk);
  PageView& view = station(desk).view();
  const Letterer& letterer = desk.engine().latest()->staged->workshop->letterer;
  const auto& list = desk.document().rough()->panels[1].balloons;
  const auto own = std::ranges::find_if(
      list, [](const PlacedBalloon& each) { return each.tail.points.size() > 2; });
  QVERIFY(own != list.end());
  const CopyPlace place{1, own->item};
  const Point tip = *tipOf(*own, middleOf(*own, letterer.type()));
  station(desk).tool().choose(place);
  drag(view, view.toView(tip).toPoint(), QPoint(-12, 5));
  QVERIFY(desk.settled());
  QTRY_COMPARE(desk.document().undoStack().count(), 1);
  const PlacedBalloon* is = storedOf(desk, place);
  const Point wanted = view.toPage(view.toView(tip).toPoint() + QPoint(-12, 5));
  QVERIFY((*tipOf(*is, middleOf(*is, letterer.type())) - wanted).length() < 1.5);
}

void CopyDeskTest::arrowsNudgeAsOneStep() {
  DeskCase desk;
  begin(desk);
  PageView& view = station(desk).view();
  QTest::keyClick(&view, Qt::Key_Tab);
  const auto place = station(desk).tool().chosen();
  QVERIFY(place.has_value());
  const Point was = bounds(storedOf(desk, *place)->outline).centre();
  for (int i = 0; i < 4; ++i) QTest::keyClick(&view, Qt::Key_Right);
  QVERIFY(desk.settled());
  QTRY_VERIFY(std::abs(bounds(storedOf(desk, *place)->outline).centre().x - was.x - 2) < 0.01);
  QCOMPARE(desk.document().undoStack().count(), 1);
  QVERIFY(desk.act("undo"));
  desk.document().finishSaving();
  QCOMPARE(*readFile(pageFile(desk)), rough_.toStdString());
}

void CopyDeskTest::broaderAndBackToTheProgram() {
  DeskCase desk;
  begin(desk);
  CopyTool& tool = station(desk).tool();
  const PlacedBalloon was = stored(desk, 3, 0);  // the longest
  tool.choose(CopyPlace{3, was.item});
  const bool narrow = desk.act("balloonNarrower");
  QVERIFY(narrow);
  QVERIFY(desk.settled());
  QTRY_COMPARE(storedOf(desk, {3, was.item})->lines.size(), was.lines.size() + 1);
  QVERIFY(desk.act("balloonBroader"));
  QVERIFY(desk.settled());
  QTRY_COMPARE(storedOf(desk, {3, was.item})->lines.size(), was.lines.size());
  QVERIFY(storedOf(desk, {3, was.item})->byHand);
  QVERIFY(desk.act("balloonPlaceAgain"));
  QVERIFY(desk.settled());
  QTRY_VERIFY(!storedOf(desk, {3, was.item})->byHand);
  QCOMPARE(*storedOf(desk, {3, was.item}), was);
}

void CopyDeskTest::retypedWordsStandInTheBalloonAndComeBack() {
  DeskCase desk;
  begin(desk);
  const PlacedBalloon was = stored(desk, 2, 0);
  station(desk).tool().choose(CopyPlace{2, was.item});
  auto* words = desk.part<QPlainTextEdit>("copyWords");
  QCOMPARE(words->toPlainText(), QStringLiteral("The rest is church."));
  words->selectAll();
  QTest::keyClicks(words, QStringLiteral("The rest was always church"));
  QVERIFY(desk.act("copySetWords"));
  QCOMPARE(desk.document().undoStack().count(), 1);
  QCOMPARE(wordsIn(stored(desk, 2, 0)), std::string("THE REST WAS ALWAYS CHURCH"));
  QCOMPARE(desk.document().page().correctedBeats()[2].copy[0].words, 5);
  QVERIFY(desk.settled());
  QVERIFY(desk.act("copyAsScript"));
  QVERIFY(desk.document().page().overrides.empty());
  QCOMPARE(wordsIn(stored(desk, 2, 0)), wordsIn(was));
}

void CopyDeskTest::ctrlZTakesBackLettersAndThenTheEdit() {
  DeskCase desk;
  begin(desk);
  QVERIFY(QTest::qWaitForWindowActive(&desk.window));
  station(desk).tool().choose(CopyPlace{2, stored(desk, 2, 0).item});
  auto* words = desk.part<QPlainTextEdit>("copyWords");
  words->setFocus();
  words->selectAll();
  QTest::keyClicks(words, QStringLiteral("Always"));
  QTest::keyClick(words, Qt::Key_Z, Qt::ControlModifier);
  QVERIFY(words->toPlainText() != QStringLiteral("Always"));  // letters
  QCOMPARE(desk.document().undoStack().count(), 0);
  words->selectAll();
  QTest::keyClicks(words, QStringLiteral("Always"));
  QVERIFY(desk.act("copySetWords"));
  QCOMPARE(desk.document().undoStack().index(), 1);
  words->setFocus();
  QTest::keyClick(words, Qt::Key_Z, Qt::ControlModifier);
  QCOMPARE(desk.document().undoStack().index(), 0);  // the edit
  QCOMPARE(words->toPlainText(), QStringLiteral("The rest is church."));
}

void CopyDeskTest::wordsTakenAwayLeaveTheBalloonOutUntilTheyAreGivenBack() {
  DeskCase desk;
  begin(desk);
  const std::string item = stored(desk, 2, 0).item;
  station(desk).tool().choose(CopyPlace{2, item});
  auto* words = desk.part<QPlainTextEdit>("copyWords");
  words->selectAll();
  QTest::keyClick(words, Qt::Key_Delete);
  QVERIFY(desk.act("copySetWords"));
  QVERIFY(desk.document().rough()->panels[2].balloons.empty());
  QVERIFY(desk.settled());
  auto* list = desk.part<QListWidget>("copyList");
  list->setCurrentRow(-1);
  list->setCurrentRow(4);
  QVERIFY(list->item(4)->text().contains(QStringLiteral("left out")));
  QVERIFY(desk.act("copyAsScript"));
  QCOMPARE(stored(desk, 2, 0).item, item);
  QVERIFY(desk.document().page().overrides.empty());
}

void CopyDeskTest::altArrowsMoveTheTail() {
  DeskCase desk;
  begin(desk);
  const Letterer& letterer = desk.engine().latest()->staged->workshop->letterer;
  const auto& panel = desk.document().rough()->panels[1];
  const auto own = std::ranges::find_if(
      panel.balloons, [](const PlacedBalloon& each) { return each.tail.points.size() > 2; });
  QVERIFY(own != panel.balloons.end());
  const CopyPlace place{1, own->item};
  const Point tip = *tipOf(*own, middleOf(*own, letterer.type()));
  const Polygon outline = own->outline;
  station(desk).tool().choose(place);
  for (int i = 0; i < 4; ++i) QTest::keyClick(&station(desk).view(), Qt::Key_Left, Qt::AltModifier);
  QVERIFY(desk.settled());
  QTRY_COMPARE(desk.document().undoStack().count(), 1);
  const PlacedBalloon* is = storedOf(desk, place);
  const Point now =
      *tipOf(*is, middleOf(*is, desk.engine().latest()->staged->workshop->letterer.type()));
  QVERIFY((now - (tip + Vector{-2, 0})).length() < 0.3);
  QVERIFY(bounds(is->outline).centre().x - bounds(outline).centre().x < 1e-3);
}

void CopyDeskTest::theMeterSaysWhatIsTooMuch() {
  DeskCase desk;
  begin(desk);
  station(desk).tool().choose(CopyPlace{3, stored(desk, 3, 0).item});
  const auto over = [&] {
    const auto& bars = desk.part<CopyMeter>("copyMeter")->bars();
    return std::ranges::count_if(bars, &MeterBar::isOver);
  };
  QCOMPARE(desk.part<CopyMeter>("copyMeter")->bars().size(), std::size_t{4});
  QCOMPARE(over(), 0);
  Page page = desk.document().page();
  page.brief.mostWords = 5;
  QVERIFY(desk.document().change(QStringLiteral("fewer words"), page));
  QCOMPARE(over(), 1);
}

QTEST_MAIN(CopyDeskTest)
#include "copy_desk_test.moc"
