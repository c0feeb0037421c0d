#include "stage/light_wish.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "job/rough_fields.h"

using namespace tw;

namespace {

const LightWords& known() {
  static const LightWords words = [] {
    auto loaded = LightWords::load();
    REQUIRE(loaded.has_value());
    return std::move(*loaded);
  }();
  return words;
}

Lighting asked(const char* words) {
  const auto light = lightAsked(words, known());
  REQUIRE_MESSAGE(light.has_value(), std::string(words));
  return *light;
}

}  // namespace

TEST_CASE("a light is told in trade words: where from and how strong") {
  const Lighting left = asked("from the left");
  CHECK(left.key.from.x() < -0.8);
  CHECK(left.key.from.y() > 0);
  CHECK(asked("from right and above").key.from.x() > 0.5);
  CHECK(asked("from right and above").key.from.y() > 0.5);
  CHECK(asked("from below").key.from.y() < -0.6);
  CHECK(asked("key from behind").key.from.z() < -0.8);
  const Lighting own = asked("key 1.2 from the left, fill 20% from the right, rim 0.5 from behind");
  CHECK(own.key.strength == 1.2);
  CHECK(own.fill.strength == doctest::Approx(0.2));
  CHECK(own.fill.from.x() > 0.8);
  CHECK(own.rim.strength == 0.5);
  CHECK(own.rim.from.z() < -0.8);
}

TEST_CASE("a named light is the lexicon's, and single lamps may be changed after it") {
  CHECK(asked("back-lit").name == "back");
  CHECK(asked("Back-lit silhouette").name == "back");
  CHECK(asked("lit from below").name == "below");
  CHECK(asked("lantern light").name == "lamp");
  const Lighting changed = asked("back-lit, no rim, fill 0.3");
  CHECK(changed.rim.strength == 0);
  CHECK(changed.fill.strength == 0.3);
  CHECK(changed.key == asked("back-lit").key);
  CHECK(asked("low key").fill.strength < asked("high key").fill.strength);
}

TEST_CASE("words that name no light are refused with the part and an example") {
  for (const char* words :
       {"from somewhere", "key 9", "purple", "key -1", "fill much", ",", "and"}) {
    const auto light = lightAsked(words, known());
    INFO(words);
    REQUIRE_FALSE(light.has_value());
    CHECK(describe(light.error()).find("back-lit") != std::string::npos);
  }
}

TEST_CASE("exchanging left and right in the words mirrors the light") {
  for (const auto& [a, b] : {std::pair{"from the left and below", "from the right and below"},
                             {"key 1 from left and behind", "key 1 from right and behind"}}) {
    const Lighting one = mirrored(asked(a)), other = asked(b);
    CHECK((one.key.from - other.key.from).norm() < 1e-12);
  }
}

TEST_CASE("the light of a staging outlasts the words it came from") {
  Beat beat;
  beat.description = "Ada by lantern light.";
  Staging staging;
  CHECK(lightOf(staging, beat, known()).name == "lamp");
  beat.light = "back-lit";
  CHECK(lightOf(beat, known()).name == "back");
  staging.light = setLightOf(lightOf(beat, known()));
  beat.light = "noon";
  CHECK(lightOf(staging, beat, known()).name == "back");
}

TEST_CASE("a stored light is read back to the last digit") {
  const Lighting light = lightingOf(setLightOf(asked("key 0.9 from the left and above, rim 0.4")));
  const Lighting again = lightingOf(setLightOf(light));
  CHECK(again.key == light.key);
  CHECK(again.rim == light.rim);
  CHECK(setLightOf(light) == setLightOf(again));
}
