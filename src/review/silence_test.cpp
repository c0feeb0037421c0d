#include "review/silence.h"

#include <doctest/doctest.h>

namespace tw {

namespace {

Page pageWithBeats() {
  Page page;
  page.number = 3;
  page.beats.resize(2);
  page.beats[0].id = "p3-1";
  page.beats[1].id = "p3-2";
  return page;
}

Finding finding(const std::string& rule, const std::string& beat, Severity severity) {
  Finding out;
  out.rule = rule;
  out.beat = beat;
  out.page = 3;
  out.severity = severity;
  return out;
}

}  // namespace

TEST_CASE("an answer silences its rule in its panel alone") {
  Page page = pageWithBeats();
  REQUIRE(silence(page, {"tangents", "p3-2", "the rope is meant to touch"}));
  std::vector<Finding> findings{finding("tangents", "p3-1", Severity::Should),
                                finding("tangents", "p3-2", Severity::Should),
                                finding("rhythm", "p3-2", Severity::Should)};
  applySilenced(findings, page);
  CHECK(findings[0].silencedWhy.empty());
  CHECK(findings[1].silencedWhy == "the rope is meant to touch");
  CHECK(findings[2].silencedWhy.empty());
}

TEST_CASE("a second answer takes the first one's place") {
  Page page = pageWithBeats();
  REQUIRE(silence(page, {"tangents", "p3-2", "first"}));
  REQUIRE(silence(page, {"tangents", "p3-2", "second"}));
  REQUIRE(page.silenced.size() == 1);
  CHECK(page.silenced[0].reason == "second");
}

TEST_CASE("no reason and no such beat are bad input, and nothing is changed") {
  Page page = pageWithBeats();
  CHECK_FALSE(silence(page, {"tangents", "p3-2", "  "}));
  CHECK_FALSE(silence(page, {"tangents", "p9-2", "why"}));
  CHECK(page.silenced.empty());
}

TEST_CASE("an answer can be taken back once") {
  Page page = pageWithBeats();
  REQUIRE(silence(page, {"rhythm", "", "quiet on purpose"}));
  REQUIRE(unsilence(page, "rhythm", ""));
  CHECK(page.silenced.empty());
  CHECK_FALSE(unsilence(page, "rhythm", ""));
}

TEST_CASE("the gravest level is that of the findings that still speak") {
  std::vector<Finding> findings{finding("a", "", Severity::Look), finding("b", "", Severity::Must)};
  CHECK(gravestOf(findings) == Severity::Must);
  findings[1].silencedWhy = "agreed with the editor";
  CHECK(gravestOf(findings) == Severity::Look);
  CHECK_FALSE(gravestOf({}));
}

}  // namespace tw
