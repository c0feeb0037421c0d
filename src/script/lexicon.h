// The words that the reader of scripts knows, as data from presets/lexicon: cue marks, verbs with
// the pose and relation they stand for, things with shape and size, places, words for shots and
// words that describe people. An artist may add to the files; nothing here is built in.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "job/beat.h"
#include "job/look_words.h"
#include "job/words.h"

namespace tw {

/// Phrases of one or more words, compared token by token; the longest that fits wins.
template <class T>
class PhraseTable {
 public:
  void add(std::vector<std::string> words, T value) {
    if (words.empty()) return;
    auto& list = byFirst_[words.front()];
    const auto shorter = [&](const Entry& e) { return e.words.size() < words.size(); };
    auto at = list.begin();
    while (at != list.end() && !shorter(*at)) ++at;
    list.insert(at, Entry{std::move(words), std::move(value)});
  }

  /// The entry whose words are spelt by word(0), word(1), …; word(i) is empty at the end.
  template <class Word>
  const T* find(Word word, std::size_t& length) const {
    const auto found = byFirst_.find(word(0));
    if (found == byFirst_.end()) return nullptr;
    for (const Entry& entry : found->second) {
      std::size_t i = 1;
      while (i < entry.words.size() && word(i) == entry.words[i]) ++i;
      if (i < entry.words.size()) continue;
      length = i;
      return &entry.value;
    }
    return nullptr;
  }

 private:
  struct Entry {
    std::vector<std::string> words;
    T value;
  };
  std::map<std::string, std::vector<Entry>, std::less<>> byFirst_;
};

enum class Modifier { Plain, Whisper, Shout, Thought, Caption, Off };

struct CueWords {
  std::map<std::string, CopyKind, std::less<>> keywords;
  std::map<std::string, Modifier, std::less<>> modifiers;
  std::set<std::string, std::less<>> voices, notSpeakers, notNames;
};

/// What a verb says of its subject.
struct Action {
  std::string pose;      ///< empty: says nothing of the pose
  std::string relation;  ///< empty: none
  int strength = 1;      ///< of two verbs with one subject the stronger gives the pose
};

enum class VerbForm { Base, Third, Ing, Past };

struct VerbMatch {
  int verb = 0;  ///< index into Lexicon::verbs
  VerbForm form = VerbForm::Base;
};

struct Verb {
  std::string lemma;
  Action plain;
  /// "up", "down at", "over shoulder" after the verb, longest first, with what they change.
  std::vector<std::pair<std::vector<std::string>, Action>> particles;
  std::optional<Action> withTarget;  ///< "drops the rope" against "drops"
  bool stative = false;              ///< its past form describes a pose: "crouched", "perched"
  std::string passivePose;           ///< of one to whom it is done: "is thrown"
};

struct Thing {
  std::string name, shape;
  std::array<double, 3> sizeM{1, 1, 1};
  bool handheld = false;
  bool nounOnly = false;  ///< counts only behind an article: "a cross"
  bool material = false;  ///< no thing when something is of it or against it: "against the stone"
};

struct PlaceWord {
  std::string kind;  ///< interior, exterior, underwater, none; empty for times of day
  std::string text;
  bool explicitly = false;  ///< "inside", "outside": rules by itself
};

struct ShotWord {
  std::optional<ShotSize> shot;
  std::optional<EyeHeight> eye;
  double dominant = 0;  ///< weight of a dominant panel, 0 = says nothing
  double weight = 0;    ///< times the weight, 0 = says nothing
  std::optional<double> lensMm, rollDeg;
  bool capsOnly = false;           ///< CU, MS: only when written in capitals
  bool startOnly = false;          ///< "wide": only as the first word of a sentence
  std::set<std::string> notAfter;  ///< "light from above" asks for no camera
};

struct PersonWord {
  std::optional<Sex> sex;
  std::string build;
  double heightM = 0, addM = 0, ageYears = 0;
};

/// Small word classes; see presets/lexicon/grammar.json.
struct Grammar {
  using Words = std::set<std::string, std::less<>>;
  Words articles, prepositions, adverbs, conjunctions, clauseWords, be, modals, absentBefore;
  PhraseTable<bool> absentAfter;
};

struct Lexicon {
  Grammar grammar;
  CueWords cues;
  std::vector<Verb> verbs;
  std::map<std::string, VerbMatch, std::less<>> verbForms;
  PhraseTable<Action> poses;  ///< "hands on hips"
  PhraseTable<Thing> things;
  std::set<std::string, std::less<>> bodyParts;
  std::set<std::string, std::less<>> notThings;  ///< nouns that ask for nothing to be built
  std::vector<std::string> notThingEndings;
  PhraseTable<PlaceWord> places;
  PhraseTable<ShotWord> shots;
  PhraseTable<PersonWord> people;
  LookWords looks;
  std::vector<std::string> numbers;  ///< "one", "two", …, for ages
  double usualFemaleM = 1.66, usualMaleM = 1.78;
};

Result<Lexicon> loadLexicon();

/// Inflected forms of an English verb by the rules of spelling; irregular ones are data.
std::string thirdPersonOf(std::string_view lemma);
std::string ingFormOf(std::string_view lemma);
std::string pastFormOf(std::string_view lemma);
std::string pluralOf(std::string_view noun);

}  // namespace tw
