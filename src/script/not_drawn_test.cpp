// Which nouns of a description are named to the artist as not drawn. Expectations are an artist's
// judgement, no source.
#include <doctest/doctest.h>

#include "script/script_fixture.h"

using namespace tw;

namespace {

std::string missingIn(std::string_view description) {
  std::string out;
  for (const std::string& name : beatFrom(description).notDrawn)
    out += (out.empty() ? "" : " ") + name;
  return out;
}

}  // namespace

TEST_CASE("a thing without a shape is named as not drawn") {
  CHECK(missingIn("Mara waits by the tram.") == "tram");
  CHECK(missingIn("Mara pulls a rusty lever. The old tram stands on its rails.") == "lever tram");
  CHECK(missingIn("Mara leans on the rail, a lantern in her hand.") == "rail");
  CHECK(missingIn("A tram. Another tram.") == "tram");
}

TEST_CASE("what is drawn or asks for nothing to be built is not named") {
  CHECK(missingIn("Mara holds a lantern and looks at the water.") == "");
  CHECK(missingIn("Wide shot of the harbour at dawn. The light falls on her face.") == "");
  CHECK(missingIn("The great fallen bell, the chain running from its crown.") == "");
  CHECK(missingIn("Far off, the top stands like a broken tooth.") == "");
  CHECK(missingIn("Close-up. The silence of the three of them, an old woman and a boy.") == "");
  CHECK(missingIn("Tiny against the stone of the tower.") == "");
}

TEST_CASE("things beyond those that a panel can hold are named") {
  const std::string all =
      missingIn("A lantern, a rope, a knife, a crate, a barrel, a ladder, an anchor and a bench.");
  CHECK(all == "anchor bench");
}

TEST_CASE("stone is a thing by itself and none when somebody is small against it") {
  CHECK(beatFrom("Mara lifts a stone.").props.size() == 1);
  CHECK(beatFrom("Mara, tiny against the stone.").props.empty());
}

TEST_CASE("who goes through the arch of a window goes to one thing") {
  const Beat beat = beatFrom("Mara swims through the arch of a window.");
  REQUIRE(beat.props.size() == 1);
  CHECK(beat.props[0].shape == "arch");
}
