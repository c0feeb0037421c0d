#include "command/pin.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>

#include "../../tests/json_schema_check.h"
#include "base/files.h"
#include "command/demo_job.h"
#include "command/job_pages.h"

namespace tw {

TEST_CASE("a pinned panel is staged so in all new roughs until the pin is taken back") {
  DemoJob job;
  const Rough before = job.roughs(2).composed.roughs[1];
  const auto pinned = changePins({.job = job.folder(), .page = 4, .panel = 2, .rough = "B"});
  REQUIRE(pinned);
  CHECK(isPinned(pinned->page, before, 1));
  REQUIRE(pinsInWords(pinned->page).size() == 1);
  CHECK(pinsInWords(pinned->page)[0].starts_with("panel 2: "));
  const PageRoughs made = job.roughs(2, 5);
  CHECK(made.composed.unkept.empty());
  for (const Rough& rough : made.composed.roughs)
    CHECK(rough.panels[1].staging.choice == before.panels[1].staging.choice);
  const auto back = changePins({.job = job.folder(), .page = 4, .panel = 2, .back = true});
  REQUIRE(back);
  CHECK(back->page.pins == Pins{});
  CHECK_FALSE(changePins({.job = job.folder(), .page = 4, .panel = 2, .back = true}));
}

TEST_CASE("a pinned arrangement is that of all new roughs and dragged borders are told") {
  DemoJob job;
  const Rough before = job.roughs(2).composed.roughs[1];
  const PinRequest ask{.job = job.folder(), .page = 4, .arrangement = true, .rough = "B"};
  const auto pinned = changePins(ask);
  REQUIRE(pinned);
  CHECK(pinned->notes.empty());
  CHECK(isArrangementPinned(pinned->page, before));
  for (const Rough& rough : job.roughs(2, 5).composed.roughs) {
    CHECK(rough.arrangement == before.arrangement);
    CHECK(rough.treatment == before.treatment);
  }
  {
    auto open = openJob(job.folder());
    REQUIRE(open);
    Page page = *open->job.page(4);
    for (Point& p : page.roughs[1].panels[0].outline.points) p.x += 4;
    REQUIRE(open->folder.savePage(page));
  }
  const auto dragged = changePins(ask);
  REQUIRE(dragged);
  CHECK(dragged->notes.size() == 1);
}

TEST_CASE("asking for nothing shows the pins and taking back without a name takes all") {
  DemoJob job;
  job.roughs(1);
  REQUIRE(changePins({.job = job.folder(), .page = 4, .panel = 1, .arrangement = true}));
  const auto shown = changePins({.job = job.folder(), .page = 4});
  REQUIRE(shown);
  CHECK(pinsInWords(shown->page).size() == 2);
  const auto back = changePins({.job = job.folder(), .page = 4, .back = true});
  REQUIRE(back);
  CHECK(pinsInWords(back->page).empty());
}

TEST_CASE("a panel or rough that is not there cannot be pinned") {
  DemoJob job;
  job.roughs(1);
  CHECK_FALSE(changePins({.job = job.folder(), .page = 4, .panel = 77}));
  CHECK_FALSE(changePins({.job = job.folder(), .page = 4, .panel = 1, .rough = "Q"}));
  CHECK_FALSE(changePins({.job = job.folder(), .page = 77, .panel = 1}));
}

TEST_CASE("the JSON of the pins follows its published schema") {
  DemoJob job;
  job.roughs(1);
  const auto pinned = changePins({.job = job.folder(), .page = 4, .panel = 1, .arrangement = true});
  REQUIRE(pinned);
  const auto schema = readFile(std::filesystem::path(TIERWRIGHT_SOURCE_DIR) /
                               "docs/formats/pin-output.schema.json");
  REQUIRE(schema);
  tests::SchemaCheck check(nlohmann::json::parse(*schema));
  for (const std::string& finding : check.findings(nlohmann::json::parse(pinsJson(pinned->page))))
    FAIL_CHECK(finding);
}

}  // namespace tw
