#include "compose/page_readings.h"

#include <doctest/doctest.h>

#include "compose/small_page.h"

namespace tw {

namespace {

PageReadings readingsFor(const MeasuredPage& page, unsigned threads = 0) {
  const auto model = loadEyePathModel();
  REQUIRE(model);
  EyeOptions options;
  options.readers = 60;
  options.threads = threads;
  return readingsOf(page, *model, options);
}

}  // namespace

TEST_CASE("every panel of a staged page has eyes, a squint and a place in the picture") {
  const SmallPage small;
  const MeasuredPage page = small.measured();
  const PageReadings readings = readingsFor(page);
  CHECK(readings.order.order == std::vector<int>{0, 1, 2});
  CHECK(readings.eyes.panels.size() == 3);
  CHECK(readings.squints.size() == 3);
  CHECK(readings.picture.panels.size() == 3);
  for (const Squint& squint : readings.squints) CHECK(squint.seen);
  CHECK(readings.eyes.looks > 3);
}

TEST_CASE("readings are the same on one thread and on many") {
  const SmallPage small;
  const MeasuredPage page = small.measured();
  const PageReadings one = readingsFor(page, 1), many = readingsFor(page, 4);
  CHECK(one.eyes.ms == many.eyes.ms);
  CHECK(one.eyes.handedOn == many.eyes.handedOn);
  CHECK(one.picture.dominantHolds == many.picture.dominantHolds);
}

TEST_CASE("the page that eyes meet holds the words and faces of the rough") {
  const SmallPage small;
  const MeasuredPage page = small.measured();
  const SeenPage seen = seenPageOf(page);
  REQUIRE(seen.panels.size() == 3);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(seen.panels[i].outline == page.rough().panels[i].outline);
    CHECK(seen.panels[i].words() == 5);
  }
}

TEST_CASE("a focus seen from very far is weaker in the squint test") {
  const SmallPage small;
  MeasuredPage page = small.measured();
  const Squint before = squintOf(page, 2);
  StagingChoice far = page.rough().panels[2].staging.choice;
  far.shot = ShotSize::ExtremeLong;
  page.restage(2, page.solved(2, far));
  const Squint after = squintOf(page, 2);
  CHECK(after.strength < before.strength);
}

}  // namespace tw
