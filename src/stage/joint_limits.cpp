// A raised arm's twist has no zero of its own (reached by flexion or by abduction it differs by up
// to 180°, Codman's paradox), so its limits widen with the arm's elevation beyond 45°.
#include "stage/joint_limits.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <numbers>

#include "base/files.h"

namespace tw {
namespace {

constexpr std::array<const char*, 3> kWays{"flex", "aside", "twist"};
constexpr std::array<const char*, 10> kJointsWithLimits{
    "back", "neck", "girdle", "shoulder", "elbow", "wrist", "hip", "knee", "ankle", "toes"};
constexpr const char* kPreset = "body/joint-limits.json";

using Json = nlohmann::json;
using Turn = std::array<double, 3>;

bool isRange(const Json& json) {
  return json.is_array() && json.size() == 2 && json[0].is_number() && json[1].is_number() &&
         json[0].get<double>() <= json[1].get<double>();
}

/// Reads one joint; false when a range is missing or upside down.
bool readRanges(const Json& joint, TurnRanges& out) {
  for (std::size_t i = 0; i < 3; ++i) {
    const auto found = joint.find(kWays[i]);
    if (found == joint.end() || !isRange(*found)) return false;
    out[i] = {(*found)[0].get<double>(), (*found)[1].get<double>()};
  }
  return true;
}

Turn sumOf(const Pose& pose, const char* a, const char* b) {
  Turn sum{0, 0, 0};
  for (const char* joint : {a, b}) {
    const auto found = pose.turnsDeg.find(joint);
    if (found == pose.turnsDeg.end()) continue;
    for (std::size_t i = 0; i < 3; ++i) sum[i] += found->second[i];
  }
  return sum;
}

struct Checked {
  std::string name;
  TurnRanges ranges;
  Turn turn;
};

/// Every joint of the pose that has limits, with those that hold for it as it stands.
std::vector<Checked> checkedJoints(const Pose& pose, const JointLimits& limits) {
  std::vector<Checked> out{{"back", limits.of("back"), sumOf(pose, "waist", "chest")},
                           {"neck", limits.of("neck"), sumOf(pose, "neck", "head")}};
  for (const auto& [joint, turn] : pose.turnsDeg) {
    const std::size_t space = joint.find(' ');
    if (space == std::string::npos) continue;
    const std::string_view kind = std::string_view(joint).substr(space + 1);
    TurnRanges ranges = limits.of(kind);
    if (kind == "shoulder") {
      const double slack = armTwistSlack(turn[0], turn[1]);
      ranges[2] = {ranges[2].least - slack, ranges[2].most + slack};
    }
    out.push_back({joint, ranges, turn});
  }
  return out;
}

bool isBeyond(const TurnRange& range, double turn, double graceDeg) {
  return turn < range.least - graceDeg || turn > range.most + graceDeg;
}

}  // namespace

Result<JointLimits> JointLimits::load() {
  const auto path = presetPath(kPreset);
  if (!path) return tl::unexpected(path.error());
  const auto bytes = readFile(*path);
  if (!bytes) return tl::unexpected(bytes.error());
  const Json json = Json::parse(*bytes, nullptr, false);
  JointLimits out;
  const bool whole = json.is_object() && json.contains("grace") && json["grace"].is_number() &&
                     json.contains("joints") && json["joints"].is_object();
  if (!whole) return badInput("Expected “grace” and “joints” as a JSON object.", {.file = kPreset});
  out.graceDeg_ = json["grace"].get<double>();
  for (const char* joint : kJointsWithLimits) {
    const auto found = json["joints"].find(joint);
    if (found == json["joints"].end() || !found->is_object() ||
        !readRanges(*found, out.ranges_[joint]))
      return badInput(
          fmt::format("Expected flex, aside and twist of the {}, each [least, most].", joint),
          {.file = kPreset});
  }
  return out;
}

const TurnRanges& JointLimits::of(std::string_view joint) const {
  const auto found = ranges_.find(joint);
  ensure(found != ranges_.end(), "every joint has limits");
  return found->second;
}

double armTwistSlack(double flexDeg, double asideDeg) {
  constexpr double kRad = std::numbers::pi / 180;
  const double up = std::cos(flexDeg * kRad) * std::cos(asideDeg * kRad);
  return std::max(0.0, std::acos(std::clamp(up, -1.0, 1.0)) / kRad - 45);
}

std::vector<std::string> beyondReach(const Pose& pose, const JointLimits& limits) {
  std::vector<std::string> out;
  for (const Checked& joint : checkedJoints(pose, limits))
    for (std::size_t i = 0; i < 3; ++i)
      if (isBeyond(joint.ranges[i], joint.turn[i], limits.graceDeg()))
        out.push_back(fmt::format("The {}'s {} of {:.0f}° goes beyond {:.0f}° to {:.0f}°.",
                                  joint.name, kWays[i], joint.turn[i], joint.ranges[i].least,
                                  joint.ranges[i].most));
  return out;
}

std::vector<std::string> atLimit(const Pose& pose, const JointLimits& limits) {
  std::vector<std::string> out;
  for (const Checked& joint : checkedJoints(pose, limits))
    for (std::size_t i = 0; i < 3; ++i)
      if (joint.ranges[i].least < joint.ranges[i].most &&
          isBeyond(joint.ranges[i], joint.turn[i], 0))
        out.push_back(fmt::format("{}: {} {:.0f}°", joint.name, kWays[i], joint.turn[i]));
  return out;
}

}  // namespace tw
