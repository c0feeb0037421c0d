// The staging station as a hand uses it: joints drawn with the mouse and moved by keys, a pose
// taken from the shelf, the camera and the light turned. Every edit is one step of undo.
#include <QAbstractButton>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QListWidget>

#include <algorithm>

#include "base/files.h"
#include "command/roughs.h"
#include "desk/page_view.h"
#include "desk/staging_station_hand.h"
#include "desk_case.h"
#include "geometry/polygon.h"

namespace tw {

class StagingDeskTest final : public QObject {
  Q_OBJECT

 private slots:
  void initTestCase();
  void init();
  void cleanup();
  void aHandDrawnByTheMouseIsOneEditThatUndoTakesBack();
  void aFullStopBringsAHeldHandNearer();
  void arrowKeysMoveWhatTabHasChosen();
  void escapeEndsADragWithoutAnEdit();
  void aPoseIsTriedByAClickAndKeptByEnter();
  void theCameraComesNearerByADial();
  void aDragInTheOrbitModeGoesRoundTheFocus();
  void aLampIsMovedOnTheDisc();
  void otherPosesAreFoundTriedAndKept();
  void theFigureIsTakenWholeIntoThePanel();
  void everyControlHasANameAndAHeightForAPen();

 private:
  PanelInHand& hand() { return *desk_->part<PanelInHand>("panelInHand"); }
  PageView& view() { return *desk_->part<PageView>("stagingView"); }
  Page& storedPage() { return page_ = desk_->document().page(), page_; }
  void click(const char* name) { desk_->part<QAbstractButton>(name)->click(); }
  /// The edit is measured and in the document.
  bool isKept(int edits) {
    return QTest::qWaitFor(
        [&] { return desk_->document().undoStack().index() == edits && !hand().isTrying(); },
        20000);
  }
  const Handle& handle(Grab grab) {
    const auto& all = hand().handles();
    return *std::ranges::find_if(all, [&](const Handle& each) {
      return each.grab == grab && each.figure == hand().figure();
    });
  }
  void drag(QPointF from, QPointF to);
  bool undoneTo(const Page& before);

