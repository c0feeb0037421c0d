// The roughs station by actions found by their object names: find, stop, pick, rank, drop, pin,
// unlike these, mix, compare; and the story's strip. Each edit undone leaves the page as it was.
#include <QLabel>
#include <QListWidget>
#include <QSignalSpy>
#include <QSpinBox>
#include <QTest>

#include <algorithm>

#include "command/pin.h"
#include "command/roughs.h"
#include "desk/pin_tool.h"
#include "desk/rough_gallery.h"
#include "desk/roughs_station.h"
#include "desk/story_strip.h"
#include "desk_case.h"

using namespace tw;

namespace {

constexpr int kLongMs = 120000;

/// The demo with `roughs` roughs on page 4, which is shown at the roughs station.
struct RoughsCase : DeskCase {
  bool begin(int roughs) {
    Progress progress;
    if (roughs > 0 && !makeRoughs({folder(), 4, {.keep = roughs}, {}}, progress)) return false;
    if (!open() || !act("goRoughs")) return false;
    document().showPage(4);
    return settled();
  }
  const Page& page() { return document().page(); }
  std::string names() {
    std::string out;
    for (const Rough& rough : page().roughs) out += rough.name;
    return out;
  }
  /// Waits for one more step of undo than there are.
  bool edited(int stepsBefore) {
    return QTest::qWaitFor([&] { return document().undoStack().count() > stepsBefore; }, kLongMs);
  }
  int steps() { return document().undoStack().count(); }
  RoughGallery& gallery() { return *part<RoughGallery>("roughGallery"); }
  QString said() { return part<QLabel>("roughsSaid")->text(); }
};

}  // namespace

class RoughsTest final : public QObject {
  Q_OBJECT

 private slots:
  void foundRoughsAreOneStep();
  void aStoppedSearchChangesNothing();
  void theRoughThatIsPickedStaysWhenOthersAreFound();
  void theArtistsRankingIsTheOrderOfTheCards();
  void aDroppedRoughComesBackWithUndo();
  void aPinnedPanelIsStagedSoInNewRoughs();
  void aClickOnTheNailPinsAndUnpins();
  void theMarkedRoughsStayAndOthersDiffer();
  void aPanelIsTakenFromTheMarkedRoughByKeys();
  void aPanelDraggedOntoAnotherPictureMakesARough();
  void twoRoughsAreSetSideBySide();
  void theStripGoesToAPage();
  void undoShowsTheRoughThatWasShown();
  void aRoughThatWasDrawnOnStaysWhenOthersAreFound();
  void aJobOpensWhereItWasLeft();
  void keysLieOverTheStationAndEscClosesThem();
  void aPageIsShownAgainWithItsPanel();
};

void RoughsTest::foundRoughsAreOneStep() {
  RoughsCase desk;
  QVERIFY(desk.begin(0));
  const Page before = desk.page();
  desk.part<QSpinBox>("keepRoughs")->setValue(2);
  QVERIFY(desk.act("findRoughs"));
  QVERIFY(desk.edited(0));
  QCOMPARE(desk.names(), std::string("AB"));
  QCOMPARE(desk.steps(), 1);
  QVERIFY(desk.gallery().card("B") != nullptr);
  QVERIFY(desk.act("undo"));
  QVERIFY(desk.page() == before);
  QVERIFY(desk.act("redo"));
  QCOMPARE(desk.names(), std::string("AB"));
}

void RoughsTest::aStoppedSearchChangesNothing() {
  RoughsCase desk;
  QVERIFY(desk.begin(1));
  const Page before = desk.page();
  QVERIFY(desk.act("findRoughs"));
  QVERIFY(!desk.act("findRoughs"));
  QVERIFY(desk.act("stopFinding"));
  QVERIFY(QTest::qWaitFor([&] { return !desk.said().isEmpty(); }, kLongMs));
  QVERIFY(desk.said().startsWith(QStringLiteral("Stopped")));
  QVERIFY(desk.page() == before);
  QCOMPARE(desk.steps(), 0);
}

