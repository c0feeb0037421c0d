// What lasts beyond a strand of the story is common practice, no source.
#include "job/look_at.h"

#include <doctest/doctest.h>

#include <cstdlib>

namespace tw {
namespace {

const LookWords& words() {
  static const LookWords all = [] {
    ::setenv("TIERWRIGHT_PRESETS", TIERWRIGHT_SOURCE_DIR "/presets", 0);
    return LookWords::load().value();
  }();
  return all;
}

/// Four panels: the first two and the last now, the third ten years back.
struct Tale {
  Tale() {
    mara.id = "mara";
    mara.name = "MARA";
    StoryScene past{"s2", "FLASHBACK", "", "", ""};
    past.strand = kFlashback;
    past.years = -10;
    job.scenes = {StoryScene{"s1", "INT. TOWER", "", "", ""}, past,
                  StoryScene{"s3", "INT. TOWER", "", "", ""}};
    Page page;
    page.number = 1;
    for (int n = 1; n <= 4; ++n) {
      Beat beat;
      beat.id = "b" + std::to_string(n);
      beat.panel = n;
      beat.scene = n < 3 ? "s1" : n == 3 ? "s2" : "s3";
      page.beats.push_back(beat);
    }
    job.pages = {page};
  }
  LookHeld at(const std::string& beat) const {
    const StoryTime story(job);
    return lookAt(mara, story, story.momentOf(beat).value(), words());
  }

  Job job;
  Character mara;
};

}  // namespace

TEST_CASE("a look holds from its panel on and not before") {
  Tale tale;
  tale.mara.looks.push_back({"b2", "", "blanket", false, false, "artist"});
  CHECK(tale.at("b1").dressings.empty());
  CHECK(tale.at("b2").dressings.size() == 1);
  CHECK(tale.at("b4").dressings.size() == 1);
}

TEST_CASE("a look that ends is gone after its last panel") {
  Tale tale;
  tale.mara.looks.push_back({"b1", "b1", "blanket", false, false, "artist"});
  CHECK(tale.at("b1").dressings.size() == 1);
  CHECK(tale.at("b2").dressings.empty());
}

TEST_CASE("a scar from the past is borne in the present and a cut has healed") {
  Tale tale;
  tale.mara.looks.push_back({"b3", "", "scar on the left cheek", false, false, "artist"});
  tale.mara.looks.push_back({"b3", "", "cut on the right cheek", false, false, "artist"});
  CHECK(tale.at("b3").marks.size() == 2);
  const LookHeld now = tale.at("b4");
  REQUIRE(now.marks.size() == 1);
  CHECK(now.marks[0].kind == "scar");
  CHECK(now.marks[0].side == "left");
}

}  // namespace tw
