#include "review/thing_findings.h"

#include <doctest/doctest.h>

namespace tw {

namespace {

/// One panel whose description names a bell and a chain.
struct BellAndChain {
  Page page;
  PageCase wishes;
  std::vector<std::vector<SeenThing>> things{{{"bell", 0.9, 0.2}, {"chain", 0.8, 0.005}}};
  EvidenceBook book = *EvidenceBook::load();

  BellAndChain() {
    page.number = 4;
    wishes.page = &page;
    wishes.panels.resize(1);
    for (const char* name : {"bell", "chain"}) {
      Prop prop;
      prop.id = prop.name = name;
      wishes.panels[0].beat.props.push_back(prop);
    }
  }
  std::vector<Finding> found() const { return thingFindings(things, wishes, book); }
};

}  // namespace

TEST_CASE("things that are in sight are not found fault with") {
  CHECK(BellAndChain().found().empty());
}

TEST_CASE("things beyond the frame are told by their names") {
  BellAndChain it;
  it.things[0] = {{"bell", 0, 0}, {"chain", 0.06, 0.002}};
  const auto found = it.found();
  REQUIRE(found.size() == 1);
  CHECK(found[0].reason == "the bell is named and not seen, 6 % of the chain is seen");
  CHECK(found[0].value == doctest::Approx(0));
  CHECK(found[0].limit == doctest::Approx(25));
  CHECK(found[0].panel == 1);
  CHECK(found[0].severity == Severity::Should);
}

TEST_CASE("a little of something large is enough") {
  BellAndChain it;
  it.things[0][0] = {"bell", 0.08, 0.3};
  CHECK(it.found().empty());
}

TEST_CASE("of what is finer than the picture nothing is said") {
  BellAndChain it;
  it.things[0][1] = {"chain", 0, 0, true};
  CHECK(it.found().empty());
}

TEST_CASE("things that the description does not name may be anywhere") {
  BellAndChain it;
  it.things[0].push_back({"crate", 0, 0});
  CHECK(it.found().empty());
  CHECK(leastInSight(it.things[0], it.wishes.panels[0].beat) == doctest::Approx(100));
}

}  // namespace tw
