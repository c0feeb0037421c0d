#include "review/story_findings.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "review/evidence.h"
#include "review/example_story.h"

namespace tw {

using namespace example;

TEST_CASE("findings of a story come most severe first and every one is complete") {
  Job told = job({page(1, {panel().figure("ada", 10).says("ada", 240)}),
                  page(3, {panel(), panel()}, true), page(5, {panel("It reveals ben.")})});
  told.pages.push_back(Page{.number = 6, .beats = {panel().beat}});
  const auto all = storyFindings(told);
  REQUIRE(all.size() >= 4);
  CHECK(all.front().severity == Severity::Must);
  CHECK(std::ranges::is_sorted(all, {}, &Finding::severity));
  const auto book = EvidenceBook::load();
  REQUIRE(book.has_value());
  for (const Finding& finding : all) {
    CHECK(book->knows(finding.rule));  // or else it could not be answered
    CAPTURE(finding.rule);
    CHECK_FALSE(finding.measure.empty());
    CHECK_FALSE(finding.reason.empty());
    CHECK_FALSE(finding.remedy.empty());
    CHECK_FALSE(finding.unit.empty());
    CHECK(finding.page > 0);
    if (finding.evidence == Evidence::CommonPractice)
      CHECK(finding.source == "common practice, no source");
  }
}

TEST_CASE("a finding that the artist answered keeps her reason") {
  Job told = job({page(1, {panel().figure("ada", 10)})});
  REQUIRE(named(storyFindings(told), "full figure on the page").size() == 1);
  told.pages[0].silenced = {{"full figure on the page", "", "meant to be close"}};
  CHECK(named(storyFindings(told), "full figure on the page")[0]->silencedWhy ==
        "meant to be close");
}

TEST_CASE("an empty job is no trouble") {
  CHECK(storyFindings(Job{}).empty());
}

}  // namespace tw
