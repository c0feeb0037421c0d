#include "job/override_keys.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <sstream>

#include "job/assignment.h"
#include "job/field.h"
#include "job/prop_keys.h"
#include "job/read_json.h"

namespace tw {

namespace {

constexpr std::string_view kGuess = "guess", kLeftOut = "none";
constexpr double kLargestWeight = 1000;
const std::vector<std::string_view> kKeys = {
    "shot",   "eye",      "lens",      "roll",           "light",    "dominant",
    "weight", "setting",  "scene",     "pose.WHO",       "does.WHO", "add",
    "drop",   "prop.add", "prop.drop", "prop.THING.KEY", "copy.ITEM"};

struct Target {
  std::string beat;
  std::string_view key;  ///< what follows the beat's id
};

Result<Target> targetOf(const Page& page, std::string_view key) {
  std::vector<std::string> ids;
  for (const Beat& beat : page.beats) {
    if (key.starts_with(beat.id + ".")) return Target{beat.id, key.substr(beat.id.size() + 1)};
    ids.push_back(beat.id);
  }
  return badInput(fmt::format("\"{}\" does not start with a beat of page {}.", key, page.number),
                  {.page = page.number},
                  fmt::format("Write BEAT.KEY=VALUE; the beats are {}.", fmt::join(ids, ", ")));
}

/// Sets an optional field, or clears it on "guess".
template <class T>
Result<void> setOrGuess(std::optional<T>& field, const Assignment& a, std::optional<T> value,
                        std::string_view expected) {
  if (a.value != kGuess && !value) return wrongValue(a, expected);
  field = a.value == kGuess ? std::nullopt : std::move(value);
  return {};
}

template <class E>
std::string listed() {
  return fmt::format("one of {}, or guess,", fmt::join(namesOf<E>(), ", "));
}

Result<void> setWeight(BeatOverride& change, const Assignment& a) {
  std::optional<double> weight = decimalNumber(a.value);
  if (weight && !(*weight > 0 && *weight <= kLargestWeight)) weight.reset();
  return setOrGuess(change.weight, a, weight, "a number over 0 and up to 1000, or guess,");
}

/// The number before a unit that may be left out, when it lies within the bounds.
std::optional<double> numberOf(std::string_view text, std::initializer_list<std::string_view> units,
                               double least, double most) {
  for (const std::string_view unit : units)
    if (text.ends_with(unit)) text = trimmed(text.substr(0, text.size() - unit.size()));
  std::optional<double> number = decimalNumber(text);
  if (number && !(*number >= least && *number <= most)) number.reset();
  return number;
}

Result<void> setLens(BeatOverride& change, const Assignment& a) {
  return setOrGuess(change.lensMm, a, numberOf(a.value, {"mm"}, kShortestLensMm, kLongestLensMm),
                    "a lens from 14 to 300 mm (the panel's width is a frame of 36 mm), or guess,");
}

Result<void> setRoll(BeatOverride& change, const Assignment& a) {
  return setOrGuess(
      change.rollDeg, a, numberOf(a.value, {"degrees", "deg", "°"}, -kMostRollDeg, kMostRollDeg),
      "a roll from -90 to 90 degrees (over 0 turns the picture counter-clockwise), or guess,");
}

Result<void> mustBeInCast(const Job& job, std::string_view who) {
  if (job.character(std::string(who))) return {};
  std::vector<std::string> ids;
  for (const Character& character : job.cast) ids.push_back(character.id);
  return badInput(fmt::format("{} is not in the cast.", who), {},
                  fmt::format("The cast is: {}.", fmt::join(ids, ", ")));
}

/// Puts the value under `who`, or takes it away on "guess".
void setOrGuess(std::map<std::string, std::string>& map, std::string_view who,
                const Assignment& a) {
  if (a.value == kGuess)
    map.erase(std::string(who));
  else
    map[std::string(who)] = a.value;
}

/// Copy is typed on one line: a backslash and an n between its paragraphs.
std::string withParagraphs(std::string_view typed) {
  std::string out(typed);
  for (std::size_t at; (at = out.find("\\n")) != out.npos;) out.replace(at, 2, "\n");
  return out;
}

std::string onOneLine(std::string_view text) {
  std::string out;
  for (const char c : text) out += c == '\n' ? "\\n" : std::string(1, c);
  return out;
}

int blankApart(const std::string& text) {
  std::istringstream in(text);
  return static_cast<int>(
      std::distance(std::istream_iterator<std::string>(in), std::istream_iterator<std::string>()));
}

class Correction {
 public:
  Correction(BeatOverride& change, const Beat& beat, const Job& job, const KnownWords& known)
      : change_(change), beat_(beat), job_(job), known_(known) {}

