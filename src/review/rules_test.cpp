#include "review/rules.h"

#include <doctest/doctest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>

#include "base/files.h"

namespace tw {

namespace {

nlohmann::json shippedRules() {
  return nlohmann::json::parse(*readFile(*presetPath("rules/rules.json")));
}

Result<RuleBook> loaded(const nlohmann::json& rules) {
  const auto file = std::filesystem::temp_directory_path() /
                    ("tierwright-rules-test-" + std::to_string(getpid()) + ".json");
  REQUIRE(writeFileAtomically(file, rules.dump()).has_value());
  auto book = RuleBook::load(file);
  std::filesystem::remove(file);
  return book;
}

}  // namespace

TEST_CASE("every rule has a weight and a remedy, and the file knows no other") {
  const auto book = RuleBook::load();
  REQUIRE(book.has_value());
  std::set<std::string> names;
  for (std::size_t i = 0; i < kRules; ++i) {
    const RuleId rule = static_cast<RuleId>(i);
    names.insert(std::string(nameOf(rule)));
    CHECK_MESSAGE(book->weight(rule) > 0, nameOf(rule));
    CHECK_MESSAGE(!(*book)[rule].remedy.empty(), nameOf(rule));
  }
  CHECK(names.size() == kRules);
  CHECK(shippedRules()["rules"].size() == kRules);
}

TEST_CASE("a weight that is no number, a missing rule and an unknown rule are all told at once") {
  nlohmann::json rules = shippedRules();
  rules["rules"]["rhythm"]["weight"] = "much";
  rules["rules"].erase("liftable");
  rules["rules"]["swagger"] = {{"weight", 1}};
  const auto book = loaded(rules);
  REQUIRE_FALSE(book.has_value());
  CHECK(book.error().size() == 3);
  for (const Problem& problem : book.error()) CHECK(problem.cause == Cause::BadInput);
}

TEST_CASE("an artist's own weight is taken") {
  nlohmann::json rules = shippedRules();
  rules["rules"]["rhythm"]["weight"] = 7.5;
  const auto book = loaded(rules);
  REQUIRE(book.has_value());
  CHECK(book->weight(RuleId::Rhythm) == 7.5);
}

}  // namespace tw
