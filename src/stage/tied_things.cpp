#include "stage/tied_things.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "stage/held_props.h"
#include "stage/set_words.h"

namespace tw {
namespace {

constexpr double kDeg = std::numbers::pi / 180;
constexpr double kHeavyM3 = 0.15;
constexpr double kTautM = 0.95;  // hands to thing: near enough for one picture of a whole figure
constexpr double kTopOfFallen = 0.45;  // of half its breadth: where the top of a lying bell is
constexpr double kGripM = 0.12;        // of the line lies in the hands
constexpr double kIntoThing = 0.9;     // of its length: the line ends a little inside

bool isHeavy(const Prop& prop) {
  return prop.heldBy.empty() && !prop.placeM &&
         prop.sizeM[0] * prop.sizeM[1] * prop.sizeM[2] > kHeavyM3 && !isRod(prop) &&
         !isVessel(prop) && !isBuilt(prop);
}

/// The next word of `text` that follows `from` is `name`, articles and one adjective let pass.
bool follows(const std::string& text, std::size_t from, const std::string& name) {
  const std::size_t at = text.find(name, from);
  if (at == std::string::npos) return false;
  const std::string between = text.substr(from, at - from);
  return std::ranges::count(between, ' ') <= 3 && between.find_first_of(".,;:") == between.npos;
}

/// Draws the line straight from the hands to `end`.
void stretch(SetProp& rope, const Vec3& hands, const Vec3& end) {
  const Vec3 along = (end - hands).normalized();
  rope.lengthM = (end - hands).norm() + kGripM;
  rope.headingDeg = headingOf(along);
  rope.pitchDeg = std::acos(std::clamp(along.y(), -1.0, 1.0)) / kDeg;
  const Vec3 centre = hands + along * (rope.lengthM / 2 - kGripM);
  rope.at = {centre.x(), centre.y(), centre.z()};
}

}  // namespace

int tiedTo(const Beat& beat, std::size_t line) {
  const std::string text = lowered(beat.description), rope = lowered(beat.props[line].name);
  for (std::size_t i = 0; i < beat.props.size(); ++i) {
    if (i == line || !isHeavy(beat.props[i])) continue;
    const std::string thing = lowered(beat.props[i].name);
    for (std::size_t at = text.find(rope); at != text.npos; at = text.find(rope, at + 1)) {
      const std::size_t stop = std::min(text.find('.', at), text.size());
      for (const std::string_view word : {" to ", " from ", " round ", " around "}) {
        const std::size_t to = text.find(word, at);
        if (to < stop && follows(text, to + word.size(), thing)) return static_cast<int>(i);
      }
    }
  }
  return -1;
}

void tautTo(const Beat& beat, std::size_t line, const Vec3& hands, double headingDeg, double floor,
            Scene& scene) {
  const int tied = tiedTo(beat, line);
  if (tied < 0) return;
  const auto thing = static_cast<std::size_t>(tied);
  const Prop& prop = beat.props[thing];
  const Vec3 ahead = directionOf(headingDeg);
  const double across = std::max(prop.sizeM[0], prop.sizeM[2]) / 2;
  const bool lies = isFallen(beat, prop);
  const double high = lies ? across * kTopOfFallen : std::min(0.6 * prop.sizeM[1], hands.y() - 0.2);
  const Vec3 fast = Vec3(hands.x(), floor + high, hands.z()) + ahead * kTautM;
  const Vec3 base = fast + ahead * (lies ? kIntoThing * prop.sizeM[1] : 0.5 * across);
  SetProp& put = scene.props[thing];
  put.at = {base.x(), floor, base.z()};
  put.headingDeg = headingDeg + 180;
  put.pitchDeg = lies ? lyingPitch(prop) : 0;
  scene.propBoxes[thing] = boxAround(prop, put, false);
  scene.propMatters[thing] = true;
  stretch(scene.props[line], hands, fast);
}

void stringAnew(const Prop& line, const Vec3& hands, SetProp& set) {
  const Vec3 middle(set.at.x, set.at.y, set.at.z);
  const Vec3 end = middle + topDirection(set) * (drawnLength(line, set) / 2);
  if ((end - hands).norm() > kGripM) stretch(set, hands, end);
}

}  // namespace tw
