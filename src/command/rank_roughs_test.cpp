#include "command/rank_roughs.h"

#include <doctest/doctest.h>

namespace tw {

namespace {

Page ranked(const std::string& names) {
  Page page;
  for (const char c : names) page.roughs.emplace_back().name = c;
  return page;
}

std::string order(const Page& page) {
  std::string out;
  for (const Rough& rough : page.roughs) out += rough.name;
  return out;
}

}  // namespace

TEST_CASE("a rough moves up and down in the artist's ranking and the others keep their order") {
  Page page = ranked("ABCD");
  CHECK(moveRough(page, "C", -1));
  CHECK(order(page) == "ACBD");
  CHECK(moveRough(page, "A", 2));
  CHECK(order(page) == "CBAD");
  CHECK(moveRough(page, "D", -3));
  CHECK(order(page) == "DCBA");
}

TEST_CASE("at the ends of the ranking a rough stays where it is") {
  Page page = ranked("AB");
  CHECK_FALSE(moveRough(page, "A", -1));
  CHECK_FALSE(moveRough(page, "B", 1));
  CHECK_FALSE(moveRough(page, "Q", 1));
  CHECK(order(page) == "AB");
}

TEST_CASE("a dropped rough is chosen no more") {
  Page page = ranked("AB");
  page.choice = "B";
  CHECK(dropRough(page, "A"));
  CHECK(page.choice == "B");
  CHECK(dropRough(page, "B"));
  CHECK(page.choice.empty());
  CHECK_FALSE(dropRough(page, "B"));
}

}  // namespace tw
