#include "command/values.h"

#include <doctest/doctest.h>

#include "../../tests/json_schema_check.h"
#include "base/files.h"
#include "command/demo_job.h"

namespace tw {

namespace {

namespace fs = std::filesystem;

/// The demo's page 4, once it has a rough.
ValuesRequest page4(DemoJob& job) {
  job.roughs(1);
  ValuesRequest values;
  values.job = job.folder();
  values.page = 4;
  return values;
}

}  // namespace

TEST_CASE("the shares of a value plan fill the panel, and its JSON follows the published schema") {
  DemoJob job;
  const ValuesRequest request = page4(job);
  const auto made = valuesOf(request);
  REQUIRE_MESSAGE(made.has_value(), (made ? std::string() : describe(made.error())));
  REQUIRE(made->size() == 5);
  for (const PanelValues& panel : *made) {
    double sum = 0;
    for (const double share : panel.plan.shares) sum += share;
    CHECK(sum == doctest::Approx(1).epsilon(0.01));
  }
  const auto schema =
      readFile(fs::path(TIERWRIGHT_SOURCE_DIR) / "docs/formats/values-output.schema.json");
  REQUIRE(schema.has_value());
  tests::SchemaCheck check(nlohmann::json::parse(*schema));
  for (const std::string& finding :
       check.findings(nlohmann::json::parse(valuesJson(request, *made))))
    FAIL_CHECK(finding);
}

TEST_CASE("a page or a rough or a panel that is not there is refused by name") {
  DemoJob job;
  ValuesRequest request = page4(job);
  request.panel = 40;
  CHECK_FALSE(valuesOf(request).has_value());
  request.panel = {};
  request.rough = "Z";
  const auto rough = valuesOf(request);
  REQUIRE_FALSE(rough.has_value());
  CHECK(describe(rough.error()).find("\"Z\"") != std::string::npos);
}

}  // namespace tw
