#include <algorithm>

#include "job/assignment.h"
#include "script/breakdown.h"
#include "script/text_case.h"

namespace tw {

namespace {

bool isWrittenInCaps(const std::vector<Token>& tokens, std::size_t at, std::size_t length) {
  for (std::size_t i = at; i < at + length; ++i)
    if (!isAllCaps(tokens[i].text)) return false;
  return true;
}

/// "wide" opens a sentence and is followed by a stop, a shot word or a small word, not by a noun:
/// "Wide. The bay", "Big. Mara", but not "Big waves".
bool opensAlone(const std::vector<Token>& tokens, std::size_t at, std::size_t length,
                const Lexicon& lexicon) {
  if (!tokens[at].startsSentence) return false;
  const std::size_t next = at + length;
  if (next >= tokens.size() || !tokens[next].isWord()) return true;
  return lexicon.grammar.prepositions.contains(tokens[next].low);
}

bool fits(const ShotWord& found, const std::vector<Token>& tokens, std::size_t at,
          std::size_t length, const Lexicon& lexicon) {
  if (found.capsOnly && !isWrittenInCaps(tokens, at, length)) return false;
  if (found.startOnly && !opensAlone(tokens, at, length, lexicon)) return false;
  return found.notAfter.empty() || at == 0 || !found.notAfter.contains(wordAt(tokens, at - 1));
}

/// "a splash of water" and "splashes" ask for no panel.
bool isWater(const std::vector<Token>& tokens, std::size_t at) {
  if (tokens[at].low != "splash") return false;
  const std::string& next = wordAt(tokens, at + 1);
  if (next == "panel" || next == "page") return false;
  const bool alone = tokens[at].startsSentence || isAllCaps(tokens[at].text);
  return !alone || next == "of";
}

/// "on a 35 mm lens", "85mm lens": the number is the lens.
std::optional<double> lensNumber(const std::vector<Token>& tokens, std::size_t at) {
  std::string number = wordAt(tokens, at);
  std::size_t next = at + 1;
  if (number.ends_with("mm"))
    number.resize(number.size() - 2);
  else if (wordAt(tokens, next++) != "mm")
    return std::nullopt;
  if (wordAt(tokens, next) != "lens") return std::nullopt;
  const std::optional<int> mm = wholeNumber(number);
  if (!mm || *mm < kShortestLensMm || *mm > kLongestLensMm) return std::nullopt;
  return *mm;
}

}  // namespace

Framing framingIn(const std::vector<Token>& tokens, const Lexicon& lexicon) {
  Framing framing;
  for (std::size_t i = 0; i < tokens.size();) {
    if (const auto lens = lensNumber(tokens, i); lens && !framing.lensMm) framing.lensMm = lens;
    std::size_t length = 1;
    const ShotWord* found =
        lexicon.shots.find([&](std::size_t k) { return wordAt(tokens, i + k); }, length);
    if (found == nullptr || !fits(*found, tokens, i, length, lexicon) || isWater(tokens, i)) {
      ++i;
      continue;
    }
    if (found->shot && !framing.shot) framing.shot = found->shot;
    if (found->eye && !framing.eye) framing.eye = found->eye;
    if (found->lensMm && !framing.lensMm) framing.lensMm = found->lensMm;
    if (found->rollDeg && !framing.rollDeg) framing.rollDeg = found->rollDeg;
    framing.dominant = std::max(framing.dominant, found->dominant);
    if (found->weight > 0 && framing.weight == 1) framing.weight = found->weight;
    i += length;
  }
  return framing;
}

}  // namespace tw
