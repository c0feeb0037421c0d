#include "letter/aim_tail.h"

#include <doctest/doctest.h>

#include "geometry/polygon.h"

namespace tw {
namespace {

LetterRequest panel() {
  LetterRequest request;
  request.panel = polygonOf(Rect{{0, 0}, {100, 80}});
  request.live = {{0, 0}, {100, 80}};
  return request;
}

const BalloonShape kBalloon{CopyKind::Speech, 12, 8, 0, 0, 1};

}  // namespace

TEST_CASE("a tail to a mouth in the panel points at it and stops short of its face") {
  LetterRequest request = panel();
  const Point mouth{50, 60};
  request.faces = {ellipse({50, 57}, 4, 6, 24)};
  const PanelRoom room(request, {});
  const AimedTail tail = aimedTail(kBalloon, {50, 20}, mouth, room);
  CHECK(tail.seen);
  CHECK(tail.line.to.x == doctest::Approx(50));
  CHECK(tail.line.to.y < 57 - 6);
  CHECK(tail.line.to.y > 28);
}

TEST_CASE("a tail without a mouth goes to the nearer side and stays inside") {
  const LetterRequest request = panel();
  const PanelRoom room(request, {});
  const AimedTail tail = aimedTail(kBalloon, {80, 30}, std::nullopt, room);
  CHECK_FALSE(tail.seen);
  CHECK(tail.aim.x == doctest::Approx(100));
  CHECK(tail.line.to.x > 92);
  CHECK(tail.line.to.x < 100);
}

TEST_CASE("one voice is one speaker in one tone who is seen or unseen both times") {
  CopyItem first, second;
  first.speaker = second.speaker = "mara";
  CHECK(sameVoice(first, second));
  second.offPanel = true;
  CHECK_FALSE(sameVoice(first, second));
  second = first;
  second.kind = CopyKind::Whisper;
  CHECK_FALSE(sameVoice(first, second));
  second = first;
  first.kind = second.kind = CopyKind::Caption;
  CHECK_FALSE(sameVoice(first, second));
}

}  // namespace tw
