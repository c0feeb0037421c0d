#include "review/reading_findings.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "geometry/polygon.h"
#include "review/rules.h"

namespace tw {

namespace {

/// Two panels, the second dominant, both about Ines; nothing wrong.
struct TwoPanels {
  Job job;
  Page page;
  PageCase wishes;
  PageReadings readings;
  EvidenceBook book;

  TwoPanels() {
    Character ines;
    ines.id = "ines";
    ines.name = "INES";
    job.cast = {ines};
    page.number = 5;
    wishes.job = &job;
    wishes.page = &page;
    wishes.panels.resize(2);
    for (std::size_t i = 0; i < 2; ++i) {
      wishes.panels[i].focus = "ines";
      wishes.panels[i].beat.id = "p5-" + std::to_string(i + 1);
    }
    wishes.dominant = 1;
    readings.eyes.panels.resize(2);
    readings.squints.resize(2);
    for (Squint& squint : readings.squints) squint = {.holds = 0.7, .seen = true};
    readings.picture.panels.resize(2);
    readings.picture.strongest = 1;
    readings.picture.dominantHolds = 0.6;
    book = *EvidenceBook::load();
  }
  std::vector<Finding> found() const { return readingFindings(readings, wishes, book); }
};

}  // namespace

TEST_CASE("a page on which all holds has no findings") {
  CHECK(TwoPanels().found().empty());
}

TEST_CASE("each fault is found alone, with its panel, figure and evidence") {
  TwoPanels skipped;
  skipped.readings.eyes.panels[0].neverSeen = 0.4;
  REQUIRE(skipped.found().size() == 1);
  CHECK(skipped.found()[0].rule == "panel skipped");
  CHECK(skipped.found()[0].value == doctest::Approx(40));
  CHECK(skipped.found()[0].beat == "p5-1");
  CHECK(skipped.found()[0].evidence == Evidence::Published);

  TwoPanels squint;
  squint.readings.squints[1].holds = 0.3;
  squint.readings.squints[1].elsewhereAt = {40, 50};
  REQUIRE(squint.found().size() == 1);
  CHECK(squint.found()[0].rule == "squint");
  CHECK(contains(squint.found()[0].place, Point{40, 50}));
  CHECK(squint.found()[0].reason.find("Ines") != std::string::npos);

  TwoPanels centre;
  centre.readings.picture.dominantHolds = 0.4;
  centre.readings.picture.strongest = 0;
  REQUIRE(centre.found().size() == 1);
  CHECK(centre.found()[0].rule == "one centre");
  CHECK(centre.found()[0].panel == 2);

  TwoPanels balance;
  balance.readings.picture.balance = {-0.3, 0.1};
  REQUIRE(balance.found().size() == 1);
  CHECK(balance.found()[0].reason.find("toward its left") != std::string::npos);

  TwoPanels fight;
  fight.readings.picture.fights = {{0, 1, 12}};
  REQUIRE(fight.found().size() == 1);
  CHECK(fight.found()[0].panel == 2);

  TwoPanels many;
  many.readings.picture.centres.resize(3);
  REQUIRE(many.found().size() == 1);
  CHECK(many.found()[0].panel == 0);
}

TEST_CASE("a panel about nobody has no focus that could fail the squint test") {
  TwoPanels page;
  page.wishes.panels[0].focus.clear();
  page.readings.squints[0].holds = 0.1;
  CHECK(page.found().empty());
}

namespace {

SeenPanel panelAt(const Rect& box, Vector lead) {
  SeenPanel out;
  out.outline = polygonOf(box);
  out.focus = box.centre();
  out.lead = {box.centre(), lead, 1, "looks"};
  return out;
}

Finding about(RuleId rule, int panel) {
  Finding out;
  out.rule = std::string(nameOf(rule));
  out.panel = panel;
  return out;
}

}  // namespace

TEST_CASE("how far to turn a lead is told, and nothing is asked where none can arrive") {
  SeenPage page;
  page.page = {{0, 0}, {170, 260}};
  // A row of three, then a row of three: from the end of the first, panels are in the way.
  for (int row = 0; row < 2; ++row)
    for (int column = 0; column < 3; ++column)
      page.panels.push_back(
          panelAt({{5 + 55.0 * column, 5 + 120.0 * row}, {55 + 55.0 * column, 120 + 120.0 * row}},
                  {0, -1}));
  std::vector<Finding> findings{about(RuleId::HandedOn, 1), about(RuleId::HandedOn, 3),
                                about(RuleId::LeaksOff, 3), about(RuleId::Rhythm, 3)};
  aimLeads(findings, page);
  REQUIRE(findings.size() == 3);
  CHECK(findings[0].reason.find("clockwise") != std::string::npos);
  CHECK(findings[1].rule == nameOf(RuleId::LeaksOff));
  CHECK(findings[2].reason.empty());
}

}  // namespace tw
