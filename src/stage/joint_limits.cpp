// How far joints turn. Shoulder, elbow, wrist: AAOS columns in Norkin & White, Measurement of
// Joint Motion, Table A.1; hip, knee, ankle, neck, thoracolumbar spine: AAOS and Merck values
// (see docs/facts.md). These are clinical single-joint limits with the neighbours at rest; a drawn
// pose may go 10° beyond them. The spine's limits are those of the whole thoracolumbar spine and
// are checked on waist + chest together. Girdle limits are common practice, no source.
// A raised arm's twist has no zero of its own (reached by flexion or by abduction it differs by up
// to 180°, Codman's paradox), so its limits widen with the arm's elevation beyond 45°.
#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "stage/figure.h"

namespace tw {
namespace {

constexpr double kGrace = 10;  // degrees

struct Range {
  double least, most;
};
struct Limits {
  std::string_view joint;
  std::array<Range, 3> turns;  ///< flex, aside, twist
};

constexpr Limits kLimbLimits[] = {
    {"girdle", {{{-20, 25}, {-15, 35}, {0, 0}}}},
    {"shoulder", {{{-60, 180}, {-45, 180}, {-70, 90}}}},
    {"elbow", {{{0, 150}, {-5, 15}, {-80, 80}}}},
    {"wrist", {{{-70, 80}, {-30, 20}, {0, 0}}}},
    {"hip", {{{-20, 125}, {-30, 45}, {-45, 45}}}},
    {"knee", {{{0, 150}, {-5, 5}, {-10, 20}}}},  // flexion 152.6 passive, Soucie 2011
    {"ankle", {{{-50, 20}, {-35, 25}, {-20, 20}}}},
    {"toes", {{{-30, 70}, {0, 0}, {0, 0}}}}};
// neck: 45/45/60; split between neck and head, checked together
constexpr std::array<Range, 3> kNeck{{{-45, 45}, {-45, 45}, {-60, 60}}};
constexpr std::array<Range, 3> kSpine{{{-25, 80}, {-35, 35}, {-45, 45}}};
constexpr std::array<std::string_view, 3> kWays{"flex", "aside", "twist"};

using Turn = std::array<double, 3>;

void check(std::string_view joint, const std::array<Range, 3>& limits, const Turn& turn,
           std::vector<std::string>& out) {
  for (std::size_t i = 0; i < 3; ++i) {
    if (turn[i] >= limits[i].least - kGrace && turn[i] <= limits[i].most + kGrace) continue;
    out.push_back(fmt::format("The {}'s {} of {:.0f}° goes beyond {:.0f}° to {:.0f}°.", joint,
                              kWays[i], turn[i], limits[i].least, limits[i].most));
  }
}

double elevationDeg(const Turn& shoulder) {
  constexpr double kRad = std::numbers::pi / 180;
  return std::acos(std::cos(shoulder[0] * kRad) * std::cos(shoulder[1] * kRad)) / kRad;
}

/// The limits of a limb's joint, widened where a raised arm makes its twist ambiguous.
std::array<Range, 3> limitsFor(const Limits& limits, const Turn& turn) {
  std::array<Range, 3> out = limits.turns;
  if (limits.joint != "shoulder") return out;
  const double wider = std::max(0.0, elevationDeg(turn) - 45);
  out[2].least -= wider;
  out[2].most += wider;
  return out;
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

}  // namespace

std::vector<std::string> beyondReach(const Pose& pose) {
  std::vector<std::string> out;
  check("back", kSpine, sumOf(pose, "waist", "chest"), out);
  check("neck", kNeck, sumOf(pose, "neck", "head"), out);
  for (const auto& [joint, turn] : pose.turnsDeg) {
    const std::size_t space = joint.find(' ');
    if (space == std::string::npos) continue;
    for (const Limits& limits : kLimbLimits)
      if (limits.joint == std::string_view(joint).substr(space + 1))
        check(joint, limitsFor(limits, turn), turn, out);
  }
  return out;
}

}  // namespace tw
