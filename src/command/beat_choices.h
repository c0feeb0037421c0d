// Everything about a beat that the artist may correct, as a form shows it: in plain words, what it
// is now, what the script says, and which words or numbers are allowed. Every value goes back into
// setOverrideKey as "BEAT.KEY=VALUE".
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "job/override_keys.h"
#include "stage/light_names.h"

namespace tw {

enum class ChoiceKind {
  OneOf,   ///< only the words listed
  Words,   ///< any; those listed are suggestions
  Number,  ///< between least and most
  Act      ///< done once with one of the words: somebody put in, a thing taken out
};

struct ChoiceWord {
  std::string value;    ///< as setOverrideKey takes it
  std::string meaning;  ///< for a person, when the value alone does not say it
};

struct BeatChoice {
  std::string key;    ///< "shot", "pose.mara"
  std::string label;  ///< "Shot", "Mara's pose"
  ChoiceKind kind = ChoiceKind::OneOf;
  std::string value;     ///< as the beat now has it; empty: nothing is said
  std::string asScript;  ///< as the breakdown has it; empty: nothing is said
  bool corrected = false;
  std::vector<ChoiceWord> words;
  double least = 0, most = 0;
  std::string unit;
};

/// Of a beat of the page, by id; nothing when there is no such beat. The copy is not among them.
std::vector<BeatChoice> beatChoices(const Page& page, const std::string& beat, const Job& job,
                                    const KnownWords& known, const std::vector<LightName>& lights);

}  // namespace tw
