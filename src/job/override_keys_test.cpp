#include "job/override_keys.h"

#include <doctest/doctest.h>

using namespace tw;

namespace {

Job castOfTwo() {
  Job job;
  job.cast.push_back({.id = "mara", .name = "MARA", .aliases = {}, .note = ""});
  job.cast.push_back({.id = "odo", .name = "ODO", .aliases = {}, .note = ""});
  return job;
}

Page pageOfTwo() {
  Page page;
  page.number = 3;
  for (const char* id : {"p3-1", "p3-10"}) {
    Beat beat;
    beat.id = id;
    beat.figures.push_back({"mara", "stand", "looks at", "odo"});
    page.beats.push_back(beat);
  }
  page.beats[0].dominant = true;
  return page;
}

void setAll(Page& page, std::initializer_list<const char*> assignments) {
  for (const char* assignment : assignments) {
    const auto done = setOverrideKey(page, castOfTwo(), assignment);
    REQUIRE_MESSAGE(done, describe(done ? Problems{} : done.error()));
  }
}

std::string refusal(const char* assignment) {
  Page page = pageOfTwo();
  const auto done = setOverrideKey(page, castOfTwo(), assignment);
  CHECK(page == pageOfTwo());
  return done ? "accepted" : describe(done.error());
}

}  // namespace

TEST_CASE("every correction can be typed and is seen in the corrected beat") {
  Page page = pageOfTwo();
  setAll(page,
         {"p3-10.shot=close-up", "p3-10.eye=high", "p3-10.dominant=yes", "p3-10.weight=2",
          "p3-10.setting=interior, a bell = tower", "p3-10.pose.mara=kneel", "p3-10.add=odo"});
  const Beat beat = page.correctedBeats()[1];
  CHECK(beat.shot == ShotSize::CloseUp);
  CHECK(beat.eye == EyeHeight::High);
  CHECK(beat.dominant);
  CHECK(beat.weight == 2);
  CHECK(beat.setting == "interior, a bell = tower");
  REQUIRE(beat.figures.size() == 2);
  CHECK(beat.figures[0].pose == "kneel");
  CHECK(beat.figures[0].target == "odo");
  CHECK(beat.figures[1].who == "odo");
  CHECK_FALSE(page.beats[1].shot);
}

TEST_CASE("lens, roll and light are the artist's own and can be typed back") {
  Page page = pageOfTwo();
  setAll(page, {"p3-10.lens=85 mm", "p3-10.roll=-12°", "p3-10.light=from the left, fill 0.2"});
  const Beat beat = page.correctedBeats()[1];
  CHECK(beat.lensMm == 85);
  CHECK(beat.rollDeg == -12);
  CHECK(beat.light == "from the left, fill 0.2");
  const auto typed = describeOverride("p3-10", page.overrides.at("p3-10"));
  CHECK(typed == std::vector<std::string>{"p3-10.lens=85", "p3-10.roll=-12",
                                          "p3-10.light=from the left, fill 0.2"});
  setAll(page, {"p3-10.lens=guess", "p3-10.roll=guess", "p3-10.light=guess"});
  CHECK(page == pageOfTwo());
}

TEST_CASE("a lens or a roll that no camera of ours has is refused with its bounds") {
  for (const char* lens : {"p3-1.lens=13.9", "p3-1.lens=301", "p3-1.lens=0", "p3-1.lens=wide"})
    CHECK(refusal(lens).find("14 to 300 mm") != std::string::npos);
  CHECK(refusal("p3-1.roll=91").find("-90 to 90") != std::string::npos);
  Page page = pageOfTwo();
  setAll(page, {"p3-1.lens=14", "p3-1.lens=300mm", "p3-1.roll=90"});
  CHECK(page.correctedBeats()[0].lensMm == 300);
}

TEST_CASE("what a figure does and which things are there can be corrected") {
  Page page = pageOfTwo();
  setAll(page, {"p3-1.prop.add=lantern", "p3-1.does.mara=holds lantern"});
  Beat beat = page.correctedBeats()[0];
  REQUIRE(beat.props.size() == 1);
  CHECK(beat.props[0].heldBy == "mara");
  CHECK(beat.figures[0].relation == "holds");
  CHECK(beat.figures[0].target == "lantern");
  setAll(page, {"p3-1.add=odo", "p3-1.does.mara=looks at odo"});
  CHECK(page.correctedBeats()[0].props[0].heldBy.empty());
  setAll(page, {"p3-1.does.mara=nothing", "p3-1.prop.drop=lantern"});
  beat = page.correctedBeats()[0];
  CHECK(beat.props.empty());
  CHECK(beat.figures[0].relation.empty());
}

