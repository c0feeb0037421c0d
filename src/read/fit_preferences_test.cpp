#include "read/fit_preferences.h"

#include <doctest/doctest.h>

#include <cmath>

namespace tw {
namespace {

TEST_CASE("the shipped strengths are what the fit to the published shares gives") {
  const ReaderPreferences& shipped = shippedPreferences();
  ReaderPreferences start = shipped;
  start.acrossAtGrid = 0.9;
  start.acrossAtBlockage = 0.4;
  start.downOfRest = 0.9;
  const ReaderPreferences fitted = fitPreferences(start);
  INFO("fitted: across_at_grid " << fitted.acrossAtGrid << ", across_at_blockage "
                                 << fitted.acrossAtBlockage << ", down_of_rest "
                                 << fitted.downOfRest);
  CHECK(std::abs(fitted.acrossAtGrid - shipped.acrossAtGrid) < 0.001);
  CHECK(std::abs(fitted.acrossAtBlockage - shipped.acrossAtBlockage) < 0.001);
  CHECK(std::abs(fitted.downOfRest - shipped.downOfRest) < 0.001);
}

TEST_CASE("with the shipped strengths every published share lies in its range") {
  // Cohn & Campbell 2015 (95 % to 31 %, second hand); Cohn 2013 (32 %, 62 to 68 %, author's
  // account).
  const auto checks = checkAgainstPublished(shippedPreferences());
  CHECK(checks.size() >= 6);
  for (const PublishedCheck& check : checks) {
    INFO(check.what << ": " << check.found);
    CHECK(check.found >= check.published.least);
    CHECK(check.found <= check.published.most);
  }
}

TEST_CASE("other strengths miss the published shares") {
  ReaderPreferences other = shippedPreferences();
  other.acrossAtBlockage = 0.45;
  bool missed = false;
  for (const PublishedCheck& check : checkAgainstPublished(other))
    missed = missed || check.found > check.published.most;
  CHECK(missed);
}

}  // namespace
}  // namespace tw
