#include "read/size_runs.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

namespace tw {

TEST_CASE("a run of one size ends at another size and at a panel without a head") {
  CHECK(longestSizeRun({}).length == 0);
  CHECK(longestSizeRun({0, 0}).length == 0);
  const SizeRun run = longestSizeRun({10, 10.5, 9.8, 20, 20, 0, 20});
  CHECK(run.length == 3);
  CHECK(run.ends == 3);
  CHECK(run.lowest == 9.8);
  CHECK(run.tallest == 10.5);
}

TEST_CASE("a creeping change of size is no run of one size") {
  CHECK(longestSizeRun({10, 10.9, 11.8, 12.8, 13.9}).length == 2);
}

TEST_CASE("heads that differ by just a tenth are of one size") {
  CHECK(longestSizeRun({10, 11, 10}).length == 3);
  CHECK(longestSizeRun({10, 11.01, 10}).length == 1);
}

TEST_CASE("a run is as long from the back as from the front and for any scale") {
  CHECK(rc::check("runs", [] {
    auto heads = *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 15));
    std::vector<double> forth(heads.begin(), heads.end()), large;
    const std::vector<double> back(forth.rbegin(), forth.rend());
    for (const double h : forth) large.push_back(4 * h);
    RC_ASSERT(longestSizeRun(forth).length == longestSizeRun(back).length);
    RC_ASSERT(longestSizeRun(forth).length == longestSizeRun(large).length);
  }));
}

}  // namespace tw