void RoughsTest::theRoughThatIsPickedStaysWhenOthersAreFound() {
  RoughsCase desk;
  QVERIFY(desk.begin(3));
  desk.document().showRough("B");
  QVERIFY(desk.act("pickRough"));
  QCOMPARE(desk.page().choice, std::string("B"));
  const Rough picked = *desk.document().rough();
  desk.part<QSpinBox>("keepRoughs")->setValue(1);
  QVERIFY(desk.act("findRoughs"));
  QVERIFY(desk.edited(1));
  QCOMPARE(desk.names(), std::string("AB"));
  QVERIFY(desk.page().roughs[1] == picked);
  QVERIFY(desk.act("undo") && desk.act("undo"));
  QVERIFY(desk.page().choice.empty());
  QCOMPARE(desk.names(), std::string("ABC"));
}

void RoughsTest::undoShowsTheRoughThatWasShown() {
  RoughsCase desk;
  QVERIFY(desk.begin(2));
  desk.document().showRough("A");
  desk.part<QSpinBox>("keepRoughs")->setValue(3);
  QVERIFY(desk.act("unlikeThese"));
  QVERIFY(desk.edited(0));
  const std::string fresh = desk.document().rough()->name;
  QVERIFY(fresh != "A");
  QVERIFY(desk.act("undo"));
  QCOMPARE(desk.document().rough()->name, std::string("A"));
  QVERIFY(desk.act("redo"));
  QCOMPARE(desk.document().rough()->name, fresh);
}

void RoughsTest::aRoughThatWasDrawnOnStaysWhenOthersAreFound() {
  RoughsCase desk;
  QVERIFY(desk.begin(3));
  Page drawn = desk.page();
  drawn.roughs[1].panels[0].strokes.push_back({{{20, 20}, {30, 30}}, {0.6, 0.6}, false});
  QVERIFY(desk.document().change(QStringLiteral("draw"), drawn));
  desk.part<QSpinBox>("keepRoughs")->setValue(3);
  QVERIFY(desk.act("findRoughs"));
  QVERIFY(desk.edited(1));
  QCOMPARE(desk.names(), std::string("ABCD"));
  QVERIFY(desk.page().roughs[1] == drawn.roughs[1]);
  QVERIFY(desk.page().roughs[0].panels[0].strokes.empty());
}

void RoughsTest::aJobOpensWhereItWasLeft() {
  RoughsCase desk;
  QVERIFY(desk.begin(2));
  desk.document().showRough("B");
  desk.document().selectPanel(2);
  QVERIFY(desk.act("goStaging"));
  desk.window.closeJob();
  QVERIFY(desk.window.openJob(QString::fromStdString(desk.folder().string())));
  QCOMPARE(desk.page().number, 4);
  QCOMPARE(desk.document().rough()->name, std::string("B"));
  QCOMPARE(desk.document().panel(), std::optional<std::size_t>(2));
  QCOMPARE(desk.window.station()->actionName(), QStringLiteral("goStaging"));
}

void RoughsTest::keysLieOverTheStationAndEscClosesThem() {
  RoughsCase desk;
  QVERIFY(desk.begin(1));
  const QSize before = desk.window.size();
  QVERIFY(desk.act("keys"));
  auto* keys = desk.part<QWidget>("shortcutsPanel");
  QVERIFY(keys != nullptr && keys->isVisible());
  QTest::qWait(50);
  QCOMPARE(desk.window.size(), before);
  QVERIFY(desk.window.rect().contains(QRect(keys->mapTo(&desk.window, QPoint()), keys->size())));
  QVERIFY(QTest::qWaitForWindowActive(&desk.window));
  QTest::keyClick(keys, Qt::Key_Escape);
  QTRY_VERIFY(desk.part<QWidget>("shortcutsPanel") == nullptr);
}

