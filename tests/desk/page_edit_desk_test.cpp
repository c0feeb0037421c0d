// A page edited by hand: gutters by mouse and by keys, numbers, remedies tried, dropped and kept.
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QTest>
#include <QToolButton>

#include <algorithm>

#include "base/files.h"
#include "command/roughs.h"
#include "desk/findings_panel.h"
#include "desk/page_edit_tool.h"
#include "desk/panel_numbers.h"
#include "desk/score_card_panel.h"
#include "desk_case.h"
#include "geometry/polygon.h"
#include "job/document.h"

namespace tw {

/// A page view with the tool and its two panels, over the job of a desk case.
class EditingCase {
 public:
  bool open() {
    const auto file = desk.folder() / "pages" / "07.json";
    if (roughPage().empty()) {
      Progress progress;
      if (!makeRoughs({desk.folder(), kPage, {.keep = 1}, {}}, progress)) return false;
      roughPage() = readFile(file).value_or("");
    } else if (!writeFileAtomically(file, roughPage())) {
      return false;
    }
    if (!desk.open()) return false;
    document = &desk.document();
    engine = &desk.engine();
    document->showPage(kPage);
    view = std::make_unique<PageView>(*document, *engine);
    view->resize(700, 900);
    tool = std::make_unique<PageEditTool>(*document, *engine, *view);
    view->setTool(tool.get());
    view->show();
    return QTest::qWaitForWindowExposed(view.get()) && desk.settled();
  }

  std::vector<Polygon> outlines() const {
    std::vector<Polygon> out;
    for (const RoughPanel& panel : document->rough()->panels) out.push_back(panel.outline);
    return out;
  }
  std::string text() const { return writePageText(document->page()); }
  /// Middle of the first usual handle of that kind.
  Point handle(HandleKind kind) const {
    const auto edit = pageEditOf(*document);
    for (const EditHandle& each : edit->handles())
      if (each.kind == kind && each.usual) return between(each.from, each.to, 0.31);
    return {};
  }
  QPoint at(Point mm) const { return view->toView(mm).toPoint(); }
  void holdAndMove(Point from, Vector mm) const {
    QTest::mousePress(view.get(), Qt::LeftButton, Qt::ControlModifier, at(from));
    for (int i = 1; i <= 4; ++i) {
      QMouseEvent move(QEvent::MouseMove, QPointF(at(from + mm * (i / 4.0))),
                       view->mapToGlobal(QPointF(at(from + mm * (i / 4.0)))), Qt::LeftButton,
                       Qt::LeftButton, Qt::ControlModifier);
      QCoreApplication::sendEvent(view.get(), &move);
    }
  }
  void dragBy(Point from, Vector mm) const {
    holdAndMove(from, mm);
    QTest::mouseRelease(view.get(), Qt::LeftButton, Qt::ControlModifier, at(from + mm));
  }
  bool settled() { return desk.settled(); }
  /// True when `edits` more edits are to be undone than before.
  bool hasEdits(int before, int edits) {
    return QTest::qWaitFor(
        [&] { return document->undoStack().index() == before + edits && !engine->isBusy(); },
        60000);
  }
  int edits() const { return document->undoStack().index(); }

  static constexpr int kPage = 7;
  DeskCase desk;
  Document* document = nullptr;
  Engine* engine = nullptr;
  std::unique_ptr<PageView> view;
  std::unique_ptr<PageEditTool> tool;

 private:
  /// The page's file with a rough, made by the first case.
  static std::string& roughPage() {
    static std::string text;
    return text;
  }
};

class PageEditDeskTest : public QObject {
  Q_OBJECT

