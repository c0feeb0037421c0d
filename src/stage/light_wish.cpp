// Reading a light.
//
// 1. Words are taken one by one; hyphens count as spaces, "the", "and", "with" say nothing.
// 2. A part that names a light of the lexicon and no single lamp gives all three lamps at once.
// 3. "key", "fill", "rim" choose the lamp that the next strength and directions are for; before any
//    of them it is the key.
// 4. Directions of one "from" add up. A lamp that nobody raised or lowered stands a little above
//    the figures, one that nobody put before or behind them a little before: light exactly from
//    the side throws no shadow on the ground and halves every face. Common practice, no source.
#include "stage/light_wish.h"

#include <fmt/format.h>

#include <array>
#include <cmath>

#include "job/assignment.h"
#include "job/field.h"

namespace tw {

namespace {

constexpr double kLiftedBy = 0.35, kBeforeBy = 0.25;
constexpr double kMostStrength = 4;
constexpr double kPlainRim = 0.6;  // of a rim that is only named
constexpr int kDecimals = 6;       // as number() fields keep them

struct Direction {
  std::string_view word;
  Vec3 toward;
};
const std::array<Direction, 12> kDirections{{{"left", {-1, 0, 0}},
                                             {"right", {1, 0, 0}},
                                             {"above", {0, 1, 0}},
                                             {"top", {0, 1, 0}},
                                             {"high", {0, 1, 0}},
                                             {"below", {0, -1, 0}},
                                             {"under", {0, -1, 0}},
                                             {"behind", {0, 0, -1}},
                                             {"back", {0, 0, -1}},
                                             {"front", {0, 0, 1}},
                                             {"before", {0, 0, 1}},
                                             {"camera", {0, 0, 1}}}};

std::vector<std::string> wordsIn(std::string_view text) {
  std::vector<std::string> words(1);
  for (std::size_t i = 0; i < text.size(); ++i) {
    char c = text[i];
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    const bool minus = c == '-' && i + 1 < text.size() && text[i + 1] >= '0' && text[i + 1] <= '9';
    if (c == ' ' || (c == '-' && !minus) || c == ':' || c == '=') {
      if (!words.back().empty()) words.emplace_back();
    } else {
      words.back() += c;
    }
  }
  if (words.back().empty()) words.pop_back();
  return words;
}

std::vector<std::string_view> partsOf(std::string_view text) {
  std::vector<std::string_view> parts;
  while (!text.empty()) {
    const std::size_t end = text.find_first_of(",;");
    parts.push_back(trimmed(text.substr(0, end)));
    text = end == text.npos ? std::string_view() : text.substr(end + 1);
  }
  return parts;
}

class WishReader {
 public:
  explicit WishReader(const LightWords& known) : known_(known) {}

  Result<Lighting> read(std::string_view text) {
    for (const std::string_view part : partsOf(text))
      if (!part.empty() && !readPart(part)) return notUnderstood(part);
    if (parts_ == 0) return notUnderstood(text);
    if (!named_) light_.name = "own";
    light_.title = fmt::format("the artist's own: {}", text);
    return light_;
  }

 private:
  static tl::unexpected<Problems> notUnderstood(std::string_view part) {
    return badInput(
        fmt::format("light: \"{}\" is not understood.", part), {},
        "Write parts between commas: back-lit, lantern light, noon, high key; or key, fill or rim, "
        "a strength from 0 to 4, and from left, right, above, below, behind or front: \"key 1 from "
        "left and above, fill 0.2, rim 0.5\".");
  }

  bool readPart(std::string_view part) {
    ++parts_;
    const std::vector<std::string> words = wordsIn(part);
    lamp_ = &light_.key;
    if (const Lighting* named = namedBy(part, words)) return take(*named);
    if (words.size() == 2 && words[1] == "key" && setContrast(words[0])) return true;
    Vec3 toward = Vec3::Zero();
    bool said = false;
    for (const std::string& word : words) {
      if (word == "the" || word == "and" || word == "with" || word == "from" || word == "light" ||
          word == "lit" || word == "a")
        continue;
      said = true;
      if (!chooseLamp(word) && !addDirection(word, toward) && !setStrength(word)) return false;
    }
    if (toward.norm() > 1e-9) aim(toward);
    return said;
  }

