#include "command/compare.h"

#include <doctest/doctest.h>

#include <filesystem>

#include "../../tests/json_schema_check.h"
#include "base/files.h"
#include "command/demo_job.h"

namespace tw {

TEST_CASE("two roughs of the demo differ by what their scores differ") {
  DemoJob job;
  const auto roughs = job.roughs(2).composed.roughs;
  const auto compared = compareOnPage({job.folder(), 4, "A", "B"});
  REQUIRE(compared);
  double sum = 0;
  for (const RuleDifference& rule : compared->difference.rules) sum += rule.difference();
  // Rules that differ by less than a card prints are left out.
  CHECK(sum == doctest::Approx(roughs[1].score - roughs[0].score).epsilon(0.02));
  CHECK(compared->difference.panels.size() == roughs[0].panels.size());
}

TEST_CASE("the JSON of a comparison follows its published schema") {
  DemoJob job;
  job.roughs(2);
  const auto compared = compareOnPage({job.folder(), 4, "A", "B"});
  REQUIRE(compared);
  const auto schema = readFile(std::filesystem::path(TIERWRIGHT_SOURCE_DIR) /
                               "docs/formats/compare-output.schema.json");
  REQUIRE(schema);
  tests::SchemaCheck check(nlohmann::json::parse(*schema));
  for (const std::string& finding : check.findings(nlohmann::json::parse(comparedJson(*compared))))
    FAIL_CHECK(finding);
}

TEST_CASE("a rough that is not there cannot be compared") {
  DemoJob job;
  job.roughs(1);
  CHECK_FALSE(compareOnPage({job.folder(), 4, "A", "B"}));
}

}  // namespace tw
