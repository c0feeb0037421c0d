#include "compose/merge_found.h"

#include <doctest/doctest.h>

namespace tw {

namespace {

Rough rough(const std::string& name, const std::string& treatment) {
  Rough out;
  out.name = name;
  out.treatment = treatment;
  return out;
}

std::vector<std::string> listed(const Page& page) {
  std::vector<std::string> out;
  for (const Rough& each : page.roughs) out.push_back(each.name + " " + each.treatment);
  return out;
}

/// A and B when the search began, A to be kept; it found A again, C and D.
struct Search {
  Search() {
    now.roughs = {rough("A", "old"), rough("B", "old")};
    now.choice = "A";
    found.roughs = {rough("A", "old"), rough("C", "new"), rough("D", "new")};
  }
  Page now, found;
  RoughsBefore before{{"A"}, {"A", "B"}};
};

using Names = std::vector<std::string>;

}  // namespace

TEST_CASE("found roughs take the place of those that were not kept") {
  const Search s;
  CHECK(listed(withFound(s.now, s.found, s.before)) == Names{"A old", "C new", "D new"});
}

TEST_CASE("a kept rough that was changed while the search ran stays changed") {
  Search s;
  s.now.roughs[0].treatment = "mended";
  s.now.note = "typed meanwhile";
  const Page out = withFound(s.now, s.found, s.before);
  CHECK(listed(out) == Names{"A mended", "C new", "D new"});
  CHECK(out.note == "typed meanwhile");
}

TEST_CASE("a rough that was mixed while the search ran stays and the found one is renamed") {
  Search s;
  s.now.roughs.push_back(rough("C", "mixed"));
  CHECK(listed(withFound(s.now, s.found, s.before)) == Names{"A old", "B new", "D new", "C mixed"});
}

TEST_CASE("a rough that was picked while the search ran stays") {
  Search s;
  s.now.choice = "B";
  CHECK(listed(withFound(s.now, s.found, s.before)) == Names{"A old", "C new", "D new", "B old"});
}

}  // namespace tw
