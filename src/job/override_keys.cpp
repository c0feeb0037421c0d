#include "job/override_keys.h"

#include <fmt/format.h>

#include <algorithm>

#include "job/assignment.h"
#include "job/field.h"
#include "job/read_json.h"

namespace tw {

namespace {

constexpr std::string_view kGuess = "guess";
constexpr double kLargestWeight = 1000;
const std::vector<std::string_view> kKeys = {"shot",    "eye",  "dominant", "weight",
                                             "setting", "pose", "add",      "drop"};

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

Result<void> mustBeInCast(const Job& job, std::string_view who) {
  if (job.character(std::string(who))) return {};
  std::vector<std::string> ids;
  for (const Character& character : job.cast) ids.push_back(character.id);
  return badInput(fmt::format("{} is not in the cast.", who), {},
                  fmt::format("The cast is: {}.", fmt::join(ids, ", ")));
}

Result<void> setPose(BeatOverride& change, const Job& job, const Assignment& a,
                     std::string_view who) {
  if (Result<void> known = mustBeInCast(job, who); !known) return known;
  if (!isWord(a.value)) return wrongValue(a, "the name of a pose");
  if (a.value == kGuess)
    change.poses.erase(std::string(who));
  else
    change.poses[std::string(who)] = a.value;
  return {};
}

/// Puts `who` into one list and takes it out of the other.
Result<void> moveTo(std::vector<std::string>& into, std::vector<std::string>& outOf, const Job& job,
                    const Assignment& a) {
  if (Result<void> known = mustBeInCast(job, a.value); !known) return known;
  const std::string who(a.value);
  if (std::erase(outOf, who) == 0 && std::find(into.begin(), into.end(), who) == into.end())
    into.push_back(who);
  return {};
}

Result<void> set(BeatOverride& change, const Job& job, std::string_view key, const Assignment& a) {
  if (key == "shot") return setOrGuess(change.shot, a, shotSizeFrom(a.value), listed<ShotSize>());
  if (key == "eye") return setOrGuess(change.eye, a, eyeHeightFrom(a.value), listed<EyeHeight>());
  if (key == "dominant")
    return setOrGuess(change.dominant, a, yesOrNo(a.value), "yes, no or guess");
  if (key == "weight") return setWeight(change, a);
  if (key == "setting")
    return setOrGuess(change.setting, a, std::optional(std::string(a.value)), "words");
  if (key.starts_with("pose.")) return setPose(change, job, a, key.substr(5));
  if (key == "add") return moveTo(change.addFigures, change.dropFigures, job, a);
  if (key == "drop") return moveTo(change.dropFigures, change.addFigures, job, a);
  const std::string_view near = nearest(key, kKeys);
  return badInput(fmt::format("A beat has no key \"{}\".", key), {},
                  near.empty() ? fmt::format("Known are: {}.", fmt::join(kKeys, ", "))
                               : fmt::format("Is \"{}\" meant?{}", near,
                                             near == "pose" ? " Write pose.WHO=POSE." : ""));
}

}  // namespace

Result<void> setOverrideKey(Page& page, const Job& job, std::string_view assignment) {
  const Result<Assignment> split = assignmentIn(assignment);
  if (!split) return tl::unexpected(split.error());
  const Result<Target> target = targetOf(page, split->key);
  if (!target) return tl::unexpected(target.error());
  const auto before = page.overrides.find(target->beat);
  BeatOverride change = before == page.overrides.end() ? BeatOverride{} : before->second;
  if (Result<void> done = set(change, job, target->key, *split); !done) return done;
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
  if (change.dominant) add("dominant", *change.dominant ? "yes" : "no");
  if (change.weight) add("weight", fmt::format("{:.6g}", *change.weight));
  if (change.setting) add("setting", *change.setting);
  for (const auto& [who, pose] : change.poses) add("pose." + who, pose);
  for (const std::string& who : change.addFigures) add("add", who);
  for (const std::string& who : change.dropFigures) add("drop", who);
  return out;
}

}  // namespace tw
