#include "press/reading_marks.h"

#include <doctest/doctest.h>

#include "geometry/polygon.h"
#include "press/example_rough.h"
#include "press/recorder.h"

namespace tw {

namespace {

Finding inPanel(int panel, Severity severity = Severity::Should) {
  Finding out;
  out.panel = panel;
  out.severity = severity;
  return out;
}

}  // namespace

TEST_CASE("each finding in a panel has a mark of its own, on none of the others") {
  const RoughPicture page = example::rough(0, "A", 4);
  std::vector<Finding> findings(14, inPanel(2));
  findings.push_back(inPanel(0));  // the page as a whole has no mark
  Recorder surface;
  drawFindingMarks(surface, page, findings);
  REQUIRE(surface.words.size() == 14);
  for (std::size_t a = 0; a < surface.words.size(); ++a)
    for (std::size_t b = a + 1; b < surface.words.size(); ++b)
      CHECK((surface.words[a].at - surface.words[b].at).length() > 4);
}

TEST_CASE("a finding with a place is marked beside it") {
  const RoughPicture page = example::rough(0, "A", 4);
  Finding finding = inPanel(3);
  finding.place = polygonOf({{50, 100}, {60, 110}});
  Recorder surface;
  drawFindingMarks(surface, page, {finding});
  REQUIRE(surface.words.size() == 1);
  CHECK(surface.words[0].at.x == doctest::Approx(60));
}

TEST_CASE("the path has a dot for every rest and one line through all") {
  Recorder surface;
  drawPath(surface, {{{10, 10}, 250, false}, {{20, 15}, 220, true}, {{30, 40}, 300, false}});
  CHECK(surface.fills.size() == 3);
  CHECK(surface.lines.front().points().size() == 3);
}

TEST_CASE("a parting is labelled with the share of readers that it takes") {
  const RoughPicture page = example::rough(0, "A", 4);
  Recorder surface;
  const Typesetter typesetter;
  drawPartings(surface, page, {{1, 3, 0.31, "stack beside a tall panel"}}, typesetter);
  REQUIRE(surface.words.size() == 1);
  CHECK(surface.words[0].text == "31 %");
}

}  // namespace tw
