#include "command/script_text.h"

#include <doctest/doctest.h>

#include "command/demo_job.h"
#include "command/job_pages.h"

namespace tw {

TEST_CASE("every beat and every piece of copy of the demo is found where it was written") {
  const DemoJob job;
  const auto open = openJob(job.folder());
  REQUIRE(open);
  const auto script = scriptTextOf(job.folder(), open->job);
  REQUIRE(script);
  CHECK(script->file == "the-low-bell.txt");
  for (const Page& page : open->job.pages)
    for (const Beat& beat : page.beats) {
      const auto head = script->lineOfBeat(beat.id);
      REQUIRE_MESSAGE(head, beat.id);
      CHECK(script->lines[*head].number == beat.line);
      for (const CopyItem& item : beat.copy) {
        const auto line = script->lineOfItem(item.id);
        REQUIRE_MESSAGE(line, item.id);
        CHECK(script->lines[*line].beat == beat.id);
        const std::string word = item.text.substr(0, item.text.find(' '));
        CHECK(script->lines[*line].text.find(word) != std::string::npos);
      }
    }
}

TEST_CASE("what stands before the first panel of a page belongs to no beat") {
  Page page;
  page.beats.resize(2);
  page.beats[0].id = "p1-1";
  page.beats[0].line = 3;
  page.beats[1].id = "p2-1";
  page.beats[1].line = 7;
  const ScriptText script = linkedText(
      "PAGE ONE\n\nPANEL 1\nA door.\nPAGE TWO\nStill night.\nPANEL 1\nThe door opens.\n", {page});
  REQUIRE(script.lines.size() == 8);
  CHECK(script.lines[0].pageHead);
  CHECK(script.lines[0].beat.empty());
  CHECK(script.lines[3].beat == "p1-1");
  CHECK(script.lines[4].beat.empty());
  CHECK(script.lines[5].beat.empty());
  CHECK(script.lines[7].beat == "p2-1");
}

TEST_CASE("copy over several lines under a cue of its own is found in all of them") {
  Page page;
  page.beats.resize(1);
  page.beats[0].id = "p1-1";
  page.beats[0].line = 1;
  CopyItem first, second;
  first.id = "c1";
  first.text = "I told you the bell would never ring again.";
  second.id = "c2";
  second.text = "No.";
  page.beats[0].copy = {first, second};
  const ScriptText script = linkedText(
      "PANEL 1\nMARA waits. No bell.\n  MARA\n  I told you the bell\n  would never ring *again*.\n"
      "  ODO: \xE2\x80\x9CNo.\xE2\x80\x9D\n",
      {page});
  CHECK(script.lines[2].item.empty());
  CHECK(script.lines[3].item == "c1");
  CHECK(script.lines[4].item == "c1");
  CHECK(script.lines[5].item == "c2");
}

TEST_CASE("a job without a kept script gives no lines") {
  Job job;
  const auto script = scriptTextOf("nowhere", job);
  REQUIRE(script);
  CHECK(script->lines.empty());
}

}  // namespace tw
