#include "read/tempo.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <numeric>

namespace tw {
namespace {

SeenStory told(const std::vector<double>& seconds) {
  SeenStory story;
  for (std::size_t i = 0; i < seconds.size(); ++i) {
    if (i % 5 == 0) story.pages.push_back({static_cast<int>(i / 5) + 1, false, false, {}, {}});
    StoryPanel panel;
    panel.seconds = seconds[i];
    panel.number = static_cast<int>(i % 5) + 1;
    story.pages.back().panels.push_back(panel);
  }
  return story;
}

}  // namespace

TEST_CASE("an even story has no slow and no fast stretch") {
  const Tempo tempo = tempoOf(told(std::vector<double>(30, 2.0)));
  CHECK(tempo.stretches.empty());
  CHECK(tempo.median == doctest::Approx(2));
  for (const double c : tempo.curve) CHECK(c == doctest::Approx(2));
}

TEST_CASE("a long talk is a slow stretch and one long panel is none") {
  std::vector<double> seconds(30, 2.0);
  seconds[15] = 5;
  CHECK(tempoOf(told(seconds)).stretches.empty());
  for (std::size_t i = 12; i < 18; ++i) seconds[i] = 8;
  const Tempo tempo = tempoOf(told(seconds));
  REQUIRE(tempo.stretches.size() == 1);
  CHECK(tempo.stretches[0].slow);
  CHECK(tempo.stretches[0].first == 12);
  CHECK(tempo.stretches[0].last == 17);
  CHECK(tempo.stretches[0].ratio == doctest::Approx(4).epsilon(0.02));
}

TEST_CASE("a silent run in a talking story is fast") {
  std::vector<double> seconds(30, 6.0);
  for (std::size_t i = 10; i < 19; ++i) seconds[i] = 1.5;
  const Tempo tempo = tempoOf(told(seconds));
  REQUIRE(tempo.stretches.size() == 1);
  CHECK_FALSE(tempo.stretches[0].slow);
}

TEST_CASE("smoothing stays within the values and turns round with them") {
  CHECK(rc::check("smoothing", [] {
    const auto ints =
        *rc::gen::nonEmpty(rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 90)));
    const std::vector<double> values(ints.begin(), ints.end());
    const auto smooth = smoothed(values);
    const auto [least, most] = std::ranges::minmax(values);
    for (const double s : smooth) RC_ASSERT(s >= least - 1e-9 && s <= most + 1e-9);
    auto back = smoothed({values.rbegin(), values.rend()});
    std::ranges::reverse(back);
    for (std::size_t i = 0; i < smooth.size(); ++i) RC_ASSERT(std::abs(smooth[i] - back[i]) < 1e-9);
  }));
}

TEST_CASE("a page adds up its panels") {
  StoryPage page = told({2, 4, 6}).pages[0];
  page.panels[0].words = 12;
  page.panels[0].areaShare = 0.3;
  page.panels[1].areaShare = 0.6;
  PageTempo tempo = pageTempoOf(page);
  CHECK(tempo.seconds == 12);
  CHECK(tempo.words == 12);
  CHECK(tempo.wordless == doctest::Approx(2.0 / 3));
  CHECK(tempo.meanAreaShare == 0);  // not measured
  page.measured = true;
  CHECK(pageTempoOf(page).meanAreaShare == doctest::Approx(0.3));
}

}  // namespace tw
