#include "read/seen_page_of_rough.h"

#include <doctest/doctest.h>

#include "geometry/polygon.h"

namespace tw {
namespace {

constexpr Rect kTrim{{0, 0}, {170, 260}};
constexpr auto kLtr = ReadingDirection::LeftToRight;

Polygon box(double x, double y, double w, double h) {
  return polygonOf(Rect{{x, y}, {x + w, y + h}});
}

Beat beatNamed(const std::string& id, const std::string& scene, std::vector<std::string> cast) {
  Beat beat;
  beat.id = id;
  beat.scene = scene;
  for (const std::string& who : cast) beat.figures.push_back({who, "stand", "", ""});
  return beat;
}

RoughPanel panelOf(const std::string& beat, Polygon outline) {
  RoughPanel panel;
  panel.beat = beat;
  panel.outline = std::move(outline);
  return panel;
}

SeenFigure figureAt(const std::string& who, Point head) {
  SeenFigure figure;
  figure.who = who;
  figure.visible = 1;
  figure.face = box(head.x - 4, head.y - 5, 8, 10);
  figure.body = {box(head.x - 10, head.y - 5, 20, 60)};
  return figure;
}

const SeenElement* elementOf(const SeenPanel& panel, SeenKind kind) {
  for (const SeenElement& e : panel.elements)
    if (e.kind == kind) return &e;
  return nullptr;
}

SeenPanel seenOf(const RoughPanel& panel, const Beat& beat) {
  Rough rough;
  rough.panels = {panel};
  return seenPageOf(rough, {beat}, kTrim, kLtr).panels.front();
}

TEST_CASE("a balloon is copy with the words of its item and the letters of its lines") {
  Beat beat = beatNamed("p1-1", "s1", {});
  beat.copy.push_back({"p1-1-c1", CopyKind::Speech, "mara", false, "Überall Wasser", 2});
  RoughPanel panel = panelOf("p1-1", box(10, 10, 100, 100));
  PlacedBalloon balloon;
  balloon.item = "p1-1-c1";
  balloon.outline = box(20, 20, 40, 15);
  balloon.lines = {{"Über-", {40, 25}}, {"all Wasser", {40, 30}}};
  panel.balloons = {balloon};
  const SeenPanel seen = seenOf(panel, beat);
  const SeenElement* copy = elementOf(seen, SeenKind::Copy);
  REQUIRE(copy != nullptr);
  CHECK(copy->words == 2);
  CHECK(copy->characters == 14);  // Über- 5, all 3, Wasser 6
  CHECK(copy->box == Rect{{20, 20}, {60, 35}});
  CHECK(copy->name == "p1-1-c1");
}

TEST_CASE("lettering set free has a box about its line") {
  RoughPanel panel = panelOf("p1-1", box(10, 10, 100, 100));
  PlacedBalloon sound;
  sound.kind = CopyKind::Sfx;
  sound.sizePt = 72;  // one inch
  sound.lines = {{"BANG", {60, 60}}};
  panel.balloons = {sound};
  const SeenPanel seen = seenOf(panel, beatNamed("p1-1", "s1", {}));
  const SeenElement* copy = elementOf(seen, SeenKind::Copy);
  REQUIRE(copy != nullptr);
  CHECK(copy->words == 1);
  CHECK(copy->box.centre().x == doctest::Approx(60));
  CHECK(copy->box.max.y == doctest::Approx(60));
  CHECK(copy->box.width() > copy->box.height());
}

TEST_CASE("the focus is the smallest part of the picture that it stands on") {
  RoughPanel panel = panelOf("p1-1", box(10, 10, 100, 100));
  panel.figures = {figureAt("mara", {60, 40}), figureAt("teo", {90, 40})};
  panel.focus = {61, 41};
  const SeenPanel seen = seenOf(panel, beatNamed("p1-1", "s1", {"mara", "teo"}));
  int marked = 0;
  for (const SeenElement& e : seen.elements) {
    if (!e.isFocus) continue;
    ++marked;
    CHECK(e.kind == SeenKind::Face);
    CHECK(e.name == "mara");
  }
  CHECK(marked == 1);
}

TEST_CASE("what lies beyond the frame is not seen") {
  RoughPanel panel = panelOf("p1-1", box(10, 10, 100, 100));
  panel.figures = {figureAt("mara", {60, 5}), figureAt("teo", {150, 40})};
  const SeenPanel seen = seenOf(panel, beatNamed("p1-1", "s1", {"mara", "teo"}));
  for (const SeenElement& e : seen.elements) {
    CHECK(e.name == "mara");
    CHECK(e.kind == SeenKind::Figure);
    CHECK(e.box.min.y == 10);
  }
  CHECK(seen.elements.size() == 1);
}

TEST_CASE("a prop is seen where the camera puts it") {
  Beat beat = beatNamed("p1-1", "s1", {});
  Prop crate;
  crate.id = "crate";
  beat.props = {crate};
  RoughPanel panel = panelOf("p1-1", box(10, 10, 100, 100));
  panel.staging.camera.focalMm = 36;
  panel.staging.props = {{"crate", {0, 0, 10}, 0, 0, 0}, {"not in the beat", {0, 0, 10}, 0, 0, 0}};
  const SeenPanel seen = seenOf(panel, beat);
  REQUIRE(seen.elements.size() == 1);
  CHECK(seen.elements.front().kind == SeenKind::Prop);
  CHECK(seen.elements.front().name == "crate");
}

TEST_CASE("a panel goes on when scene and cast are those of the panel before") {
  Rough rough;
  for (const char* id : {"a", "b", "c", "d", "e"}) {
    rough.panels.push_back(panelOf(id, box(10, 10, 50, 50)));
  }
  const std::vector<Beat> beats{beatNamed("a", "s1", {"mara", "teo"}),
                                beatNamed("b", "s1", {"teo", "mara"}),
                                beatNamed("c", "s1", {"mara"}), beatNamed("d", "s2", {"mara"})};
  const SeenPage page = seenPageOf(rough, beats, kTrim, kLtr);
  CHECK_FALSE(page.panels[0].continues);
  CHECK(page.panels[1].continues);
  CHECK_FALSE(page.panels[2].continues);
  CHECK_FALSE(page.panels[3].continues);
  CHECK_FALSE(page.panels[4].continues);  // its beat is not known
}

TEST_CASE("insets lie over the ground and hide its figures") {
  Rough rough;
  rough.panels = {panelOf("a", box(0, 0, 170, 260)), panelOf("b", box(20, 20, 60, 80))};
  rough.panels[0].ground = true;
  rough.panels[0].figures = {figureAt("mara", {50, 40}), figureAt("teo", {130, 40})};
  const SeenPage page = seenPageOf(rough, {}, kTrim, kLtr);
  CHECK(page.panels[0].layer == 0);
  CHECK(page.panels[1].layer == 1);
  for (const SeenElement& e : page.panels[0].elements) CHECK(e.name == "teo");
  CHECK(page.panels[0].elements.size() == 2);
}

TEST_CASE("a page without a ground lies in one layer") {
  Rough rough;
  rough.panels = {panelOf("a", box(0, 0, 80, 80)), panelOf("b", box(90, 0, 80, 80))};
  for (const SeenPanel& panel : seenPageOf(rough, {}, kTrim, kLtr).panels) CHECK(panel.layer == 0);
}

}  // namespace
}  // namespace tw
