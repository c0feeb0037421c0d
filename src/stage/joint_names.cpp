#include <algorithm>
#include <array>

#include "stage/figure.h"

namespace tw {
namespace {

constexpr std::array<std::string_view, kJoints> kNames{
    "pelvis",          "waist",          "chest",          "neck",          "head",
    "left hip",        "left knee",      "left ankle",     "left toes",     "right hip",
    "right knee",      "right ankle",    "right toes",     "left shoulder", "left elbow",
    "left wrist",      "left fingertip", "right shoulder", "right elbow",   "right wrist",
    "right fingertip", "crown",          "chin",           "nose"};

constexpr std::array<std::string_view, 7> kHandNames{"relaxed", "open",  "flat", "fist",
                                                     "grip",    "point", "cup"};

}  // namespace

std::string_view nameOf(Joint joint) {
  const auto i = static_cast<std::size_t>(joint);
  return i < kNames.size() ? kNames[i] : std::string_view{};
}

std::optional<Joint> jointNamed(std::string_view name) {
  const auto* const found = std::find(kNames.begin(), kNames.end(), name);
  if (found == kNames.end()) return std::nullopt;
  return static_cast<Joint>(found - kNames.begin());
}

std::optional<HandShape> handShapeNamed(std::string_view name) {
  const auto* const found = std::find(kHandNames.begin(), kHandNames.end(), name);
  if (found == kHandNames.end()) return std::nullopt;
  return static_cast<HandShape>(found - kHandNames.begin());
}

Joint mirrored(Joint joint) {
  const std::string_view name = nameOf(joint);
  const bool left = name.starts_with("left ");
  if (!left && !name.starts_with("right ")) return joint;
  const std::string other =
      (left ? "right " : "left ") + std::string(name.substr(name.find(' ') + 1));
  return *jointNamed(other);
}

}  // namespace tw
