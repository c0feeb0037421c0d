// The last word of a noun phrase names the thing. A phrase begins behind an article, a possessive
// or a number and ends before a stop, a preposition, another small word or a verb that cannot be
// an adjective ("the old tram stands"). Whatever one of the lexicon's tables knows is passed over.
// Does badly: nouns without an article ("trams everywhere"), verbs that it does not know.
#include "script/not_drawn.h"

#include <algorithm>

namespace tw {

namespace {

constexpr std::size_t kLongestPhrase = 5;
constexpr std::size_t kMostNamed = 20;  // of one panel

class ThingWatch {
 public:
  ThingWatch(const std::vector<Token>& tokens, const std::vector<Mention>& mentions,
             const std::vector<PropMention>& things, const Lexicon& lexicon)
      : tokens_(tokens), lexicon_(lexicon), known_(tokens.size()) {
    for (const Mention& m : mentions)
      for (std::size_t i = 0; i < m.length; ++i) known_[m.at + i] = !m.possessive;
    for (const PropMention& t : things)
      for (std::size_t i = 0; i < t.length; ++i) known_[t.at + i] = true;
  }

  std::vector<std::string> run() {
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      if (!opensPhrase(i)) continue;
      const std::size_t end = phraseEnd(i + 1);
      if (end > i + 1) consider(i, i + 1, end);
    }
    return std::move(names_);
  }

 private:
  /// Not "its": a part of something. Not "like a": nothing is there.
  bool opensPhrase(std::size_t i) const {
    const Token& token = tokens_[i];
    if (token.low == "its" || wordAt(tokens_, i - 1) == "like") return false;
    return token.isWord() && (token.possessive || lexicon_.grammar.articles.contains(token.low));
  }

  /// A small word, which no name of a thing holds.
  bool isSmall(const std::string& low) const {
    const Grammar& g = lexicon_.grammar;
    return low == "like" || g.prepositions.contains(low) || g.conjunctions.contains(low) ||
           g.clauseWords.contains(low) || g.be.contains(low) || g.modals.contains(low) ||
           g.articles.contains(low) || g.adverbs.contains(low);
  }

  /// A finite verb behind the noun: "stands", "hung from"; but not "great fallen bell".
  bool isVerbHere(std::size_t i, std::size_t begin) const {
    const auto verb = lexicon_.verbForms.find(tokens_[i].low);
    if (verb == lexicon_.verbForms.end() || i == begin || verb->second.form == VerbForm::Base)
      return false;
    const std::string& next = wordAt(tokens_, i + 1);
    return verb->second.form != VerbForm::Past || next.empty() || isSmall(next);
  }

  std::size_t phraseEnd(std::size_t begin) const {
    std::size_t i = begin;
    for (; i < tokens_.size() && i < begin + kLongestPhrase; ++i) {
      const Token& token = tokens_[i];
      if (!token.isWord() || isSmall(token.low) || isVerbHere(i, begin)) return i;
      if (token.possessive) return begin;  // "the boat's": what follows is a phrase of its own
    }
    return i;
  }

  template <class T>
  bool endsPhrase(const PhraseTable<T>& table, std::size_t begin, std::size_t end) const {
    for (std::size_t at = begin; at < end; ++at) {
      std::size_t length = 0;
      const auto word = [&](std::size_t k) { return wordAt(tokens_, at + k); };
      if (table.find(word, length) != nullptr && at + length >= end) return true;
    }
    return false;
  }

  bool isNoThing(const std::string& head) const {
    const auto& words = lexicon_.notThings;
    if (words.contains(head) || lexicon_.bodyParts.contains(head)) return true;
    if (head.size() > 1 && head.back() == 's' && words.contains(head.substr(0, head.size() - 1)))
      return true;
    if (std::ranges::find(lexicon_.numbers, head) != lexicon_.numbers.end()) return true;
    if (head.size() < 3 || !std::ranges::all_of(head, [](char c) { return c < '0' || c > '9'; }))
      return true;
    return head.size() > 6 &&
           std::ranges::any_of(lexicon_.notThingEndings,
                               [&](const std::string& e) { return head.ends_with(e); });
  }

  void consider(std::size_t article, std::size_t begin, std::size_t end) {
    const std::string& head = tokens_[end - 1].low;
    if (std::any_of(known_.begin() + static_cast<std::ptrdiff_t>(begin),
                    known_.begin() + static_cast<std::ptrdiff_t>(end), [](bool k) { return k; }))
      return;
    if (lexicon_.grammar.absentBefore.contains(tokens_[article].low) || isNoThing(head)) return;
    const auto verb = lexicon_.verbForms.find(head);
    if (verb != lexicon_.verbForms.end() && verb->second.form != VerbForm::Base) return;
    if (endsPhrase(lexicon_.places, begin, end) || endsPhrase(lexicon_.people, begin, end) ||
        endsPhrase(lexicon_.shots, begin, end))
      return;
    if (std::ranges::find(names_, head) == names_.end() && names_.size() < kMostNamed)
      names_.push_back(head);
  }

  const std::vector<Token>& tokens_;
  const Lexicon& lexicon_;
  std::vector<bool> known_;
  std::vector<std::string> names_;
};

}  // namespace

std::vector<std::string> notDrawn(const std::vector<Token>& tokens,
                                  const std::vector<Mention>& mentions,
                                  const std::vector<PropMention>& things, const Lexicon& lexicon) {
  return ThingWatch(tokens, mentions, things, lexicon).run();
}

}  // namespace tw
