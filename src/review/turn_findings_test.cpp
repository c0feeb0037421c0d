#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "review/example_story.h"
#include "review/story_findings.h"
#include "review/story_of_job.h"

namespace tw {

using namespace example;

namespace {

std::vector<Finding> turns(const Job& told) {
  return turnFindings(told, storyOf(told));
}

std::vector<Page> pages(int count) {
  std::vector<Page> out;
  for (int n = 1; n <= count; ++n) out.push_back(page(n, {panel(), panel(), panel()}));
  return out;
}

}  // namespace

TEST_CASE("a reveal moved to the page that faces its own is found") {
  CHECK(rc::check("turn", [] {
    const int even = 2 * *rc::gen::inRange(1, 6);
    const auto at = *rc::gen::inRange<std::size_t>(0, 3);
    auto story = pages(12);
    story[static_cast<std::size_t>(even - 1)].beats[at].description = "Suddenly he is there.";
    RC_ASSERT(named(turns(job(story)), "page turn").empty());
    std::swap(story[static_cast<std::size_t>(even - 1)].beats[at].description,
              story[static_cast<std::size_t>(even)].beats[at].description);
    const auto all = turns(job(story));
    const auto found = named(all, "page turn");
    RC_ASSERT(found.size() == 1u);
    RC_ASSERT(found[0]->page == even + 1);
    RC_ASSERT(found[0]->panel == static_cast<int>(at) + 1);
  }));
}

TEST_CASE("the remedy of a page turn is tried and tells what it breaks") {
  auto story = pages(3);
  story[2].beats[0].description = "It reveals the tower.";
  story.push_back(page(4, {panel(), panel()}, true));
  const auto all = turns(job(story));
  const auto found = named(all, "page turn");
  REQUIRE(found.size() == 1);
  CHECK(found[0]->severity == Severity::Should);
  REQUIRE(found[0]->tried.size() == 2);
  CHECK(found[0]->tried[0].helps);
  CHECK(found[0]->tried[0].after == 0);
  CHECK(found[0]->tried[0].aside.find("1 spread") != std::string::npos);
}

TEST_CASE("a spread on an odd page cannot lie open") {
  CHECK(named(turns(job({page(2, {panel()}, true)})), "spread starts left").empty());
  const auto all = turns(job({page(3, {panel()}, true)}));
  REQUIRE(named(all, "spread starts left").size() == 1);
  CHECK(named(all, "spread starts left")[0]->severity == Severity::Must);
}

TEST_CASE("a face in the fold of a spread is found with its place") {
  const auto middle = [](double x) {
    Job told = job({page(2, {panel().figure("ada", 14, x), panel()}, true)});
    return told;
  };
  CHECK(named(turns(middle(100)), "faces in the fold").empty());
  const auto all = turns(middle(170));
  const auto found = named(all, "faces in the fold");
  REQUIRE(found.size() == 1);
  CHECK(found[0]->value == doctest::Approx(100));
  CHECK_FALSE(found[0]->place.points.empty());
  CHECK(found[0]->beat == "p2-1");
}

}  // namespace tw
