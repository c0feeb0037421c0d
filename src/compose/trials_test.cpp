#include "compose/trials.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "compose/small_page.h"

namespace tw {

namespace {

double costOf(const Rough& rough, const std::string& rule, int panel) {
  double sum = 0;
  for (const CardLine& line : rough.card)
    if (line.rule == rule && line.panel == panel) sum += line.cost;
  return sum;
}

}  // namespace

TEST_CASE("each change is another staging, told in words of its own") {
  const SmallPage page;
  const MeasuredPage measured = page.measured();
  const std::vector<Trial> trials = trialsFor(measured, 1);
  CHECK(trials.size() >= 10);
  for (const Trial& trial : trials) {
    CHECK_FALSE(trial.change.empty());
    CHECK(trial.staging != measured.rough().panels[1].staging);
  }
}

TEST_CASE("a remedy that is said to help lowers the rule's cost when it is really made") {
  const SmallPage page;
  const MeasuredPage measured = page.measured();
  std::vector<Finding> findings = measured.measured().findings;
  Progress progress;
  REQUIRE(tryRemedies(measured, findings, 0, progress));
  int checked = 0;
  for (const Finding& finding : findings)
    for (const TriedRemedy& tried : finding.tried) {
      if (!tried.helps) continue;
      const auto panel = static_cast<std::size_t>(finding.panel) - 1;
      const std::vector<Trial> trials = trialsFor(measured, panel);
      const double before = costOf(measured.rough(), finding.rule, finding.panel);
      const bool lowers = std::ranges::any_of(trials, [&](const Trial& trial) {
        if (trial.change != tried.change) return false;
        MeasuredPage copy = measured;
        copy.restage(panel, trial.staging);
        return costOf(copy.rough(), finding.rule, finding.panel) < before;
      });
      CHECK_MESSAGE(lowers, finding.rule, ": ", tried.change);
      ++checked;
    }
  CHECK(checked > 0);
}

TEST_CASE("remedies are the same on one thread and on many") {
  const SmallPage page;
  const MeasuredPage measured = page.measured();
  std::vector<Finding> one = measured.measured().findings, many = one;
  Progress progress;
  REQUIRE(tryRemedies(measured, one, 1, progress));
  REQUIRE(tryRemedies(measured, many, 4, progress));
  CHECK(one == many);
}

TEST_CASE("trying remedies can be stopped") {
  const SmallPage page;
  const MeasuredPage measured = page.measured();
  std::vector<Finding> findings = measured.measured().findings;
  Progress progress;
  progress.stop();
  const auto done = tryRemedies(measured, findings, 0, progress);
  REQUIRE_FALSE(done);
  CHECK(done.error().front().cause == Cause::Stopped);
}

TEST_CASE("remedies of one finding come with the stagings that were measured") {
  const SmallPage page;
  const MeasuredPage measured = page.measured();
  std::vector<Finding> all = measured.measured().findings;
  Progress progress;
  REQUIRE(tryRemedies(measured, all, 0, progress));
  const auto mended =
      std::ranges::find_if(all, [](const Finding& finding) { return !finding.tried.empty(); });
  REQUIRE(mended != all.end());
  Finding alone = measured.measured().findings[static_cast<std::size_t>(mended - all.begin())];
  const auto stagings = tryRemedies(measured, alone, 0, progress);
  REQUIRE(stagings);
  CHECK(alone == *mended);
  CHECK(stagings->size() == alone.tried.size());
}

TEST_CASE("aiming is tried for leads only") {
  const SmallPage page;
  const MeasuredPage measured = page.measured();
  std::vector<Finding> findings = measured.measured().findings;
  Progress progress;
  REQUIRE(tryRemedies(measured, findings, 0, progress));
  for (const Finding& finding : findings)
    for (const TriedRemedy& tried : finding.tried)
      if (tried.change.starts_with("aim the lead"))
        CHECK((finding.rule == "handed on" || finding.rule == "leaks off the sheet"));
  for (const std::size_t panel : {0U, 1U}) {
    const std::vector<Trial> trials = trialsFor(measured, panel);
    CHECK(std::ranges::count_if(trials, [](const Trial& trial) {
            return trial.change.starts_with("aim the lead");
          }) <= 1);
  }
}

}  // namespace tw
