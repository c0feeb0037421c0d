// Where a panel plays. An explicit word (inside, underwater, INT.) rules; otherwise places are
// weighed: one in the first sentence counts more than one seen through a window. What is said of
// no place leaves the setting of the panel before.
#include <array>

#include "script/breakdown.h"
#include "script/scene_headings.h"
#include "script/text_case.h"

namespace tw {

namespace {

constexpr std::array<std::string_view, 4> kKinds = {"underwater", "none", "interior", "exterior"};

constexpr std::size_t kFewWords = 3;  // a sentence this short only frames the picture

struct Reading {
  std::array<double, 4> score{};
  std::vector<std::string> places, times;
};

std::size_t kindIndex(std::string_view kind) {
  for (std::size_t i = 0; i < kKinds.size(); ++i)
    if (kKinds[i] == kind) return i;
  return kKinds.size();
}

void addOnce(std::vector<std::string>& list, const std::string& text) {
  for (const std::string& known : list)
    if (known == text || known.find(text) != std::string::npos) return;
  list.push_back(text);
}

/// A preposition at most three words before, with nothing but small words between.
bool isEntered(const std::vector<Token>& tokens, std::size_t at, const Lexicon& lexicon) {
  for (std::size_t back = 1; back <= 3 && back <= at; ++back) {
    const std::string& word = wordAt(tokens, at - back);
    if (word == "through" || word == "window" || word == "towards" || word == "toward" ||
        word == "from" || word == "to" || word == "of" || word == "by" || word == "past" ||
        word.empty())
      return false;
    // "looks at the tower" is not in the tower.
    if (word == "at" && lexicon.verbForms.contains(wordAt(tokens, at - back - 1))) return false;
    if (lexicon.grammar.prepositions.contains(word)) return true;
  }
  return false;
}

Reading readPlaces(const std::vector<Token>& tokens, const Lexicon& lexicon) {
  Reading reading;
  int sentence = 0;
  std::size_t begun = 0;
  for (std::size_t i = 0; i < tokens.size();) {
    if (tokens[i].kind == Token::Kind::Stop) {
      // "Wide shot." and "From above:" are no sentence of their own.
      if (tokens[i].text != ":" && i - begun > kFewWords) ++sentence;
      begun = i + 1;
    }
    std::size_t length = 1;
    const PlaceWord* place =
        lexicon.places.find([&](std::size_t k) { return wordAt(tokens, i + k); }, length);
    if (place != nullptr && !tokens[i].possessive) {
      const std::size_t kind = kindIndex(place->kind);
      const bool entered = isEntered(tokens, i, lexicon);
      const double first = sentence == 0 ? 1.0 : 0.4;
      if (kind == kKinds.size())
        addOnce(reading.times, place->text);
      else
        reading.score[kind] += place->explicitly ? 6 : first * (entered ? 2.0 : 0.8);
      if (kind < kKinds.size() && !place->explicitly && (entered || sentence == 0))
        addOnce(reading.places, place->text);
    }
    i += length;
  }
  return reading;
}

std::string joined(std::string_view kind, const Reading& reading) {
  std::string out(kind);
  for (const std::string& place : reading.places) out += ", " + place;
  for (const std::string& time : reading.times) out += ", " + time;
  return out;
}

/// "INT. BELL TOWER - NIGHT" → "interior, bell tower, night", the writer's own words.
std::string fromSlugline(std::string_view line) {
  const std::string low = folded(line);
  const std::string_view kind = low.starts_with("int") ? "interior" : "exterior";
  std::string out(low.find("underwater") != std::string::npos ? "underwater" : kind);
  std::string part;
  const std::string_view rest = withoutLeadingMarks(
      std::string_view(low).substr(
          low.find_first_of(" .:/") == std::string::npos ? low.size() : low.find_first_of(" .:/")),
      ".:/-");
  for (std::size_t i = 0; i <= rest.size(); ++i) {
    const std::string_view ahead = rest.substr(i);
    const bool dash = ahead.starts_with(" - ") || ahead.starts_with("\u2013") ||
                      ahead.starts_with("\u2014") || ahead.starts_with("--");
    const bool ends = ahead.empty() || ahead.front() == '.' || ahead.front() == '/' || dash;
    if (!ends) {
      part += ahead.front();
      continue;
    }
    if (const std::string_view word = bareText(part); !word.empty() && word != "underwater")
      out += ", " + std::string(word);
    part.clear();
    if (dash) i += 2;
  }
  return out;
}

std::string_view kindOf(std::string_view setting) {
  return setting.substr(0, setting.find(','));
}

}  // namespace

std::string settingIn(const std::string& description, const std::vector<Token>& tokens,
                      const Lexicon& lexicon, const std::string& before) {
  for (std::size_t start = 0; start < description.size();) {
    const std::size_t end = std::min(description.find('\n', start), description.size());
    const std::string_view line = std::string_view(description).substr(start, end - start);
    if (isSlugline(line)) return fromSlugline(slugPart(line));
    start = end + 1;
  }
  const Reading reading = readPlaces(tokens, lexicon);
  std::size_t best = 0;
  for (std::size_t i = 1; i < kKinds.size(); ++i)
    if (reading.score[i] > reading.score[best]) best = i;
  const double score = reading.score[best];
  if (score <= 0) return {};
  // A change of kind wants more than a passing word; a place of the same kind is more detail.
  const bool changes = !before.empty() && kindOf(before) != kKinds[best];
  if (changes && score < 1.5) return {};
  if (!changes && reading.places.empty())
    return before.empty() ? joined(kKinds[best], reading) : before;
  return joined(kKinds[best], reading);
}

}  // namespace tw
