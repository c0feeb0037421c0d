// What is in a panel, from its words. Expectations are an artist's judgement, no source.
#include <filesystem>
#include <set>

#include "script/lexicon.h"
#include "script/script_fixture.h"

using namespace tw;

namespace {

std::string poseOf(std::string_view description) {
  return figureOf(beatFrom(description), "mara").pose;
}

/// "relation target" of Mara.
std::string relationOf(std::string_view description) {
  const BeatFigure mara = figureOf(beatFrom(description), "mara");
  return mara.relation + " " + mara.target;
}

}  // namespace

TEST_CASE("verbs in any form give the pose") {
  CHECK(poseOf("Mara runs.") == "run");
  CHECK(poseOf("Mara is running.") == "run");
  CHECK(poseOf("Running, Mara looks back.") == "run");
  CHECK(poseOf("Mara and Tobin run.") == "run");
  CHECK(poseOf("Mara tries to run.") == "run");
  CHECK(poseOf("Mara crouched behind a crate.") == "crouch");
  CHECK(poseOf("Mara is thrown from the boat.") == "fall");
  CHECK(poseOf("Mara swims to the bell.") == "swim");
  CHECK(poseOf("Mara, hands on hips.") == "hands-on-hips");
  CHECK(poseOf("Mara reaches up for the rope.") == "reach-up");
  CHECK(poseOf("Mara holds up a lantern.") == "hold-up");
  CHECK(poseOf("Mara looks down at the water.") == "look-down");
  CHECK(poseOf("Mara looks over her shoulder.") == "look-back");
  CHECK(poseOf("Mara in her diving suit kneels.") == "kneel");
}

TEST_CASE("a verb belongs to the one who does it") {
  CHECK(poseOf("Light falls on Mara.") == "stand");
  CHECK(poseOf("Mara watches the run of the tide.") == "stand");
  CHECK(poseOf("Mara stands. Tobin falls.") == "stand");
  CHECK(relationOf("Close-up of Mara, eyes shut.") == " ");
  CHECK(relationOf("Mara hands Tobin the rope.") == "gives tobin");
  const Beat beat = beatFrom("Mara pulls the rope while Tobin climbs the ladder.");
  CHECK(figureOf(beat, "mara").pose == "pull");
  CHECK(figureOf(beat, "tobin").pose == "climb");
}

TEST_CASE("relations lead to persons and things") {
  CHECK(relationOf("Mara points at Tobin.") == "points at tobin");
  CHECK(relationOf("Mara runs to Tobin.") == "runs to tobin");
  CHECK(relationOf("Mara kneels and holds a lantern.") == "holds lantern");
  CHECK(relationOf("Mara looks at Tobin's knife.") == "looks at knife");
  CHECK(relationOf("Tobin falls. Mara catches him.") == "holds tobin");
  CHECK(relationOf("Mara and Tobin look at each other.") == "looks at tobin");
}

TEST_CASE("who is only spoken of is not in the panel") {
  for (const char* text : {"No sign of Mara.", "Mara's lantern lies on the table.",
                           "Mara's POV: the sea.", "A statue of Mara.", "An empty room."}) {
    CAPTURE(text);
    CHECK(beatFrom(text).figures.empty());
  }
  CHECK(beatFrom("Close on Mara's hand.").figures.size() == 1);
  CHECK(beatFrom("A door.\n\nMARA (OFF): Hello?").figures.empty());
  CHECK(beatFrom("A door.\n\nMARA: Hello?").figures.size() == 1);
}

TEST_CASE("pronouns and same carry figures from panel to panel") {
  const Script script = readText(
      "CAST\nMARA - woman\nTOBIN - man\nPAGE 1\nPanel 1\nMara and Tobin stand.\n"
      "Panel 2\nShe runs.\nPanel 3\nSame.\nPanel 4\nThey sit.\n");
  const std::vector<Beat>& beats = script.pages[0].beats;
  CHECK(figureOf(beats[1], "mara").pose == "run");
  CHECK(beats[1].figures.size() == 1);
  CHECK(beats[2].figures.size() == 1);
  CHECK(beats[3].figures.size() == 1);
}

