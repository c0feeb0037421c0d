#include "stage/set_words.h"

#include <algorithm>

namespace tw {

namespace {

bool namesTower(std::string_view text) {
  return says(
      text, {"tower", "steeple", "belfry", "lighthouse", "church", "chapel", "castle", "minaret"});
}

std::vector<std::string> sentencesOf(const std::string& text) {
  std::vector<std::string> out(1);
  for (const char c : lowered(text)) {
    out.back() += c;
    if (c == '.' || c == '!' || c == '?' || c == '\n') out.emplace_back();
  }
  return out;
}

bool standsBroken(std::string_view words) {
  return says(words, {"broken", "ruin", "drowned", "flooded", "sunken", "collapsed", "shattered",
                      "torn", "burnt", "bombed"});
}

}  // namespace

std::string lowered(std::string text) {
  for (char& c : text)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return text;
}

bool says(std::string_view text, std::initializer_list<std::string_view> words) {
  return std::any_of(words.begin(), words.end(), [&](std::string_view word) {
    return text.find(word) != std::string_view::npos;
  });
}

std::string placeWords(const Beat& beat) {
  return lowered(beat.figures.empty() ? beat.setting + " " + beat.description : beat.setting);
}

bool isIndoors(const Beat& beat) {
  const std::string words = placeWords(beat);
  if (says(words, {"interior", "inside"})) return true;
  return says(words, {"room", "kitchen", "cabin", "office", "hall", "cellar", "shop", "chamber",
                      "nave", "crypt", "vault", "corridor"}) &&
         !says(words, {"exterior"});
}

bool isAfloat(const Beat& beat) {
  const std::string words = lowered(beat.setting + " " + beat.description);
  return !says(lowered(beat.setting), {"underwater"}) &&
         says(words,
              {"boat", "lake", "flooded", "drowned valley", "the sea", "open water", "raft"});
}

std::optional<TowerWish> towerIn(const Beat& beat) {
  if (isIndoors(beat)) return std::nullopt;
  const std::string setting = lowered(beat.setting);
  bool shown = namesTower(setting);
  TowerWish wish;
  for (const std::string& sentence : sentencesOf(beat.description)) {
    if (!namesTower(sentence) || says(sentence, {"no tower", "without"})) continue;
    shown = true;
    wish.near |= says(sentence, {" past ", " along ", "against", "beside", "foot of", "base of",
                                 "wall of", "climbs"}) &&
                 !says(sentence, {"far off", "distan", "horizon"});
  }
  if (!shown) return std::nullopt;
  wish.sunk =
      isAfloat(beat) && !wish.near && !says(setting, {"harbour", "harbor", "quay", "shore"});
  wish.broken = wish.sunk || standsBroken(setting) || standsBroken(lowered(beat.description));
  return wish;
}

bool isPassage(const Prop& prop) {
  return prop.shape == "door" || prop.shape == "doorway" || prop.shape == "window" ||
         prop.shape == "arch";
}

std::optional<std::size_t> passerOf(const Beat& beat, std::size_t prop) {
  const Prop& thing = beat.props[prop];
  if (!isPassage(thing) || thing.placeM) return std::nullopt;
  for (const std::string& sentence : sentencesOf(beat.description)) {
    const std::size_t through = sentence.find("through");
    if (through == std::string::npos) continue;
    if (says(sentence, {"looks through", "looking through", "seen through", "look through"}))
      continue;
    if (sentence.find(lowered(thing.name), through) == std::string::npos) continue;
    for (std::size_t i = 0; i < beat.figures.size(); ++i)
      if (beat.figures[i].target == thing.id) return i;
    if (beat.figures.size() == 1) return 0;
  }
  return std::nullopt;
}

bool isArched(const Beat& beat, const Prop& prop) {
  return prop.shape == "arch" || says(lowered(beat.description), {"arch", "vault"}) ||
         says(lowered(beat.setting), {"church", "chapel", "tower", "belfry", "crypt"});
}

bool isFallen(const Beat& beat, const Prop& prop) {
  if (isBuilt(prop)) return false;
  const std::string name = lowered(prop.name), words = lowered(beat.description);
  for (const char* before : {"fallen ", "toppled ", "overturned ", "upset "})
    if (words.find(before + name) != std::string::npos) return true;
  for (const char* behind : {" lies", " has fallen", " on its side", " lying"})
    if (words.find(name + behind) != std::string::npos) return true;
  return false;
}

bool isBuilt(const Prop& prop) {
  const std::string& s = prop.shape;
  return isPassage(prop) || s == "wall" || s == "stairs" || s == "ladder" || s == "house" ||
         s == "tower" || s == "broken-tower";
}

}  // namespace tw
