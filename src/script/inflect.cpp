#include <algorithm>

#include "script/lexicon.h"

namespace tw {

namespace {

bool isVowel(char c) {
  return std::string_view("aeiou").find(c) != std::string_view::npos;
}

bool endsInConsonantY(std::string_view word) {
  return word.size() > 1 && word.back() == 'y' && !isVowel(word[word.size() - 2]);
}

bool endsInSibilant(std::string_view word) {
  for (const std::string_view end : {"s", "x", "z", "ch", "sh", "o"})
    if (word.ends_with(end)) return true;
  return false;
}

/// One syllable of consonant, vowel, consonant doubles its end: "grab", "hop", "drag".
bool doublesEnd(std::string_view word) {
  if (word.size() < 3) return false;
  const char last = word.back();
  if (isVowel(last) || last == 'w' || last == 'x' || last == 'y') return false;
  if (!isVowel(word[word.size() - 2]) || isVowel(word[word.size() - 3])) return false;
  return std::ranges::count_if(word, isVowel) == 1;
}

std::string withEnding(std::string_view lemma, std::string_view ending) {
  std::string stem(lemma);
  if (stem.ends_with('e') && !stem.ends_with("ee") && !stem.ends_with("ye"))
    stem.pop_back();
  else if (doublesEnd(stem))
    stem += stem.back();
  return stem.append(ending);
}

}  // namespace

std::string thirdPersonOf(std::string_view lemma) {
  return pluralOf(lemma);
}

std::string ingFormOf(std::string_view lemma) {
  return withEnding(lemma, "ing");
}

std::string pastFormOf(std::string_view lemma) {
  if (endsInConsonantY(lemma)) return std::string(lemma.substr(0, lemma.size() - 1)) + "ied";
  if (lemma.ends_with('e')) return std::string(lemma) + "d";
  return withEnding(lemma, "ed");
}

std::string pluralOf(std::string_view noun) {
  if (endsInConsonantY(noun)) return std::string(noun.substr(0, noun.size() - 1)) + "ies";
  return std::string(noun) + (endsInSibilant(noun) ? "es" : "s");
}

}  // namespace tw
