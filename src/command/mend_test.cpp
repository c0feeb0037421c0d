#include "command/mend.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "command/demo_job.h"
#include "command/read_page.h"
#include "command/staged_page.h"

namespace tw {

namespace {

/// Of panel 2; the job is closed again.
Staging stagingOf(const std::filesystem::path& folder) {
  const auto open = openStagedPage(folder, 4, "");
  REQUIRE(open);
  return (*open)->measured->rough().panels[1].staging;
}

}  // namespace

TEST_CASE("a change that is kept is in the rough when the job is opened again") {
  DemoJob job;
  job.roughs(1);
  const Staging before = stagingOf(job.folder());
  const MendRequest request{job.folder(), 4, "", 2, "mirror the picture"};
  const auto mended = mendPanel(request);
  REQUIRE(mended);
  const auto again = openStagedPage(job.folder(), 4, "");
  REQUIRE(again);
  const Rough& rough = (*again)->measured->rough();
  CHECK(rough.panels[1].staging.choice.mirrored != before.choice.mirrored);
  CHECK(rough.score == doctest::Approx(mended->scoreAfter));
  CHECK(std::ranges::equal((*again)->stored().roughs.front().card, rough.card, {}, &CardLine::rule,
                           &CardLine::rule));
}

TEST_CASE("mirroring twice gives the first picture back") {
  DemoJob job;
  job.roughs(1);
  const MendRequest request{job.folder(), 4, "", 2, "mirror the picture"};
  const auto once = mendPanel(request);
  const auto twice = mendPanel(request);
  REQUIRE(once);
  REQUIRE(twice);
  CHECK(twice->scoreAfter == doctest::Approx(once->scoreBefore));
}

TEST_CASE("what a change takes away and brings is told, and taken back with it") {
  DemoJob job;
  job.roughs(1);
  const MendRequest request{job.folder(), 4, "", 2, "mirror the picture"};
  const auto there = mendPanel(request), back = mendPanel(request);
  REQUIRE(there);
  REQUIRE(back);
  const auto names = [](const std::vector<Finding>& findings) {
    std::vector<std::string> out;
    for (const Finding& f : findings) out.push_back(f.rule + std::to_string(f.panel));
    std::ranges::sort(out);
    return out;
  };
  CHECK(names(there->fresh) == names(back->gone));
  CHECK(names(there->gone) == names(back->fresh));
}

TEST_CASE("no two changes of a panel have one name") {
  DemoJob job;
  job.roughs(1);
  for (int panel = 1; panel <= 5; ++panel) {
    auto known = mendPanel({job.folder(), 4, "", panel, ""});
    REQUIRE(known);
    std::ranges::sort(known->changes);
    CHECK(std::ranges::adjacent_find(known->changes) == known->changes.end());
  }
}

TEST_CASE("every change that read tried can be kept in the words of read") {
  DemoJob job;
  job.roughs(1);
  ReadPageRequest ask;
  ask.job = job.folder();
  ask.page = 4;
  ask.readers = 20;
  Progress progress;
  const auto read = readStagedPage(ask, progress);
  REQUIRE(read);
  for (const Finding& finding : read->findings) {
    if (finding.tried.empty()) continue;
    const auto known = mendPanel({job.folder(), 4, "", finding.panel, ""});
    REQUIRE(known);
    for (const TriedRemedy& tried : finding.tried)
      CHECK(std::ranges::find(known->changes, tried.change) != known->changes.end());
  }
}

TEST_CASE("an unknown change is refused with those that can be tried, and nothing is written") {
  DemoJob job;
  job.roughs(1);
  const Staging before = stagingOf(job.folder());
  const auto mended = mendPanel({job.folder(), 4, "", 2, "make it better"});
  REQUIRE_FALSE(mended);
  CHECK(stagingOf(job.folder()) == before);
  CHECK(describe(mended.error()).find("mirror the picture") != std::string::npos);
  CHECK_FALSE(mendPanel({job.folder(), 4, "", 40, "mirror the picture"}));
}

}  // namespace tw
