#include "review/panel_findings.h"

#include <doctest/doctest.h>

namespace tw {

namespace {

/// A page of one panel with one figure, seen as the tests need.
struct OnePanel {
  Job job;
  PageCase page;
  Measured measured;

  OnePanel() {
    Character ines;
    ines.id = "ines";
    ines.name = "INES";
    job.cast = {ines};
    page.job = &job;
    page.panels.resize(1);
    page.panels[0].focus = "ines";
    page.panels[0].leastHeadMm = 9;
    RoughPanel panel;
    panel.outline = {{{10, 10}, {90, 10}, {90, 70}, {10, 70}}};
    SeenFigure seen;
    seen.who = "ines";
    seen.visible = 0.9;
    seen.headMm = 6;
    seen.cut = "waist";
    seen.face = {{{30, 20}, {40, 20}, {40, 32}, {30, 32}}};
    panel.figures = {seen};
    measured.rough.panels = {panel};
    measured.variants.resize(1);
    measured.arrivals.resize(1);
    measured.covered = {0};
  }
};

}  // namespace

TEST_CASE("a head that is too small is told in millimetres, at the face, by the person's name") {
  const OnePanel one;
  const auto found = panelFound(RuleId::HeadHeight, one.measured, one.page, 0);
  REQUIRE(found);
  CHECK(found->value == doctest::Approx(6));
  CHECK(found->limit == doctest::Approx(9));
  CHECK(found->reason.starts_with("Ines's head is 6.0 mm"));
  CHECK(found->place == one.measured.rough.panels[0].figures[0].face);
}

TEST_CASE("rules on the page or on pairs have no figure of one panel") {
  const OnePanel one;
  CHECK_FALSE(panelFound(RuleId::Rhythm, one.measured, one.page, 0));
  CHECK_FALSE(panelFound(RuleId::AxisKept, one.measured, one.page, 0));
}

TEST_CASE("the last panel is told to lead to the page turn and not to be flipped") {
  OnePanel one;
  one.page.panels.resize(2, one.page.panels[0]);
  one.measured.rough.panels.resize(2, one.measured.rough.panels[0]);
  one.measured.variants.resize(2);
  one.measured.arrivals.resize(2);
  one.measured.covered.resize(2);
  const auto first = panelFound(RuleId::HandedOn, one.measured, one.page, 0);
  const auto last = panelFound(RuleId::HandedOn, one.measured, one.page, 1);
  REQUIRE(first);
  REQUIRE(last);
  CHECK(first->remedy.empty());  // the rule's own
  CHECK(first->reason.ends_with("the next panel"));
  CHECK(last->reason.ends_with("the page turn"));
  CHECK(last->remedy.find("page is turned") != std::string::npos);
  CHECK(panelFound(RuleId::LeaksOff, one.measured, one.page, 1)->remedy.find("Flip") ==
        std::string::npos);
}

TEST_CASE("room for copy points at the upper third") {
  const OnePanel one;
  const auto found = panelFound(RuleId::RoomForCopy, one.measured, one.page, 0);
  REQUIRE(found);
  REQUIRE(found->place.points.size() == 4);
  CHECK(found->place.points[2].y == doctest::Approx(30));
}

}  // namespace tw
