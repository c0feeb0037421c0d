#include "stage/lightness.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <array>
#include <cmath>

using namespace tw;

TEST_CASE("sRGB is encoded by the standard's curve, and back") {
  // Source: IEC 61966-2-1:1999; the value of 18 % grey as published with the curve.
  CHECK(srgbOf(0.18) == doctest::Approx(0.4613561).epsilon(1e-7));
  CHECK(rc::check("decoding undoes encoding", [] {
    const double y = *rc::gen::inRange(0, 10001) / 10000.0;
    RC_ASSERT(std::abs(linearOf(srgbOf(y)) - y) < 2e-6);  // the two published limits differ a hair
  }));
}

TEST_CASE("the Munsell scale follows ASTM D1535, its lightness CIE L* and its grey sRGB") {
  // Source: the polynomial of ASTM D1535 with its worked value (V 3.74629715382 has Y 10.1488096);
  // L* by CIE 15 and 8-bit greys by IEC 61966-2-1, worked out from it outside this program.
  CHECK(100 * luminanceOfMunsell(3.74629715382) == doctest::Approx(10.1488096).epsilon(1e-7));
  struct Row {
    double value, luminance, lightness, grey;
  };
  constexpr std::array<Row, 11> kRows{{{0, 0, 0, 0},
                                       {1, 1.1799, 10.408, 28.28},
                                       {2, 3.0481, 20.236, 48.80},
                                       {3, 6.3912, 30.379, 71.50},
                                       {4, 11.7008, 40.737, 96.01},
                                       {5, 19.2718, 51.004, 121.45},
                                       {6, 29.3012, 61.046, 147.28},
                                       {7, 41.9854, 70.861, 173.37},
                                       {8, 57.6196, 80.527, 199.79},
                                       {9, 76.6956, 90.181, 226.84},
                                       {10, 100, 100, 255}}};
  for (const Row& row : kRows) {
    const double y = luminanceOfMunsell(row.value);
    CHECK(std::abs(100 * y - row.luminance) < 6e-5);
    CHECK(std::abs(lightnessOf(y) - row.lightness) < 6e-4);
    CHECK(std::abs(255 * srgbOf(y) - row.grey) < 6e-3);
  }
}

TEST_CASE("middle greys have the published lightness") {
  // Source: CIE 15 with IEC 61966-2-1: 18 % grey is L* 49.496, L* 50 is Y 18.4187 %.
  CHECK(lightnessOf(0.18) == doctest::Approx(49.496).epsilon(1e-5));
  CHECK(100 * luminanceOf(50) == doctest::Approx(18.4187).epsilon(1e-5));
  CHECK(lightnessOf(linearOf(128 / 255.0)) == doctest::Approx(53.585).epsilon(1e-5));
}

TEST_CASE("four equal steps of lightness are the greys 255, 162, 78 and 0") {
  // Source: equal steps of CIE L* carried to sRGB outside this program.
  constexpr std::array<double, 4> kGreys{255, 162, 78, 0};
  for (std::size_t i = 0; i < 4; ++i) {
    const auto step = static_cast<ValueStep>(i);
    CHECK(std::round(255 * (1 - darknessOf(step))) == kGreys[i]);
    CHECK(stepOf(lightnessOf(step) + 10) == step);
    CHECK(stepOf(lightnessOf(step) - 10) == step);
  }
}