 private slots:
  void aGutterIsDraggedAndUndone();
  void escDropsADrag();
  void anotherPageUnderTheHandIsNotChanged();
  void theArrowOfALeadIsDragged();
  void arrowKeysMoveTheGripWithTheFocus();
  void aTypedWidthMovesTheGutter();
  void whatIsNoLengthChangesNothing();
  void aPictureIsMirroredTwiceAndIsAsBefore();
  void aRemedyIsTriedAndDroppedAndKept();
  void aFindingIsAnsweredInPlace();
  void theScoreCardSaysHowATriedShapeDiffers();
};

void PageEditDeskTest::aGutterIsDraggedAndUndone() {
  EditingCase it;
  QVERIFY(it.open());
  const std::string before = it.text();
  const auto outlines = it.outlines();
  const int edits = it.edits();
  const Point gutter = it.handle(HandleKind::Gutter);
  const auto edit = pageEditOf(*it.document);
  const auto under = edit->handleAt(gutter, 1);
  QVERIFY(under);
  const Vector by = edit->handles()[*under].runs * -6;
  it.dragBy(gutter, by);
  QVERIFY(it.hasEdits(edits, 1));
  QVERIFY(it.outlines() != outlines);
  const EditMove expected = edit->moved(*under, by);
  for (const EditedPanel& panel : expected.panels) {
    const Rect is = bounds(it.outlines()[panel.panel]), was = bounds(panel.outline);
    QVERIFY(std::abs(is.min.x - was.min.x) + std::abs(is.max.x - was.max.x) +
                std::abs(is.min.y - was.min.y) + std::abs(is.max.y - was.max.y) <
            2 / it.view->pixelsPerMm() * 4);
  }
  it.document->undoStack().undo();
  QVERIFY(it.settled());
  QCOMPARE(it.text(), before);
  it.document->undoStack().redo();
  QVERIFY(it.text() != before);
}

void PageEditDeskTest::escDropsADrag() {
  EditingCase it;
  QVERIFY(it.open());
  const std::string before = it.text();
  const int edits = it.edits();
  const QPoint at = it.view->toView(it.handle(HandleKind::Gutter)).toPoint();
  QTest::mousePress(it.view.get(), Qt::LeftButton, {}, at);
  QTest::mouseMove(it.view.get(), at + QPoint(14, 14));
  QTest::keyClick(it.view.get(), Qt::Key_Escape);
  QTest::mouseRelease(it.view.get(), Qt::LeftButton, {}, at + QPoint(14, 14));
  QVERIFY(it.settled());
  QCOMPARE(it.edits(), edits);
  QCOMPARE(it.text(), before);
  QVERIFY(!it.engine->isTrying());
  QVERIFY(it.engine->latest()->roughNow().panels[0].outline == it.outlines()[0]);
}

void PageEditDeskTest::anotherPageUnderTheHandIsNotChanged() {
  EditingCase it;
  QVERIFY(it.open());
  const Job before = it.document->job();
  const int edits = it.edits();
  const QPoint at = it.view->toView(it.handle(HandleKind::Gutter)).toPoint();
  QTest::mousePress(it.view.get(), Qt::LeftButton, {}, at);
  QTest::mouseMove(it.view.get(), at + QPoint(14, 14));
  it.document->showPage(1);
  QTest::mouseMove(it.view.get(), at + QPoint(24, 24));
  QTest::mouseRelease(it.view.get(), Qt::LeftButton, {}, at + QPoint(24, 24));
  QVERIFY(it.settled());
  QCOMPARE(it.edits(), edits);
  QVERIFY(it.document->job() == before);
}

void PageEditDeskTest::theArrowOfALeadIsDragged() {
  EditingCase it;
  QVERIFY(it.open());
  const int edits = it.edits();
  std::optional<Point> tip;
  std::size_t panel = 0;
  for (; !tip && panel < it.outlines().size(); ++panel) {
    it.document->selectPanel(panel);
    tip = it.tool->leadTip();
  }
  QVERIFY(tip);
  --panel;
  const Point focus = it.document->rough()->panels[panel].focus;
  const Vector before = it.document->rough()->panels[panel].lead.direction;
  const Vector wanted = Vector{-before.x, before.y}.unit();
  it.dragBy(*tip, focus + wanted * 40 - *tip);
  QVERIFY(it.hasEdits(edits, 1));
  const Vector now = it.document->rough()->panels[panel].lead.direction;
  QVERIFY(dot(now, wanted) > dot(before, wanted));
}

void PageEditDeskTest::arrowKeysMoveTheGripWithTheFocus() {
  EditingCase it;
  QVERIFY(it.open());
  const std::string before = it.text();
  const auto edit = pageEditOf(*it.document);
  const int edits = it.edits();
  it.view->setFocus();
  QTest::keyClick(it.view.get(), Qt::Key_Tab);
  const auto first = std::ranges::find_if(edit->handles(), [](const EditHandle& handle) {
    return handle.usual && handle.kind == HandleKind::Gutter;
  });
  QVERIFY(first != edit->handles().end());
  const bool down = std::abs(first->runs.y) > std::abs(first->runs.x);
  QTest::keyClick(it.view.get(), down ? Qt::Key_Up : Qt::Key_Left);
  QTest::keyClick(it.view.get(), down ? Qt::Key_Up : Qt::Key_Left, Qt::ShiftModifier);
  QVERIFY(it.hasEdits(edits, 1));  // keys after each other on one grip are one edit
  const auto now = pageEditOf(*it.document);
  const EditHandle& same =
      now->handles()[static_cast<std::size_t>(first - edit->handles().begin())];
  QVERIFY(std::abs((same.from - first->from).length() - 5.5) < 0.01);
  it.document->undoStack().undo();
  QVERIFY(it.settled());
  QCOMPARE(it.text(), before);
}

void PageEditDeskTest::aTypedWidthMovesTheGutter() {
  EditingCase it;
  QVERIFY(it.open());
  PanelNumberForm form(*it.document, *it.engine);
  form.show();
  const int edits = it.edits();
  const auto edit = pageEditOf(*it.document);
  std::size_t panel = 0;
  while (panel < it.outlines().size() && edit->withHeight(panel, 60).panels.size() < 2) ++panel;
  QVERIFY(panel < it.outlines().size());
  it.document->selectPanel(panel);
  auto* height = form.findChild<QLineEdit*>(QStringLiteral("panelHeight"));
  QVERIFY(height != nullptr);
  height->setFocus();
  height->selectAll();
  QTest::keyClicks(height, QStringLiteral("2 1/2 in"));
  QTest::keyClick(height, Qt::Key_Return);
  QVERIFY(it.hasEdits(edits, 1));
  const auto expected = edit->withHeight(panel, 63.5);
  QVERIFY(
      std::abs(bounds(it.outlines()[panel]).height() -
               bounds(expected.panels.empty()
                          ? it.outlines()[panel]
                          : std::ranges::find(expected.panels, panel, &EditedPanel::panel)->outline)
                   .height()) < 0.001);
}

void PageEditDeskTest::whatIsNoLengthChangesNothing() {
  EditingCase it;
  QVERIFY(it.open());
  PanelNumberForm form(*it.document, *it.engine);
  it.document->selectPanel(0);
  const int edits = it.edits();
  auto* width = form.findChild<QLineEdit*>(QStringLiteral("panelWidth"));
  width->selectAll();
  QTest::keyClicks(width, QStringLiteral("wide"));
  QTest::keyClick(width, Qt::Key_Return);
  QCOMPARE(it.edits(), edits);
  const auto* said = form.findChild<QLabel*>(QStringLiteral("panelNumbersSaid"));
  QVERIFY(said->text().contains(QStringLiteral("wide")));
}

void PageEditDeskTest::aPictureIsMirroredTwiceAndIsAsBefore() {
  EditingCase it;
  QVERIFY(it.open());
  PanelNumberForm form(*it.document, *it.engine);
  it.document->selectPanel(0);
  const int edits = it.edits();
  const Staging before = it.document->rough()->panels[0].staging;
  auto* mirror = form.findChild<QToolButton*>(QStringLiteral("mirrorPicture"));
  QVERIFY(mirror != nullptr);
  mirror->click();
  mirror->click();  // the second waits until the first is measured
  QVERIFY(it.hasEdits(edits, 2));
  const Staging& now = it.document->rough()->panels[0].staging;
  QCOMPARE(now.choice.mirrored, before.choice.mirrored);
  QVERIFY(std::abs(now.camera.panDeg - before.camera.panDeg) < 1e-6);
}

void PageEditDeskTest::aRemedyIsTriedAndDroppedAndKept() {
  EditingCase it;
  QVERIFY(it.open());
  FindingsPanel panel(*it.document, *it.engine, *it.view);
  panel.show();
  auto* list = panel.findChild<QListWidget*>(QStringLiteral("findingsList"));
  QVERIFY(list != nullptr && list->count() > 0);
  const auto button = [&](const char* name) {
    return panel.findChild<QPushButton*>(QLatin1String(name));
  };
  const auto* state = panel.findChild<QLabel*>(QStringLiteral("remedyState"));
  QPushButton* tryIt = nullptr;
  for (int row = 0; row < list->count() && tryIt == nullptr; ++row) {
    list->setCurrentRow(row);
    QVERIFY(QTest::qWaitFor([&] { return !state->isVisibleTo(&panel); }, 120000));
    tryIt = button("tryRemedy1");
  }
  QVERIFY2(tryIt != nullptr, "no finding of the page has a remedy that helps");
  const std::string before = it.text();
  const int edits = it.edits();
  tryIt->click();
  QVERIFY(it.settled());
  QVERIFY(it.engine->isTrying());
  QCOMPARE(it.text(), before);
  QVERIFY(button("dropRemedy")->isVisibleTo(&panel));
  button("dropRemedy")->click();
  QVERIFY(it.settled());
  QVERIFY(!it.engine->isTrying());
  QCOMPARE(it.text(), before);
  QCOMPARE(it.edits(), edits);
  QVERIFY(QTest::qWaitFor([&] { return button("keepRemedy1") != nullptr; }, 120000));
  button("keepRemedy1")->click();
  QVERIFY(it.hasEdits(edits, 1));
  QVERIFY(it.text() != before);
  it.document->undoStack().undo();
  QVERIFY(it.settled());
  QCOMPARE(it.text(), before);
}

void PageEditDeskTest::aFindingIsAnsweredInPlace() {
  EditingCase it;
  QVERIFY(it.open());
  FindingsPanel panel(*it.document, *it.engine, *it.view);
  panel.show();
  auto* list = panel.findChild<QListWidget*>(QStringLiteral("findingsList"));
  QVERIFY(list->count() > 0);
  list->setCurrentRow(0);
  const int edits = it.edits();
  const std::size_t answers = it.document->page().silenced.size();
  auto* why = panel.findChild<QLineEdit*>(QStringLiteral("silenceReason"));
  panel.findChild<QPushButton*>(QStringLiteral("silenceFinding"))->click();
  QCOMPARE(it.edits(), edits);  // not without a reason
  QTest::keyClicks(why, QStringLiteral("It is the story's turn"));
  QTest::keyClick(why, Qt::Key_Return);
  QVERIFY(it.hasEdits(edits, 1));
  QCOMPARE(it.document->page().silenced.size(), answers + 1);
  QCOMPARE(it.document->page().silenced.back().reason, std::string("It is the story's turn"));
}

void PageEditDeskTest::theScoreCardSaysHowATriedShapeDiffers() {
  EditingCase it;
  QVERIFY(it.open());
  ScoreCardPanel card(*it.document, *it.engine, *it.view);
  card.show();
  QVERIFY(QTest::qWaitForWindowActive(&card));  // the list takes the focus and its first line
  const auto* head = card.findChild<QLabel*>(QStringLiteral("scoreHead"));
  const QString score = QString::number(it.document->rough()->score, 'f', 1);
  QCOMPARE(head->text(), QStringLiteral("Score %1; less is better").arg(score));
  const auto* list = card.findChild<QListWidget*>(QStringLiteral("scoreCard"));
  QVERIFY(list->count() > 1);
  double sum = 0;  // the lines told make up the score
  for (const CardLine& line : it.engine->latest()->roughNow().card) sum += line.cost;
  QVERIFY(std::abs(sum - it.document->rough()->score) < 0.01);
  const Point gutter = it.handle(HandleKind::Gutter);
  it.holdAndMove(gutter, {15, 15});
  QVERIFY(it.settled());
  QVERIFY(head->text().contains(QStringLiteral("to what is kept")));
  QTest::keyClick(it.view.get(), Qt::Key_Escape);
  QTest::mouseRelease(it.view.get(), Qt::LeftButton, {}, it.at(gutter));
  QVERIFY(it.settled());
  QCOMPARE(head->text(), QStringLiteral("Score %1; less is better").arg(score));
}

}  // namespace tw

QTEST_MAIN(tw::PageEditDeskTest)
#include "page_edit_desk_test.moc"
