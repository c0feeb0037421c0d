#include "stage/light_moves.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "job/field.h"

namespace tw {
namespace {

constexpr std::array<std::string_view, 3> kNames{"key", "fill", "rim"};
constexpr int kDecimals = 6;   // as files keep directions and strengths
constexpr double kSaid = 0.3;  // a part of a direction that is less goes without saying

SetLamp& lampIn(SetLight& light, LampName lamp) {
  return lamp == LampName::Key ? light.key : lamp == LampName::Fill ? light.fill : light.rim;
}

/// Named as a light of the artist's own, with the key's direction in words.
SetLight owned(SetLight light) {
  light.name = "own";
  light.title = fmt::format("the artist's own: key {}", directionInWords(light.key.from));
  return light;
}

}  // namespace

std::string_view nameOf(LampName lamp) {
  return kNames[static_cast<std::size_t>(lamp)];
}

const SetLamp& lampOf(const SetLight& light, LampName lamp) {
  return lamp == LampName::Key ? light.key : lamp == LampName::Fill ? light.fill : light.rim;
}

Point onLightDisc(const Place3& from) {
  const double across = std::hypot(from.x, from.y);
  const double out = std::atan2(across, from.z) / std::numbers::pi;
  if (across < 1e-9) return {out, 0};
  return {out * from.x / across, out * from.y / across};
}

Place3 fromLightDisc(Point disc) {
  const double out = std::hypot(disc.x, disc.y);
  const double angle = std::min(out, 1.0) * std::numbers::pi;
  const double across = out > 1e-12 ? std::sin(angle) / out : 0;
  return {rounded(across * disc.x, kDecimals), rounded(across * disc.y, kDecimals),
          rounded(std::cos(angle), kDecimals)};
}

SetLight withLampFrom(SetLight light, LampName lamp, Point disc) {
  lampIn(light, lamp).from = fromLightDisc(disc);
  return owned(std::move(light));
}

SetLight withLampStrength(SetLight light, LampName lamp, double strength) {
  lampIn(light, lamp).strength = rounded(std::clamp(strength, 0.0, kMostLampStrength), kDecimals);
  return owned(std::move(light));
}

SetLight withAmbient(SetLight light, double ambient) {
  light.ambient = rounded(std::clamp(ambient, 0.0, kMostLampStrength), kDecimals);
  return owned(std::move(light));
}

SetLight wordsLight(const Beat& beat, const LightWords& known) {
  return setLightOf(lightOf(beat, known));
}

std::string directionInWords(const Place3& from) {
  std::string sides = from.x < -kSaid ? "the left" : from.x > kSaid ? "the right" : "";
  const std::string high = from.y > kSaid ? "above" : from.y < -kSaid ? "below" : "";
  if (!high.empty()) sides += (sides.empty() ? "" : " and ") + high;
  const std::string deep = from.z < -kSaid ? "behind" : "";
  if (!deep.empty()) sides += (sides.empty() ? "" : ", ") + deep;
  return "from " + (sides.empty() ? std::string("the front") : sides);
}

}  // namespace tw