  Result<void> set(std::string_view key, const Assignment& a) {
    if (key == "shot")
      return setOrGuess(change_.shot, a, shotSizeFrom(a.value), listed<ShotSize>());
    if (key == "eye")
      return setOrGuess(change_.eye, a, eyeHeightFrom(a.value), listed<EyeHeight>());
    if (key == "lens") return setLens(change_, a);
    if (key == "roll") return setRoll(change_, a);
    if (key == "light") return setLight(a);
    if (key == "dominant")
      return setOrGuess(change_.dominant, a, yesOrNo(a.value), "yes, no or guess");
    if (key == "weight") return setWeight(change_, a);
    if (key == "setting")
      return setOrGuess(change_.setting, a, std::optional(std::string(a.value)), "words");
    if (key == "scene") return setScene(a);
    if (key.starts_with("pose.")) return setPose(a, key.substr(5));
    if (key.starts_with("does.")) return setDoing(a, key.substr(5));
    if (key == "add") return moveFigure(change_.addFigures, change_.dropFigures, a);
    if (key == "drop") return moveFigure(change_.dropFigures, change_.addFigures, a);
    if (key == "prop.add") return addProp(a);
    if (key == "prop.drop") return dropProp(a);
    if (key.starts_with("prop.")) return setPropKey(change_, beat_, key.substr(5), a, known_);
    if (key.starts_with("copy.")) return setCopy(a, key.substr(5));
    return unknownKey(key);
  }

 private:
  static Result<void> unknownKey(std::string_view key) {
    const std::string_view near = nearest(key, kKeys);
    return badInput(fmt::format("A beat has no key \"{}\".", key), {},
                    near.empty() ? fmt::format("Known are: {}.", fmt::join(kKeys, ", "))
                                 : fmt::format("Is \"{}\" meant?", near));
  }

  Result<void> setScene(const Assignment& a) {
    std::vector<std::string> ids;
    for (const StoryScene& scene : job_.scenes) ids.push_back(scene.id);
    if (a.value != kGuess)
      if (Result<void> known = mustBeKnown(a.value, ids, "scene"); !known) return known;
    return setOrGuess(change_.scene, a, std::optional(std::string(a.value)), "the id of a scene");
  }

  Result<void> setPose(const Assignment& a, std::string_view who) {
    if (Result<void> cast = mustBeInCast(job_, who); !cast) return cast;
    if (!isWord(a.value)) return wrongValue(a, "the name of a pose");
    if (a.value != kGuess)
      if (Result<void> pose = mustBeKnown(a.value, known_.poses, "pose"); !pose) return pose;
    setOrGuess(change_.poses, who, a);
    return {};
  }

  Result<void> setLight(const Assignment& a) {
    if (a.value != kGuess && known_.light)
      if (Result<void> sound = known_.light(a.value); !sound) return sound;
    return setOrGuess(change_.light, a, std::optional(std::string(a.value)), "words");
  }

  Result<void> setDoing(const Assignment& a, std::string_view who) {
    if (Result<void> cast = mustBeInCast(job_, who); !cast) return cast;
    const std::string_view last = a.value.substr(a.value.rfind(' ') + 1);
    const Doing doing = doingIn(a.value, withOverride(beat_, change_));
    if (doing.target.empty() && job_.character(std::string(last)))
      return badInput(fmt::format("{} is not in the panel.", last), {},
                      fmt::format("Put them in first: {}.add={}.", beat_.id, last));
    if (a.value != kGuess && !doing.relation.empty())
      if (Result<void> known = mustBeKnown(doing.relation, known_.relations, "relation"); !known)
        return known;
    setOrGuess(change_.does, who, a);
    return {};
  }

  Result<void> setCopy(const Assignment& a, std::string_view item) {
    std::vector<std::string> ids;
    for (const CopyItem& copy : beat_.copy) ids.push_back(copy.id);
    if (Result<void> known = mustBeKnown(item, ids, "copy item"); !known) return known;
    if (a.value == kGuess) {
      change_.copy.erase(std::string(item));
      return {};
    }
    CopyWords words{a.value == kLeftOut ? "" : withParagraphs(a.value), 0};
    words.words = known_.words ? known_.words(words.text) : blankApart(words.text);
    change_.copy[std::string(item)] = std::move(words);
    return {};
  }

