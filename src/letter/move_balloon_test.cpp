// Balloons under a hand. The laws are ours; Clipper's areas judge what lies on what.
#include "letter/move_balloon.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>

#include "geometry/polygon.h"
#include "letter/placed_copy.h"

namespace tw {
namespace {

const Letterer& letterer() {
  static const Letterer one = std::move(*Letterer::make());
  return one;
}

CopyItem say(const std::string& id, const std::string& who, const std::string& text,
             CopyKind kind = CopyKind::Speech) {
  CopyItem item;
  item.id = id;
  item.kind = kind;
  item.speaker = who;
  item.text = text;
  return item;
}

/// Two people and three balloons in a wide panel, as the program places them.
struct Talk {
  std::vector<CopyItem> items{say("c1", "mara", "I told you the bell would never ring again."),
                              say("c2", "jonas", "Then who is ringing it?"),
                              say("c3", "", "CLANG", CopyKind::Sfx)};
  LetterRequest request;

  Talk() {
    request.panel = polygonOf(Rect{{10, 10}, {110, 90}});
    request.live = {{5, 5}, {200, 300}};
    request.panelsOnPage = 4;
    addFigure("mara", {35, 62});
    addFigure("jonas", {88, 60});
    request.standing = placed().balloons;
  }
  Talk(const Talk&) = delete;
  void addFigure(const std::string& who, Point head) {
    request.faces.push_back(ellipse(head, 4, 5, 24));
    request.mouths[who] = {head.x, head.y + 2};
  }
  LetterResult placed() {
    request.items = &items;
    return letterer().place(request);
  }
  const PlacedBalloon& balloon(std::size_t i) const { return request.standing[i]; }
  void put(std::size_t i, PlacedBalloon balloon) { request.standing[i] = std::move(balloon); }
};

double farthestApart(const Polygon& a, const Polygon& b) {
  if (a.points.size() != b.points.size()) return 1e9;
  double most = 0;
  for (std::size_t i = 0; i < a.points.size(); ++i)
    most = std::max(most, (a.points[i] - b.points[i]).length());
  return most;
}

bool has(const LetterResult& result, const std::string& item, const std::string& rule) {
  return std::ranges::any_of(result.findings, [&](const CopyFinding& finding) {
    return finding.item == item && finding.rule == rule;
  });
}

}  // namespace

TEST_CASE("a balloon moved there and back is where it was") {
  Talk talk;
  CHECK(rc::check("there and back", [&] {
    const std::size_t i = *rc::gen::inRange<std::size_t>(0, 3);
    const Vector by{*rc::gen::inRange(-200, 200) / 10.0, *rc::gen::inRange(-200, 200) / 10.0};
    const PlacedBalloon there = movedBalloon(talk.balloon(i), by, talk.request, letterer());
    const PlacedBalloon still = movedBalloon(talk.balloon(i), {}, talk.request, letterer());
    const PlacedBalloon back = movedBalloon(there, -by, talk.request, letterer());
    RC_ASSERT(there.byHand);
    RC_ASSERT(farthestApart(back.outline, still.outline) < 1e-9);
    RC_ASSERT(farthestApart(back.tail, still.tail) < 1e-6);
    for (std::size_t k = 0; k < back.lines.size(); ++k)
      RC_ASSERT((back.lines[k].baselineMiddle - still.lines[k].baselineMiddle).length() < 1e-9);
  }));
}

TEST_CASE("a tail that the program aimed is the tail of the balloon where it stands") {
  Talk talk;
  for (std::size_t i = 0; i < 2; ++i) {
    CHECK(tailIsAimed(talk.balloon(i), talk.request, letterer()));
    CHECK(farthestApart(talk.balloon(i).tail,
                        tailWhereItStands(talk.balloon(i), talk.request, letterer())) < 1e-6);
  }
}

TEST_CASE("a moved balloon has its tail aimed at its mouth") {
  Talk talk;
  const PlacedBalloon moved = movedBalloon(talk.balloon(0), {12, 6}, talk.request, letterer());
  const Point middle = middleOf(moved, letterer().type());
  const Point tip = *tipOf(moved, middle), mouth = talk.request.mouths["mara"];
  // On the line from the middle to the mouth.
  CHECK(std::abs(cross((mouth - middle).unit(), tip - middle)) < 0.2);
  CHECK((mouth - tip).length() < (mouth - middle).length());
}

TEST_CASE("a thought dragged far from its head is told, near it its bubbles reach the face") {
  Talk talk;
  talk.request.panel = polygonOf(Rect{{10, 10}, {160, 90}});
  talk.items = {say("c1", "mara", "Then I pull.", CopyKind::Thought)};
  talk.request.standing = talk.placed().balloons;
  const Point mouth = talk.request.mouths["mara"];
  const Point start = middleOf(talk.balloon(0), letterer().type());
  const auto dragged = [&](Point middle) {
    const PlacedBalloon moved =
        movedBalloon(talk.balloon(0), middle - start, talk.request, letterer());
    LetterRequest request = talk.request;
    request.standing = {moved};
    const LetterResult result = letterer().place(request);
    const double left = (*tipOf(result.balloons[0], middle) - mouth).length();
    INFO("bubbles end " << left << " mm from the mouth");
    CHECK(has(result, "c1", "far from the mouth") == (left > 16));
    return left;
  };
  CHECK(dragged(mouth + Vector{8, -22}) < 12);
  CHECK(dragged(mouth + Vector{30, -30}) > 12);
  CHECK(dragged(mouth + Vector{57, -19}) > 30);  // 60 mm
}

TEST_CASE("a tip that was dragged stays where it was put when the balloon moves") {
  Talk talk;
  const Point tip{60, 70};
  const PlacedBalloon dragged = withTailTip(talk.balloon(0), tip, talk.request, letterer());
  CHECK((*tipOf(dragged, middleOf(dragged, letterer().type())) - tip).length() < 0.05);
  CHECK_FALSE(tailIsAimed(dragged, talk.request, letterer()));
  const PlacedBalloon moved = movedBalloon(dragged, {5, -1}, talk.request, letterer());
  CHECK((*tipOf(moved, middleOf(moved, letterer().type())) - tip).length() < 0.1);
  const PlacedBalloon again = withAimedTail(moved, talk.request, letterer());
  CHECK(tailIsAimed(again, talk.request, letterer()));
}

TEST_CASE("the bubbles of a thought end where they were dragged") {
  Talk talk;
  talk.items[0].kind = CopyKind::Thought;
  talk.request.standing = talk.placed().balloons;
  const Point tip{60, 72};
  PlacedBalloon thought = withTailTip(talk.balloon(0), tip, talk.request, letterer());
  for (int i = 0; i < 20; ++i)
    thought = movedBalloon(thought, {i % 2 == 0 ? 0.5 : -0.5, 0}, talk.request, letterer());
  CHECK((*tipOf(thought, middleOf(thought, letterer().type())) - tip).length() < 1);
}

TEST_CASE("a tip dragged into its balloon takes the tail away") {
  Talk talk;
  const Point middle = middleOf(talk.balloon(0), letterer().type());
  const PlacedBalloon bare =
      withTailTip(talk.balloon(0), middle + Vector{1, 0}, talk.request, letterer());
  CHECK(bare.tail.points.empty());
  CHECK(movedBalloon(bare, {3, 0}, talk.request, letterer()).tail.points.empty());
}

TEST_CASE("broader has fewer lines and narrower more about the same middle") {
  Talk talk;
  const PlacedBalloon& was = talk.balloon(0);
  const auto broad = reshapedBalloon(was, -1, talk.request, letterer());
  const auto narrow = reshapedBalloon(was, 1, talk.request, letterer());
  REQUIRE(broad);
  REQUIRE(narrow);
  CHECK(broad->lines.size() + 1 == was.lines.size());
  CHECK(narrow->lines.size() == was.lines.size() + 1);
  CHECK(bounds(broad->outline).width() > bounds(was.outline).width());
  for (const PlacedBalloon& b : {*broad, *narrow}) {
    CHECK(b.byHand);
    CHECK((middleOf(b, letterer().type()) - middleOf(was, letterer().type())).length() < 1e-6);
    CHECK(holdsWords(b, talk.items[0], letterer().style()));
  }
  PlacedBalloon one = was;
  while (const auto next = reshapedBalloon(one, -1, talk.request, letterer())) one = *next;
  CHECK(one.lines.size() == 1);
}

TEST_CASE("a sound made smaller has smaller type") {
  Talk talk;
  const auto small = reshapedBalloon(talk.balloon(2), 1, talk.request, letterer());
  REQUIRE(small);
  CHECK(small->sizePt < talk.balloon(2).sizePt);
  const auto large = reshapedBalloon(*small, -1, talk.request, letterer());
  REQUIRE(large);
  CHECK(large->sizePt == doctest::Approx(talk.balloon(2).sizePt));
}

TEST_CASE("a balloon placed by hand stays to the last point and the others keep off it") {
  Talk talk;
  CHECK(rc::check("held", [&] {
    Talk own;
    const std::size_t i = *rc::gen::inRange<std::size_t>(0, 2);
    const Vector by{*rc::gen::inRange(-300, 500) / 10.0, *rc::gen::inRange(-100, 400) / 10.0};
    own.put(i, movedBalloon(own.balloon(i), by, own.request, letterer()));
    const LetterResult result = own.placed();
    RC_ASSERT(result.balloons[i] == own.balloon(i));
    const std::size_t other = 1 - i;
    RC_ASSERT(!result.balloons[other].byHand);
    if (result.unplaced == 0)
      RC_ASSERT(area(common({result.balloons[i].outline}, {result.balloons[other].outline})) <
                1e-3);
  }));
}

TEST_CASE("nothing by hand changes nothing") {
  Talk talk;
  const std::vector<PlacedBalloon> standing = talk.request.standing;
  CHECK(talk.placed().balloons == standing);
  talk.request.standing.clear();
  CHECK(talk.placed().balloons == standing);
}

TEST_CASE("a hand-placed balloon out of its turn does not shrink the type of the others") {
  Talk talk;
  // The answer at the very top left: the question has no place before it.
  const Rect box = bounds(talk.balloon(1).outline);
  talk.put(1, movedBalloon(talk.balloon(1), Point{12, 12} - box.min, talk.request, letterer()));
  const LetterResult result = talk.placed();
  CHECK(result.balloons[0].sizePt == doctest::Approx(letterer().style().sizePt));
  CHECK(has(result, "c2", "out of turn"));
}

TEST_CASE("what a hand-placed balloon does wrong is told and it stays") {
  Talk talk;
  const PlacedBalloon first = talk.balloon(0);
  const Point middle = middleOf(first, letterer().type());
  const auto putAt = [&](Point at) {
    talk.put(0, movedBalloon(first, at - middle, talk.request, letterer()));
    return talk.placed();
  };
  LetterResult result = putAt({35, 62});
  CHECK(has(result, "c1", "covers a face"));
  CHECK(result.coveredFace > 0);
  CHECK(result.balloons[0] == talk.balloon(0));
  CHECK(has(putAt({10, 40}), "c1", "over the border"));
  CHECK(has(putAt({3, 40}), "c1", "outside live"));
  const LetterResult good = putAt(middle);
  for (const char* rule : {"covers a face", "over the border", "outside live", "out of turn"})
    CHECK_FALSE(has(good, "c1", rule));
}

TEST_CASE("other words are set at the same middle and stay by hand") {
  Talk talk;
  talk.put(0, movedBalloon(talk.balloon(0), {4, 3}, talk.request, letterer()));
  const Point middle = middleOf(talk.balloon(0), letterer().type());
  talk.items[0].text = "I told you that old bell would never, ever ring again.";
  const LetterResult result = talk.placed();
  CHECK(result.balloons[0].byHand);
  CHECK(holdsWords(result.balloons[0], talk.items[0], letterer().style()));
  CHECK((middleOf(result.balloons[0], letterer().type()) - middle).length() < 1e-6);
}

TEST_CASE("hyphens at line ends and stress over several lines are the same words") {
  PlacedBalloon balloon;
  balloon.lines = {{"WHO IS *RING-*", {}}, {"*ING* IT?", {}}};
  const LetterStyle style;
  CHECK(holdsWords(balloon, say("c", "", "Who is *ringing* it?"), style));
  CHECK_FALSE(holdsWords(balloon, say("c", "", "Who is ringing it?"), style));
  CHECK_FALSE(holdsWords(balloon, say("c", "", "Who is *singing* it?"), style));
}

TEST_CASE("a balloon goes along with its panel and comes back with it") {
  Talk talk;
  CHECK(rc::check("panel there and back", [&] {
    Talk own;
    own.put(0, movedBalloon(own.balloon(0), {*rc::gen::inRange(0, 40) / 10.0, 3}, own.request,
                            letterer()));
    LetterRequest after = own.request;
    const double x = *rc::gen::inRange(0, 60), y = *rc::gen::inRange(0, 60);
    const double wide = *rc::gen::inRange(70, 140), high = *rc::gen::inRange(60, 120);
    after.panel = polygonOf(Rect{{x, y}, {x + wide, y + high}});
    for (auto& [who, mouth] : after.mouths) mouth = mouth + Vector{x - 10, y - 10};
    after.standing = takenAlong(own.request, after, letterer());
    const Rect box = bounds(after.standing[0].outline);
    RC_ASSERT(box.min.x >= x - 0.5 && box.max.x <= x + wide + 0.5);
    RC_ASSERT(box.min.y >= y - 0.5 && box.max.y <= y + high + 0.5);
    RC_ASSERT(after.standing[1] == own.balloon(1));  // the program's are placed anew anyway
    const auto back = takenAlong(after, own.request, letterer());
    RC_ASSERT(farthestApart(back[0].outline, own.balloon(0).outline) < 1e-6);
    const Point middle = middleOf(back[0], letterer().type());
    RC_ASSERT((*tipOf(back[0], middle) - *tipOf(own.balloon(0), middle)).length() < 0.2);
  }));
}

TEST_CASE("tails follow a mouth that moved and nothing else does") {
  Talk talk;
  talk.put(0, movedBalloon(talk.balloon(0), {4, 3}, talk.request, letterer()));
  const Rect box = bounds(talk.balloon(1).outline);
  const Point tip{box.centre().x - 5, box.max.y + 5};
  talk.put(1, withTailTip(talk.balloon(1), tip, talk.request, letterer()));
  LetterRequest after = talk.request;
  after.mouths["jonas"] = talk.request.mouths["jonas"] + Vector{-6, 3};
  const auto balloons = takenAlong(talk.request, after, letterer());
  CHECK(balloons[0] == talk.balloon(0));
  CHECK(balloons[1].outline == talk.balloon(1).outline);
  const Point middle = middleOf(balloons[1], letterer().type());
  CHECK((*tipOf(balloons[1], middle) - (tip + Vector{-6, 3})).length() < 0.2);
}

TEST_CASE("a bridge is drawn again when the balloon before it is placed elsewhere") {
  Talk talk;
  talk.items[1].speaker = "mara";
  talk.items.pop_back();
  talk.request.standing.clear();
  talk.request.standing = talk.placed().balloons;
  PlacedBalloon aside = shifted(talk.balloon(0), {7, 0});
  talk.put(0, aside);
  talk.put(1, movedBalloon(talk.balloon(1), {0, 1}, talk.request, letterer()));
  REQUIRE(area(common({talk.balloon(1).tail}, {aside.outline})) > 0.1);
  const LetterResult result = talk.placed();
  CHECK(result.balloons[1].outline == talk.balloon(1).outline);
  REQUIRE(result.balloons[0].outline != aside.outline);
  CHECK(result.balloons[1].tail != talk.balloon(1).tail);
  LetterRequest now = talk.request;
  now.standing = result.balloons;
  CHECK(tailIsAimed(result.balloons[1], now, letterer()));
}

}  // namespace tw
