// Hands as a rough stages them. A hand that is stated is law; where none is, a thing that changes
// hands from one panel of a scene to the next, with no word of taking it over, asks for a look: it
// is what becomes of a panel that was laid out the other way round.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "review/continuity.h"

namespace tw {

namespace {

std::string nameIn(const Job& job, const std::string& who) {
  const Character* character = job.character(who);
  return character == nullptr ? who : character->name;
}

/// The hand stated for the thing at that moment, or empty.
std::string statedHand(const Job& job, const StoryTime& story, const LookWords& words,
                       std::size_t moment, const StagedHand& staged) {
  const Beat& beat = *story.moments()[moment].beat;
  const auto prop = std::ranges::find(beat.props, staged.thing, &Prop::id);
  if (prop != beat.props.end() && !prop->hand.empty()) return prop->hand;
  const Character* who = job.character(staged.who);
  if (who == nullptr || prop == beat.props.end()) return {};
  const LookHeld held = lookAt(*who, story, moment, words);
  for (const auto& [thing, hand] : held.hands)
    if (thing == prop->name || thing == prop->id) return hand;
  return {};
}

bool isHandedOver(const StoryTime& story, const LookWords& words, std::size_t from,
                  std::size_t to) {
  for (std::size_t m = from; m <= to; ++m)
    for (const std::string& word : plainWords(story.moments()[m].beat->description))
      if (words.handOver.contains(word)) return true;
  return false;
}

std::string remedyFor(const StagedHand& staged, const std::string& hand) {
  return fmt::format("State it: tierwright beats JOB --set {}.prop.{}.hand={}.", staged.beat,
                     staged.thing, hand);
}

}  // namespace

std::vector<ContinuityFinding> stagedHandsOf(const Job& job, const StoryTime& story,
                                             const LookWords& words,
                                             const std::vector<StagedHand>& hands) {
  std::map<std::size_t, std::vector<const StagedHand*>> byMoment;
  for (const StagedHand& hand : hands)
    if (const auto moment = story.momentOf(hand.beat)) byMoment[*moment].push_back(&hand);
  std::vector<ContinuityFinding> out;
  std::map<std::pair<std::string, std::string>, std::pair<std::size_t, std::string>> last;
  for (const auto& [moment, shown] : byMoment)
    for (const StagedHand* staged : shown) {
      if (staged->hand.empty()) continue;
      const std::string name = nameIn(job, staged->who);
      const std::string stated = statedHand(job, story, words, moment, *staged);
      if (!stated.empty() && stated != staged->hand)
        out.push_back(
            {"hand", Severity::Must, staged->who, staged->thing,
             fmt::format("{} is staged with the {} in the {} hand on {}; stated is the {} "
                         "hand.",
                         name, staged->thing, staged->hand, story.inWords(moment), stated),
             "Choose a pose that holds with that hand, or mirror the pose.", placeOf(story, moment),
             placeOf(story, moment)});
      const auto before = last.find({staged->who, staged->thing});
      const bool changes =
          before != last.end() && before->second.second != staged->hand &&
          before->second.second != "both" && staged->hand != "both" &&
          story.moments()[before->second.first].scene == story.moments()[moment].scene &&
          !isHandedOver(story, words, before->second.first, moment);
      if (changes && stated.empty())
        out.push_back({"hand", Severity::Look, staged->who, staged->thing,
                       fmt::format("{} is staged with the {} in the {} hand on {}, in the {} hand "
                                   "on {}.",
                                   name, staged->thing, staged->hand, story.inWords(moment),
                                   before->second.second, story.inWords(before->second.first)),
                       remedyFor(*staged, before->second.second), placeOf(story, moment),
                       placeOf(story, before->second.first)});
      last[{staged->who, staged->thing}] = {moment, staged->hand};
    }
  return out;
}

}  // namespace tw
