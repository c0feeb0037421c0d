#include "script/who_is_who.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "script/cast_section.h"
#include "script/text_case.h"

namespace tw {

namespace {

using Strings = std::set<std::string, std::less<>>;

class CastGatherer {
 public:
  CastGatherer(RawScript& script, const Lexicon& lexicon, const std::string& file)
      : script_(script), lexicon_(lexicon), file_(file) {}

  Roster run() {
    for (const Character& person : script_.cast) roster_.add(person);
    addSpeakers();
    if (!script_.hasCast) addNamesInCapitals();
    guessSexes();
    return std::move(roster_);
  }

 private:
  template <class Visit>
  void eachPanel(Visit visit) {
    for (RawPage& page : script_.pages)
      for (RawPanel& panel : page.panels) visit(page, panel);
  }

  void addSpeakers() {
    eachPanel([&](const RawPage& page, RawPanel& panel) {
      for (RawCopy& item : panel.copy) {
        std::erase_if(item.cue.names, [&](const std::string& name) { return isVoice(name); });
        for (const std::string& name : item.cue.names)
          if (!roster_.find(name)) addSpeaker(name, page, panel, item.line);
      }
    });
  }

  bool isVoice(const std::string& name) const {
    return lexicon_.cues.voices.contains(folded(name)) && !roster_.find(name);
  }

  void addSpeaker(const std::string& name, const RawPage& page, const RawPanel& panel, int line) {
    const std::string near = roster_.nearest(name);
    if (!addPerson(name)) return;
    if (!script_.hasCast && near.empty()) return;
    Problem problem;
    problem.sentence = script_.hasCast
                           ? fmt::format("{} speaks but is not in the cast.", name)
                           : fmt::format("{} speaks, and is spelt almost like {}.", name, near);
    problem.place.file = file_;
    problem.place.line = line;
    problem.place.page = page.head.first;
    problem.place.panel = panel.number;
    problem.advice = near.empty() ? "Added to the cast; check the name."
                                  : fmt::format("Added to the cast; was {} meant?", near);
    script_.warnings.push_back(std::move(problem));
  }

  bool addPerson(const std::string& name) {
    Character person;
    person.id = idFrom(name);
    person.name = name;
    if (person.id.empty()) return false;
    readPersonNote(name, lexicon_, person);
    guessed_.insert(person.id);
    roster_.add(std::move(person));
    return true;
  }

  /// Runs of one or two words in capitals that never stand in lower case and are no words of the
  /// trade, no things and no verbs.
  void addNamesInCapitals() {
    Strings lower;
    std::vector<std::string> names;
    eachPanel([&](const RawPage&, const RawPanel& panel) {
      const std::vector<Token> tokens = tokensOf(panel.description);
      for (const Token& token : tokens)
        if (token.isWord() && startsLower(token.text)) lower.insert(token.low);
      gatherCapitals(tokens, names);
    });
    for (const std::string& name : names) {
      const std::vector<std::string> words = phraseOf(name);
      const bool plain =
          std::ranges::any_of(words, [&](const std::string& word) { return lower.contains(word); });
      if (!plain && !roster_.find(name)) addPerson(name);
    }
  }

  void gatherCapitals(const std::vector<Token>& tokens, std::vector<std::string>& names) const {
    for (std::size_t i = 0; i < tokens.size();) {
      std::size_t end = i;
      std::string name;
      while (end < tokens.size() && isCapitals(tokens[end])) {
        name += (name.empty() ? "" : " ") + tokens[end].text;
        ++end;
        if (tokens[end - 1].possessive) break;
      }
      if (end > i && end - i <= 2 && mayBeName(tokens, i, end)) names.push_back(name);
      i = std::max(end, i + 1);
    }
  }

  static bool isCapitals(const Token& token) {
    return token.isWord() && token.low.size() > 1 && isAllCaps(token.text);
  }

  bool mayBeName(const std::vector<Token>& tokens, std::size_t begin, std::size_t end) const {
    for (std::size_t i = begin; i < end; ++i) {
      const std::string& low = tokens[i].low;
      std::size_t length = 0;
      const auto one = [&](std::size_t k) { return k == 0 ? low : std::string(); };
      const bool place = lexicon_.places.find(one, length) != nullptr;
      const bool shot = lexicon_.shots.find(one, length) != nullptr;
      const bool thing = lexicon_.things.find(one, length) != nullptr;
      if (place || shot || thing || lexicon_.cues.notNames.contains(low) ||
          lexicon_.cues.keywords.contains(low) || lexicon_.verbForms.contains(low) ||
          lexicon_.bodyParts.contains(low))
        return false;
    }
    return tokens[begin].low.size() > 2;
  }

  /// Someone without a note is a man when "he" or "his" follows the name in its sentence more
  /// often than "she" or "her", where nobody else is named.
  void guessSexes() {
    std::map<std::size_t, int> lean;
    eachPanel(
        [&](const RawPage&, const RawPanel& panel) { weighPronouns(panel.description, lean); });
    for (const auto& [index, sum] : lean) {
      Character& person = roster_.person(index);
      if (!guessed_.contains(person.id) || sum == 0) continue;
      person.sex = sum > 0 ? Sex::Male : Sex::Female;
      person.heightM = person.build == "child" ? person.heightM
                       : sum > 0               ? lexicon_.usualMaleM
                                               : lexicon_.usualFemaleM;
    }
  }

  void weighPronouns(const std::string& description, std::map<std::size_t, int>& lean) const {
    const std::vector<Token> tokens = tokensOf(description);
    std::optional<std::size_t> last, earlier;
    for (std::size_t i = 0; i < tokens.size(); ++i) {
      std::size_t length = 1;
      if (const auto person = roster_.findAt(tokens, i, length)) {
        if (last != person) earlier = last;
        last = person;
      }
      if (!last) continue;
      const std::string& word = tokens[i].low;
      if (word == "him" && earlier) ++lean[*earlier];
      if (word == "he" || word == "his" || word == "himself") ++lean[*last];
      if (word == "she" || (word == "her" && !earlier) || word == "herself") --lean[*last];
    }
  }

  RawScript& script_;
  const Lexicon& lexicon_;
  const std::string& file_;
  Roster roster_;
  Strings guessed_;
};

}  // namespace

Roster whoIsWho(RawScript& script, const Lexicon& lexicon, const std::string& fileName) {
  return CastGatherer(script, lexicon, fileName).run();
}

}  // namespace tw
