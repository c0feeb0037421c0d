// From JSON to a pose for one or for two. What is wrong is gathered, with file and place; what is
// sound beside it is read all the same.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "base/result.h"
#include "stage/figure.h"

namespace tw {

/// A key of Pose::turnsDeg.
bool isTurningJoint(const std::string& name);
Pose readPose(const nlohmann::json& json, const std::string& name, const std::string& file,
              Problems& problems);
PairPose readPair(const nlohmann::json& json, const std::string& name, const std::string& file,
                  Problems& problems);

}  // namespace tw