TEST_CASE("shots and eye heights are read as asked for") {
  CHECK(beatFrom("Close-up on Mara.").shot == ShotSize::CloseUp);
  CHECK(beatFrom("ECU of Mara's eye.").shot == ShotSize::ExtremeCloseUp);
  CHECK(beatFrom("Extreme close up: Mara.").shot == ShotSize::ExtremeCloseUp);
  CHECK(beatFrom("Tight on Mara.").shot == ShotSize::CloseUp);
  CHECK(beatFrom("Mara from the waist up.").shot == ShotSize::Medium);
  CHECK(beatFrom("Two-shot of Mara and Tobin.").shot == ShotSize::Medium);
  CHECK(beatFrom("Full figure of Mara.").shot == ShotSize::Long);
  CHECK(beatFrom("Establishing shot of the harbour.").shot == ShotSize::VeryLong);
  CHECK(beatFrom("Wide. The sea.").shot == ShotSize::VeryLong);
  CHECK_FALSE(beatFrom("A wide road.").shot.has_value());
  CHECK(beatFrom("Bird's-eye view of the boat.").eye == EyeHeight::Bird);
  CHECK(beatFrom("From above, Mara swims.").eye == EyeHeight::High);
  CHECK(beatFrom("Low angle on Mara.").eye == EyeHeight::Low);
  CHECK(beatFrom("Worm\u2019s-eye view.").eye == EyeHeight::Worm);
  CHECK_FALSE(beatFrom("Light from above.").eye.has_value());
}

TEST_CASE("lens and roll are read where a script asks for them in the trade's words") {
  CHECK(beatFrom("Dutch tilt on Mara.").rollDeg == 12);
  CHECK(beatFrom("Canted angle. Mara runs.").rollDeg == 12);
  CHECK(beatFrom("Telephoto: Mara far down the quay.").lensMm == 135);
  CHECK(beatFrom("Wide lens, close on Mara.").lensMm == 24);
  CHECK(beatFrom("Wide-angle lens on Mara.").lensMm == 24);
  CHECK_FALSE(beatFrom("Wide-angle lens on Mara.").shot.has_value());
  CHECK(beatFrom("Mara on a 35mm lens.").lensMm == 35);
  CHECK(beatFrom("Mara, 200 mm lens, low angle.").lensMm == 200);
  CHECK_FALSE(beatFrom("Mara cleans a lens.").lensMm.has_value());
  CHECK_FALSE(beatFrom("Mara loads 35 mm film.").lensMm.has_value());
  CHECK_FALSE(beatFrom("A tilted table.").rollDeg.has_value());
}

TEST_CASE("one panel at most is dominant, and weights follow what is asked") {
  const Script script = readText(
      "PAGE 1\nPanel 1 (inset)\nA door.\nPanel 2\nMain panel: MARA leaps.\nPanel 3 (big)\nA bell.\n"
      "Panel 4\nA splash of water.\n");
  const std::vector<Beat>& beats = script.pages[0].beats;
  CHECK(beats[0].weight < 1);
  CHECK(beats[1].dominant);
  CHECK(beats[1].weight >= 2);
  CHECK_FALSE(beats[2].dominant);
  CHECK(beats[2].weight > 1);
  CHECK_FALSE(beats[3].dominant);
  CHECK(beats[3].weight == 1);
}

TEST_CASE("many words and many figures want more of the page") {
  std::string words;
  for (int i = 0; i < 60; ++i) words += "word ";
  CHECK(beatFrom("Mara.\n\nMARA: " + words).weight > 1);
  CHECK(beatFrom("Mara.\n\nMARA: word").weight == 1);
}

TEST_CASE("settings are read and stay until they change") {
  const Script script = readText(
      "PAGE 1\nINT. BELL TOWER - NIGHT\nPanel 1\nA rope.\nPanel 2\nMARA sits.\nPanel 3\n"
      "MARA swims underwater.\nPanel 4\nOutside, on the quay.\nPanel 5\nBlack background.\n");
  const std::vector<Beat>& beats = script.pages[0].beats;
  CHECK(beats[0].setting == "interior, bell tower, night");
  CHECK(beats[1].setting == beats[0].setting);
  CHECK(beats[2].setting.starts_with("underwater"));
  CHECK(beats[3].setting == "exterior, quay");
  CHECK(beats[4].setting.starts_with("none"));
}

