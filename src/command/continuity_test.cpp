#include "command/continuity.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "../../tests/json_schema_check.h"
#include "base/files.h"
#include "command/demo_job.h"
#include "command/job_pages.h"
#include "command/looks.h"
#include "press/png_surface.h"
#include "press/typesetter.h"

namespace tw {
namespace {

namespace fs = std::filesystem;

bool says(const StoryContinuity& story, std::string_view rule, std::string_view a,
          std::string_view b) {
  return std::ranges::any_of(story.findings, [&](const ContinuityFinding& f) {
    return f.rule == rule && f.sentence.find(a) != std::string::npos &&
           f.sentence.find(b) != std::string::npos;
  });
}

LookStatement statement(const char* from, const char* until, const char* words) {
  LookStatement said;
  said.who = "ines";
  said.from = from;
  said.until = until;
  said.words = words;
  return said;
}

/// A PNG written by libpng, through cairo.
std::string png(double wide, double high) {
  const Typesetter typesetter;
  PngSurface surface(typesetter, {{0, 0}, {wide, high}}, 25.4);
  surface.fill(Path(Rect{{0, 0}, {wide / 2, high}}), kBlack, FillRule::NonZero);
  return surface.finished().value();
}

}  // namespace

TEST_CASE("the demo's lookouts are found with both scenes named") {
  DemoJob job;
  const auto story = storyContinuity(job.folder());
  REQUIRE_MESSAGE(story.has_value(), (story ? std::string() : describe(story.error())));
  CHECK(story->scenes.size() == 8);
  CHECK(says(*story, "lost thing", "EXT. THE BOAT - DAWN", "INT. BELL CHAMBER - UNDERWATER"));
  for (const ContinuityFinding& finding : story->findings) {
    CHECK(finding.severity != Severity::Must);
    CHECK(finding.sentence.find(finding.there.heading) != std::string::npos);
  }
}

TEST_CASE("a look stated for one panel of a scene is a must and names both panels") {
  DemoJob job;
  REQUIRE(changeLooks(job.folder(), statement("p6-3", "p6-4", "dress")));
  const auto story = storyContinuity(job.folder());
  REQUIRE(story);
  CHECK(says(*story, "costume", "page 6 panel 4", "page 6 panel 2"));
  CHECK(story->findings.front().severity == Severity::Must);
}

TEST_CASE("statements that make no sense are refused and change nothing") {
  DemoJob job;
  const auto before = readFile(job.folder() / "job.json");
  CHECK_FALSE(changeLooks(job.folder(), statement("p99-1", "", "dress")));
  CHECK_FALSE(changeLooks(job.folder(), statement("p6-3", "p1-1", "dress")));
  LookStatement nobody = statement("p1-1", "", "dress");
  nobody.who = "nobody";
  CHECK_FALSE(changeLooks(job.folder(), nobody));
  LookStatement hand;
  hand.who = "ines";
  hand.hand = "third";
  CHECK_FALSE(changeLooks(job.folder(), hand));
  CHECK_FALSE(changeScenes(job.folder(), {"s99.time=night"}, {}));
  CHECK_FALSE(changeScenes(job.folder(), {"s1.after=s1"}, {}));
  CHECK_FALSE(changeScenes(job.folder(), {}, {{"p99-1", "EXT. SEA - DAY"}}));
  CHECK(readFile(job.folder() / "job.json").value() == before.value());
}

TEST_CASE("a scene that the artist opens takes the rest of its scene into the past") {
  DemoJob job;
  const auto changed = changeScenes(job.folder(), {}, {{"p6-4", "FLASHBACK - TEN YEARS EARLIER"}});
  REQUIRE(changed);
  const StoryTime story(*changed);
  CHECK(story.moments().front().beat->id == "p6-4");
  CHECK(story.sceneOf(*story.momentOf("p6-6")).years == -10);
  CHECK(story.sceneOf(*story.momentOf("p6-3")).heading == "EXT. THE BOAT - DUSK");
}

TEST_CASE("the JSON of continuity follows its published schema") {
  DemoJob job;
  const auto story = storyContinuity(job.folder());
  REQUIRE(story);
  const auto schema =
      readFile(fs::path(TIERWRIGHT_SOURCE_DIR) / "docs/formats/continuity-output.schema.json");
  REQUIRE(schema.has_value());
  tests::SchemaCheck check(nlohmann::json::parse(*schema));
  for (const std::string& finding : check.findings(nlohmann::json::parse(continuityJson(*story))))
    FAIL_CHECK(finding);
}

TEST_CASE("a reference picture is copied whole and its size read as libpng wrote it") {
  DemoJob job;
  const ScratchFolder scratch;
  const std::string bytes = png(30, 20);
  REQUIRE(writeFileAtomically(scratch / "suit.png", bytes));
  ReferenceRequest request;
  request.who = "ines";
  request.add = scratch / "suit.png";
  request.note = "the suit";
  const auto shown = changeReferences(job.folder(), request);
  REQUIRE_MESSAGE(shown.has_value(), (shown ? std::string() : describe(shown.error())));
  REQUIRE(shown->size() == 1);
  CHECK(shown->front().width == 30);
  CHECK(shown->front().height == 20);
  CHECK(readFile(job.folder() / "art/reference/suit.png").value() == bytes);

  SUBCASE("another picture of that name gets a name of its own") {
    REQUIRE(writeFileAtomically(scratch / "suit.png", png(10, 10)));
    const auto two = changeReferences(job.folder(), request);
    REQUIRE(two);
    CHECK(two->size() == 2);
    CHECK(two->back().file == "suit-2.png");
    CHECK(readFile(job.folder() / "art/reference/suit.png").value() == bytes);
  }
  SUBCASE("the same picture again is one picture") {
    CHECK(changeReferences(job.folder(), request)->size() == 1);
  }
  SUBCASE("a missing file is reported") {
    fs::remove(job.folder() / "art/reference/suit.png");
    CHECK(changeReferences(job.folder(), {})->front().trouble.find("missing") != std::string::npos);
  }
  SUBCASE("dropped it is no longer the character's and still in the folder") {
    ReferenceRequest drop;
    drop.who = "ines";
    drop.drop = "suit.png";
    CHECK(changeReferences(job.folder(), drop)->empty());
    CHECK(fs::exists(job.folder() / "art/reference/suit.png"));
  }
  SUBCASE("the chart shows it") {
    Progress progress;
    const auto story = storyContinuity(job.folder());
    REQUIRE(story);
    const auto written = writeContinuitySheets(
        job.folder(), *story, {.files = {scratch / "chart.svg"}, .dpi = 60, .threads = 1},
        progress);
    REQUIRE_MESSAGE(written.has_value(), (written ? std::string() : describe(written.error())));
    const std::string svg = readFile(scratch / "chart.svg").value();
    CHECK(svg.find("reference-1-1") != std::string::npos);
    CHECK(svg.find("INES") != std::string::npos);
  }
}

TEST_CASE("what is no picture is not attached") {
  DemoJob job;
  ReferenceRequest request;
  request.who = "ines";
  request.add = fs::path(TIERWRIGHT_SOURCE_DIR) / "README.md";
  CHECK_FALSE(changeReferences(job.folder(), request));
  CHECK_FALSE(fs::exists(job.folder() / "art/reference"));
}

}  // namespace tw
