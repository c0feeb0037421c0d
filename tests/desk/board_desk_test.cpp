// The board station: lines drawn and erased by the mouse, pictures laid under.
#include <QTest>

#include "base/files.h"
#include "command/roughs.h"
#include "desk/page_view.h"
#include "desk/underlay_edit.h"
#include "desk_case.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr int kPage = 4;

}  // namespace

class BoardDeskTest final : public QObject {
  Q_OBJECT

 private slots:
  void initTestCase();
  void init();
  void cleanup() { desk_.reset(); }
  void aLineBelongsToThePanelWhereItBegins();
  void aLineBegunOnTheMarginBelongsToTheNearestPanel();
  void anEraserBegunOnTheMarginErasesWhatItCrosses();
  void aPictureUnderThePageIsTakenAwayWhileAPanelIsSelected();

 private:
  const Rough& rough() { return *desk_->document().rough(); }
  PageView& view() { return *desk_->window.station()->findChild<PageView*>(); }
  void draw(Point from, Point to) {
    const auto at = [&](double t) { return view().toView(between(from, to, t)).toPoint(); };
    QTest::mousePress(&view(), Qt::LeftButton, {}, at(0));
    for (int k = 1; k <= 8; ++k) {
      QMouseEvent move(QEvent::MouseMove, QPointF(at(k / 8.0)), view().mapToGlobal(at(k / 8.0)),
                       Qt::LeftButton, Qt::LeftButton, {});
      QCoreApplication::sendEvent(&view(), &move);
    }
    QTest::mouseRelease(&view(), Qt::LeftButton, {}, at(1));
  }
  Rect box(std::size_t panel) { return bounds(rough().panels[panel].outline); }
  std::size_t strokes() {
    std::size_t out = 0;
    for (const RoughPanel& panel : rough().panels) out += panel.strokes.size();
    return out;
  }

  std::unique_ptr<DeskCase> desk_;
  std::string roughed_;  ///< the file of page 4 with one rough
};

void BoardDeskTest::initTestCase() {
  const DeskCase desk;
  Progress progress;
  QVERIFY(makeRoughs({desk.folder(), kPage, {.keep = 1}, {}}, progress).has_value());
  roughed_ = *readFile(desk.folder() / "pages" / "04.json");
}

void BoardDeskTest::init() {
  desk_ = std::make_unique<DeskCase>();
  QVERIFY(writeFileAtomically(desk_->folder() / "pages" / "04.json", roughed_).has_value());
  QVERIFY(desk_->open());
  desk_->document().showPage(kPage);
  QVERIFY(desk_->act("goBoard") && desk_->settled());
}

void BoardDeskTest::aLineBelongsToThePanelWhereItBegins() {
  const Point middle = box(0).centre();
  draw(middle, middle + Vector{12, 6});
  QCOMPARE(rough().panels[0].strokes.size(), std::size_t{1});
  QCOMPARE(strokes(), std::size_t{1});
  QVERIFY((rough().panels[0].strokes[0].points.front() - middle).length() < 1);
  QVERIFY(desk_->act("undo"));
  QCOMPARE(strokes(), std::size_t{0});
}

void BoardDeskTest::aLineBegunOnTheMarginBelongsToTheNearestPanel() {
  const Rect first = box(0);
  const Point margin{first.min.x - 3, first.centre().y};
  QVERIFY(!view().panelAt(margin));
  draw(margin, first.centre());
  QCOMPARE(rough().panels[0].strokes.size(), std::size_t{1});
}

void BoardDeskTest::anEraserBegunOnTheMarginErasesWhatItCrosses() {
  const Rect first = box(0);
  draw(first.centre() - Vector{0, 10}, first.centre() + Vector{0, 10});
  QCOMPARE(strokes(), std::size_t{1});
  QVERIFY(desk_->act("eraser"));
  draw({first.min.x - 3, first.centre().y}, first.centre() + Vector{5, 0});
  QCOMPARE(strokes(), std::size_t{0});
}

void BoardDeskTest::aPictureUnderThePageIsTakenAwayWhileAPanelIsSelected() {
  const auto kept = shelved(desk_->folder() / "art", std::filesystem::path(TIERWRIGHT_SOURCE_DIR) /
                                                         "demo" / "ines-suit.png");
  desk_->document().selectPanel(std::nullopt);
  QVERIFY(layUnder(desk_->document(), underPlace(desk_->document()), kept));
  QVERIFY(desk_->document().page().underlays[0].beat.empty());
  desk_->document().selectPanel(1);
  QVERIFY(desk_->act("takeUnderlayAway"));
  QVERIFY(desk_->document().page().underlays.empty());
}

}  // namespace tw

QTEST_MAIN(tw::BoardDeskTest)
#include "board_desk_test.moc"