void RoughsTest::aPageIsShownAgainWithItsPanel() {
  RoughsCase desk;
  QVERIFY(desk.begin(2));
  desk.document().showRough("B");
  desk.document().selectPanel(2);
  desk.document().showPage(5);
  QVERIFY(!desk.document().panel());
  desk.document().showPage(4);
  QCOMPARE(desk.document().rough()->name, std::string("B"));
  QCOMPARE(desk.document().panel(), std::optional<std::size_t>(2));
}

void RoughsTest::theArtistsRankingIsTheOrderOfTheCards() {
  RoughsCase desk;
  QVERIFY(desk.begin(3));
  desk.document().showRough("C");
  QVERIFY(desk.act("rankUp"));
  QCOMPARE(desk.names(), std::string("ACB"));
  QVERIFY(desk.act("rankUp"));
  QCOMPARE(desk.names(), std::string("CAB"));
  QCOMPARE(desk.document().rough()->name, std::string("C"));
  QVERIFY(desk.gallery().card("C")->y() < desk.gallery().card("A")->y() ||
          !desk.gallery().isVisible());
  QVERIFY(desk.act("rankDown"));
  QCOMPARE(desk.names(), std::string("ACB"));
  QVERIFY(desk.act("undo") && desk.act("undo") && desk.act("undo"));
  QCOMPARE(desk.names(), std::string("ABC"));
}

void RoughsTest::aDroppedRoughComesBackWithUndo() {
  RoughsCase desk;
  QVERIFY(desk.begin(2));
  desk.document().showRough("A");
  QVERIFY(desk.act("dropRough"));
  QCOMPARE(desk.names(), std::string("B"));
  QCOMPARE(desk.document().rough()->name, std::string("B"));
  QVERIFY(desk.act("dropRough"));
  QVERIFY(desk.page().roughs.empty());
  QVERIFY(desk.act("undo") && desk.act("undo"));
  QCOMPARE(desk.names(), std::string("AB"));
}

void RoughsTest::aPinnedPanelIsStagedSoInNewRoughs() {
  RoughsCase desk;
  QVERIFY(desk.begin(2));
  desk.document().showRough("B");
  desk.document().selectPanel(2);
  const StagingChoice pinned = desk.document().rough()->panels[2].staging.choice;
  QVERIFY(desk.act("pinPanel"));
  QVERIFY(desk.part<QAction>("pinPanel")->isChecked());
  QVERIFY(desk.act("pinArrangement"));
  const std::string arrangement = desk.page().pins.arrangement;
  desk.part<QSpinBox>("keepRoughs")->setValue(2);
  QVERIFY(desk.act("findRoughs"));
  QVERIFY(desk.edited(2));
  for (const Rough& rough : desk.page().roughs) {
    QVERIFY(rough.panels[2].staging.choice == pinned);
    QCOMPARE(rough.arrangement, arrangement);
  }
  QVERIFY(desk.act("undo") && desk.act("undo") && desk.act("undo"));
  QVERIFY(desk.page().pins == Pins{});
}

void RoughsTest::aClickOnTheNailPinsAndUnpins() {
  RoughsCase desk;
  QVERIFY(desk.begin(1));
  auto* station = static_cast<RoughsStation*>(desk.window.station());
  const auto* nails = station->findChild<PinTool*>();
  QVERIFY(nails != nullptr);
  const QPoint at = nails->placeOf(station->view(), 1).toPoint();
  QTest::mouseClick(&station->view(), Qt::LeftButton, {}, at);
  QVERIFY(isPinned(desk.page(), *desk.document().rough(), 1));
  QTest::mouseClick(&station->view(), Qt::LeftButton, {}, at);
  QVERIFY(desk.page().pins == Pins{});
  QCOMPARE(desk.steps(), 2);
}

