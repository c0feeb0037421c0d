// How far joints turn: clinical tables as data (presets/body/joint-limits.json) with their sources.
// A pose beyond them is warned of and drawn all the same; what the program itself bends stays
// within the limits and their grace. The back is waist and chest together, the neck neck and head.
#pragma once

#include <array>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "stage/figure.h"

namespace tw {

struct TurnRange {
  double least = 0, most = 0;  ///< degrees
};
using TurnRanges = std::array<TurnRange, 3>;  ///< flex, aside, twist

class JointLimits {
 public:
  static Result<JointLimits> load();

  /// Of "back", "neck", "girdle", "shoulder", "elbow", "wrist", "hip", "knee", "ankle", "toes".
  const TurnRanges& of(std::string_view joint) const;
  double graceDeg() const { return graceDeg_; }

 private:
  std::map<std::string, TurnRanges, std::less<>> ranges_;
  double graceDeg_ = 0;
};

/// By how much a raised arm widens the limits of its twist on either side, degrees.
double armTwistSlack(double flexDeg, double asideDeg);

/// One sentence per joint that is bent farther than people can; such poses warn, never fail.
std::vector<std::string> beyondReach(const Pose& pose, const JointLimits& limits);
/// The same without the grace: "left shoulder at the end of its flex".
std::vector<std::string> atLimit(const Pose& pose, const JointLimits& limits);

}  // namespace tw
