#include "press/reading_marks.h"

#include <doctest/doctest.h>

#include "geometry/polygon.h"
#include "press/example_rough.h"
#include "press/number_places.h"
#include "press/recorder.h"

namespace tw {

namespace {

Finding inPanel(int panel, Severity severity = Severity::Should) {
  Finding out;
  out.panel = panel;
  out.severity = severity;
  return out;
}

/// Panels alone.
RoughPicture bare(int panels) {
  RoughPicture page = example::rough(0, "A", panels);
  for (RoughPanel& panel : page.rough.panels) panel.balloons.clear();
  return page;
}

}  // namespace

TEST_CASE("each finding in a panel has a mark of its own, on none of the others") {
  const RoughPicture page = example::rough(0, "A", 4);
  std::vector<Finding> findings(14, inPanel(2));
  findings.push_back(inPanel(0));  // the page as a whole has no mark
  Recorder surface;
  drawFindingMarks(surface, page, findings, Typesetter{});
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
  drawFindingMarks(surface, page, {finding}, Typesetter{});
  REQUIRE(surface.words.size() == 1);
  CHECK((surface.words[0].at - Point{60, 110}).length() < 9);
}

TEST_CASE("the path has a dot for every rest and a number where it enters a panel") {
  const RoughPicture page = bare(2);
  Recorder surface;
  const Point first = bounds(page.rough.panels[0].outline).centre();
  const Point second = bounds(page.rough.panels[1].outline).centre();
  drawPath(surface, page,
           {{first, 250, false}, {first + Vector{3, 0}, 250, false}, {second, 300, false}},
           Typesetter{});
  REQUIRE(surface.words.size() == 2);
  CHECK(surface.words[0].text == "1");
  CHECK(surface.words[1].text == "2");
}

TEST_CASE("only a long jump has an arrow head and it points where the eye goes") {
  const RoughPicture page = bare(1);
  const auto headsOf = [&](Point to) {
    Recorder surface;
    drawPath(surface, page, {{{200, 10}, 250, false}, {to, 250, false}}, Typesetter{});
    std::vector<Path> heads;
    for (const Path& fill : surface.fills)
      if (fill.points().size() == 4) heads.push_back(fill);
    return heads;
  };
  CHECK(headsOf({215, 10}).empty());
  const auto heads = headsOf({240, 10});
  REQUIRE(heads.size() == 1);
  CHECK(heads[0].points()[0].x > heads[0].points()[1].x);  // the tip is ahead
}

TEST_CASE("no heat lies on copy") {
  const RoughPicture page = example::rough(0, "A", 4);
  const Typesetter typesetter;
  std::vector<Polygon> copy;
  for (const RoughPanel& panel : page.rough.panels)
    for (const Polygon& shape : copyShapes(panel, typesetter)) copy.push_back(shape);
  REQUIRE_FALSE(copy.empty());
  Recorder surface;
  std::vector<EyeRest> rests;
  for (const Polygon& shape : copy)
    for (const Point at : {centroid(shape), bounds(shape).max + Vector{1, 1}})
      rests.push_back({at, 250, false});
  drawRests(surface, page, rests, typesetter);
  CHECK_FALSE(surface.fills.empty());
  for (const Path& dot : surface.fills)
    for (const Point p : dot.points())
      for (const Polygon& shape : copy) CHECK_FALSE(contains(shape, p));
}

TEST_CASE("the key names only what the sheet shows") {
  const RoughPicture page = bare(2);
  const auto wordsOf = [&](const ReadingSheet& sheet) {
    Recorder surface;
    drawReadingKey(surface, page, sheet, Typesetter{});
    std::string out;
    for (const TypeLine& line : surface.words) out += line.text + "; ";
    return out;
  };
  CHECK(wordsOf({}).empty());
  ReadingSheet sheet;
  sheet.partings = {{1, 2, 0.3, ""}};
  sheet.findings = {inPanel(1, Severity::Must), inPanel(2, Severity::Look)};
  CHECK(wordsOf(sheet) == "readers part; must; look; ");
  sheet.findings[1].silencedWhy = "meant";
  CHECK(wordsOf(sheet) == "readers part; must; look; silenced; ");
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