  /// The light that the part names, when it does not speak of a single lamp.
  const Lighting* namedBy(std::string_view part, const std::vector<std::string>& words) const {
    if (const Lighting* found = known_.find(part)) return found;
    for (const std::string& word : words)
      if (word == "key" || word == "fill" || word == "rim") return nullptr;
    return known_.saidIn(part);
  }

  bool take(const Lighting& named) {
    light_ = named;
    named_ = true;
    return true;
  }

  bool setContrast(const std::string& word) {
    if (word != "high" && word != "low") return false;
    const bool high = word == "high";  // little contrast, much fill
    light_.fill.strength = high ? 0.5 : 0.04;
    light_.ambient = high ? 0.3 : 0.04;
    return true;
  }

  bool chooseLamp(const std::string& word) {
    Lamp* lamp = word == "key"    ? &light_.key
                 : word == "fill" ? &light_.fill
                 : word == "rim"  ? &light_.rim
                                  : nullptr;
    if (word == "no") return none_ = true;
    if (lamp == nullptr) return false;
    lamp_ = lamp;
    if (none_) lamp->strength = 0;
    if (!none_ && lamp->strength == 0) lamp->strength = kPlainRim;
    none_ = false;
    return true;
  }

  bool addDirection(const std::string& word, Vec3& toward) const {
    for (const Direction& d : kDirections) {
      if (d.word != word) continue;
      toward += d.toward;
      return true;
    }
    return false;
  }

  bool setStrength(const std::string& word) {
    const std::optional<double> strength = decimalNumber(word);
    if (!strength || *strength < 0 || *strength > kMostStrength) return false;
    lamp_->strength = *strength;
    return true;
  }

  void aim(Vec3 toward) {
    if (toward.y() == 0) toward.y() = kLiftedBy;
    if (toward.z() == 0) toward.z() = kBeforeBy;
    lamp_->from = toward.normalized();
    if (lamp_ == &light_.key) light_.name = "own";
  }

  const LightWords& known_;
  Lighting light_;
  Lamp* lamp_ = nullptr;
  int parts_ = 0;
  bool named_ = false;
  bool none_ = false;  ///< "no" was read: for the lamp that follows
};

constexpr double kUnit = 1e-5;  // what rounding takes from or adds to a unit length

SetLamp setLampOf(const Lamp& lamp) {
  const bool unit = std::abs(lamp.from.norm() - 1) < kUnit;
  const Vec3 from = unit ? lamp.from : Vec3(lamp.from.normalized());
  return {
      {rounded(from.x(), kDecimals), rounded(from.y(), kDecimals), rounded(from.z(), kDecimals)},
      rounded(lamp.strength, kDecimals)};
}

Lamp lampOf(const SetLamp& lamp, const Lamp& usual) {
  const Vec3 from(lamp.from.x, lamp.from.y, lamp.from.z);
  if (from.norm() < 1e-6) return {usual.from, lamp.strength};
  // What was only rounded stays as stored, so that a second writing changes no digit.
  const bool unit = std::abs(from.norm() - 1) < kUnit;
  return {unit ? from : Vec3(from.normalized()), lamp.strength};
}

}  // namespace

Result<Lighting> lightAsked(std::string_view words, const LightWords& known) {
  return WishReader(known).read(words);
}

Lighting lightOf(const Beat& beat, const LightWords& known) {
  if (!beat.light.empty())
    if (auto asked = lightAsked(beat.light, known)) return std::move(*asked);
  return known.lightFor(beat);
}

Lighting lightOf(const Staging& staging, const Beat& beat, const LightWords& known) {
  return staging.light ? lightingOf(*staging.light) : lightOf(beat, known);
}

SetLight setLightOf(const Lighting& light) {
  return {light.name,           light.title,
          setLampOf(light.key), setLampOf(light.fill),
          setLampOf(light.rim), rounded(light.ambient, kDecimals)};
}

Lighting lightingOf(const SetLight& light) {
  const Lighting usual;
  return {light.name,
          light.title,
          lampOf(light.key, usual.key),
          lampOf(light.fill, usual.fill),
          lampOf(light.rim, usual.rim),
          light.ambient};
}

}  // namespace tw
