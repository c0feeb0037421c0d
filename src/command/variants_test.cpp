#include "command/variants.h"

#include <doctest/doctest.h>

#include <filesystem>
#include <set>

#include "../../tests/json_schema_check.h"
#include "base/files.h"
#include "base/scratch_folder.h"
#include "command/job_pages.h"
#include "command/new_job.h"
#include "command/roughs.h"
#include "stage/joint_limits.h"

namespace tw {

namespace {

namespace fs = std::filesystem;

/// The demo's first page with two roughs, made once.
const fs::path& demoJob() {
  static ScratchFolder scratch;
  static const fs::path folder = [] {
    NewJobRequest request;
    request.folder = scratch / "job";
    request.script = fs::path(TIERWRIGHT_SOURCE_DIR) / "demo/the-low-bell.txt";
    REQUIRE(newJob(request).has_value());
    Progress progress;
    REQUIRE(makeRoughs({request.folder, 1, {.keep = 2}, {}}, progress).has_value());
    return request.folder;
  }();
  return folder;
}

/// A panel of rough A that shows a figure.
int panelWithFigure() {
  const auto open = openJob(demoJob());
  REQUIRE(open.has_value());
  const auto& panels = open->job.page(1)->roughs[0].panels;
  for (std::size_t i = 0; i < panels.size(); ++i)
    if (!panels[i].staging.figures.empty()) return static_cast<int>(i) + 1;
  FAIL("no panel of the demo's first page shows a figure");
  return 0;
}

VariantsMade variantsOf(VariantsRequest request) {
  request.job = demoJob();
  request.panel = panelWithFigure();
  auto made = makeVariants(request);
  REQUIRE_MESSAGE(made.has_value(), (made ? std::string() : describe(made.error())));
  return *made;
}

}  // namespace

TEST_CASE("a panel gets eight other poses, unlike each other, best first, within the limits") {
  const VariantsMade made = variantsOf({});
  const auto& kept = made.variants.kept;
  REQUIRE(kept.size() == 8);
  const JointLimits limits = JointLimits::load().value();
  const PoseLibrary poses = PoseLibrary::load().value();
  std::set<std::string> names;
  for (std::size_t i = 0; i < kept.size(); ++i) {
    INFO(kept[i].name);
    names.insert(kept[i].name);
    if (i > 0) CHECK(kept[i].readability <= kept[i - 1].readability);
    CHECK(kept[i].unlike > 0.019);
    const SetFigure& set = kept[i].staging.figures[made.index];
    CHECK(beyondReach(withTurns(poses.orStand(set.pose), set.turnsDeg), limits).empty());
    for (std::size_t k = 0; k < kept[i].staging.figures.size(); ++k)
      if (k != made.index)
        CHECK(kept[i].staging.figures[k] == made.variants.present.staging.figures[k]);
  }
  CHECK(names.size() == kept.size());
}

TEST_CASE("the same panel gives the same variants, as JSON that follows its schema") {
  const std::string once = variantsJson(variantsOf({})), again = variantsJson(variantsOf({}));
  CHECK(once == again);
  tests::SchemaCheck check(nlohmann::json::parse(
      readFile(std::string(TIERWRIGHT_SOURCE_DIR) + "/docs/formats/variants-output.schema.json")
          .value()));
  std::string findings;
  for (const std::string& finding : check.findings(nlohmann::json::parse(once)))
    findings += finding + "\n";
  CHECK(findings == "");
}

TEST_CASE("a variant that is taken stands in the rough, with the rest of the page as it was") {
  const auto before = openJob(demoJob())->job.page(1)->roughs;
  VariantsRequest request;
  request.rough = "B";
  request.take = 2;
  request.job = demoJob();
  request.panel = 0;
  for (std::size_t i = 0; i < before[1].panels.size() && request.panel == 0; ++i)
    if (!before[1].panels[i].staging.figures.empty()) request.panel = static_cast<int>(i) + 1;
  const auto made = makeVariants(request);
  REQUIRE(made.has_value());
  const auto after = openJob(demoJob())->job.page(1)->roughs;
  CHECK(after[0] == before[0]);
  const auto at = static_cast<std::size_t>(request.panel - 1);
  for (std::size_t i = 0; i < after[1].panels.size(); ++i)
    if (i != at) CHECK(after[1].panels[i] == before[1].panels[i]);
  const SetFigure& was = made->variants.kept[1].staging.figures[made->index];
  const SetFigure& is = after[1].panels[at].staging.figures[made->index];
  CHECK(is.pose == was.pose);
  CHECK(is.headingDeg == doctest::Approx(was.headingDeg));
  REQUIRE(is.turnsDeg.size() == was.turnsDeg.size());
  for (const auto& [joint, turn] : was.turnsDeg)
    for (std::size_t i = 0; i < 3; ++i)
      CHECK(is.turnsDeg.at(joint)[i] == doctest::Approx(turn[i]).epsilon(0.001));
}

TEST_CASE("what does not exist is said in a sentence") {
  const auto problemOf = [](VariantsRequest request) {
    request.job = demoJob();
    const auto made = makeVariants(request);
    REQUIRE_FALSE(made.has_value());
    return describe(made.error());
  };
  VariantsRequest request;
  request.rough = "Q";
  CHECK(problemOf(request).find("no rough") != std::string::npos);
  request = {};
  request.panel = 40;
  CHECK(problemOf(request).find("no panel 40") != std::string::npos);
  request = {};
  request.panel = panelWithFigure();
  request.figure = "nobody";
  CHECK(problemOf(request).find("not in that panel") != std::string::npos);
}

}  // namespace tw
