#include "ink/gather_light.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

namespace tw {

TEST_CASE("a flat picture stays flat at any size") {
  CHECK(rc::check("flat", [] {
    const int width = *rc::gen::inRange(1, 40), height = *rc::gen::inRange(1, 40);
    const int most = *rc::gen::inRange(1, 45);
    const Rgba colour{*rc::gen::arbitrary<std::uint8_t>(), *rc::gen::arbitrary<std::uint8_t>(),
                      *rc::gen::arbitrary<std::uint8_t>(), 255};
    LightGatherer gatherer(width, height, most);
    for (int y = 0; y < height; ++y) gatherer.addRow(std::vector<Rgba>(width, colour));
    const GreyPicture picture = gatherer.finished();
    const double wanted = lightOfLuminance(luminanceOf(colour));
    for (const float light : picture.light) RC_ASSERT(std::abs(light - wanted) < 1e-5);
    RC_ASSERT(std::max(picture.width, picture.height) == std::min(most, std::max(width, height)));
  }));
}

TEST_CASE("covering less paper makes a colour lighter") {
  double before = -1;
  for (int alpha = 255; alpha >= 0; alpha -= 15) {
    const double light = luminanceOf(Rgba{0, 0, 0, static_cast<std::uint8_t>(alpha)});
    CHECK(light > before);
    before = light;
  }
  CHECK(before == doctest::Approx(1));
}

}  // namespace tw