TEST_CASE("a thing that is dropped is nobody's target any more") {
  Page page = pageOfTwo();
  page.beats[0].props.push_back({"rope", "rope"});
  page.beats[0].figures[0] = {"mara", "pull", "pulls", "rope"};
  setAll(page, {"p3-1.prop.drop=rope"});
  CHECK(page.correctedBeats()[0].figures[0].target.empty());
  CHECK(page.correctedBeats()[0].props.empty());
}

TEST_CASE("a pose or relation or thing that nobody knows is refused by name") {
  Page page = pageOfTwo();
  KnownWords known;
  known.poses = {"kneel", "run"};
  known.relations = {"holds", "points at"};
  known.thing = [](std::string_view name) -> Result<std::optional<Prop>> {
    if (name == "engine") return badInput("The model has no face with an area.", {}, "");
    return std::nullopt;
  };
  const auto refused = [&](const char* assignment) {
    const auto done = setOverrideKey(page, castOfTwo(), assignment, known);
    return done ? std::string("accepted") : describe(done.error());
  };
  CHECK(refused("p3-1.pose.mara=kneal").find("Is \"kneel\" meant?") != std::string::npos);
  CHECK(refused("p3-1.does.mara=juggles").find("holds, points at") != std::string::npos);
  CHECK(refused("p3-1.prop.add=gizmo").find("No thing is called") != std::string::npos);
  CHECK(refused("p3-1.prop.add=engine").find("no face with an area") != std::string::npos);
  CHECK(refused("p3-1.prop.drop=boat").find("shows no \"boat\"") != std::string::npos);
  CHECK(refused("p3-1.does.mara=points at odo").find("odo is not in the panel") !=
        std::string::npos);
  CHECK(refused("p3-1.add=odo") == "accepted");
  CHECK(refused("p3-1.does.mara=points at odo") == "accepted");
}

TEST_CASE("which hand holds a thing and where it stands can be corrected") {
  Page page = pageOfTwo();
  setAll(page, {"p3-1.prop.add=lantern", "p3-1.prop.lantern.hand=left",
                "p3-1.prop.lantern.place=1.5, 0, -2", "p3-1.prop.lantern.turn=30",
                "p3-1.prop.lantern.size=0.2,0.4,0.2"});
  const Prop lantern = page.correctedBeats()[0].props.at(0);
  CHECK(lantern.hand == "left");
  CHECK(lantern.placeM == std::array<double, 3>{1.5, 0, -2});
  CHECK(lantern.turnDeg == 30.0);
  CHECK(lantern.sizeM == std::array<double, 3>{0.2, 0.4, 0.2});
  CHECK(lantern.heightM == 0.4);
  setAll(page, {"p3-1.prop.lantern.hand=any"});
  CHECK(page.correctedBeats()[0].props[0].hand.empty());
}

TEST_CASE("wrong corrections of things say what was expected") {
  Page page = pageOfTwo();
  setAll(page, {"p3-1.prop.add=lantern"});
  KnownWords known;
  known.shapes = {"box", "stairs"};
  known.models = std::vector<std::string>{};
  const auto refused = [&](const char* assignment) {
    const auto done = setOverrideKey(page, castOfTwo(), assignment, known);
    return done ? std::string("accepted") : describe(done.error());
  };
  CHECK(refused("p3-1.prop.lantern.hand=third").find("left, right, both") != std::string::npos);
  CHECK(refused("p3-1.prop.lantern.place=1,2").find("three numbers") != std::string::npos);
  CHECK(refused("p3-1.prop.lantern.place=1,2,nan").find("three numbers") != std::string::npos);
  CHECK(refused("p3-1.prop.lantern.size=1,0,1").find("width, height") != std::string::npos);
  CHECK(refused("p3-1.prop.lantern.turn=1000").find("degrees") != std::string::npos);
  CHECK(refused("p3-1.prop.lantern.shape=stair").find("\"stairs\" meant") != std::string::npos);
  CHECK(refused("p3-1.prop.lantern.model=tram").find("no models") != std::string::npos);
  CHECK(refused("p3-1.prop.lantern.up=x").find("y, z") != std::string::npos);
  CHECK(refused("p3-1.prop.lantern.hnad=left").find("Is \"hand\" meant?") != std::string::npos);
  CHECK(refused("p3-1.prop.tram.turn=3").find("p3-1.prop.add=tram") != std::string::npos);
  CHECK(refused("p3-1.prop.lantern=left").find("prop.THING.KEY") != std::string::npos);
}

TEST_CASE("a beat named dominant takes that from the one that was guessed") {
  Page page = pageOfTwo();
  setAll(page, {"p3-10.dominant=yes"});
  CHECK_FALSE(page.correctedBeats()[0].dominant);
}

