// Balloons in their panels. The laws are trade custom (production facts on lettering); Clipper's
// areas judge overlaps that the search itself only knows by strips.
#include "letter/place_copy.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <thread>

#include "geometry/polygon.h"

namespace tw {
namespace {

const Letterer& letterer() {
  static const Letterer one = std::move(*Letterer::make());
  return one;
}

/// A panel with its copy, kept alive together.
struct Scene {
  std::vector<CopyItem> items;
  LetterRequest request;
};

CopyItem say(const std::string& id, const std::string& who, const std::string& text,
             CopyKind kind = CopyKind::Speech) {
  CopyItem item;
  item.id = id;
  item.kind = kind;
  item.speaker = who;
  item.text = text;
  return item;
}

void addFigure(LetterRequest& request, const std::string& who, Point head, double radius) {
  request.faces.push_back(ellipse(head, radius * 0.8, radius, 24));
  request.mouths[who] = {head.x, head.y + radius * 0.45};
  const Rect body{{head.x - radius * 1.6, head.y + radius}, {head.x + radius * 1.6, head.y + 50}};
  request.bodies.push_back({polygonOf(body)});
}

LetterRequest panel(double width, double height) {
  LetterRequest request;
  request.panel = polygonOf(Rect{{10, 10}, {10 + width, 10 + height}});
  request.live = {{5, 5}, {200, 300}};
  request.panelsOnPage = 4;
  return request;
}

Scene talk() {
  Scene scene;
  scene.request = panel(75, 60);
  addFigure(scene.request, "mara", {30, 45}, 5);
  addFigure(scene.request, "jonas", {66, 43}, 5);
  scene.items = {say("c1", "mara", "I told you the bell would never ring again."),
                 say("c2", "jonas", "Then who is ringing it?"), say("c3", "mara", "Listen.")};
  return scene;
}

LetterResult placed(Scene& scene, const Letterer& by = letterer()) {
  scene.request.items = &scene.items;
  return by.place(scene.request);
}

Rect boxOf(const PlacedBalloon& balloon) {
  return bounds(balloon.outline);
}

double commonArea(const Polygon& a, const Polygon& b) {
  return a.points.empty() || b.points.empty() ? 0 : area(common({a}, {b}));
}

/// Everything that must hold for a result without unplaced copy.
void checkLaws(const Scene& scene, const LetterResult& result) {
  const auto& balloons = result.balloons;
  for (std::size_t i = 0; i < balloons.size(); ++i) {
    for (const Point& p : balloons[i].outline.points) {
      RC_ASSERT(contains(scene.request.panel, p));
    }
    for (const CopyLine& line : balloons[i].lines) {
      RC_ASSERT(scene.request.live.contains(line.baselineMiddle));
    }
    for (const Polygon& face : scene.request.faces) {
      RC_ASSERT(commonArea(balloons[i].outline, face) < 1e-3);
      RC_ASSERT(commonArea(balloons[i].tail, face) < 0.3);
    }
    for (std::size_t j = 0; j < balloons.size(); ++j) {
      if (i == j) continue;
      RC_ASSERT(commonArea(balloons[i].outline, balloons[j].outline) < 1e-3);
      const bool sameVoice = scene.items[i].speaker == scene.items[j].speaker;
      if (!sameVoice) RC_ASSERT(commonArea(balloons[i].tail, balloons[j].outline) < 0.05);
      if (!sameVoice) RC_ASSERT(commonArea(balloons[i].tail, balloons[j].tail) < 0.05);
      const bool boxes = !balloons[i].outline.points.empty() && !balloons[j].outline.points.empty();
      if (i < j && boxes) {
        RC_ASSERT(readsAfter(boxOf(balloons[i]), boxOf(balloons[j]), scene.request.direction));
      }
    }
  }
}

Scene randomScene() {
  static const std::vector<std::string> kCopy{"No.",
                                              "What was that?",
                                              "Don't touch the rope!",
                                              "I told you the bell would never ring again.",
                                              "They never found the sexton.",
                                              "Something moved behind the altar. Get the lamp."};
  static const std::vector<CopyKind> kKinds{CopyKind::Speech, CopyKind::Speech, CopyKind::Whisper,
                                            CopyKind::Shout, CopyKind::Thought};
  Scene scene;
  const double width = *rc::gen::inRange(45, 110), height = *rc::gen::inRange(45, 90);
  scene.request = panel(width, height);
  const int slant = *rc::gen::inRange(0, 12);
  scene.request.panel.points[1].x -= slant;
  if (*rc::gen::arbitrary<bool>()) {
    scene.request.direction = ReadingDirection::RightToLeft;
  }
  const int figures = *rc::gen::inRange(1, 4);
  for (int f = 0; f < figures; ++f) {
    const double x = 10 + width * (f + 0.5) / figures;
    addFigure(scene.request, std::string(1, static_cast<char>('a' + f)),
              {x, 10 + height * *rc::gen::inRange(45, 75) / 100.0}, *rc::gen::inRange(2, 5));
  }
  const int items = *rc::gen::inRange(1, 4);
  for (int i = 0; i < items; ++i) {
    const auto who = static_cast<char>('a' + *rc::gen::inRange(0, figures));
    CopyItem item = say("c" + std::to_string(i + 1), std::string(1, who),
                        *rc::gen::elementOf(kCopy), *rc::gen::elementOf(kKinds));
    if (i == 0 && *rc::gen::arbitrary<bool>()) {
      item = say("c1", "", "Below the harbour, an hour before the tide turns.", CopyKind::Caption);
    }
    scene.items.push_back(item);
  }
  return scene;
}

TEST_CASE("placed copy keeps the laws of lettering") {
  int clean = 0, seen = 0;
  CHECK(rc::check("laws", [&] {
    Scene scene = randomScene();
    const LetterResult result = placed(scene);
    RC_ASSERT(result.balloons.size() == scene.items.size());
    ++seen;
    if (result.unplaced > 0) return;
    ++clean;
    checkLaws(scene, result);
  }));
  CHECK(clean > seen * 3 / 4);  // most of these panels have room
}

/// A panel of any four-sided shape, in which and around which people speak: mouths may be cut off
/// by the frame, far outside or on nobody's face.
Scene sceneWithMouthsAnywhere() {
  Scene scene = randomScene();
  for (Point& p : scene.request.panel.points) {
    p = p + Vector{*rc::gen::inRange(-60, 60) / 10.0, *rc::gen::inRange(-60, 60) / 10.0};
  }
  const bool far = *rc::gen::arbitrary<bool>();
  const int reach = far ? 400 : 60;
  for (auto& [who, mouth] : scene.request.mouths) {
    if (*rc::gen::inRange(0, 3) == 0) continue;
    mouth = {60.0 + *rc::gen::inRange(-reach, reach), 45.0 + *rc::gen::inRange(-reach, reach)};
  }
  for (CopyItem& item : scene.items) item.offPanel = *rc::gen::inRange(0, 5) == 0;
  if (*rc::gen::inRange(0, 4) == 0) {
    scene.request.covered = {polygonOf(Rect{{30, 30}, {55, 50}})};
  }
  return scene;
}

double farthestApart(const Polygon& shape) {
  double far = 0;
  for (const Point& p : shape.points) {
    for (const Point& q : shape.points) far = std::max(far, (p - q).length());
  }
  return far;
}

TEST_CASE("a tail never leaves its own panel, wherever the mouth is, and is never long") {
  int tails = 0;
  CHECK(rc::check("tails", [&] {
    Scene scene = sceneWithMouthsAnywhere();
    const LetterResult result = placed(scene);
    const Region panel{scene.request.panel};
    for (const PlacedBalloon& balloon : result.balloons) {
      if (balloon.tail.points.empty()) continue;
      ++tails;
      RC_ASSERT(area(without({balloon.tail}, panel)) < 1e-3);
      // 16 mm outside the balloon and the root within it.
      RC_ASSERT(farthestApart(balloon.tail) < 16 + 0.3 * bounds(balloon.outline).width());
      if (result.unplaced > 0) continue;
      for (const PlacedBalloon& other : result.balloons) {
        if (&other == &balloon || other.tail.points.empty()) continue;
        const bool sameVoice = scene.items[&other - result.balloons.data()].speaker ==
                               scene.items[&balloon - result.balloons.data()].speaker;
        if (!sameVoice) RC_ASSERT(commonArea(balloon.tail, other.outline) < 0.05);
      }
      for (const Polygon& face : scene.request.faces) {
        RC_ASSERT(commonArea(balloon.tail, face) < 0.3);
      }
    }
  }));
  CHECK(tails > 50);
}

TEST_CASE("a speaker cut off by the frame has a short tail to the border on that side") {
  for (const Point mouth : {Point{40, -120}, {-80, 40}, {190, 30}, {45, 240}}) {
    Scene scene;
    scene.request = panel(70, 60);
    scene.request.mouths["mara"] = mouth;
    scene.items = {say("c1", "mara", "Don't touch the rope!")};
    const LetterResult result = placed(scene);
    REQUIRE(result.unplaced == 0);
    const Polygon& tail = result.balloons[0].tail;
    const Point tip = *std::min_element(
        tail.points.begin(), tail.points.end(),
        [&](Point a, Point b) { return (a - mouth).length() < (b - mouth).length(); });
    CHECK(contains(scene.request.panel, tip));
    CHECK(distanceToOutline(scene.request.panel, tip) < 1);
    CHECK(distanceToOutline(result.balloons[0].outline, tip) < 8);
  }
}

TEST_CASE("a conversation is placed in order, near its speakers, with tails") {
  Scene scene = talk();
  const LetterResult result = placed(scene);
  REQUIRE(result.balloons.size() == 3);
  CHECK(result.unplaced == 0);
  CHECK(result.coveredFace == 0);
  for (const PlacedBalloon& balloon : result.balloons) CHECK(!balloon.tail.points.empty());
  CHECK(boxOf(result.balloons[0]).centre().x < boxOf(result.balloons[1]).centre().x);
  CHECK(result.balloons[0].sizePt == letterer().style().sizePt);
}

TEST_CASE("type keeps to the live area though the panel bleeds") {
  Scene scene = talk();
  scene.request.live = {{18, 20}, {90, 300}};
  const LetterResult result = placed(scene);
  REQUIRE(result.unplaced == 0);
  for (const PlacedBalloon& balloon : result.balloons) {
    for (const CopyLine& line : balloon.lines) {
      CHECK(line.baselineMiddle.y - 1.5 >= 20);  // a cap is about 1.8 mm high
      CHECK(line.baselineMiddle.x > 18);
    }
  }
}

TEST_CASE("copy keeps off keep-clear zones and insets") {
  Scene scene = talk();
  const Rect logo{{10, 10}, {50, 20}};
  const Polygon inset = polygonOf(Rect{{60, 12}, {83, 24}});
  scene.request.keepClear = {logo};
  scene.request.covered = {inset};
  const LetterResult result = placed(scene);
  REQUIRE(result.unplaced == 0);
  for (const PlacedBalloon& balloon : result.balloons) {
    CHECK(commonArea(balloon.outline, polygonOf(logo)) == 0);
    CHECK(commonArea(balloon.outline, inset) == 0);
  }
}

TEST_CASE("without room the copy is still placed, and found") {
  Scene scene;
  scene.request = panel(24, 20);
  addFigure(scene.request, "mara", {22, 20}, 8);
  scene.items = {say("c1", "mara", "Something moved behind the altar. Something big."),
                 say("c2", "mara", "Get the lamp, Jonas, and stay close to me.")};
  const LetterResult result = placed(scene);
  CHECK(result.balloons.size() == 2);
  CHECK(result.unplaced > 0);
  const auto has = [&](const std::string& rule) {
    return std::any_of(result.findings.begin(), result.findings.end(),
                       [&](const CopyFinding& f) { return f.rule == rule && !f.remedy.empty(); });
  };
  CHECK(has("no room"));
  CHECK(has("type shrunk"));
  CHECK(has("balloon area"));
  for (const PlacedBalloon& b : result.balloons) CHECK(b.sizePt == letterer().style().smallestPt);
}

TEST_CASE("type shrinks before copy is left without room") {
  Scene scene = talk();
  scene.request.panel = polygonOf(Rect{{10, 10}, {64, 50}});
  scene.request.faces.clear();
  scene.request.bodies.clear();
  scene.request.mouths = {{"mara", {22, 46}}, {"jonas", {55, 46}}};
  scene.items.push_back(say("c4", "jonas", "My grandmother heard it on the night of the flood."));
  const LetterResult result = placed(scene);
  CHECK(result.balloons.front().sizePt < letterer().style().sizePt);
  CHECK(result.balloons.front().sizePt >= letterer().style().smallestPt);
}

TEST_CASE("a tail is aimed at the mouth and ends about halfway") {
  BalloonShape shape;
  shape.a = 12;
  shape.b = 8;
  const Point middle{30, 20}, mouth{45, 50};
  const TailLine tail = tailLine(shape, middle, mouth);
  CHECK(std::abs(cross(tail.to - middle, mouth - middle)) < 1e-9);
  // 50–60 % of the distance from the balloon to the head, trade source.
  const double share = tail.length() / (mouth - tail.from).length();
  CHECK(share >= 0.5);
  CHECK(share <= 0.6);
  const Polygon outline = outlineOf(shape, middle);
  CHECK(distanceToOutline(outline, tail.from) < 0.6);
  CHECK(commonArea(outline, tailOutline(shape, middle, tail)) > 0);
}

TEST_CASE("a voice from outside has its tail at the panel's side") {
  Scene scene;
  scene.request = panel(70, 50);
  scene.items = {say("c1", "jonas", "Mara! Come up!")};
  scene.items[0].offPanel = true;
  const LetterResult result = placed(scene);
  REQUIRE(result.balloons.size() == 1);
  double nearest = 1e300;
  for (const Point& p : result.balloons[0].tail.points) {
    nearest = std::min(nearest, distanceToOutline(scene.request.panel, p));
  }
  CHECK(nearest > 0.5);  // the border's weight
  CHECK(nearest < 0.8);
}

TEST_CASE("captions have no tail and stand in the corner where reading begins") {
  Scene scene;
  scene.request = panel(90, 60);
  scene.items = {
      say("c1", "", "Below the harbour, an hour before the tide turns.", CopyKind::Caption)};
  const Rect left = boxOf(placed(scene).balloons[0]);
  CHECK(placed(scene).balloons[0].tail.points.empty());
  CHECK(left.min.x < 13);
  CHECK(left.min.y < 13);
  scene.request.direction = ReadingDirection::RightToLeft;
  CHECK(boxOf(placed(scene).balloons[0]).max.x > 97);
}

TEST_CASE("sound effects are set free, larger and a little turned") {
  Scene scene;
  scene.request = panel(90, 60);
  scene.items = {say("c1", "", "Krakk", CopyKind::Sfx)};
  const PlacedBalloon sfx = placed(scene).balloons[0];
  CHECK(sfx.outline.points.empty());
  CHECK(sfx.sizePt > 1.5 * letterer().style().sizePt);
  CHECK(std::abs(sfx.turnDeg) >= 4);
  CHECK(std::abs(sfx.turnDeg) <= 12);
}

TEST_CASE("later means below, or to the reading side and not higher") {
  const Rect first{{10, 10}, {40, 25}};
  const auto ltr = ReadingDirection::LeftToRight;
  const auto rtl = ReadingDirection::RightToLeft;
  CHECK(readsAfter(first, {{45, 10}, {70, 25}}, ltr));
  CHECK(readsAfter(first, {{10, 28}, {40, 40}}, ltr));
  CHECK_FALSE(readsAfter(first, {{45, 2}, {70, 12}}, ltr));
  CHECK_FALSE(readsAfter({{45, 10}, {70, 25}}, first, ltr));
  CHECK(readsAfter({{45, 10}, {70, 25}}, first, rtl));
}

TEST_CASE("the size wanted beforehand is enough for each single item") {
  for (const char* text :
       {"No.", "Don't touch the rope!", "If the tower goes, it takes the whole dock with it."}) {
    Scene scene;
    scene.items = {say("c1", "", text, CopyKind::Speech)};
    const Letterer::Wanted wanted = letterer().wanted(scene.items);
    scene.request = panel(wanted.leastWidthMm + 0.1, wanted.leastHeightMm + 0.1);
    const LetterResult result = placed(scene);
    CHECK(result.unplaced == 0);
    CHECK(result.balloons[0].sizePt == letterer().style().sizePt);
    CHECK(wanted.areaMm2 > 0);
  }
}

TEST_CASE("the answer is the same on every thread and with a fresh letterer") {
  Scene scene = talk();
  const LetterResult once = placed(scene);
  std::vector<LetterResult> results(4);
  {
    const Letterer fresh = std::move(*Letterer::make());
    std::vector<std::jthread> threads;
    for (LetterResult& result : results) {
      threads.emplace_back([&] { result = fresh.place(scene.request); });
    }
  }
  for (const LetterResult& result : results) {
    REQUIRE(result.balloons.size() == once.balloons.size());
    for (std::size_t i = 0; i < once.balloons.size(); ++i) {
      CHECK(result.balloons[i].outline == once.balloons[i].outline);
      CHECK(result.balloons[i].tail == once.balloons[i].tail);
    }
  }
}

TEST_CASE("a panel without copy gives nothing") {
  Scene scene;
  scene.request = panel(50, 50);
  const LetterResult result = placed(scene);
  CHECK(result.balloons.empty());
  CHECK(result.findings.empty());
}

/// Two who stand side by side, so far apart.
Scene sideBySide(double apart) {
  Scene scene;
  scene.request = panel(120, 40);
  addFigure(scene.request, "mara", {62, 34}, 3);
  addFigure(scene.request, "jonas", {62 + apart, 35}, 3);
  scene.items = {say("c1", "jonas", "How many?"), say("c2", "mara", "Forty-one."),
                 say("c3", "jonas", "There were forty houses.")};
  return scene;
}

TEST_CASE("a tail ends nearer to who speaks than to who listens") {
  for (double apart = 8; apart <= 44; apart += 3) {
    Scene scene = sideBySide(apart);
    const LetterResult result = placed(scene);
    for (std::size_t i = 0; i < scene.items.size(); ++i) {
      const PlacedBalloon& balloon = result.balloons[i];
      if (balloon.tail.points.empty()) continue;  // joined to the one before
      const Point middle = boxOf(balloon).centre();
      const Point tip = *std::max_element(
          balloon.tail.points.begin(), balloon.tail.points.end(),
          [&](Point a, Point b) { return (a - middle).length() < (b - middle).length(); });
      const std::string& who = scene.items[i].speaker;
      const std::string other = who == "mara" ? "jonas" : "mara";
      CHECK_MESSAGE(
          (scene.request.mouths[who] - tip).length() < (scene.request.mouths[other] - tip).length(),
          apart, ": ", scene.items[i].id);
    }
  }
}

}  // namespace
}  // namespace tw
