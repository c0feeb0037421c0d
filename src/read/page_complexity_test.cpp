#include "read/page_complexity.h"

#include <doctest/doctest.h>

#include "read/drawn_picture_test.h"

namespace tw {

TEST_CASE("a blank page is bright and has one grey and one shape") {
  const PageComplexity c = complexityOf(paper(150, 250));
  CHECK(c.brightness == doctest::Approx(1));
  CHECK(c.entropyBits == doctest::Approx(0));
  CHECK(c.shapes == 1);
}

TEST_CASE("two greys of equal share are one bit and four are two") {
  GreyPicture two = paper(200, 250), four = two;
  paintBox(two, {{0, 0}, {100, 250}}, 0);
  for (int i = 0; i < 4; ++i)
    paintBox(four, {{50.0 * i, 0}, {50.0 * i + 50, 250}}, static_cast<float>(0.1 + 0.25 * i));
  CHECK(complexityOf(two).entropyBits == doctest::Approx(1));
  CHECK(complexityOf(four).entropyBits == doctest::Approx(2));
  CHECK(complexityOf(two).brightness == doctest::Approx(0.5));
}

TEST_CASE("shapes are counted in their layer of brightness and specks are not") {
  GreyPicture page = paper(200, 250);
  for (int i = 0; i < 5; ++i) paintBox(page, {{20, 20.0 + 40 * i}, {40, 40.0 + 40 * i}}, 0);
  for (int i = 0; i < 3; ++i) paintBox(page, {{100, 20.0 + 40 * i}, {120, 40.0 + 40 * i}}, 0.5f);
  paintBox(page, {{180, 20}, {182, 22}}, 0);
  CHECK(complexityOf(page).shapes == 1 + 5 + 3);
}

}  // namespace tw
