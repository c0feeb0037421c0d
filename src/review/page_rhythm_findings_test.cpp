#include <doctest/doctest.h>

#include "review/example_story.h"
#include "review/story_findings.h"
#include "review/story_of_job.h"

namespace tw {

using namespace example;

namespace {

std::vector<Finding> rhythm(const Job& told) {
  return pageRhythmFindings(told, storyOf(told));
}

}  // namespace

TEST_CASE("a page without a full figure is found and one with nobody on it is not") {
  CHECK(named(rhythm(job({page(1, {panel()})})), "full figure on the page").empty());
  CHECK(named(rhythm(job({page(1, {panel().figure("ada", 10)})})), "full figure on the page")
            .size() == 1);
  CHECK(named(rhythm(job({page(1, {panel().figure("ada", 10, 40, true)})})),
              "full figure on the page")
            .empty());
}

TEST_CASE("four heads of one height in a row are found and another size in the middle mends it") {
  const std::vector<Told> three(3, panel().figure("ada", 10)), five(5, panel().figure("ada", 10));
  CHECK(named(rhythm(job({page(1, three)})), "sizes in a row").empty());
  const auto all = rhythm(job({page(1, five)}));
  const auto found = named(all, "sizes in a row");
  REQUIRE(found.size() == 1);
  CHECK(found[0]->value == 5);
  CHECK(found[0]->severity == Severity::Should);
  REQUIRE(found[0]->tried.size() == 1);
  CHECK(found[0]->tried[0].after == 2);
}

TEST_CASE("too many words for a panel and for the page are found without any rough") {
  Job told = job({page(1, {panel().says("ada", 60), panel().says("ada", 60), panel(), panel()})});
  told.pages[0].roughs.clear();
  told.pages[0].brief.mostWords = 100;
  const auto all = rhythm(told);
  CHECK(named(all, "words in a panel").size() == 2);
  REQUIRE(named(all, "words on the page").size() == 1);
  CHECK(named(all, "words on the page")[0]->severity == Severity::Must);
  CHECK(named(all, "words on the page")[0]->value == 120);
}

TEST_CASE("a page without a rough is told as not measured and no more") {
  Job told = job({page(1, {panel().figure("ada", 10)})});
  told.pages[0].roughs.clear();
  const auto all = rhythm(told);
  REQUIRE(all.size() == 1);
  CHECK(all[0].rule == "not measured");
}

}  // namespace tw
