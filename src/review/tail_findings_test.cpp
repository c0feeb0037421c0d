#include "review/tail_findings.h"

#include <doctest/doctest.h>

#include "geometry/polygon.h"

namespace tw {

namespace {

SeenFigure figureAt(const std::string& who, double x) {
  SeenFigure out;
  out.who = who;
  out.mouth = {x, 40};
  out.face = ellipse({x, 38}, 5, 7, 20);
  out.body = {polygonOf({{x - 8, 30}, {x + 8, 80}})};
  return out;
}

PlacedBalloon balloonTo(const std::string& item, Point middle, Point tip) {
  PlacedBalloon out;
  out.item = item;
  out.outline = ellipse(middle, 10, 6, 30);
  out.tail = {{middle + Vector{-1.5, 4}, tip, middle + Vector{1.5, 4}}};
  return out;
}

/// Ada on the left, Bo on the right; each says something.
struct Talk {
  Job job;
  Page page;
  PageCase wishes;
  Rough rough;
  EvidenceBook book = *EvidenceBook::load();

  Talk() {
    page.number = 2;
    wishes.job = &job;
    wishes.page = &page;
    wishes.panels.resize(1);
    for (const char* who : {"ada", "bo"}) {
      CopyItem said;
      said.id = who;
      said.speaker = who;
      wishes.panels[0].beat.copy.push_back(said);
    }
    RoughPanel panel;
    panel.outline = polygonOf({{0, 0}, {100, 80}});
    panel.figures = {figureAt("ada", 25), figureAt("bo", 75)};
    panel.balloons = {balloonTo("ada", {25, 10}, {25, 28}), balloonTo("bo", {75, 10}, {75, 28})};
    rough.panels = {panel};
  }
  std::vector<Finding> found() const { return tailFindings(rough, wishes, book); }
};

}  // namespace

TEST_CASE("tails that end at their speakers are not found fault with") {
  CHECK(Talk().found().empty());
}

TEST_CASE("a tail that ends nearer to somebody else is told by both names") {
  Talk talk;
  talk.rough.panels[0].balloons[0] = balloonTo("ada", {50, 10}, {70, 27});
  const auto found = talk.found();
  REQUIRE(found.size() == 1);
  CHECK(found[0].reason.find("ada") != std::string::npos);
  CHECK(found[0].reason.find("bo") != std::string::npos);
  CHECK(found[0].value > 100);
  CHECK(found[0].panel == 1);
}

TEST_CASE("a tail that ends on somebody else's body is told") {
  Talk talk;
  talk.rough.panels[0].figures[1].body = {polygonOf({{40, 20}, {90, 80}})};
  talk.rough.panels[0].balloons[0] = balloonTo("ada", {50, 8}, {44, 30});
  const auto found = talk.found();
  REQUIRE(found.size() == 1);
  CHECK(found[0].reason.find("ends on bo") != std::string::npos);
}

TEST_CASE("tails that run into each other are told") {
  Talk talk;
  talk.rough.panels[0].balloons[0] = balloonTo("ada", {62, 10}, {40, 34});
  talk.rough.panels[0].balloons[1] = balloonTo("bo", {40, 10}, {60, 34});
  const auto found = talk.found();
  REQUIRE(found.size() == 2);
  CHECK(found[0].reason.find("another tail") != std::string::npos);
}

TEST_CASE("a voice from outside and a speaker who is not seen have no tail to judge") {
  Talk talk;
  talk.rough.panels[0].balloons[0] = balloonTo("ada", {50, 10}, {70, 27});
  talk.rough.panels[0].balloons[0].offPanel = true;
  CHECK(talk.found().empty());
  talk.rough.panels[0].balloons[0].offPanel = false;
  talk.rough.panels[0].figures.erase(talk.rough.panels[0].figures.begin());
  CHECK(talk.found().empty());
}

}  // namespace tw
