#include "command/story.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "../../tests/json_schema_check.h"
#include "base/files.h"
#include "command/demo_job.h"

namespace tw {
namespace {

namespace fs = std::filesystem;

StoryTold told(const DemoJob& job) {
  auto story = storyTold(job.folder());
  REQUIRE_MESSAGE(story.has_value(), (story ? std::string() : describe(story.error())));
  return std::move(*story);
}

bool isFound(const StoryTold& story, std::string_view rule, int page) {
  return std::ranges::any_of(story.findings,
                             [&](const Finding& f) { return f.rule == rule && f.page == page; });
}

}  // namespace

TEST_CASE("a story without roughs is told from its script and nothing of it is called fine") {
  DemoJob job;
  const StoryTold story = told(job);
  CHECK(story.story.pages.size() == 7);
  for (const StoryPage& page : story.story.pages) {
    CHECK_FALSE(page.measured);
    CHECK(isFound(story, "not measured", page.number));
  }
  CHECK(story.tempo.places.size() == 39);
  CHECK(isFound(story, "page turn", 7));  // the dominant picture faces page 6
}

TEST_CASE("a page with roughs is measured and the map shows it") {
  DemoJob job;
  job.roughs(1);
  const StoryTold story = told(job);
  CHECK_FALSE(isFound(story, "not measured", 4));
  const ScratchFolder scratch;
  Progress progress;
  const auto done =
      writeStoryMaps(job.folder(), story, {.files = {scratch / "m.svg"}, .threads = 1}, progress);
  REQUIRE_MESSAGE(done.has_value(), (done ? std::string() : describe(done.error())));
  const std::string svg = readFile(scratch / "m.svg").value();
  CHECK(svg.find("Page 4, rough A") != svg.npos);
  CHECK(storyRows(story).size() == 8);
  CHECK(storyRows(story)[3][1] == "A");
  CHECK(storyRows(story)[4][1] == "none");
  CHECK(svg.find("Page 5, no rough yet") != svg.npos);

  SUBCASE("its JSON follows the published schema") {
    const auto schema =
        readFile(fs::path(TIERWRIGHT_SOURCE_DIR) / "docs/formats/story-output.schema.json");
    REQUIRE(schema.has_value());
    tests::SchemaCheck check(nlohmann::json::parse(*schema));
    const auto json = nlohmann::json::parse(storyJson(story));
    for (const std::string& finding : check.findings(json)) FAIL_CHECK(finding);
    CHECK(json["pages"][1]["spread"] == true);
    CHECK(json["pages"][1]["panels"][0]["seen"].is_null());
    CHECK(json["pages"][2]["panels"][0]["seen"].is_object());
  }
}

TEST_CASE("a silenced finding stays on the map with its reason") {
  DemoJob job;
  StoryTold story = told(job);
  for (Finding& finding : story.findings)
    if (finding.rule == "page turn") finding.silencedWhy = "seen first, on purpose";
  const ScratchFolder scratch;
  Progress progress;
  REQUIRE(
      writeStoryMaps(job.folder(), story, {.files = {scratch / "m.svg"}, .threads = 1}, progress));
  const std::string svg = readFile(scratch / "m.svg").value();
  CHECK(svg.find("page turn, silenced") != svg.npos);
}

TEST_CASE("a map of a folder without a job is bad input") {
  const ScratchFolder scratch;
  CHECK_FALSE(storyTold(scratch / "none"));
}

}  // namespace tw
