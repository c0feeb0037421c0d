#include "command/beat_choices.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "command/demo_job.h"
#include "command/job_pages.h"

namespace tw {

namespace {

const BeatChoice& named(const std::vector<BeatChoice>& choices, const std::string& key) {
  const auto found = std::ranges::find(choices, key, &BeatChoice::key);
  REQUIRE_MESSAGE(found != choices.end(), key);
  return *found;
}

}  // namespace

TEST_CASE("every word that a form offers is one that a correction takes") {
  const DemoJob job;
  const auto open = openJob(job.folder());
  const auto known = knownWordsOf(job.folder());
  const auto lights = lightNames();
  REQUIRE(open);
  REQUIRE(known);
  REQUIRE(lights);
  for (const Page& page : open->job.pages)
    for (const Beat& beat : page.beats)
      for (const BeatChoice& choice : beatChoices(page, beat.id, open->job, *known, *lights)) {
        CHECK_FALSE(choice.label.empty());
        const std::size_t step = std::max<std::size_t>(1, choice.words.size() / 4);
        for (std::size_t i = 0; i < choice.words.size(); i += step) {
          Page changed = page;
          const std::string text = beat.id + "." + choice.key + "=" + choice.words[i].value;
          const auto set = setOverrideKey(changed, open->job, text, *known);
          CHECK_MESSAGE(set.has_value(), text);
        }
        if (choice.kind != ChoiceKind::Number) continue;
        for (const double end : {choice.least, choice.most}) {
          Page changed = page;
          CHECK(setOverrideKey(changed, open->job,
                               beat.id + "." + choice.key + "=" + std::to_string(end), *known));
        }
      }
}

TEST_CASE("a correction shows beside what the script says and goes back by guess") {
  const DemoJob job;
  REQUIRE(changeBeats(job.folder(), {"p4-2.shot=extreme close-up", "p4-2.weight=3"}));
  const auto open = openJob(job.folder());
  const auto known = knownWordsOf(job.folder());
  REQUIRE(open);
  REQUIRE(known);
  Page page = *open->job.page(4);
  auto choices = beatChoices(page, "p4-2", open->job, *known, {});
  CHECK(named(choices, "shot").value == "extreme close-up");
  CHECK(named(choices, "shot").asScript != "extreme close-up");
  CHECK(named(choices, "shot").corrected);
  CHECK(named(choices, "weight").value == "3");
  CHECK_FALSE(named(choices, "eye").corrected);
  REQUIRE(setOverrideKey(page, open->job, "p4-2.shot=guess", *known));
  choices = beatChoices(page, "p4-2", open->job, *known, {});
  CHECK(named(choices, "shot").value == named(choices, "shot").asScript);
  CHECK_FALSE(named(choices, "shot").corrected);
}

TEST_CASE("nobody is put in twice and only who is there is taken out") {
  const DemoJob job;
  const auto open = openJob(job.folder());
  REQUIRE(open);
  const Page& page = open->job.pages[0];
  const auto choices = beatChoices(page, "p1-3", open->job, {}, {});  // Ines alone
  const auto values = [](const BeatChoice& choice) {
    std::vector<std::string> out;
    for (const ChoiceWord& word : choice.words) out.push_back(word.value);
    return out;
  };
  CHECK(values(named(choices, "drop")) == std::vector<std::string>{"ines"});
  CHECK(values(named(choices, "add")) == std::vector<std::string>{"teo", "brannoch"});
  CHECK(beatChoices(page, "p9-9", open->job, {}, {}).empty());
}

}  // namespace tw
