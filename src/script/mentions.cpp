#include <algorithm>
#include <array>

#include "script/breakdown.h"
#include "script/number_words.h"
#include "script/text_case.h"

namespace tw {

namespace {

class MentionFinder {
 public:
  MentionFinder(const std::vector<Token>& tokens, const Roster& roster, const Lexicon& lexicon,
                const Context& context)
      : tokens_(tokens), roster_(roster), lexicon_(lexicon), context_(context) {}

  std::vector<Mention> find() {
    for (std::size_t i = 0; i < tokens_.size();) {
      std::size_t length = 1;
      if (const auto person = roster_.findAt(tokens_, i, length))
        addNamed(*person, i, length);
      else if (tokens_[i].isWord())
        addPronoun(i);
      i += length;
    }
    return std::move(found_);
  }

 private:
  void addNamed(std::size_t person, std::size_t at, std::size_t length) {
    Mention mention{.person = person, .at = at, .length = length};
    mention.possessive = tokens_[at + length - 1].possessive;
    mention.isFigure =
        !isAbsent(at, at + length) && (!mention.possessive || bodyPartFollows(at + length));
    note(mention);
  }

  void note(const Mention& mention) {
    found_.push_back(mention);
    last_[roster_.people()[mention.person].sex == Sex::Male ? 1 : 0] = mention.person;
    if (!mention.isFigure || shown_.size() >= kMostFigures) return;
    if (std::ranges::find(shown_, mention.person) == shown_.end()) shown_.push_back(mention.person);
  }

  bool bodyPartFollows(std::size_t at) const {
    for (std::size_t i = at; i < at + 3; ++i)
      if (lexicon_.bodyParts.contains(wordAt(tokens_, i))) return true;
    return false;
  }

  /// "no sign of Mara", "Mara's point of view", "Mara, off panel".
  bool isAbsent(std::size_t begin, std::size_t end) const {
    for (std::size_t back = 1; back <= 3 && back <= begin && tokens_[begin - back].isWord(); ++back)
      if (lexicon_.grammar.absentBefore.contains(tokens_[begin - back].low)) return true;
    if (end < tokens_.size() && tokens_[end].kind == Token::Kind::Comma) ++end;
    std::size_t length = 0;
    return lexicon_.grammar.absentAfter.find(
               [&](std::size_t i) { return wordAt(tokens_, end + i); }, length) != nullptr;
  }

  void addPronoun(std::size_t at) {
    const std::string& word = tokens_[at].low;
    const bool his = word == "his", her = word == "her";
    if (word == "them" && wordAt(tokens_, at - 1) == "of") return addCounted(at);
    if (word == "they" || word == "their" || word == "them") return addThey(at, word != "they");
    if (word == "he" || word == "him" || his) return addSingle(at, Sex::Male, his);
    if (word == "she" || her) addSingle(at, Sex::Female, her && nounFollows(at + 1));
  }

  /// "her lantern" against "follows her."
  bool nounFollows(std::size_t at) const {
    const std::string& next = wordAt(tokens_, at);
    return !next.empty() && !lexicon_.grammar.prepositions.contains(next) &&
           !lexicon_.grammar.conjunctions.contains(next);
  }

  void addSingle(std::size_t at, Sex sex, bool possessive) {
    const bool seen = !possessive || lexicon_.bodyParts.contains(wordAt(tokens_, at + 1));
    const auto person = latest(sex);
    if (!person) return;
    note({*person, at, 1, seen, possessive, true});
  }

  /// "They" and "them" are all figures of this panel or, with none here, of the one before.
  void addThey(std::size_t at, bool onlyTold) {
    if (onlyTold) return;
    std::vector<std::size_t> all = shown_;
    if (all.empty())
      for (const BeatFigure& figure : context_.figures)
        for (std::size_t i = 0; i < roster_.people().size(); ++i)
          if (roster_.idOf(i) == figure.who) all.push_back(i);
    for (const std::size_t person : all) note({person, at, 1, true, false, true});
  }

  /// "The three of them": as many as were named last.
  void addCounted(std::size_t at) {
    const std::string& count = wordAt(tokens_, at - 2);
    const auto number = readNumber(count);
    std::size_t wanted = number ? static_cast<std::size_t>(number->value) : count == "both" ? 2 : 0;
    if (count == "all") wanted = roster_.people().size();
    const std::vector<std::size_t>& named = context_.mentioned;
    const std::size_t first = named.size() - std::min(wanted, named.size());
    for (std::size_t i = first; i < named.size(); ++i) note({named[i], at, 1, true, false, true});
  }

  /// The person of that sex named last, in this panel or before it.
  std::optional<std::size_t> latest(Sex sex) const {
    if (const auto here = last_[sex == Sex::Male ? 1 : 0]) return here;
    for (auto it = context_.mentioned.rbegin(); it != context_.mentioned.rend(); ++it)
      if (roster_.people()[*it].sex == sex) return *it;
    return {};
  }

  const std::vector<Token>& tokens_;
  const Roster& roster_;
  const Lexicon& lexicon_;
  const Context& context_;
  std::vector<Mention> found_;
  std::vector<std::size_t> shown_;                  ///< figures, each once
  std::array<std::optional<std::size_t>, 2> last_;  ///< woman, man named last
};

}  // namespace

std::vector<Mention> mentionsIn(const std::vector<Token>& tokens, const Roster& roster,
                                const Lexicon& lexicon, const Context& context) {
  return MentionFinder(tokens, roster, lexicon, context).find();
}

}  // namespace tw
