#include "review/compare_roughs.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "geometry/polygon.h"

namespace tw {

namespace {

Rough rough(const std::string& name, std::vector<CardLine> card) {
  Rough out;
  out.name = name;
  for (const CardLine& line : card) out.score += line.cost;
  out.card = std::move(card);
  for (int i = 0; i < 2; ++i) {
    RoughPanel panel;
    panel.beat = "p1-" + std::to_string(i + 1);
    panel.outline = polygonOf(Rect{{10, 10 + 60.0 * i}, {90, 60 + 60.0 * i}});
    panel.staging.figures.push_back({"ada", "stand", false, {}, 0, 0, {}});
    out.panels.push_back(std::move(panel));
  }
  return out;
}

Job cast() {
  Job job;
  Character who;
  who.id = "ada";
  who.name = "ADA";
  job.cast.push_back(who);
  return job;
}

bool has(const std::vector<std::string>& list, const std::string& line) {
  return std::ranges::find(list, line) != list.end();
}

}  // namespace

TEST_CASE("a rough does not differ from itself") {
  const Rough a = rough("A", {{"handed on", 2, "x", "", 1}});
  const RoughComparison same = compareRoughs(cast(), a, a);
  CHECK(same.rules.empty());
  REQUIRE(same.panels.size() == 2);
  for (const PanelDifference& panel : same.panels) {
    CHECK_FALSE(panel.differs());
    CHECK(panel.outlineMm == 0);
  }
}

TEST_CASE("rules are added over panels and the largest difference stands first") {
  const Rough a = rough("A", {{"handed on", 1, "leads away", "", 1},
                              {"handed on", 2, "leads nowhere", "", 2},
                              {"rhythm", 0.5, "", "", 0},
                              {"tangents", 1, "", "", 1}});
  const Rough b = rough("B", {{"rhythm", 4, "four alike", "", 0}, {"tangents", 1, "", "", 2}});
  const auto rules = compareRoughs(cast(), a, b).rules;
  REQUIRE(rules.size() == 2);  // tangents cost the same
  CHECK(rules[0].rule == "rhythm");
  CHECK(rules[0].difference() == 3.5);
  CHECK(rules[0].reasonB == "four alike");
  CHECK(rules[1].rule == "handed on");
  CHECK(rules[1].difference() == -3);
  CHECK(rules[1].reasonA == "leads nowhere");
  CHECK(rules[1].panelsA == std::vector<int>{1, 2});
  CHECK(rules[1].panelsB.empty());
}

TEST_CASE("an outline's difference is how far its corners lie off and is told in millimetres") {
  const Rough a = rough("A", {});
  Rough b = rough("B", {});
  b.panels[0].outline = polygonOf(Rect{{10, 10}, {102, 60}});
  const auto panels = compareRoughs(cast(), a, b).panels;
  CHECK(panels[0].outlineMm == doctest::Approx(12));
  CHECK(has(panels[0].shape, "12 mm wider"));
  CHECK(has(panels[0].shape, "6.0 mm to the right"));
  CHECK(panels[0].shape.size() == 2);
  CHECK(panels[1].shape.empty());
}

TEST_CASE("a border that only slants is told though its box stays") {
  const Rough a = rough("A", {});
  Rough b = rough("B", {});
  b.panels[0].outline.points = {{10, 14}, {90, 10}, {90, 60}, {10, 60}};
  const auto panels = compareRoughs(cast(), a, b).panels;
  CHECK(panels[0].outlineMm > 3);
  REQUIRE(panels[0].shape.size() == 1);
  CHECK(panels[0].shape[0].starts_with("its corners"));
}

TEST_CASE("stagings differ in words and roundings do not") {
  const Rough a = rough("A", {});
  Rough b = rough("B", {});
  StagingChoice& choice = b.panels[0].staging.choice;
  choice.shot = ShotSize::CloseUp;
  choice.mirrored = true;
  choice.tiltDeg = 7;
  choice.sideDeg = 90;
  SetFigure& ada = b.panels[0].staging.figures[0];
  ada.pose = "arm-raised";
  ada.turnsDeg["head"] = {0, 0, 30};
  b.panels[1].staging.choice.sideDeg = 4;
  const auto panels = compareRoughs(cast(), a, b).panels;
  for (const char* line :
       {"shot: medium in A, close-up in B", "mirrored: no in A, yes in B",
        "horizon: level in A, tilted 7° in B", "seen: from the front in A, from its left in B",
        "Ada's pose: stand in A, arm raised in B",
        "Ada's joints: as the pose is in A, 1 turned by hand in B"})
    CHECK_MESSAGE(has(panels[0].staging, line), line);
  CHECK(panels[0].staging.size() == 6);
  CHECK(panels[1].staging.empty());
}

TEST_CASE("panels are matched by their beats") {
  const Rough a = rough("A", {});
  Rough b = rough("B", {});
  b.panels[1].beat = "p1-7";
  const auto panels = compareRoughs(cast(), a, b).panels;
  REQUIRE(panels.size() == 3);
  CHECK(panels[1].panelB == 0);
  CHECK(panels[2].beat == "p1-7");
  CHECK(panels[2].panelA == 0);
  CHECK(panels[2].differs());
}

TEST_CASE("the strongest rule is furthest below the others and the weakest costs most") {
  const std::vector<Rough> all{
      rough("A", {{"handed on", 1, "leads away", "", 2}, {"rhythm", 3, "alike", "", 0}}),
      rough("B", {{"handed on", 4, "", "", 1}, {"rhythm", 1, "", "", 0}}),
      rough("C", {{"handed on", 2, "", "", 1}, {"rhythm", 1, "", "", 0}})};
  const Standing strongest = strongestOf(all[0], all), weakest = weakestOf(all[0], all);
  CHECK(strongest.rule == "handed on");
  CHECK(strongest.cost == 1);
  CHECK(strongest.usual == 3);
  CHECK(weakest.rule == "rhythm");
  CHECK(weakest.usual == 1);
  CHECK(weakest.words == "rhythm: alike");
}

TEST_CASE("a rough alone has no strongest rule and a clean one no weakest") {
  const std::vector<Rough> all{rough("A", {{"rhythm", 0, "", "", 0}})};
  CHECK(strongestOf(all[0], all).rule.empty());
  CHECK_FALSE(strongestOf(all[0], all).words.empty());
  CHECK(weakestOf(all[0], all).rule.empty());
  CHECK(weakestOf(all[0], all).words == "nothing found against it");
}

}  // namespace tw
