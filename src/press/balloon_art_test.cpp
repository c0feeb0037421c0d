#include "press/balloon_art.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "geometry/polygon.h"
#include "press/example_rough.h"
#include "press/recorder.h"

using namespace tw;

namespace {

std::size_t outlinesIn(const Path& path) {
  return static_cast<std::size_t>(
      std::count(path.steps().begin(), path.steps().end(), Path::Step::Move));
}

}  // namespace

TEST_CASE("a tail and its balloon share one outline, without a line across the root") {
  const Typesetter typesetter;
  for (const CopyKind kind : {CopyKind::Speech, CopyKind::Whisper, CopyKind::Shout}) {
    Recorder recorder;
    drawBalloonShapes(recorder, {example::balloon(kind, {40, 40}, {"YOU HEAR", "THAT?"}, {60, 80})},
                      typesetter);
    REQUIRE(recorder.lines.size() == 1);
    CHECK(outlinesIn(recorder.lines[0]) == 1);
    CHECK(recorder.pens[0].dashes.empty() == (kind != CopyKind::Whisper));
  }
}

TEST_CASE("a thought is a cloud that still holds its type, with bubbles that shrink") {
  const Typesetter typesetter;
  const PlacedBalloon thought =
      example::balloon(CopyKind::Thought, {40, 40}, {"ONE STROKE", "FOR EVERY BOAT"}, {90, 90});
  const Region cloud = cloudAround(thought.outline);
  REQUIRE(cloud.size() == 1);
  CHECK(area(cloud) > 0.97 * area(thought.outline));
  for (const CopyLine& line : thought.lines) {
    const double half = typesetter.widthOf(line.text, Face::Bold, thought.sizePt) / 2;
    CHECK(contains(cloud, line.baselineMiddle + Vector{half, 0}));
    CHECK(contains(cloud, line.baselineMiddle + Vector{-half, 0}));
  }
  Recorder recorder;
  drawBalloonShapes(recorder, {thought}, typesetter);
  REQUIRE(recorder.fills.size() >= 4);
  const auto box = [&](std::size_t i) { return bounds(recorder.fills[i].points()); };
  for (std::size_t i = 2; i < recorder.fills.size(); ++i) {
    CHECK(box(i - 1).width() > box(i).width());
    const double apart = (box(i - 1).centre() - box(i).centre()).length();
    CHECK(apart > (box(i - 1).width() + box(i).width()) / 2);
  }
}

TEST_CASE("sound effects are open letters: outlined, filled with paper, no type of their own") {
  const Typesetter typesetter;
  const PlacedBalloon doom = example::balloon(CopyKind::Sfx, {40, 40}, {"DOOM"}, {0, 0});
  Recorder recorder;
  drawBalloonShapes(recorder, {doom}, typesetter);
  drawBalloonType(recorder, doom, typesetter);
  CHECK(recorder.lines.size() == 2);
  CHECK(recorder.fills.back().points().size() == recorder.lines[0].points().size());
  CHECK(recorder.words.empty());
  // Turned by 12 degrees, the word is far higher than its capitals.
  const Rect box = bounds(recorder.fills.back().points());
  CHECK(box.height() > doom.sizePt * kMmPerPt);
}

TEST_CASE("balloons of one speaker joined by a bridge share one outline") {
  const Typesetter typesetter;
  PlacedBalloon first = example::balloon(CopyKind::Speech, {40, 30}, {"LISTEN."}, {60, 80});
  PlacedBalloon second = example::balloon(CopyKind::Speech, {48, 46}, {"THERE."}, {60, 80});
  first.tail = {};
  second.tail = {{{39, 30}, {41, 30}, {49, 46}, {47, 46}}};
  Recorder joined;
  drawBalloonShapes(joined, {first, second}, typesetter);
  REQUIRE(joined.lines.size() == 1);
  CHECK(outlinesIn(joined.lines[0]) == 1);
  second.tail = {};
  Recorder apart;
  drawBalloonShapes(apart, {first, second}, typesetter);
  CHECK(apart.lines.size() == 2);
}

TEST_CASE("stressed words are bold italic and the line keeps its middle") {
  const Typesetter typesetter;
  const PlacedBalloon balloon =
      example::balloon(CopyKind::Speech, {40, 40}, {"I *NEVER* SAID"}, {60, 80});
  Recorder recorder;
  drawBalloonType(recorder, balloon, typesetter);
  REQUIRE(recorder.words.size() == 3);
  CHECK(recorder.words[0].face == Face::Bold);
  CHECK(recorder.words[1].face == Face::BoldItalic);
  CHECK(recorder.words[1].text == "NEVER");
  const TypeLine& last = recorder.words[2];
  const double end = last.at.x + typesetter.widthOf(last.text, last.face, last.sizePt);
  CHECK((recorder.words[0].at.x + end) / 2 == doctest::Approx(40));
}
