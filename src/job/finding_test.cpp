#include "job/finding.h"

#include <doctest/doctest.h>

namespace tw {

TEST_CASE("levels and evidence are named in the trade's words") {
  CHECK(nameOf(Severity::Must) == "must");
  CHECK(nameOf(Severity::Should) == "should");
  CHECK(nameOf(Severity::Look) == "look");
  CHECK(nameOf(Evidence::Published) == "published");
  CHECK(nameOf(Evidence::CommonPractice) == "common practice");
  CHECK(nameOf(Evidence::Ours) == "ours");
}

}  // namespace tw
