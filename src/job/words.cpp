// How the closed sets of words are spelt. Parsers take what people type: capitals, hyphens or
// spaces, any apostrophe, "closeup", "long shot".
#include "job/words.h"

#include <array>
#include <string>

#include "job/beat.h"

namespace tw {

namespace {

constexpr std::array<std::string_view, kShotSizes> kShotNames = {
    "extreme close-up", "close-up", "medium close-up", "medium",
    "medium long",      "long",     "very long",       "extreme long"};
constexpr std::array<std::string_view, 5> kEyeNames = {"worm's eye", "low", "eye level", "high",
                                                       "bird's eye"};
constexpr std::array<std::string_view, 7> kCopyNames = {"speech",  "whisper", "shout", "thought",
                                                        "caption", "sfx",     "title"};
constexpr std::array<std::string_view, 2> kDirectionNames = {"left-to-right", "right-to-left"};
constexpr std::array<std::string_view, 2> kSexNames = {"female", "male"};

/// Letters only, small: "Close-Up" and "close up" become "closeup".
std::string lettersOf(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c >= 'A' && c <= 'Z') out += static_cast<char>(c - 'A' + 'a');
    if (c >= 'a' && c <= 'z') out += c;
  }
  return out;
}

std::string withoutEnding(std::string text, std::string_view ending) {
  if (text.size() > ending.size() && text.ends_with(ending))
    text.resize(text.size() - ending.size());
  return text;
}

template <class Kind, std::size_t N>
std::optional<Kind> find(const std::array<std::string_view, N>& names, const std::string& letters) {
  for (std::size_t i = 0; i < N; ++i)
    if (lettersOf(names[i]) == letters) return static_cast<Kind>(i);
  return std::nullopt;
}

}  // namespace

std::string_view nameOf(ShotSize shot) {
  return kShotNames.at(static_cast<std::size_t>(shot));
}
std::string_view nameOf(EyeHeight eye) {
  return kEyeNames.at(static_cast<std::size_t>(eye));
}
std::string_view nameOf(CopyKind kind) {
  return kCopyNames.at(static_cast<std::size_t>(kind));
}
std::string_view nameOf(ReadingDirection d) {
  return kDirectionNames.at(static_cast<std::size_t>(d));
}
std::string_view nameOf(Sex sex) {
  return kSexNames.at(static_cast<std::size_t>(sex));
}

std::optional<ShotSize> shotSizeFrom(std::string_view name) {
  return find<ShotSize>(kShotNames, withoutEnding(lettersOf(name), "shot"));
}

std::optional<EyeHeight> eyeHeightFrom(std::string_view name) {
  const std::string letters = lettersOf(name);
  if (letters == "worm" || letters == "worms") return EyeHeight::Worm;
  if (letters == "bird" || letters == "birds") return EyeHeight::Bird;
  if (letters == "level") return EyeHeight::Level;
  return find<EyeHeight>(kEyeNames, letters);
}

std::optional<ReadingDirection> readingDirectionFrom(std::string_view name) {
  if (lettersOf(name) == "ltr") return ReadingDirection::LeftToRight;
  if (lettersOf(name) == "rtl") return ReadingDirection::RightToLeft;
  return find<ReadingDirection>(kDirectionNames, lettersOf(name));
}

}  // namespace tw
