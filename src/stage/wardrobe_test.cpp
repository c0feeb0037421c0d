#include "stage/wardrobe.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>
#include <functional>
#include <nlohmann/json.hpp>

#include "base/files.h"
#include "stage/garment_lines.h"

namespace tw {
namespace {

const std::string kFile = TIERWRIGHT_SOURCE_DIR "/presets/wardrobe/garments.json";

const Wardrobe& shipped() {
  static const Wardrobe wardrobe = [] {
    ::setenv("TIERWRIGHT_PRESETS", TIERWRIGHT_SOURCE_DIR "/presets", 0);
    return Wardrobe::load().value();
  }();
  return wardrobe;
}

Character person(const std::string& note, Sex sex = Sex::Female,
                 const std::string& id = "someone") {
  Character c;
  c.id = id;
  c.sex = sex;
  c.note = note;
  return c;
}

Look lookOf(const std::string& note, Sex sex = Sex::Female) {
  return shipped().lookOf(person(note, sex));
}

Mesh meshOf(const Character& c, Pose pose = {}) {
  Body body = bodyOf(c);
  body.look = shipped().lookOf(c);
  return bodyMesh(body, posed(body, pose, SetFigure{}), 1);
}

double lowestOf(const Mesh& mesh, BodyPart part) {
  double low = 1e9;
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
    if (mesh.part[t] == static_cast<std::uint8_t>(part))
      for (const auto corner : mesh.triangles[t]) low = std::min(low, mesh.points[corner].y());
  return low;
}

bool has(const Mesh& mesh, BodyPart part) {
  return std::count(mesh.part.begin(), mesh.part.end(), static_cast<std::uint8_t>(part)) > 0;
}

Problems problemsOf(const std::function<void(nlohmann::json&)>& spoil) {
  auto json = nlohmann::json::parse(readFile(kFile).value());
  spoil(json);
  const auto read = Wardrobe::read(json.dump(), "garments.json");
  return read ? Problems{} : read.error();
}

}  // namespace

TEST_CASE("nobody is undressed or bald unless the note says so") {
  for (const Sex sex : {Sex::Female, Sex::Male})
    for (int i = 0; i < 40; ++i) {
      const Look look = shipped().lookOf(person("", sex, "person" + std::to_string(i)));
      CHECK(look.clothed);
      CHECK(look.collar != Collar::None);
      CHECK(look.hairCut != Hair::Bald);
    }
  CHECK(lookOf("shirtless, bald", Sex::Male).hairCut == Hair::Bald);
  CHECK(lookOf("shirtless", Sex::Male).collar == Collar::None);
}

TEST_CASE("the same id wears the same, and a crowd does not wear one outfit") {
  std::vector<double> tops;
  for (int i = 0; i < 20; ++i) {
    const Character c = person("", Sex::Male, "person" + std::to_string(i));
    CHECK(shipped().lookOf(c).top == shipped().lookOf(c).top);
    tops.push_back(shipped().lookOf(c).top + 10 * shipped().lookOf(c).legs);
  }
  std::sort(tops.begin(), tops.end());
  CHECK(std::unique(tops.begin(), tops.end()) - tops.begin() >= 3);
}

TEST_CASE("the longest phrase tells the garment, and what is worn over comes last") {
  const Look coat = lookOf("last keeper of the bell, old man, slight, long coat", Sex::Male);
  CHECK(coat.skirtLength > lookOf("coat", Sex::Male).skirtLength);
  CHECK(coat.hair < 0.3);  // an old man's hair is grey
  CHECK(lookOf("long coat over a white shirt").skirtLength == coat.skirtLength);
  CHECK(lookOf("patched canvas suit").patches);
  CHECK_FALSE(lookOf("canvas suit").patches);
}

TEST_CASE("a shade before a garment is its value, up to the next comma") {
  CHECK(lookOf("a black coat").top == doctest::Approx(0.88));
  CHECK(lookOf("a white coat").top == 0);
  CHECK(lookOf("black eyes, a coat").top == lookOf("a coat").top);
}

TEST_CASE("words inside other words and denied ones dress nobody") {
  CHECK_FALSE(lookOf("captain, bundled up", Sex::Male).hatKind == Hat::Cap);
  CHECK(lookOf("bearded", Sex::Male).beard);
  CHECK_FALSE(lookOf("no beard, scarred", Sex::Male).beard);
  CHECK(lookOf("without a hat").hatKind == Hat::None);
  CHECK(lookOf("Wears a Bun.").hairCut == Hair::Bun);
}

TEST_CASE("a coat hangs below the knee, a jacket above it, and both go round the legs") {
  const Body body = bodyOf(person(""));
  const Skeleton s = posed(body, Pose{}, SetFigure{});
  const double knee = s[Joint::LeftKnee].y();
  CHECK(lowestOf(meshOf(person("long coat")), BodyPart::Skirt) < knee);
  const double hem = lowestOf(meshOf(person("jacket")), BodyPart::Skirt);
  CHECK(hem > knee);
  CHECK(hem < s[Joint::LeftHip].y());
  CHECK_FALSE(has(meshOf(person("canvas suit")), BodyPart::Skirt));
}

TEST_CASE("a dressed body's surface stays finite, closed and above the ground in every pose") {
  const auto poses = PoseLibrary::load().value();
  for (const std::string& name : poses.names())
    for (const char* note : {"long coat, hat, beard, gloves, boots, scarf", "dress, plait",
                             "patched canvas suit, helmet, curly", "jersey, shorts, hood"}) {
      const Mesh mesh = meshOf(person(note), poses.orStand(name));
      INFO(name << ": " << note);
      CHECK(std::all_of(mesh.points.begin(), mesh.points.end(),
                        [](const Vec3& p) { return p.allFinite(); }));
      if (poses.orStand(name).support != "none")
        CHECK(std::all_of(mesh.points.begin(), mesh.points.end(),
                          [](const Vec3& p) { return p.y() > -0.05; }));
    }
}

TEST_CASE("a costume has lines to draw, a bare body none, and each knows where it may be seen") {
  Body body = bodyOf(person(""));
  const Skeleton s = posed(body, Pose{}, SetFigure{});
  CHECK(garmentLines(body, s).empty());
  body.look = lookOf("patched canvas suit");
  const auto lines = garmentLines(body, s);
  CHECK(lines.size() > 20);
  for (const GarmentLine& line : lines) {
    CHECK(line.at.size() == line.out.size());
    CHECK(line.parts != 0);
  }
}

TEST_CASE("a spoilt wardrobe names every fault with its place and dresses nobody") {
  CHECK(Wardrobe::read("{", "garments.json").error()[0].place.file == "garments.json");
  CHECK_FALSE(Wardrobe::read("[]", "garments.json").has_value());
  const auto faults = problemsOf([](nlohmann::json& json) {
    json["garments"][0]["wear"]["topp"] = "dark";
    json["garments"][1]["wear"]["top"] = "beige";
    json["garments"][2]["wear"]["belt"] = 1;
    json["garments"][3]["wear"]["skirt length"] = 7;
    json["garments"][4]["wear"]["collar"] = "ruff";
    json["everyday"]["her"] = nlohmann::json::array();
  });
  REQUIRE(faults.size() == 6);
  std::vector<std::string> paths;
  for (const Problem& p : faults) paths.push_back(p.place.path);
  CHECK(paths == std::vector<std::string>{"/garments/0/wear/topp", "/garments/1/wear/top",
                                          "/garments/2/wear/belt", "/garments/3/wear/skirt length",
                                          "/garments/4/wear/collar", "/everyday/her"});
  CHECK(problemsOf([](nlohmann::json& json) { json.erase("values"); }).size() > 1);
}

}  // namespace tw
