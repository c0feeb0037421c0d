// A hand that is faster than the measuring: the next step comes before the edit is measured, and
// nothing is lost, joined or put on another page.
#include <QTest>

#include "base/files.h"
#include "command/roughs.h"
#include "desk_case.h"

namespace tw {

namespace {

constexpr int kPage = 4;

/// A rough of page 4 with two figures' heads to turn.
struct HurryCase : DeskCase {
  bool begin(const std::string& roughed) {
    if (!writeFileAtomically(folder() / "pages" / "04.json", roughed) || !open()) return false;
    document().showPage(kPage);
    return settled();
  }
  Staging turned(std::size_t panel, double byDeg) {
    Staging out = document().rough()->panels[panel].staging;
    out.figures[0].turnsDeg["head"] = {0, 0, byDeg};
    return out;
  }
  void turnHead(std::size_t panel, double byDeg) {
    engine().tryRestage(panel, turned(panel, byDeg));
    engine().keep(QStringLiteral("turn head"));
  }
  /// As stored, on page 4.
  double headTurn(std::size_t panel) {
    const Rough& rough = document().job().page(kPage)->roughs[0];
    const auto& turns = rough.panels[panel].staging.figures[0].turnsDeg;
    const auto head = turns.find("head");
    return head == turns.end() ? 0 : head->second[2];
  }
  int edits() { return document().undoStack().count(); }
};

}  // namespace

class HurryDeskTest final : public QObject {
  Q_OBJECT

 private slots:
  void initTestCase();
  void undoTakesBackAnEditThatIsNotMeasuredYet();
  void anEditStaysOnItsPageWhenThePageIsTurnedAtOnce();
  void twoEditsAtOnceStayTwo();
  void twoEditsAreKeptWhenThePageIsTurnedAtOnce();
  void anEditIsOnDiskWhenTheJobIsClosedAtOnce();
  void aPageThereAndBackIsShown();
  void undoShowsThePageItChanges();
  void aPageThatCannotBeWrittenIsToldAndWrittenLater();

