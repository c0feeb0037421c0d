#include "command/finding_json.h"

#include <doctest/doctest.h>

namespace tw {

namespace {

Finding tangent() {
  Finding out;
  out.rule = "tangents";
  out.page = 4;
  out.panel = 2;
  out.value = 7.93361;
  out.unit = "mm";
  out.place = {{{1, 2}, {3, 2}, {3, 4}}};
  out.tried = {{"mirror the picture", 7.93361, 0, true, ""},
               {"raise the camera to high", 7.93361, 2, true, "handed on"}};
  return out;
}

}  // namespace

TEST_CASE("a finding keeps its figures, rounded, and its place as points") {
  const OrderedJson json = findingJson(tangent());
  CHECK(json["rule"] == "tangents");
  CHECK(json["level"] == "should");
  CHECK(json["value"] == 7.934);
  CHECK(json["place"].size() == 3);
  CHECK(json["place"][1][0] == 3);
}

TEST_CASE("harm, source and the artist's answer stand only where there are some") {
  Finding finding = tangent();
  const OrderedJson bare = findingJson(finding);
  CHECK_FALSE(bare["tried"][0].contains("harms"));
  CHECK(bare["tried"][1]["harms"] == "handed on");
  CHECK_FALSE(bare.contains("source"));
  CHECK_FALSE(bare.contains("silenced"));
  finding.source = "a paper";
  finding.silencedWhy = "meant";
  const OrderedJson full = findingJson(finding);
  CHECK(full["source"] == "a paper");
  CHECK(full["silenced"] == "meant");
}

TEST_CASE("a list keeps its order") {
  Finding first = tangent(), second = tangent();
  second.rule = "rhythm";
  const OrderedJson list = findingsJson({first, second});
  REQUIRE(list.size() == 2);
  CHECK(list[1]["rule"] == "rhythm");
}

}  // namespace tw
