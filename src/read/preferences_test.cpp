#include "read/preferences.h"

#include <doctest/doctest.h>

#include "base/files.h"
#include "job/parse_json.h"

namespace tw {
namespace {

Json shippedTree() {
  return Json::parse(*readFile(*presetPath("read/preferences.json")));
}

/// The problems of the shipped file after one change.
std::string problemsAfter(const std::string& pointer, const Json& value) {
  Json tree = shippedTree();
  tree[Json::json_pointer(pointer)] = value;
  const auto read = readPreferencesText(tree.dump(), "preferences.json");
  return read ? "" : describe(read.error());
}

TEST_CASE("the shipped preferences are sound and name the source of every number") {
  const auto likes = loadPreferences();
  REQUIRE(likes);
  CHECK(likes->acrossAtGrid > 0.9);
  for (const auto& [section, entries] : shippedTree().items())
    for (const auto& [key, entry] : entries.items()) {
      INFO(section << " " << key);
      CHECK(entry.at("meaning").get<std::string>().size() > 10);
      CHECK(!entry.at("source").get<std::string>().empty());
    }
}

TEST_CASE("the published shares stand in the file as they were published") {
  // Cohn & Campbell 2015, second hand: 95 % falling to 31 %. Cohn 2013, author's account: 32 %
  // across, 62 to 68 % down.
  const ReaderPreferences& likes = shippedPreferences();
  CHECK(likes.gridAcross.value == 0.95);
  CHECK(likes.blockageAcross.value >= 0.31);
  CHECK(likes.blockageAcross.value <= 0.32);
  CHECK(likes.blockageDown.least == 0.62);
  CHECK(likes.blockageDown.most == 0.68);
}

TEST_CASE("an entry that is out of range or of the wrong kind is told") {
  CHECK(problemsAfter("/free/plain/value", 0.99).empty());
  CHECK(problemsAfter("/free/plain/value", 1.5).find("/free/plain/value") != std::string::npos);
  CHECK(problemsAfter("/free/plain/value", "all").find("Expected a number") != std::string::npos);
  CHECK(problemsAfter("/free/plain", 3).find("an object") != std::string::npos);
  CHECK(problemsAfter("/published/across_at_grid/least", 0.97).find("least <= value") !=
        std::string::npos);
  CHECK(problemsAfter("/free", 3).find("missing") != std::string::npos);
}

TEST_CASE("a number without its evidence is refused") {
  CHECK(problemsAfter("/free/plain/source", "").find("source") != std::string::npos);
  CHECK(problemsAfter("/free/plain/certainty", "sure").find("certainty") != std::string::npos);
  CHECK(problemsAfter("/free/plain/meaning", nullptr).find("meaning") != std::string::npos);
}

TEST_CASE("missing and unknown entries are told") {
  Json tree = shippedTree();
  tree["free"].erase("plain");
  tree["free"]["plane"] = tree["free"]["stray"];
  const auto read = readPreferencesText(tree.dump(), "preferences.json");
  REQUIRE(!read);
  const std::string told = describe(read.error());
  CHECK(told.find("\"plain\" is missing") != told.npos);
  CHECK(told.find("Is \"plain\" meant?") != told.npos);
}

TEST_CASE("shares that make more than one together are refused") {
  CHECK(problemsAfter("/free/entry_highest/value", 0.9).find("more than 1") != std::string::npos);
  CHECK(problemsAfter("/free/entry_lower_tier/value", 0.9).find("more than 1") !=
        std::string::npos);
  CHECK(problemsAfter("/free/across_at_overlap/value", 1.0).find("across_at_grid") !=
        std::string::npos);
}

TEST_CASE("bytes that are no preferences are refused with a sentence") {
  for (const char* text :
       {"", "[]", "{}", "nonsense", "{\"free\": []}", "null", "{\"free\": {}}"}) {
    const auto read = readPreferencesText(text, "preferences.json");
    REQUIRE(!read);
    CHECK(!read.error().front().sentence.empty());
  }
}

TEST_CASE("a rising curve runs from nothing to all between its ends") {
  const RisingCurve curve(1, 4, 2, 5);
  CHECK(curve.at(0) == 0);
  CHECK(curve.at(1) == 0);
  CHECK(curve.at(4) == 1);
  CHECK(curve.at(9) == 1);
  double last = 0;
  for (double x = 1; x <= 4; x += 0.1) {
    CHECK(curve.at(x) >= last);
    last = curve.at(x);
  }
}

}  // namespace
}  // namespace tw
