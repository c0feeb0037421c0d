#include "press/finding_mark.h"

#include <doctest/doctest.h>

#include "press/recorder.h"

namespace tw {

namespace {

Recorder marked(Severity severity, std::size_t number, bool silenced = false) {
  Recorder surface;
  drawFindingMark(surface, {10, 10}, severity, number, silenced);
  return surface;
}

}  // namespace

TEST_CASE("levels differ by shape: a diamond, a square, a ring") {
  const Recorder must = marked(Severity::Must, 1), should = marked(Severity::Should, 1),
                 look = marked(Severity::Look, 1);
  REQUIRE(must.fills.size() == 1);
  CHECK(must.fills[0].points().size() == 4);
  CHECK(should.fills[0].points().size() == 4);
  CHECK(look.fills[0].points().size() == 32);
  CHECK(must.fills[0].points()[0].x == doctest::Approx(10));    // a corner on top
  CHECK(should.fills[0].points()[0].x != doctest::Approx(10));  // corners at the sides
}

TEST_CASE("number 0 leaves the mark bare") {
  CHECK(marked(Severity::Should, 0).words.empty());
  CHECK(marked(Severity::Should, 12).words.at(0).text == "12");
}

TEST_CASE("a silenced finding is grey") {
  CHECK(marked(Severity::Look, 1, true).pens.back().ink.isGrey());
  CHECK_FALSE(marked(Severity::Look, 1, false).pens.back().ink.isGrey());
}

}  // namespace tw
