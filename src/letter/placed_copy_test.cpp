#include "letter/placed_copy.h"

#include <doctest/doctest.h>

#include "geometry/polygon.h"

namespace tw {
namespace {

const Letterer& letterer() {
  static const Letterer one = std::move(*Letterer::make());
  return one;
}

Settings settings(CopyKind kind) {
  const LetterStyle& style = letterer().style();
  return settingsOf(lettered("They never found the sexton, nor *his* dog.", true), kind,
                    style.sizePt, 80, style, letterer().type());
}

}  // namespace

TEST_CASE("the middle and the shape of placed copy are found again") {
  const Point middle{31.5, 42.25};
  CopyItem item;
  for (const CopyKind kind : {CopyKind::Speech, CopyKind::Whisper, CopyKind::Caption,
                              CopyKind::Thought, CopyKind::Shout, CopyKind::Sfx, CopyKind::Title}) {
    item.kind = kind;
    for (const Setting& setting : settings(kind)) {
      const PlacedBalloon placed = balloonOf(item, setting, middle);
      CHECK((middleOf(placed, letterer().type()) - middle).length() < 1e-9);
      const Setting found = settingOf(placed, letterer().style(), letterer().type());
      const double slack = setting.shape.reach + 0.1;  // bumps and spikes are uneven
      CHECK(found.shape.a == doctest::Approx(setting.shape.a).epsilon(slack / setting.shape.a));
      CHECK(found.shape.b == doctest::Approx(setting.shape.b).epsilon(slack / setting.shape.b));
      CHECK(found.lines == setting.lines);
      CHECK(found.lineStep == doctest::Approx(setting.lineStep));
    }
  }
}

TEST_CASE("a shift moves outline, tail and lines alike") {
  CopyItem item;
  PlacedBalloon placed = balloonOf(item, settings(CopyKind::Speech)[2], {20, 20});
  placed.tail = polygonOf(Rect{{20, 25}, {21, 30}});
  const PlacedBalloon away = shifted(placed, {3, -2});
  CHECK(away.outline.points[5] == placed.outline.points[5] + Vector{3, -2});
  CHECK(away.tail.points[1] == placed.tail.points[1] + Vector{3, -2});
  CHECK(away.lines[0].baselineMiddle == placed.lines[0].baselineMiddle + Vector{3, -2});
}

TEST_CASE("copy without a tail has no tip") {
  CopyItem item;
  const PlacedBalloon placed = balloonOf(item, settings(CopyKind::Caption)[0], {20, 20});
  CHECK_FALSE(tipOf(placed, {20, 20}));
}

}  // namespace tw
