// Two thousand seeded actions of a restless hand. Nothing crashes, the document is always what its
// files say, and reloading gives the same.
#include <QAbstractButton>
#include <QSettings>
#include <QTest>

#include <cstdio>
#include <fstream>

#include "base/random.h"
#include "command/roughs.h"
#include "desk/page_view.h"
#include "desk_case.h"

using namespace tw;

namespace {

constexpr int kActions = 2000, kBetweenReloads = 200, kBetweenFigures = 2000;

/// More of them by hand, for the figures of the benchmark page: SOAK_ACTIONS=10000.
int actions() {
  const int asked = qEnvironmentVariableIntValue("SOAK_ACTIONS");
  return asked > kActions ? asked : kActions;
}

double residentMb() {
  std::ifstream status("/proc/self/status");
  for (std::string word; status >> word;)
    if (word == "VmRSS:") {
      double kb = 0;
      status >> kb;
      return kb / 1024;
    }
  return 0;
}

/// A hand at the desk that does what comes to its mind.
class RestlessHand {
 public:
  RestlessHand(DeskCase& desk, std::uint64_t seed) : desk_(desk), random_(seed) {}

  void act() {
    switch (upTo(12)) {
      case 0:
        return goSomewhere();
      case 1:
        return (void)desk_.act(upTo(2) == 0 ? "undo" : "redo");
      case 2:
        return (void)desk_.act(upTo(2) == 0 ? "earlierPage" : "laterPage");
      case 3:
        return pressKey();
      case 4:
        return toggleLayer();
      case 5:
        return zoom();
      case 6:
        return restage();
      case 7:
        return desk_.engine().drop();
      case 8:
        return pressButton();
      default:
        return drag();
    }
  }

 private:
  int upTo(int n) { return static_cast<int>(random_.next() % static_cast<std::uint64_t>(n)); }
  PageView* view() { return desk_.window.station()->findChild<PageView*>(); }

  void goSomewhere() {
    static constexpr const char* kStops[] = {"goScript", "goRoughs", "goStaging", "goCopy",
                                             "goBoard"};
    desk_.act(kStops[upTo(5)]);
  }
  void pressKey() {
    static constexpr Qt::Key kKeys[] = {Qt::Key_Left, Qt::Key_Right,  Qt::Key_Up,    Qt::Key_Down,
                                        Qt::Key_Tab,  Qt::Key_Escape, Qt::Key_Delete};
    if (PageView* page = view()) QTest::keyClick(page, kKeys[upTo(7)]);
  }
  void toggleLayer() {
    if (PageView* page = view()) page->layerActions().at(upTo(kLayers))->trigger();
  }
  void zoom() {
    PageView* page = view();
    if (page == nullptr) return;
    if (upTo(3) == 0)
      page->fitPage();
    else
      page->zoomBy(upTo(2) == 0 ? 1.3 : 0.8, QPointF(upTo(600), upTo(500)));
  }
  /// Buttons that ask for a file would wait for somebody.
  void pressButton() {
    QList<QAbstractButton*> buttons;
    for (QAbstractButton* button : desk_.window.station()->findChildren<QAbstractButton*>())
      if (button->isVisible() && button->isEnabled() && !button->text().contains(QChar(0x2026)))
        buttons.append(button);
    if (!buttons.isEmpty()) buttons.at(upTo(static_cast<int>(buttons.size())))->click();
  }
  void restage() {
    const Rough* rough = desk_.document().rough();
    if (rough == nullptr || rough->panels.empty()) return;
    const auto panel = static_cast<std::size_t>(upTo(static_cast<int>(rough->panels.size())));
    Staging staging = rough->panels[panel].staging;
    staging.camera.rollDeg = upTo(20) - 10;
    if (!staging.figures.empty()) staging.figures[0].gazeDeg = upTo(60) - 30;
    desk_.engine().tryRestage(panel, staging);
    if (upTo(2) == 0) desk_.engine().keep(QStringLiteral("turn a head"));
  }
  void drag() {
    PageView* page = view();
    if (page == nullptr) return;
    QPoint at(upTo(page->width()), upTo(page->height()));
    QTest::mousePress(page, Qt::LeftButton, {}, at);
    for (int i = upTo(4); i >= 0; --i) {
      at += QPoint(upTo(60) - 30, upTo(60) - 30);
      QTest::mouseMove(page, at);
    }
    QTest::mouseRelease(page, Qt::LeftButton, {}, at);
  }

  DeskCase& desk_;
  Random random_;
};

}  // namespace

class SoakTest final : public QObject {
  Q_OBJECT

 private slots:
  void theDocumentIsWhatItsFilesSayAfterTwoThousandActions();
};

void SoakTest::theDocumentIsWhatItsFilesSayAfterTwoThousandActions() {
  DeskCase desk;
  Progress progress;
  for (const int page : {4, 7})
    QVERIFY(makeRoughs({desk.folder(), page, {.keep = 2}, {}}, progress).has_value());
  QVERIFY(desk.open());
  desk.document().showPage(4);
  QVERIFY(desk.settled());
  RestlessHand hand(desk, 20261125);
  double early = 0;
  for (int i = 1; i <= actions(); ++i) {
    hand.act();
    QCoreApplication::processEvents();
    // As an event loop does when it comes round; processEvents() alone leaves them lying.
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    QVERIFY(desk.window.document() != nullptr);
    const Document& document = desk.document();
    if (document.panel()) QVERIFY(*document.panel() < document.rough()->panels.size());
    if (i % kBetweenReloads != 0) continue;
    desk.document().finishSaving();
    const auto reloaded = JobFolder::open(desk.folder())->load();
    QVERIFY2(reloaded.has_value(), "the job opens");
    QVERIFY2(*reloaded == document.job(), "the document is what its files say");
    if (i == kActions / 2) early = residentMb();
    if (i % kBetweenFigures == 0)
      std::printf("soak: %d actions, %d undo steps, %.0f MB\n", i,
                  desk.document().undoStack().count(), residentMb());
  }
  QVERIFY(desk.settled());
  QVERIFY2(residentMb() < early + 60, "memory stays flat");
}

QTEST_MAIN(SoakTest)
#include "soak_desk_test.moc"
