#include "review/card_writer.h"

#include <doctest/doctest.h>

#include <algorithm>

namespace tw {

namespace {

struct Written {
  Rough rough;
  std::vector<Finding> findings;
};

template <class Fill>
Written written(Fill fill) {
  const auto book = RuleBook::load();
  REQUIRE(book);
  CardWriter card(*book, 7);
  fill(card);
  Written out;
  card.finish(out.rough, out.findings);
  return out;
}

}  // namespace

TEST_CASE("card and findings tell the same things in the same order, the dearest first") {
  const Written w = written([](CardWriter& card) {
    card.add(RuleId::Rhythm, 0.9, {.reason = "three long shots", .panel = 3, .value = 3});
    card.add(RuleId::HeadHeight, 2.5, {.reason = "small", .panel = 2, .value = 6, .limit = 9});
  });
  REQUIRE(w.findings.size() == 2);
  CHECK(w.findings[0].rule == "head height");
  CHECK(w.findings[0].limit == 9);
  CHECK(w.findings[0].unit == "mm");
  CHECK(w.findings[0].page == 7);
  CHECK(w.rough.card[0].rule == "head height");
  CHECK(w.rough.card[1].reason == w.findings[1].reason);
  CHECK(w.rough.score == doctest::Approx(3.4));
}

TEST_CASE("every rule has a line, kept ones at no cost") {
  const Written w =
      written([](CardWriter& card) { card.add(RuleId::Rhythm, 0.5, {.reason = "x"}); });
  CHECK(w.rough.card.size() == kRules);
  CHECK(std::ranges::count(w.rough.card, std::string("kept"), &CardLine::reason) == kRules - 1);
}

TEST_CASE("what costs next to nothing is not told") {
  const Written w =
      written([](CardWriter& card) { card.add(RuleId::Rhythm, 0.004, {.reason = "x"}); });
  CHECK(w.findings.empty());
}

TEST_CASE("a line that hardly costs is on the card and no finding, unless the brief demands it") {
  const auto book = RuleBook::load();
  REQUIRE(book);
  const Written w = written([&](CardWriter& card) {
    card.add(RuleId::HandedOn, 0.05 * book->weight(RuleId::HandedOn), {.reason = "nearly all"});
    card.add(RuleId::HeadHeight, 0.05 * book->weight(RuleId::HeadHeight), {.reason = "a hair"});
  });
  REQUIRE(w.findings.size() == 1);
  CHECK(w.findings[0].reason == "a hair");
  CHECK(w.rough.card[1].reason == "nearly all");
}

TEST_CASE("what the brief demands is a must, a slight fault of craft only worth a look") {
  const auto book = RuleBook::load();
  REQUIRE(book);
  const double weight = book->weight(RuleId::FocusProminent);
  const Written w = written([&](CardWriter& card) {
    card.add(RuleId::HeadHeight, 0.02, {.reason = "a hair short"});
    card.add(RuleId::FocusProminent, 0.6 * weight, {.reason = "half hidden", .panel = 1});
    card.add(RuleId::FocusProminent, 0.12 * weight, {.reason = "a little hidden", .panel = 2});
  });
  const auto levelOf = [&](const std::string& reason) {
    return std::ranges::find(w.findings, reason, &Finding::reason)->severity;
  };
  CHECK(levelOf("a hair short") == Severity::Must);
  CHECK(levelOf("half hidden") == Severity::Should);
  CHECK(levelOf("a little hidden") == Severity::Look);
}

}  // namespace tw
