// The poses and joint limits that come with the program, loaded once for a test program. For tests
// only.
#pragma once

#include <doctest/doctest.h>

#include <string>

#include "stage/figure.h"
#include "stage/joint_limits.h"

namespace tw {

inline const PoseLibrary& shippedPoses() {
  static const PoseLibrary library = [] {
    const Result<PoseLibrary> loaded = PoseLibrary::load();
    REQUIRE_MESSAGE(loaded.has_value(), (loaded ? std::string{} : describe(loaded.error())));
    return *loaded;
  }();
  return library;
}

inline const JointLimits& shippedLimits() {
  static const JointLimits limits = JointLimits::load().value();
  return limits;
}

}  // namespace tw
