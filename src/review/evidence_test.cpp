#include "review/evidence.h"

#include <doctest/doctest.h>

#include "base/files.h"
#include "base/scratch_folder.h"
#include "review/rules.h"

namespace tw {

namespace {

Result<EvidenceBook> loaded(const std::string& text) {
  const ScratchFolder scratch;
  const auto file = scratch / "evidence.json";
  REQUIRE(writeFileAtomically(file, text));
  return EvidenceBook::load(file);
}

}  // namespace

TEST_CASE("every rule of the score card says what it stands on") {
  const auto book = EvidenceBook::load();
  REQUIRE(book);
  for (std::size_t i = 0; i < kRules; ++i) {
    const std::string_view rule = nameOf(static_cast<RuleId>(i));
    CHECK_MESSAGE(book->knows(rule), rule);
  }
}

TEST_CASE("rules that no card pays for bring a remedy of their own") {
  const auto book = EvidenceBook::load();
  REQUIRE(book);
  const auto paid = [](const std::string& name) {
    for (std::size_t i = 0; i < kRules; ++i)
      if (nameOf(static_cast<RuleId>(i)) == name) return true;
    return false;
  };
  for (const auto& [name, rule] : book->rules())
    if (!paid(name)) CHECK_MESSAGE(!rule.remedy.empty(), name);
}

TEST_CASE("a wrong level, a missing measure and a source that is not given are all told at once") {
  const auto book = loaded(R"({"rules": {
      "a": {"level": "grave", "evidence": "ours", "measure": "x"},
      "b": {"level": "look", "evidence": "ours"},
      "c": {"level": "look", "evidence": "published", "measure": "x"},
      "d": 7}})");
  REQUIRE_FALSE(book);
  CHECK(book.error().size() == 4);
  for (const Problem& problem : book.error()) CHECK(problem.cause == Cause::BadInput);
}

TEST_CASE("what is no JSON is refused with a sentence") {
  CHECK_FALSE(loaded("{"));
  CHECK_FALSE(loaded("[]"));
  CHECK_FALSE(loaded(R"({"rules": []})"));
}

}  // namespace tw
