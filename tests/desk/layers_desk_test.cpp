// Layers on a page that the window shows small: marks are drawn larger where they stand.
#include <QTest>

#include "desk/enlarged_surface.h"
#include "geometry/polygon.h"

namespace tw {

/// Keeps what is drawn.
class Notes final : public Surface {
 public:
  void fill(const Path& path, Ink, FillRule) override { filled = boxOf(path); }
  void line(const Path& path, const Pen& pen) override { lined = boxOf(path), drawn = pen; }
  void clip(const Path&, FillRule) override { ++clips; }
  void unclip() override { --clips; }
  void type(const TypeLine& line) override { set = line; }
  void place(const Sketch&, double, Point) override {}
  void openGroup(const std::string&, const std::string&, bool) override {}
  void closeGroup() override {}

  static Rect boxOf(const Path& path) { return bounds(Polygon{path.points()}); }
  Rect filled, lined;
  Pen drawn;
  TypeLine set;
  int clips = 0;
};

class LayersDeskTest final : public QObject {
  Q_OBJECT

 private slots:
  void aMarkGrowsAboutItsMiddle();
  void whatIsLargeKeepsItsShapeAndItsLineGrows();
  void typeGrowsAboutItsMiddle();
};

void LayersDeskTest::aMarkGrowsAboutItsMiddle() {
  Notes notes;
  EnlargedSurface surface(notes, 2);
  const Point middle{30, 40};
  surface.fill(Path(ellipse(middle, 2, 1, 24)), kBlack, FillRule::NonZero);
  QVERIFY((notes.filled.centre() - middle).length() < 1e-9);
  QVERIFY(std::abs(notes.filled.width() - 8) < 1e-9);
  Path bow;
  bow.moveTo({0, 0});
  bow.curveTo({1, 1}, {2, 1}, {3, 0});
  surface.line(bow, {});
  QVERIFY(std::abs(notes.lined.width() - 6) < 1e-9);
}

void LayersDeskTest::whatIsLargeKeepsItsShapeAndItsLineGrows() {
  Notes notes;
  EnlargedSurface surface(notes, 2);
  const Rect panel{{10, 10}, {70, 60}};
  surface.line(Path(panel), {.width = 0.3, .dashes = {2, 1}});
  QVERIFY(notes.lined.min == panel.min && notes.lined.max == panel.max);
  QCOMPARE(notes.drawn.width, 0.6);
  QCOMPARE(notes.drawn.dashes, (std::vector<double>{4, 2}));
  surface.clip(Path(panel), FillRule::NonZero);
  QCOMPARE(notes.clips, 1);
}

void LayersDeskTest::typeGrowsAboutItsMiddle() {
  Notes notes;
  EnlargedSurface surface(notes, 2);
  surface.type({.text = "4", .sizePt = 8, .at = {5, 5}, .align = Align::Centre});
  QCOMPARE(notes.set.sizePt, 16.0);
  // The middle of a capital is 0.35 of its size above the baseline.
  const auto middle = [](const TypeLine& line) {
    return line.at.y - 0.35 * line.sizePt * kMmPerPt;
  };
  QVERIFY(std::abs(middle(notes.set) - (5 - 0.35 * 8 * kMmPerPt)) < 1e-9);
}

}  // namespace tw

QTEST_MAIN(tw::LayersDeskTest)
#include "layers_desk_test.moc"
