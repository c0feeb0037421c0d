#include <doctest/doctest.h>

#include "review/example_story.h"
#include "review/story_findings.h"
#include "review/story_of_job.h"

namespace tw {

using namespace example;

namespace {

std::vector<Finding> scenes(const Job& told) {
  return sceneFindings(told, storyOf(told));
}

/// Ada left of Ben, seen from one side of the line between them or from the other.
Told two(double cameraZ) {
  Told out = panel().figure("ada", 10, 40).figure("ben", 10, 120);
  out.seen.staging.camera.eye = {0.8, 1.6, cameraZ};
  return out;
}

}  // namespace

TEST_CASE("a place shown in the third panel is early and in the fourth late") {
  const auto wideAt = [](std::size_t at) {
    std::vector<Told> panels(5, panel().figure("ada", 30));
    panels[at].shot(ShotSize::VeryLong);
    return job({page(1, panels)});
  };
  CHECK(named(scenes(wideAt(2)), "setting shown early").empty());
  const auto all = scenes(wideAt(3));
  REQUIRE(named(all, "setting shown early").size() == 1);
  CHECK(named(all, "setting shown early")[0]->value == 4);
  CHECK(named(all, "setting shown early")[0]->reason.find("EXT. PIER - DAY") != std::string::npos);
}

TEST_CASE("a scene that is never placed is found and a page without a rough is not blamed") {
  std::vector<Told> panels(4, panel().figure("ada", 30));
  Job told = job({page(1, panels)});
  const auto all = scenes(told);
  REQUIRE(named(all, "setting shown early").size() == 1);
  CHECK(named(all, "setting shown early")[0]->value == 0);
  CHECK(named(all, "setting shown early")[0]->severity == Severity::Should);
  told.pages[0].roughs.clear();
  CHECK(named(scenes(told), "setting shown early").empty());
}

TEST_CASE("the camera that crosses the line between two is found and mirroring is tried") {
  CHECK(named(scenes(job({page(1, {two(-4), two(-4), two(-4)})})), "axis kept").empty());
  const auto all = scenes(job({page(1, {two(-4), two(4), two(-4)})}));
  const auto found = named(all, "axis kept");
  REQUIRE(found.size() == 2);  // over and back
  CHECK(found[0]->panel == 2);
  REQUIRE(found[0]->tried.size() == 1);
  CHECK(found[0]->tried[0].before == 2);
  CHECK(found[0]->tried[0].after == 0);
  CHECK(found[0]->tried[0].helps);
}

TEST_CASE("another scene and another pair have axes of their own") {
  Told ben = panel().figure("ben", 10, 40).figure("cleo", 10, 120);
  ben.seen.staging.camera.eye = {0.8, 1.6, 4};
  CHECK(named(scenes(job({page(1, {two(-4), ben})})), "axis kept").empty());
  CHECK(named(scenes(job({page(1, {two(-4), two(4).in("s2")})})), "axis kept").empty());
}

TEST_CASE("the axis is kept from page to page") {
  const auto all = scenes(job({page(1, {two(-4)}), page(2, {two(4)})}));
  CHECK(named(all, "axis kept").size() == 1);
}

TEST_CASE("a first speaker on the side read last is found and mirroring is tried") {
  Told talk = two(-4).says("ben", 4).says("ada", 4);
  const auto all = scenes(job({page(1, {two(-4), talk})}));
  const auto found = named(all, "speakers in order");
  REQUIRE(found.size() == 1);
  REQUIRE(found[0]->tried.size() == 1);
  CHECK(found[0]->tried[0].helps);
  CHECK(found[0]->tried[0].aside == "it would cross the axis");
}

TEST_CASE("a long talk is named as a slow stretch") {
  std::vector<Page> pages;
  for (int n = 1; n <= 6; ++n)
    pages.push_back(page(n, std::vector<Told>(4, panel().says("ada", n == 4 ? 40 : 5))));
  const auto all = scenes(job(pages));
  REQUIRE(named(all, "tempo").size() == 1);
  CHECK(named(all, "tempo")[0]->page == 4);
  CHECK(named(all, "tempo")[0]->evidence == Evidence::Ours);
}

}  // namespace tw
