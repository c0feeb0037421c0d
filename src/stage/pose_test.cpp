#include <doctest/doctest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "stage/balance.h"
#include "stage/joint_limits.h"
#include "stage/shipped_presets.h"

namespace tw {
namespace {

/// Loads poses from a folder made for the test, then forgets it.
Result<PoseLibrary> loadedFrom(const std::map<std::string, std::string>& files) {
  namespace fs = std::filesystem;
  const char* was = std::getenv("TIERWRIGHT_PRESETS");
  const std::string before = was ? was : TIERWRIGHT_SOURCE_DIR "/presets";
  std::string made = (fs::temp_directory_path() / "tierwright-poses-XXXXXX").string();
  REQUIRE(::mkdtemp(made.data()) != nullptr);
  fs::create_directories(fs::path(made) / "poses");
  for (const auto& [name, text] : files) std::ofstream(fs::path(made) / "poses" / name) << text;
  ::setenv("TIERWRIGHT_PRESETS", made.c_str(), 1);
  Result<PoseLibrary> loaded = PoseLibrary::load();
  ::setenv("TIERWRIGHT_PRESETS", before.c_str(), 1);
  fs::remove_all(made);
  return loaded;
}

}  // namespace

TEST_CASE("the poses that scripts ask for all ship with the program") {
  for (const char* name :
       {"stand",         "contrapposto", "walk",  "run",           "leap",  "fall",
        "crouch",        "kneel",        "sit",   "lie",           "point", "reach-up",
        "reach-out",     "pull",         "push",  "push-overhead", "carry", "cradle",
        "throw",         "strike",       "guard", "climb",         "swim",  "float",
        "look-down",     "look-back",    "lean",  "mourn",         "hold",  "hold-up",
        "hands-on-hips", "arms-crossed", "shout", "write",         "crawl", "dive",
        "stagger",       "recoil",       "aim",   "listen",        "shrug", "plead",
        "salute",        "cheer",        "sneak", "lean-back",     "slump", "kick",
        "punch",         "block",        "lift",  "drag",          "dance", "bow",
        "look-up",       "ride",         "hang",  "push-sideways"}) {
    INFO(name);
    CHECK(shippedPoses().find(name) != nullptr);
  }
}

TEST_CASE("every pose has a title, a known support and a line of action") {
  for (const std::string& name : shippedPoses().names()) {
    INFO(name);
    const Pose& pose = *shippedPoses().find(name);
    CHECK(!pose.title.empty());
    CHECK(pose.title != name);
    CHECK(!pose.line.empty());
    const std::vector<std::string> known{"feet", "knees", "seat", "back", "hands", "none"};
    CHECK(std::find(known.begin(), known.end(), pose.support) != known.end());
    if (pose.support == "none") CHECK(pose.lift > 0);
  }
}

// AAOS and Merck joint limits (Norkin & White, Measurement of Joint Motion), 10° of grace.
TEST_CASE("every shipped pose stays within what joints can do") {
  for (const std::string& name : shippedPoses().names())
    for (const std::string& warning : beyondReach(*shippedPoses().find(name), shippedLimits()))
      FAIL_CHECK(name << ": " << warning);
}

TEST_CASE("a pose beyond the joints' limits is warned about") {
  Pose pose;
  pose.turnsDeg["left elbow"] = {-40, 0, 0};
  pose.turnsDeg["waist"] = {0, 30, 0};
  pose.turnsDeg["chest"] = {0, 30, 0};
  CHECK(beyondReach(pose, shippedLimits()).size() == 2);
}

// Mass centres: Winter 2009, Table 4.1. Two centimetres of grace for the flesh around the soles.
TEST_CASE("who stands, kneels or sits still keeps the mass centre over the support") {
  Character who;
  who.heightM = 1.7;
  const Body body = bodyOf(who);
  int judged = 0;
  for (const std::string& name : shippedPoses().names()) {
    const Pose& pose = *shippedPoses().find(name);
    const Balance balance = balanceOf(body, pose, posed(body, pose, SetFigure{}), 0);
    if (!balance.judged || !pose.held.empty()) continue;
    ++judged;
    INFO(name << ": " << balance.label);
    CHECK(balance.marginM > -0.02);
  }
  CHECK(judged > 30);
}

TEST_CASE("a mirrored pose is the picture in a looking-glass, joint for joint") {
  const Body body = bodyOf(Character{});
  for (const std::string& name : shippedPoses().names()) {
    const Pose& pose = *shippedPoses().find(name);
    const Skeleton s = posed(body, pose, SetFigure{}), m = posed(body, mirrored(pose), SetFigure{});
    double worst = 0;
    for (std::size_t i = 0; i < kJoints; ++i) {
      const auto joint = static_cast<Joint>(i);
      const Vec3 glass = s[joint].cwiseProduct(Vec3(-1, 1, 1));
      worst = std::max(worst, (glass - m[mirrored(joint)]).norm());
    }
    INFO(name);
    CHECK(worst < 1e-9);
  }
}

TEST_CASE("no shipped pose is symmetric") {
  for (const std::string& name : shippedPoses().names()) {
    INFO(name);
    const Pose& pose = *shippedPoses().find(name);
    CHECK(mirrored(pose).turnsDeg != pose.turnsDeg);
  }
}

TEST_CASE("an unknown pose falls back to standing") {
  CHECK(shippedPoses().find("juggles-nine-cats") == nullptr);
  CHECK(shippedPoses().orStand("juggles-nine-cats").name == "stand");
}

TEST_CASE("mirroring twice gives the pose back") {
  const Pose& pose = shippedPoses().orStand("point");
  const Pose twice = mirrored(mirrored(pose));
  CHECK(twice.turnsDeg == pose.turnsDeg);
  CHECK(twice.pointer == pose.pointer);
  CHECK(mirrored(pose).pointer == "right wrist");
  CHECK(mirrored(pose).rightHand == pose.leftHand);
}

TEST_CASE("what is wrong in pose files is told all at once, with file and place") {
  const auto loaded = loadedFrom({{"stand.json", R"({"title": "stands", "turns": {}})"},
                                  {"torn.json", R"({"title": "to)"},
                                  {"odd.json", R"({"title": 7, "turns": {"tail": [1, 2, 3],
                                     "left hip": [1, "a"]}, "hands": {"left": "paw"}})"}});
  REQUIRE(!loaded.has_value());
  CHECK(loaded.error().size() == 5);
  const std::string told = describe(loaded.error());
  for (const char* part : {"torn.json", "odd.json", "tail", "paw"}) {
    INFO(told);
    CHECK(told.find(part) != std::string::npos);
  }
}

TEST_CASE("a folder of poses without a standing one is refused") {
  CHECK(!loadedFrom({{"wave.json", "{}"}}).has_value());
}

TEST_CASE("joints are found by the names that describe them") {
  for (std::size_t i = 0; i < kJoints; ++i) {
    const auto joint = static_cast<Joint>(i);
    CHECK(jointNamed(nameOf(joint)) == joint);
    CHECK(mirrored(mirrored(joint)) == joint);
  }
  CHECK(!jointNamed("left wing").has_value());
}

}  // namespace tw