void RoughsTest::theMarkedRoughsStayAndOthersDiffer() {
  RoughsCase desk;
  QVERIFY(desk.begin(2));
  desk.document().showRough("B");
  QVERIFY(desk.act("markRough"));
  QCOMPARE(desk.gallery().marked(), std::vector<std::string>{"B"});
  const Rough kept = *desk.document().rough();
  desk.part<QSpinBox>("keepRoughs")->setValue(2);
  QVERIFY(desk.act("unlikeThese"));
  QVERIFY(desk.edited(0));
  QCOMPARE(desk.names(), std::string("ABC"));
  QVERIFY(desk.page().roughs[1] == kept);
  QVERIFY(desk.act("undo"));
  QCOMPARE(desk.names(), std::string("AB"));
}

void RoughsTest::aPanelIsTakenFromTheMarkedRoughByKeys() {
  RoughsCase desk;
  QVERIFY(desk.begin(2));
  desk.gallery().setMarked("B", true);
  desk.document().showRough("A");
  desk.document().selectPanel(2);
  QVERIFY(desk.act("takePanel"));
  QVERIFY(desk.edited(0));
  QCOMPARE(desk.names(), std::string("ABC"));
  const auto& roughs = desk.page().roughs;
  QVERIFY(roughs[2].panels[2].staging.choice == roughs[1].panels[2].staging.choice);
  QVERIFY(roughs[2].panels[0].staging == roughs[0].panels[0].staging);
  QCOMPARE(desk.document().rough()->name, std::string("C"));
  QVERIFY(desk.act("undo"));
  QCOMPARE(desk.names(), std::string("AB"));
}

void RoughsTest::aPanelDraggedOntoAnotherPictureMakesARough() {
  RoughsCase desk;
  QVERIFY(desk.begin(2));
  QTest::qWait(100);
  RoughThumb &from = desk.gallery().card("B")->thumb(), &into = desk.gallery().card("A")->thumb();
  desk.gallery().ensureWidgetVisible(&into);
  const QPoint start = from.middleOf(1).toPoint();
  const QPoint end = from.mapFromGlobal(into.mapToGlobal(into.rect().center()));
  QTest::mousePress(&from, Qt::LeftButton, {}, start);
  QTest::mouseMove(&from, start + QPoint(30, 0));
  QTest::mouseMove(&from, end);
  QTest::mouseRelease(&from, Qt::LeftButton, {}, end);
  QVERIFY(desk.edited(0));
  QCOMPARE(desk.names(), std::string("ABC"));
  const auto& roughs = desk.page().roughs;
  QVERIFY(roughs[2].panels[1].staging.choice == roughs[1].panels[1].staging.choice);
  QCOMPARE(roughs[2].arrangement, roughs[0].arrangement);
}

void RoughsTest::twoRoughsAreSetSideBySide() {
  RoughsCase desk;
  QVERIFY(desk.begin(2));
  desk.gallery().setMarked("A", true);
  desk.gallery().setMarked("B", true);
  QVERIFY(desk.act("compareRoughs"));
  auto* list = desk.part<QListWidget>("differences");
  QVERIFY(list->isVisible());
  QVERIFY(list->count() > 2);
  list->setCurrentRow(0);
  // A rough that goes takes the comparison with it.
  desk.document().showRough("B");
  QVERIFY(desk.act("dropRough"));
  QVERIFY(!list->isVisible());
}

void RoughsTest::theStripGoesToAPage() {
  RoughsCase desk;
  QVERIFY(desk.begin(1));
  auto* strip = desk.part<StoryStrip>("storyStrip");
  QVERIFY(strip != nullptr);
  QVERIFY(strip->chip(4)->isChecked());
  QTest::mouseClick(strip->chip(1), Qt::LeftButton);
  QCOMPARE(desk.page().number, 1);
  QVERIFY(strip->chip(1)->isChecked() && !strip->chip(4)->isChecked());
  QTest::keyClick(strip->chip(1), Qt::Key_Right);
  QVERIFY(desk.page().number > 1);
}

QTEST_MAIN(RoughsTest)
#include "roughs_desk_test.moc"
