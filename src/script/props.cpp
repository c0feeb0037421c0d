#include <algorithm>
#include <set>

#include "script/breakdown.h"
#include "script/text_case.h"

namespace tw {

namespace {

constexpr std::size_t kMostProps = 6;  // a rough shows no more; the description keeps them all

class PropFinder {
 public:
  PropFinder(const std::vector<Token>& tokens, const std::vector<Mention>& mentions,
             const Lexicon& lexicon, std::vector<Prop>& props)
      : tokens_(tokens), lexicon_(lexicon), props_(props), ofPerson_(tokens.size()) {
    for (const Mention& mention : mentions)
      for (std::size_t i = 0; i < mention.length; ++i) ofPerson_[mention.at + i] = true;
  }

  std::vector<PropMention> find() {
    for (std::size_t i = 0; i < tokens_.size();) {
      std::size_t length = 1;
      if (tokens_[i].isWord() && !isOfPerson(i))
        if (const Thing* thing =
                lexicon_.things.find([&](std::size_t k) { return wordAt(tokens_, i + k); }, length))
          if (isNoun(i, *thing)) add(*thing, i, length);
      i += length;
    }
    return std::move(found_);
  }

 private:
  /// Part of a person's name: BELL as a surname.
  bool isOfPerson(std::size_t at) const { return ofPerson_[at]; }

  /// "rope" counts anywhere; "book", "watch", "hook" only where no verb can stand; a thing in
  /// front of another word of a place ("bell tower", "rope bridge") describes it.
  bool isNoun(std::size_t at, const Thing& thing) const {
    std::size_t length = 0;
    const auto here = [&](std::size_t k) { return wordAt(tokens_, at + k); };
    if (const ShotWord* shot = lexicon_.shots.find(here, length))
      if (!shot->startOnly && !shot->capsOnly) return false;  // bird's-eye view
    for (std::size_t back = 0; back < 2 && back <= at; ++back) {
      const PlaceWord* place = lexicon_.places.find(
          [&](std::size_t k) { return wordAt(tokens_, at - back + k); }, length);
      if (place != nullptr && length > back + 1) return false;
    }
    if (thing.material && isMaterial(at)) return false;
    const bool verb = lexicon_.verbForms.contains(tokens_[at].low);
    if (!verb && !thing.nounOnly) return true;
    for (std::size_t back = 1; back <= 3 && back <= at; ++back) {
      const Token& token = tokens_[at - back];
      if (!token.isWord()) return false;
      if (token.possessive || lexicon_.grammar.articles.contains(token.low)) return true;
    }
    return false;
  }

  /// "tiny against the stone", "a wall of stone"
  bool isMaterial(std::size_t at) const {
    const bool article = at > 0 && lexicon_.grammar.articles.contains(tokens_[at - 1].low);
    const std::string& before = wordAt(tokens_, at - (article ? 2 : 1));
    return before == "of" || before == "in" || before == "against" || before == "through" ||
           before == "into";
  }

  void add(const Thing& thing, std::size_t at, std::size_t length) {
    const std::string id = idFrom(thing.name);
    auto known = std::ranges::find(props_, id, &Prop::id);
    if (known == props_.end()) {
      if (props_.size() == kMostProps) return;
      props_.push_back({id, spelt(at, length), thing.shape, thing.sizeM});
      known = props_.end() - 1;
    }
    found_.push_back({static_cast<std::size_t>(known - props_.begin()), at, length});
  }

  std::string spelt(std::size_t at, std::size_t length) const {
    std::string name = tokens_[at].low;
    for (std::size_t i = 1; i < length; ++i) name += " " + tokens_[at + i].low;
    return name;
  }

  const std::vector<Token>& tokens_;
  const Lexicon& lexicon_;
  std::vector<Prop>& props_;
  std::vector<bool> ofPerson_;
  std::vector<PropMention> found_;
};

}  // namespace

namespace {

/// The thing that the words begin with, or null; `length` says how many of them name it.
const Thing* thingAtStart(const std::vector<std::string>& words, const Lexicon& lexicon,
                          std::size_t& length) {
  return lexicon.things.find(
      [&](std::size_t i) { return i < words.size() ? words[i] : std::string(); }, length);
}

}  // namespace

bool isHandheld(const Prop& prop, const Lexicon& lexicon) {
  std::size_t length = 0;
  const Thing* thing = thingAtStart(phraseOf(prop.name), lexicon, length);
  return thing != nullptr && thing->handheld;
}

std::optional<Prop> thingNamed(std::string_view name, const Lexicon& lexicon) {
  std::string spaced(name);
  std::replace(spaced.begin(), spaced.end(), '-', ' ');
  const std::vector<std::string> words = phraseOf(spaced);
  std::size_t length = 0;
  const Thing* thing = thingAtStart(words, lexicon, length);
  if (thing == nullptr || length != words.size()) return std::nullopt;
  return Prop{idFrom(thing->name), spaced, thing->shape, thing->sizeM};
}

std::vector<std::string> relationsOf(const Lexicon& lexicon) {
  std::set<std::string> relations{"holds", "looks at"};  // what the breakdown adds by itself
  const auto take = [&](const Action& action) {
    if (!action.relation.empty()) relations.insert(action.relation);
  };
  for (const Verb& verb : lexicon.verbs) {
    take(verb.plain);
    for (const auto& [words, action] : verb.particles) take(action);
    if (verb.withTarget) take(*verb.withTarget);
  }
  return {relations.begin(), relations.end()};
}

std::vector<PropMention> propsIn(const std::vector<Token>& tokens,
                                 const std::vector<Mention>& mentions, const Lexicon& lexicon,
                                 std::vector<Prop>& props) {
  return PropFinder(tokens, mentions, lexicon, props).find();
}

}  // namespace tw
