#include "read/eye_path_model.h"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "base/files.h"

namespace tw {
namespace {

using nlohmann::json;

json shipped() {
  const auto path = presetPath("read/eye_path.json");
  REQUIRE(path.has_value());
  return json::parse(*readFile(*path));
}

std::string refusal(const json& changed) {
  const auto model = readEyePathText(changed.dump(), "eyes.json");
  return model ? "" : describe(model.error());
}

TEST_CASE("the shipped constants of the eye path are read") {
  const auto model = loadEyePathModel();
  REQUIRE(model.has_value());
  CHECK(model->readingFixationMs == 225);  // Rayner 1998, Psychological Bulletin 124:372
  CHECK(model->gazeEffectG == 0.23);       // gaze cueing, 112 samples, Journal of Vision 2021
}

// Published ranges: Rayner 2009 (pictures, regressions), Rayner et al. 2012 (saccades).
TEST_CASE("published constants stand in their published ranges") {
  const EyePathModel m = *loadEyePathModel();
  CHECK(m.pictureFixationMs >= 260);
  CHECK(m.pictureFixationMs <= 330);
  CHECK(m.pictureFixationByCopyMs >= 260);
  CHECK(m.readingRegressions >= 0.10);
  CHECK(m.readingRegressions <= 0.15);
  CHECK(m.saccadeMs >= 20);
  CHECK(m.saccadeMs <= 35);
}

// Hedges' g to log odds: g·π/√3, Hasselblad & Hedges 1995; from memory, high.
TEST_CASE("the gaze effect is small odds") {
  CHECK(loadEyePathModel()->gazeLogOdds() == doctest::Approx(0.417).epsilon(0.002));
}

TEST_CASE("what is wrong with the constants is told with its place") {
  json file = shipped();
  file["constants"]["saccade_ms"]["value"] = -3;
  file["constants"]["glance_back"].erase("source");
  file["constants"]["fork_copy"]["certainty"] = "certain";
  file["constants"].erase("skip_base");
  file["constants"]["skip_bas"] = file["constants"]["saccade_ms"];
  const std::string told = refusal(file);
  for (const char* place : {"/constants/saccade_ms/value", "/constants/glance_back/source",
                            "/constants/fork_copy/certainty", "skip_base", "skip_bas"}) {
    CAPTURE(place);
    CHECK(told.find(place) != std::string::npos);
  }
}

TEST_CASE("constants that cannot hold together are refused") {
  json file = shipped();
  file["constants"]["dense_words"]["value"] = 2;
  CHECK(refusal(file).find("dense_from_words") != std::string::npos);
}

TEST_CASE("a file that is no list of constants is refused") {
  CHECK_FALSE(readEyePathText("[]", "eyes.json").has_value());
  CHECK_FALSE(readEyePathText("{\"constants\": 3}", "eyes.json").has_value());
  CHECK_FALSE(readEyePathText("{", "eyes.json").has_value());
}

}  // namespace
}  // namespace tw