TEST_CASE("a dropped figure is gone, and adding it again undoes the drop") {
  Page page = pageOfTwo();
  setAll(page, {"p3-1.drop=mara"});
  CHECK(page.correctedBeats()[0].figures.empty());
  setAll(page, {"p3-1.add=mara"});
  CHECK(page == pageOfTwo());
}

TEST_CASE("guess goes back to the breakdown and leaves nothing behind") {
  Page page = pageOfTwo();
  setAll(page, {"p3-1.shot=long", "p3-1.pose.mara=run", "p3-1.weight=3"});
  setAll(page, {"p3-1.shot=guess", "p3-1.pose.mara=guess", "p3-1.weight=guess"});
  CHECK(page == pageOfTwo());
}

TEST_CASE("what is shown of a correction can be typed back") {
  Page page = pageOfTwo();
  setAll(page, {"p3-1.shot=very long", "p3-1.eye=worm", "p3-1.dominant=no", "p3-1.weight=0.5",
                "p3-1.setting=underwater", "p3-1.pose.mara=swim", "p3-1.add=odo", "p3-1.drop=mara",
                "p3-1.prop.add=lantern", "p3-1.prop.lantern.hand=both",
                "p3-1.prop.lantern.place=0.25,1,3", "p3-1.prop.lantern.turn=-12.5",
                "p3-1.prop.lantern.size=1,2,3", "p3-1.prop.lantern.shape=cone",
                "p3-1.prop.lantern.model=lamp", "p3-1.prop.lantern.up=z",
                "p3-1.does.odo=looks at lantern"});
  Page again = pageOfTwo();
  for (const std::string& text : describeOverride("p3-1", page.overrides["p3-1"]))
    REQUIRE(setOverrideKey(again, castOfTwo(), text));
  CHECK(again == page);
}

TEST_CASE("wrong corrections are refused with what was expected, and change nothing") {
  CHECK(refusal("p9-1.shot=long").find("the beats are p3-1, p3-10") != std::string::npos);
  CHECK(refusal("p3-1.shot=huge").find("extreme close-up") != std::string::npos);
  CHECK(refusal("p3-1.eye=left").find("worm's eye") != std::string::npos);
  CHECK(refusal("p3-1.weight=0").find("over 0") != std::string::npos);
  CHECK(refusal("p3-1.weigth=1").find("Is \"weight\" meant?") != std::string::npos);
  CHECK(refusal("p3-1.pose.nemo=run").find("nemo is not in the cast") != std::string::npos);
  CHECK(refusal("p3-1.pose.mara=two words").find("name of a pose") != std::string::npos);
  CHECK(refusal("p3-1.add=nemo").find("mara, odo") != std::string::npos);
  CHECK(refusal("p3-1.dominant=perhaps").find("yes, no or guess") != std::string::npos);
  CHECK(refusal("p3-1.shot").find("KEY=VALUE") != std::string::npos);
}

TEST_CASE("copy is retyped, left out, given back, and shown as it can be typed again") {
  Page page = pageOfTwo();
  CopyItem said;
  said.id = "p3-1-c1";
  said.speaker = "mara";
  said.text = "Who is there?";
  said.words = 3;
  page.beats[0].copy = {said};
  setAll(page, {"p3-1.copy.p3-1-c1=Who *is* there?\\nSpeak!"});
  const Beat beat = page.correctedBeats()[0];
  CHECK(beat.copy[0].text == "Who *is* there?\nSpeak!");
  CHECK(beat.copy[0].words == 4);
  CHECK(page.beats[0].copy[0].text == "Who is there?");
  const auto shown = describeOverride("p3-1", page.overrides["p3-1"]);
  CHECK(shown == std::vector<std::string>{"p3-1.copy.p3-1-c1=Who *is* there?\\nSpeak!"});
  Page again = page;
  setAll(again, {"p3-1.copy.p3-1-c1=guess"});
  CHECK(again.overrides.empty());
  setAll(again, {shown[0].c_str()});
  CHECK(again == page);
  setAll(page, {"p3-1.copy.p3-1-c1=none"});
  CHECK(page.correctedBeats()[0].copy.empty());
  CHECK_FALSE(setOverrideKey(page, castOfTwo(), "p3-1.copy.p3-1-c9=Who?"));
}

TEST_CASE("retyped copy is counted by whoever knows how") {
  Page page = pageOfTwo();
  page.beats[0].copy.resize(1);
  page.beats[0].copy[0].id = "c1";
  KnownWords known;
  known.words = [](std::string_view text) { return static_cast<int>(text.size()); };
  REQUIRE(setOverrideKey(page, castOfTwo(), "p3-1.copy.c1=four", known));
  CHECK(page.overrides["p3-1"].copy["c1"].words == 4);
}