 private:
  std::string roughed_;              ///< the file of page 4 with one rough
  std::vector<std::size_t> panels_;  ///< with a figure
};

void HurryDeskTest::initTestCase() {
  DeskCase desk;
  Progress progress;
  QVERIFY(makeRoughs({desk.folder(), kPage, {.keep = 1}, {}}, progress).has_value());
  roughed_ = *readFile(desk.folder() / "pages" / "04.json");
  QVERIFY(desk.open());
  desk.document().showPage(kPage);
  const auto& panels = desk.document().rough()->panels;
  for (std::size_t i = 0; i < panels.size(); ++i)
    if (!panels[i].staging.figures.empty()) panels_.push_back(i);
  QVERIFY(panels_.size() >= 2);
}

void HurryDeskTest::undoTakesBackAnEditThatIsNotMeasuredYet() {
  HurryCase desk;
  QVERIFY(desk.begin(roughed_));
  const Page before = desk.document().page();
  desk.turnHead(panels_[0], 21);
  QCOMPARE(desk.edits(), 0);  // not in the document yet
  QVERIFY(desk.act("undo"));
  QCOMPARE(desk.edits(), 1);
  QVERIFY(desk.document().page() == before);
  QVERIFY(desk.settled());
  QVERIFY(desk.act("redo"));
  QCOMPARE(desk.headTurn(panels_[0]), 21.0);
}

void HurryDeskTest::anEditStaysOnItsPageWhenThePageIsTurnedAtOnce() {
  HurryCase desk;
  QVERIFY(desk.begin(roughed_));
  const Page next = *desk.document().job().page(kPage + 1);
  desk.turnHead(panels_[0], 21);
  desk.document().showPage(kPage + 1);
  QCOMPARE(desk.edits(), 1);
  QCOMPARE(desk.headTurn(panels_[0]), 21.0);
  QVERIFY(desk.settled());
  QVERIFY(*desk.document().job().page(kPage + 1) == next);
  QCOMPARE(desk.engine().latest()->page, kPage + 1);
}

void HurryDeskTest::twoEditsAtOnceStayTwo() {
  HurryCase desk;
  QVERIFY(desk.begin(roughed_));
  desk.turnHead(panels_[0], 21);
  desk.turnHead(panels_[1], -17);
  QVERIFY(QTest::qWaitFor([&] { return desk.edits() == 2; }, 20000));
  QCOMPARE(desk.headTurn(panels_[0]), 21.0);
  QCOMPARE(desk.headTurn(panels_[1]), -17.0);
  QVERIFY(desk.act("undo"));
  QCOMPARE(desk.headTurn(panels_[0]), 21.0);
  QCOMPARE(desk.headTurn(panels_[1]), 0.0);
}

void HurryDeskTest::twoEditsAreKeptWhenThePageIsTurnedAtOnce() {
  HurryCase desk;
  QVERIFY(desk.begin(roughed_));
  desk.turnHead(panels_[0], 21);
  desk.turnHead(panels_[1], -17);
  desk.document().showPage(kPage + 1);
  QCOMPARE(desk.edits(), 2);
  QCOMPARE(desk.headTurn(panels_[0]), 21.0);
  QCOMPARE(desk.headTurn(panels_[1]), -17.0);
  QVERIFY(desk.settled());
  QCOMPARE(desk.engine().latest()->page, kPage + 1);
}

void HurryDeskTest::anEditIsOnDiskWhenTheJobIsClosedAtOnce() {
  HurryCase desk;
  QVERIFY(desk.begin(roughed_));
  desk.turnHead(panels_[0], 21);
  desk.window.closeJob();
  QVERIFY(desk.window.openJob(QString::fromStdString(desk.folder().string())));
  QCOMPARE(desk.headTurn(panels_[0]), 21.0);
}

void HurryDeskTest::aPageThereAndBackIsShown() {
  HurryCase desk;
  QVERIFY(desk.begin(roughed_));
  desk.document().showPage(kPage + 1);
  desk.document().showPage(kPage);
  QVERIFY(desk.settled());
  QCOMPARE(desk.engine().latest()->page, kPage);
}

void HurryDeskTest::undoShowsThePageItChanges() {
  HurryCase desk;
  QVERIFY(desk.begin(roughed_));
  desk.turnHead(panels_[0], 21);
  desk.document().showPage(kPage + 1);
  QVERIFY(desk.act("undo"));
  QCOMPARE(desk.document().page().number, kPage);
  desk.document().showPage(kPage + 1);
  QVERIFY(desk.act("redo"));
  QCOMPARE(desk.document().page().number, kPage);
}

/// A folder stands where the file is to be.
void HurryDeskTest::aPageThatCannotBeWrittenIsToldAndWrittenLater() {
  namespace fs = std::filesystem;
  HurryCase desk;
  QVERIFY(desk.begin(roughed_));
  const fs::path file = desk.folder() / "pages" / "04.json";
  fs::remove(file);
  fs::create_directories(file / "in the way");
  QString told;
  connect(&desk.document(), &Document::troubled, this, [&](const QString& words) { told = words; });
  Page page = desk.document().page();
  page.note = "must not be lost";
  QVERIFY(desk.document().change(QStringLiteral("note"), page));
  QVERIFY(!desk.document().finishSaving());
  QTRY_VERIFY(told.contains(QStringLiteral("04.json")));
  fs::remove_all(file);
  Page other = *desk.document().job().page(kPage + 1);
  other.note = "another page";
  QVERIFY(desk.document().change(QStringLiteral("note"), other));
  QVERIFY(desk.document().finishSaving());
  QVERIFY(readFile(file).value_or("").find("must not be lost") != std::string::npos);
}

}  // namespace tw

QTEST_MAIN(tw::HurryDeskTest)
#include "hurry_desk_test.moc"
