#include "read/page_handed_on.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <numbers>
#include <optional>

#include "read/eye_pages_test.h"

namespace tw {
namespace {

using namespace test;

SeenPage ledPage(const std::vector<std::optional<Vector>>& directions) {
  SeenPage page = gridPage(2, 2);
  for (std::size_t i = 0; i < directions.size(); ++i)
    if (directions[i]) page.panels[i].lead = {page.panels[i].focus, directions[i]->unit(), 1, ""};
  return page;
}

std::optional<ChangedLead> changed(const SeenPage& page, std::size_t panel, LeadChange change,
                                   double tiltDeg = 0) {
  for (const ChangedLead& c : changedLeads(page, panel))
    if (c.change == change && c.tiltDeg == tiltDeg) return c;
  return std::nullopt;
}

SeenPage anyLeads() {
  SeenPage page = gridPage(*rc::gen::inRange(1, 4), *rc::gen::inRange(1, 4));
  for (SeenPanel& panel : page.panels) {
    const double angle = *rc::gen::inRange(0, 6283) / 1000.0;
    const double strength = *rc::gen::inRange(0, 3) / 2.0;
    panel.lead = {panel.focus, {std::cos(angle), std::sin(angle)}, strength, ""};
  }
  return page;
}

TEST_CASE("the page's mean counts a panel without a lead as nothing") {
  const PageHandedOn page = handedOnOf(ledPage({Vector{1, 0}, std::nullopt, std::nullopt}));
  CHECK(page.panels[0].arrival.next == doctest::Approx(1));
  CHECK_FALSE(page.panels[1].hasLead);
  CHECK(page.panels[1].arrival.next == 0);
  CHECK(page.mean == doctest::Approx(1.0 / 3));
}

TEST_CASE("the last panel has no next one and is not in the mean") {
  const SeenPage led = ledPage({Vector{1, 0}, std::nullopt, Vector{1, 0}, Vector{1, 1}});
  const PageHandedOn page = handedOnOf(led);
  CHECK_FALSE(page.panels[3].hasNext);
  CHECK(page.panels[3].hasLead);
  CHECK(page.panels[3].arrival.next > 0.5);  // the page turn
  CHECK(page.mean == doctest::Approx(2.0 / 3));
}

TEST_CASE("the turn that is told points the lead at the next entry") {
  const PageHandedOn page = handedOnOf(ledPage({Vector{1, 0}}));
  // From (44, 66.5) to the next panel's upper left corner (92, 0): up to the right.
  const double expected = std::atan2(-66.5, 48) * 180 / std::numbers::pi;
  CHECK(page.panels[0].turnDeg == doctest::Approx(expected));
}

TEST_CASE("removing a lead never raises handed-on") {
  CHECK(rc::check("removal never raises", [] {
    const SeenPage page = anyLeads();
    const double before = handedOnOf(page).mean;
    RC_ASSERT(before >= 0 && before <= 1 + 1e-12);
    for (std::size_t i = 0; i < page.panels.size(); ++i) {
      SeenPage without = page;
      without.panels[i].lead = {};
      RC_ASSERT(handedOnOf(without).mean <= before + 1e-12);
    }
  }));
}

TEST_CASE("a mirrored page read the other way hands on alike") {
  CHECK(rc::check("mirror", [] {
    const SeenPage page = anyLeads();
    const PageHandedOn a = handedOnOf(page), b = handedOnOf(mirrorOf(page));
    RC_ASSERT(std::abs(a.mean - b.mean) < 1e-9);
    for (std::size_t i = 0; i < a.panels.size(); ++i)
      RC_ASSERT(std::abs(a.panels[i].turnDeg + b.panels[i].turnDeg) < 1e-6);
  }));
}

TEST_CASE("mirroring mends a lead that looks back") {
  const SeenPage page = ledPage({Vector{-1, 0}});
  CHECK(handedOnOf(page).mean == 0);
  const auto mended = changed(page, 0, LeadChange::Mirror);
  REQUIRE(mended.has_value());
  CHECK(mended->arrival.next == doctest::Approx(1));
  CHECK(mended->mean == doctest::Approx(1.0 / 3));
  CHECK(mended->lead.from == page.panels[0].lead.from);  // it stands in the middle
}

TEST_CASE("mirroring twice is no change") {
  const SeenPage page = ledPage({Vector{0.6, 0.8}});
  SeenPage once = page;
  once.panels[0].lead = changed(page, 0, LeadChange::Mirror)->lead;
  CHECK(changed(once, 0, LeadChange::Mirror)->lead == page.panels[0].lead);
}

TEST_CASE("a tilt turns the lead by its degrees about the focus") {
  SeenPage page = ledPage({Vector{1, 0}});
  page.panels[0].lead.from = page.panels[0].focus + Vector{10, 0};
  const auto tilt = changed(page, 0, LeadChange::Tilt, 10);
  REQUIRE(tilt.has_value());
  const double deg = std::atan2(tilt->lead.direction.y, tilt->lead.direction.x);
  CHECK(deg * 180 / std::numbers::pi == doctest::Approx(10));
  CHECK((tilt->lead.from - page.panels[0].focus).length() == doctest::Approx(10));
  CHECK(tilt->lead.from.y > page.panels[0].focus.y);  // clockwise on the page
}

TEST_CASE("a lead aimed at the next entry needs no more turn") {
  CHECK(rc::check("aimed", [] {
    const SeenPage page = anyLeads();
    const auto panel = *rc::gen::inRange<std::size_t>(0, page.panels.size());
    const auto aimed = changed(page, panel, LeadChange::AimAtEntry);
    RC_ASSERT(aimed.has_value());
    RC_ASSERT(std::abs(aimed->arrival.towardEntry - 1) < 1e-9);
  }));
}

TEST_CASE("the best aim arrives wholly across a gutter and hardly from the end of a row") {
  const auto across = changed(ledPage({Vector{0, 1}}), 0, LeadChange::AimBest);
  REQUIRE(across.has_value());
  CHECK(across->arrival.next == doctest::Approx(1));
  const auto back = changed(ledPage({std::nullopt, Vector{0, 1}}), 1, LeadChange::AimBest);
  REQUIRE(back.has_value());
  CHECK(back->arrival.next < 0.5);
}

TEST_CASE("the best aim is at least as good as any other change of the lead's direction") {
  CHECK(rc::check("best", [] {
    const SeenPage page = anyLeads();
    const auto panel = *rc::gen::inRange<std::size_t>(0, page.panels.size());
    const double best = changed(page, panel, LeadChange::AimBest)->arrival.next;
    RC_ASSERT(best >= changed(page, panel, LeadChange::AimAtEntry)->arrival.next);
  }));
}

TEST_CASE("swapping takes the lead to the neighbour's place") {
  const SeenPage page = ledPage({std::nullopt, Vector{1, 0}});
  const auto swapped = changed(page, 1, LeadChange::SwapWithPrevious);
  REQUIRE(swapped.has_value());
  CHECK(swapped->panel == 0);
  CHECK(swapped->arrival.next == doctest::Approx(1));
  CHECK(swapped->mean > handedOnOf(page).mean);
}

TEST_CASE("a panel without a lead can only be given one") {
  for (const ChangedLead& c : changedLeads(gridPage(2, 2), 0)) {
    const bool given = c.change == LeadChange::AimAtEntry || c.change == LeadChange::AimBest;
    CHECK(given);
    CHECK(c.lead.strength == 1);
  }
  CHECK(changedLeads(gridPage(2, 2), 0).size() == 2);
  CHECK(changedLeads(gridPage(2, 2), 9).empty());
}

TEST_CASE("insets on a ground hand on among themselves") {
  SeenPage page;
  page.page = kEyePage;
  page.panels = {panelAt(0, 0, 180, 270), panelAt(10, 10, 60, 80), panelAt(90, 10, 60, 80)};
  page.panels[1].layer = page.panels[2].layer = 1;
  page.panels[1].lead = {page.panels[1].focus, {1, 0}, 1, ""};
  CHECK(handedOnOf(page).panels[1].arrival.next == doctest::Approx(1));
}

}  // namespace
}  // namespace tw