TEST_CASE("props have a shape, a size and whoever holds them") {
  const Beat beat = beatFrom("Mara holds a lantern. Tobin with a knife stands on the table.");
  REQUIRE(beat.props.size() == 3);
  CHECK(beat.props[0].id == "lantern");
  CHECK(beat.props[0].heldBy == "mara");
  CHECK(beat.props[1].heldBy == "tobin");
  CHECK(beat.props[2].heldBy.empty());
  CHECK(beat.props[2].shape == "box");
  CHECK(beat.props[2].sizeM[1] == doctest::Approx(0.75));
  CHECK(beatFrom("The bell tower.").props.empty());
}

TEST_CASE("every pose of the lexicon is one that a figure can take") {
  useSourcePresets();
  std::set<std::string> poses{""};
  for (const auto& file :
       std::filesystem::directory_iterator(TIERWRIGHT_SOURCE_DIR "/presets/poses"))
    poses.insert(file.path().stem().string());
  const Result<Lexicon> lexicon = loadLexicon();
  REQUIRE(lexicon.has_value());
  for (const Verb& verb : lexicon->verbs) {
    CAPTURE(verb.lemma);
    CHECK(poses.contains(verb.plain.pose));
    CHECK(poses.contains(verb.passivePose));
    for (const auto& [words, action] : verb.particles) CHECK(poses.contains(action.pose));
  }
}

TEST_CASE("inflected forms follow English spelling") {
  CHECK(ingFormOf("run") == "running");
  CHECK(ingFormOf("gaze") == "gazing");
  CHECK(ingFormOf("haul") == "hauling");
  CHECK(pastFormOf("carry") == "carried");
  CHECK(pastFormOf("grab") == "grabbed");
  CHECK(thirdPersonOf("push") == "pushes");
  CHECK(thirdPersonOf("carry") == "carries");
}

TEST_CASE("what is done to someone falls on that one, and whoever does it is named behind by") {
  const Beat beat = beatFrom("Mara is thrown by Tobin.");
  CHECK(figureOf(beat, "mara").pose == "fall");
  CHECK(figureOf(beat, "tobin").pose == "throw");
  CHECK(poseOf("Mara's hand points at the bell.") == "point");
}

TEST_CASE("same without a name shows whoever was there, without a thing that is gone") {
  const Script script = readText(
      "CAST\nMARA - woman\nTOBIN - man\nPAGE 1\nPanel 1\nMara holds a lantern. Tobin looks at "
      "Mara.\nPanel 2\nSame.\n");
  const std::vector<Beat>& beats = script.pages[0].beats;
  REQUIRE(beats[1].figures.size() == 2);
  CHECK(figureOf(beats[1], "tobin").target == "mara");
  CHECK(figureOf(beats[1], "mara").target.empty());
  CHECK(figureOf(beats[1], "mara").relation.empty());
}

TEST_CASE("they, with nobody named here, are the figures of the panel before") {
  const Script script = readText(
      "CAST\nMARA - woman\nTOBIN - man\nINES - woman\nPAGE 1\nPanel 1\nMara and Tobin stand.\n"
      "Panel 2\nThey run.\nPanel 3\nThe two of them sit.\nPanel 4\nAll of them stand.\n");
  const std::vector<Beat>& beats = script.pages[0].beats;
  CHECK(beats[1].figures.size() == 2);
  CHECK(figureOf(beats[1], "tobin").pose == "run");
  CHECK(beats[2].figures.size() == 2);
  CHECK(figureOf(beats[2], "ines").who.empty());
}

TEST_CASE("a thing in somebody's hand is held by the owner of the hand") {
  const Beat beat = beatFrom("Tobin stares. The lantern shakes in Mara's hand.");
  REQUIRE(beat.props.size() == 1);
  CHECK(beat.props[0].heldBy == "mara");
  const Beat behind = beatFrom("Tobin, lantern in hand, waits.");
  REQUIRE(behind.props.size() == 1);
  CHECK(behind.props[0].heldBy == "tobin");
}

TEST_CASE("a name that two of the cast share is nobody's") {
  const Script script = readText(
      "CAST\nMARA VOSS - woman\nTOBIN VOSS - man\nPAGE 1\nPanel 1\nVoss runs.\nPanel 2\nTobin "
      "runs.\n");
  CHECK(script.pages[0].beats[0].figures.empty());
  CHECK(script.pages[0].beats[1].figures.at(0).who == script.cast[1].id);
}