  std::unique_ptr<DeskCase> desk_;
  std::string roughed_;  ///< the file of page 4 with two roughs
  Page page_;
};

void StagingDeskTest::initTestCase() {
  const DeskCase desk;
  Progress progress;
  QVERIFY(makeRoughs({desk.folder(), 4, {.keep = 2}, {}}, progress).has_value());
  roughed_ = *readFile(desk.folder() / "pages" / "04.json");
}

void StagingDeskTest::init() {
  desk_ = std::make_unique<DeskCase>();
  QVERIFY(writeFileAtomically(desk_->folder() / "pages" / "04.json", roughed_).has_value());
  QVERIFY(desk_->open());
  QVERIFY(desk_->settled());
  desk_->document().showPage(4);
  QVERIFY(desk_->act("goStaging"));
  QVERIFY(QTest::qWaitFor([this] { return hand().isReady(); }, 8000));
  QVERIFY(desk_->settled());
  QVERIFY(hand().figure() >= 0);
}

void StagingDeskTest::cleanup() {
  desk_.reset();
}

void StagingDeskTest::drag(QPointF from, QPointF to) {
  QTest::mousePress(&view(), Qt::LeftButton, {}, from.toPoint());
  for (int k = 1; k <= 6; ++k)
    QTest::mouseMove(&view(), (from + (to - from) * (k / 6.0)).toPoint());
  QTest::mouseRelease(&view(), Qt::LeftButton, {}, to.toPoint());
}

bool StagingDeskTest::undoneTo(const Page& before) {
  desk_->document().undoStack().undo();
  return desk_->document().page() == before && desk_->settled() &&
         hand().staging() == hand().storedPanel().staging;
}

void StagingDeskTest::aHandDrawnByTheMouseIsOneEditThatUndoTakesBack() {
  const Page before = storedPage();
  const Staging was = hand().staging();
  const QPointF at = view().toView(handle(Grab::LeftHand).page);
  drag(at, at + QPointF(-14, -22));
  QVERIFY(hand().held() != nullptr);
  QCOMPARE(hand().held()->grab, Grab::LeftHand);
  QVERIFY(isKept(1));
  QVERIFY(hand().storedPanel().staging != was);
  QVERIFY(hand().storedPanel().staging.camera == was.camera);
  const QPointF now = view().toView(handle(Grab::LeftHand).page);
  QVERIFY((now - at - QPointF(-14, -22)).manhattanLength() < 8 ||
          !desk_->part<QLabel>("stagingSaid")->text().isEmpty());
  QVERIFY(undoneTo(before));
}

void StagingDeskTest::aFullStopBringsAHeldHandNearer() {
  const Page before = storedPage();
  const Handle hand0 = handle(Grab::LeftHand);
  const QPoint at = view().toView(hand0.page).toPoint();
  QTest::mousePress(&view(), Qt::LeftButton, {}, at);
  for (int k = 0; k < 3; ++k) QTest::keyClick(&view(), Qt::Key_Period);
  QTest::mouseRelease(&view(), Qt::LeftButton, {}, at);
  QVERIFY(isKept(1));
  const Place3 at3 = hand().storedPanel().staging.camera.eye;
  const Vec3 eye(at3.x, at3.y, at3.z);
  QVERIFY((handle(Grab::LeftHand).world - eye).norm() < (hand0.world - eye).norm() - 0.01);
  QVERIFY(undoneTo(before));
}

void StagingDeskTest::arrowKeysMoveWhatTabHasChosen() {
  const Page before = storedPage();
  view().setFocus();
  for (int k = 0; k < 40; ++k) {
    QTest::keyClick(&view(), Qt::Key_Tab);
    if (hand().held()->grab == Grab::Pelvis) break;
  }
  QCOMPARE(hand().held()->grab, Grab::Pelvis);
  const Point was = hand().held()->page;
  QTest::keyClick(&view(), Qt::Key_Down);
  QVERIFY(isKept(1));
  QTest::keyClick(&view(), Qt::Key_Down);
  QVERIFY(QTest::qWaitFor([this] { return !hand().isTrying(); }, 8000));
  QCOMPARE(desk_->document().undoStack().index(), 1);  // steps of one walk are one edit
  QVERIFY(hand().held()->page.y > was.y + 0.5);
  QVERIFY(undoneTo(before));
}

void StagingDeskTest::escapeEndsADragWithoutAnEdit() {
  const Page before = storedPage();
  const QPoint at = view().toView(handle(Grab::Head).page).toPoint();
  QTest::mousePress(&view(), Qt::LeftButton, {}, at);
  QTest::mouseMove(&view(), at + QPoint(20, 10));
  QVERIFY(hand().isTrying());
  QTest::keyClick(&view(), Qt::Key_Escape);
  QTest::mouseRelease(&view(), Qt::LeftButton, {}, at + QPoint(20, 10));
  QVERIFY(!hand().isTrying());
  QCOMPARE(desk_->document().undoStack().count(), 0);
  QVERIFY(desk_->document().page() == before);
}

void StagingDeskTest::aPoseIsTriedByAClickAndKeptByEnter() {
  const Page before = storedPage();
  click("pagePoses");
  auto* shelf = desk_->part<QListWidget>("poseShelf");
  QVERIFY(shelf->count() > 50);
  QTest::keyClicks(desk_->part<QWidget>("poseFilter"), QStringLiteral("kneel"));
  int row = 0;
  while (row < shelf->count() && shelf->item(row)->isHidden()) ++row;
  QVERIFY(row < shelf->count());
  shelf->setCurrentRow(row);
  QVERIFY(hand().isTrying());
  QTest::keyClick(shelf, Qt::Key_Return);
  QVERIFY(isKept(1));
  const auto figure = static_cast<std::size_t>(hand().figure());
  QVERIFY(hand().storedPanel().staging.figures[figure].pose.find("kneel") != std::string::npos);
  QVERIFY(undoneTo(before));
}

void StagingDeskTest::theCameraComesNearerByADial() {
  const Page before = storedPage();
  click("pageCamera");
  auto* distance = desk_->part<QDoubleSpinBox>("cameraDistanceField");
  const double head = hand().seen()->headMm;
  distance->setValue(distance->value() * 0.7);
  QVERIFY(isKept(1));
  QVERIFY(desk_->settled());
  QVERIFY(hand().seen()->headMm > 1.1 * head);
  QVERIFY(hand().storedPanel().staging.figures ==
          before.roughs[0].panels[hand().panel()].staging.figures);
  QVERIFY(undoneTo(before));
}

void StagingDeskTest::aDragInTheOrbitModeGoesRoundTheFocus() {
  const Page before = storedPage();
  click("modeOrbit");
  const Vec3 pivot = hand().pivot();
  const auto seen = [&] {
    return hand().stage().cameraOf(hand().storedPanel().staging).projectAlways(pivot);
  };
  const Point was = seen();
  const double pan = hand().staging().camera.panDeg;
  const QPointF middle = view().rect().center();
  drag(middle, middle + QPointF(60, 0));
  QVERIFY(isKept(1));
  QVERIFY(hand().storedPanel().staging.camera.panDeg != pan);
  QVERIFY((seen() - was).length() < 1e-3);
  QVERIFY(undoneTo(before));
}

void StagingDeskTest::aLampIsMovedOnTheDisc() {
  const Page before = storedPage();
  click("pageLight");
  auto* disc = desk_->part<QWidget>("lightDisc");
  const QPoint middle = disc->rect().center();
  QTest::keyClick(disc, Qt::Key_Left);
  QVERIFY(isKept(1));
  QCOMPARE(hand().storedPanel().staging.light->name, std::string("own"));
  QVERIFY(undoneTo(before));
  QTest::mousePress(disc, Qt::LeftButton, {}, middle);
  QTest::mouseMove(disc, middle + QPoint(40, 0));
  QTest::mouseRelease(disc, Qt::LeftButton, {}, middle + QPoint(40, 0));
  QVERIFY(isKept(1));
  QVERIFY(undoneTo(before));
}

void StagingDeskTest::otherPosesAreFoundTriedAndKept() {
  const Page before = storedPage();
  click("pageVariants");
  click("findVariants");
  auto* strip = desk_->part<QListWidget>("variantStrip");
  QVERIFY(QTest::qWaitFor([&] { return strip->count() > 0 && strip->isEnabled(); }, 40000));
  strip->setCurrentRow(strip->count() - 1);
  QVERIFY(hand().isTrying());
  QTest::keyClick(strip, Qt::Key_Return);
  QVERIFY(isKept(1));
  QVERIFY(undoneTo(before));
}

void StagingDeskTest::theFigureIsTakenWholeIntoThePanel() {
  const Page before = storedPage();
  click("pageFit");
  click("askFit");
  auto* whole = desk_->part<QAbstractButton>("takeWhole");
  auto* over = desk_->part<QAbstractButton>("takeOver");
  QVERIFY(QTest::qWaitFor([&] { return whole->isEnabled(); }, 40000));
  QVERIFY(over->isEnabled());
  over->click();
  const RoughPanel& traced = desk_->document().rough()->panels[hand().panel()];
  QVERIFY(!traced.strokes.empty());
  Rect all = bounds(Polygon{traced.strokes[0].points});
  for (const PenStroke& stroke : traced.strokes) {
    QVERIFY(!stroke.black);
    const Rect box = bounds(Polygon{stroke.points});
    all = {{std::min(all.min.x, box.min.x), std::min(all.min.y, box.min.y)},
           {std::max(all.max.x, box.max.x), std::max(all.max.y, box.max.y)}};
  }
  QVERIFY(all.min.y < bounds(traced.outline).min.y);  // over the border
  desk_->document().undoStack().undo();
  QVERIFY(desk_->document().page() == before);
  QVERIFY(desk_->settled());
  whole->click();
  QVERIFY(isKept(1));
  QVERIFY(desk_->settled());
  QCOMPARE(QString::fromStdString(hand().seen()->cut), QStringLiteral("whole"));
  QVERIFY(undoneTo(before));
}

void StagingDeskTest::everyControlHasANameAndAHeightForAPen() {
  auto* station = desk_->part<QWidget>("stagingStation");
  for (const char* page : {"pageFigure", "pagePoses", "pageVariants", "pageFit", "pageThings",
                           "pageCamera", "pageLight"}) {
    click(page);
    QTest::qWait(20);
    for (QAbstractButton* button : station->findChildren<QAbstractButton*>()) {
      if (!button->isVisible() || qobject_cast<QAbstractButton*>(button->parent()) != nullptr)
        continue;
      if (button->objectName().startsWith(QStringLiteral("qt_"))) continue;
      if (button->objectName().isEmpty()) continue;  // parts of Qt's own controls
      QVERIFY2(!button->accessibleName().isEmpty() || !button->text().isEmpty(),
               qPrintable(button->objectName()));
      QVERIFY2(button->height() >= kTouchPx - 4, qPrintable(button->objectName()));
    }
  }
}

}  // namespace tw

QTEST_MAIN(tw::StagingDeskTest)
#include "staging_desk_test.moc"
