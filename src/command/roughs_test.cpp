#include "command/roughs.h"

#include <doctest/doctest.h>

#include <cmath>
#include <filesystem>
#include <set>

#include "../../tests/json_schema_check.h"
#include "base/files.h"
#include "command/demo_job.h"
#include "command/job_models.h"
#include "command/job_pages.h"

namespace tw {

namespace fs = std::filesystem;

TEST_CASE("a page gets six roughs, best first, each scored by the sum of its card") {
  DemoJob job;
  const PageRoughs made = job.roughs();
  const auto& roughs = made.composed.roughs;
  REQUIRE(roughs.size() == 6);
  std::set<std::string> shapes;
  for (std::size_t i = 0; i < roughs.size(); ++i) {
    CHECK(roughs[i].name == std::string(1, static_cast<char>('A' + i)));
    if (i > 0) CHECK(roughs[i].score >= roughs[i - 1].score);
    double sum = 0;
    for (const CardLine& line : roughs[i].card) sum += line.cost;
    CHECK(sum == doctest::Approx(roughs[i].score));
    shapes.insert(roughs[i].arrangement + roughs[i].treatment);
  }
  CHECK(shapes.size() >= 5);
}

TEST_CASE("the JSON of the roughs follows its published schema") {
  DemoJob job;
  const auto schema =
      readFile(fs::path(TIERWRIGHT_SOURCE_DIR) / "docs/formats/roughs-output.schema.json");
  REQUIRE(schema.has_value());
  tests::SchemaCheck check(nlohmann::json::parse(*schema));
  const auto findings = check.findings(nlohmann::json::parse(roughsJson({job.roughs()})));
  for (const std::string& finding : findings) FAIL_CHECK(finding);
}

TEST_CASE("a brief that cannot be met still gets roughs and the amount that is missing") {
  DemoJob job;
  job.brief({"focus=ines", "head-mm=120"});
  const PageRoughs made = job.roughs();
  CHECK(made.composed.roughs.size() == 6);
  REQUIRE_FALSE(made.composed.unmet.empty());
  CHECK(made.composed.unmet.front().find("mm short") != std::string::npos);
}

TEST_CASE("a whole, liftable figure on demand is whole in the best rough") {
  DemoJob job;
  job.brief({"dominant=p4-5", "focus=ines", "liftable=yes", "dominant-share=0.4"});
  const PageRoughs made = job.roughs();
  const Rough& best = made.composed.roughs.front();
  bool seen = false;
  for (const RoughPanel& panel : best.panels)
    for (const SeenFigure& figure : panel.figures)
      if (panel.dominant && figure.who == "ines") {
        seen = true;
        CHECK(figure.cut == "whole");
        CHECK(figure.visible > 0.9);
      }
  CHECK(seen);
}

TEST_CASE("roughs to be unlike stay under their names beside new ones that differ") {
  DemoJob job;
  const auto first = job.roughs(2).composed.roughs;
  Progress progress;
  const auto made = makeRoughs({job.folder(), 4, {.keep = 2}, {}, {"B"}}, progress);
  REQUIRE(made);
  const auto& roughs = made->front().composed.roughs;
  REQUIRE(roughs.size() == 3);
  CHECK(roughs[0].name == "A");
  CHECK(roughs[1].name == "B");
  CHECK(roughs[2].name == "C");
  CHECK(roughs[1].panels[0].staging.choice == first[1].panels[0].staging.choice);
  CHECK(roughs[1].score == doctest::Approx(first[1].score).epsilon(0.001));
  CHECK_FALSE(makeRoughs({job.folder(), 4, {.keep = 2}, {}, {"Q"}}, progress));
  CHECK_FALSE(makeRoughs({job.folder(), std::nullopt, {.keep = 2}, {}, {"B"}}, progress));
}

TEST_CASE("kept roughs that the artist has ranked otherwise stay first in her order") {
  DemoJob job;
  job.roughs(3);
  auto open = openJob(job.folder());
  REQUIRE(open);
  Page page = *open->job.page(4);
  std::swap(page.roughs[0], page.roughs[2]);
  auto workshop = workshopFor(*open);
  REQUIRE(workshop);
  Progress progress;
  const auto found = findRoughs(open->job, page, *workshop, {.keep = 1}, {"A", "C"}, progress);
  REQUIRE(found);
  std::string names;
  for (const Rough& rough : found->page.roughs) names += rough.name;
  CHECK(names == "CAB");
}

}  // namespace tw