  /// Puts the character into one list and takes it out of the other.
  Result<void> moveFigure(std::vector<std::string>& into, std::vector<std::string>& outOf,
                          const Assignment& a) {
    if (Result<void> known = mustBeInCast(job_, a.value); !known) return known;
    const std::string who(a.value);
    if (std::erase(outOf, who) == 0 && std::find(into.begin(), into.end(), who) == into.end())
      into.push_back(who);
    return {};
  }

  Result<void> addProp(const Assignment& a) {
    if (!isWord(a.value)) return wrongValue(a, "the name of a thing");
    std::optional<Prop> prop = Prop{std::string(a.value), std::string(a.value)};
    if (known_.thing) {
      auto found = known_.thing(a.value);
      if (!found) return tl::unexpected(found.error());
      prop = std::move(*found);
    }
    if (!prop)
      return badInput(fmt::format("No thing is called \"{}\".", a.value), {},
                      "Things with their shapes and sizes are in presets/lexicon/things.json.");
    const bool isAdded =
        std::ranges::find(change_.addProps, prop->id, &Prop::id) != change_.addProps.end();
    if (std::erase(change_.dropProps, prop->id) == 0 && !isAdded)
      change_.addProps.push_back(std::move(*prop));
    return {};
  }

  Result<void> dropProp(const Assignment& a) {
    const std::string id(a.value);
    if (std::erase_if(change_.addProps, [&](const Prop& p) { return p.id == id; }) > 0) return {};
    std::vector<std::string> ids;
    for (const Prop& prop : beat_.props) ids.push_back(prop.id);
    if (std::ranges::find(ids, id) == ids.end())
      return badInput(fmt::format("The panel shows no \"{}\".", id), {},
                      fmt::format("It shows: {}.", fmt::join(ids, ", ")));
    if (std::ranges::find(change_.dropProps, id) == change_.dropProps.end())
      change_.dropProps.push_back(id);
    return {};
  }

  BeatOverride& change_;
  const Beat& beat_;
  const Job& job_;
  const KnownWords& known_;
};

}  // namespace

Result<void> setOverrideKey(Page& page, const Job& job, std::string_view assignment,
                            const KnownWords& known) {
  const Result<Assignment> split = assignmentIn(assignment);
  if (!split) return tl::unexpected(split.error());
  const Result<Target> target = targetOf(page, split->key);
  if (!target) return tl::unexpected(target.error());
  const auto beat = std::ranges::find(page.beats, target->beat, &Beat::id);
  const auto before = page.overrides.find(target->beat);
  BeatOverride change = before == page.overrides.end() ? BeatOverride{} : before->second;
  if (auto done = Correction(change, *beat, job, known).set(target->key, *split); !done)
    return done;
  if (change == BeatOverride{})
    page.overrides.erase(target->beat);
  else
    page.overrides[target->beat] = std::move(change);
  return {};
}

std::vector<std::string> describeOverride(const std::string& beat, const BeatOverride& change) {
  std::vector<std::string> out;
  const auto add = [&](std::string_view key, std::string_view value) {
    out.push_back(fmt::format("{}.{}={}", beat, key, value));
  };
  if (change.shot) add("shot", nameOf(*change.shot));
  if (change.eye) add("eye", nameOf(*change.eye));
  if (change.lensMm) add("lens", fmt::format("{:.6g}", *change.lensMm));
  if (change.rollDeg) add("roll", fmt::format("{:.6g}", *change.rollDeg));
  if (change.light) add("light", *change.light);
  if (change.dominant) add("dominant", *change.dominant ? "yes" : "no");
  if (change.weight) add("weight", fmt::format("{:.6g}", *change.weight));
  if (change.setting) add("setting", *change.setting);
  if (change.scene) add("scene", *change.scene);
  for (const auto& [who, pose] : change.poses) add("pose." + who, pose);
  for (const Prop& prop : change.addProps) add("prop.add", prop.id);
  for (const std::string& prop : change.dropProps) add("prop.drop", prop);
  for (const auto& [prop, own] : change.props)
    for (const auto& [key, value] : describeProp(own)) add("prop." + prop + "." + key, value);
  for (const std::string& who : change.addFigures) add("add", who);
  for (const std::string& who : change.dropFigures) add("drop", who);
  for (const auto& [who, does] : change.does) add("does." + who, does);
  for (const auto& [item, own] : change.copy)
    add("copy." + item, own.text.empty() ? std::string(kLeftOut) : onOneLine(own.text));
  return out;
}

}  // namespace tw
