#include "read/attention_weights.h"

#include <doctest/doctest.h>

namespace tw {

TEST_CASE("the shipped weights keep the published order: text and faces before figures") {
  const auto weights = readAttentionWeights();
  REQUIRE(weights);
  CHECK(std::min(weights->text, weights->faces) > weights->figures);
  CHECK(weights->figures >= weights->spectral);
  CHECK(weights->spectral > weights->centre);
}

TEST_CASE("a weight that is missing or no share is told with its place") {
  const auto read = attentionWeightsFrom(
      R"({"weights":{"text":{"weight":0.3},"faces":{"weight":"much"},"figures":{"weight":2},
          "spectral":{"weight":0.1},"centre":{"weight":0}}})",
      "mine.json");
  REQUIRE_FALSE(read);
  REQUIRE(read.error().size() == 2);
  CHECK(read.error()[0].place.path == "/weights/faces/weight");
  CHECK(read.error()[1].place.path == "/weights/figures/weight");
  CHECK_FALSE(attentionWeightsFrom("{", "mine.json"));
}

TEST_CASE("weights that are all zero are refused") {
  std::string json = R"({"weights":{)";
  for (const char* cue : {"text", "faces", "figures", "spectral"})
    json += std::string("\"") + cue + R"(":{"weight":0},)";
  CHECK_FALSE(attentionWeightsFrom(json + R"("centre":{"weight":0}}})", "none.json"));
}

}  // namespace tw
