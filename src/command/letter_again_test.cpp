#include "command/letter_again.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "command/demo_job.h"
#include "command/job_pages.h"

namespace tw {

TEST_CASE("retyped copy stands in every rough at once and goes back with the script's words") {
  DemoJob job;
  job.roughs(2);
  const auto wordsOf = [&] {
    const auto open = openJob(job.folder());
    REQUIRE(open);
    const Page& page = *open->job.page(4);
    REQUIRE(page.roughs.size() == 2);
    std::vector<std::string> out;
    for (const Rough& rough : page.roughs) {
      std::string words;
      for (const CopyLine& line : rough.panels[0].balloons[0].lines) words += line.text + " ";
      out.push_back(words);
    }
    return out;
  };
  const auto before = wordsOf();
  const Beat beat = openJob(job.folder())->job.page(4)->beats[0];
  REQUIRE_FALSE(beat.copy.empty());
  const std::string key = beat.id + ".copy." + beat.copy[0].id + "=";
  REQUIRE(changeBeats(job.folder(), {key + "Hush"}));
  for (const std::string& words : wordsOf()) CHECK(words == "HUSH ");
  REQUIRE(changeBeats(job.folder(), {key + "guess"}));
  CHECK(wordsOf() == before);
}

}  // namespace tw
