// Who does what to whom, from plain descriptions.
//
// The idea: descriptions are short sentences in the present tense, so shallow reading goes far. A
// word of the verb list counts as a verb only where a verb can stand; its subject is the person
// named nearest before it in the sentence; its target is the first person or thing behind it in
// the clause.
// Steps per verb: 1. is it one here ("the run", "light falls" are not); 2. subjects, with those
// joined by "and"; a participle in front ("Kneeling, Mara …") takes the next person; a sentence
// without a person takes the last one; 3. the longest particle ("up at", "over her shoulder");
// 4. target; 5. per figure the strongest verb gives the pose, the strongest with a target the
// relation.
// Cost: linear in the words; looks ahead at most twelve.
// What it does badly: passives beyond "is thrown", relative clauses, two men called "he".
// Source: none, common sense; the word lists are in presets/lexicon.
#include <algorithm>
#include <map>
#include <set>

#include "script/breakdown.h"

namespace tw {

namespace {

constexpr std::size_t kTargetReach = 12;   // words behind a verb in which its object is sought
constexpr std::size_t kSubjectReach = 60;  // words before a verb; longer sentences are no prose
constexpr std::size_t kNounReach = 6;      // words between a subject and its verb

struct Doing {
  std::string pose, relation, target;
  int poseStrength = 0, relationStrength = 0;
};

class ActionReader {
 public:
  ActionReader(const std::vector<Token>& tokens, const std::vector<Mention>& mentions,
               const std::vector<PropMention>& things, std::vector<Prop>& props,
               const Roster& roster, const Lexicon& lexicon)
      : tokens_(tokens),
        props_(props),
        roster_(roster),
        lexicon_(lexicon),
        persons_(tokens.size()),
        thingAt_(tokens.size(), kNone) {
    for (const Mention& mention : mentions) persons_[mention.at].push_back(mention);
    for (const PropMention& thing : things) thingAt_[thing.at] = thing.prop;
    for (const Mention& mention : mentions)
      if (mention.isFigure && order_.size() < kMostFigures && !doings_.contains(mention.person)) {
        doings_.emplace(mention.person, Doing{});
        order_.push_back(mention.person);
      }
  }

  std::vector<BeatFigure> read() {
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      if (!tokens_[i].isWord()) continue;
      if (const std::size_t length = readPhrase(i))
        i += length - 1;
      else
        readVerb(i);
    }
    std::vector<BeatFigure> figures;
    for (const std::size_t person : order_) {
      const Doing& doing = doings_.at(person);
      figures.push_back({roster_.idOf(person), doing.pose, doing.relation, doing.target});
    }
    return figures;
  }

 private:
  static constexpr std::size_t kNone = static_cast<std::size_t>(-1);
  using Persons = std::vector<std::size_t>;

  const std::string& word(std::size_t at) const { return wordAt(tokens_, at); }
  bool isIn(const Grammar::Words& words, std::size_t at) const { return words.contains(word(at)); }

  /// Words of a phrase such as "hands on hips" that starts here; 0 when there is none.
  std::size_t readPhrase(std::size_t at) {
    std::size_t length = 0;
    const Action* pose = lexicon_.poses.find([&](std::size_t k) { return word(at + k); }, length);
    if (pose == nullptr) return 0;
    Persons subjects = personsBefore(at);
    if (subjects.empty() && order_.size() == 1) subjects = order_;
    apply(*pose, subjects, {});
    return length;
  }

  void readVerb(std::size_t at) {
    const auto found = lexicon_.verbForms.find(tokens_[at].low);
    if (found == lexicon_.verbForms.end() || thingAt_[at] != kNone || !persons_[at].empty()) return;
    // "Mara, eyes shut" does not eye anyone; "Mara hands Tobin the rope" gives it.
    const std::size_t previous = before(at);
    if (isIn(lexicon_.bodyParts, at) && (previous == kNone || !personEndsAt(previous))) return;
    const Verb& verb = lexicon_.verbs[static_cast<std::size_t>(found->second.verb)];
    const VerbForm form = found->second.form;
    if (form == VerbForm::Past && isPassive(at)) return readPassive(verb, at);
    if (!isVerbHere(verb, form, at)) return;
    const Persons subjects = subjectsOf(form, at);
    if (subjects.empty()) return;
    std::size_t behind = at + 1;
    Action action = withParticle(verb, behind);
    const std::string target = targetFrom(behind, subjects);
    if (!target.empty() && behind == at + 1 && verb.withTarget) action = *verb.withTarget;
    apply(action, subjects, target);
  }

  bool isPassive(std::size_t at) const {
    return isIn(lexicon_.grammar.be, before(at)) || word(at + 1) == "by";
  }

  void readPassive(const Verb& verb, std::size_t at) {
    const Persons subjects = personsBefore(at);
    if (verb.stative) return apply(verb.plain, subjects, targetFrom(at + 1, subjects));
    if (verb.passivePose.empty()) return;
    apply({verb.passivePose, "", verb.plain.strength}, subjects, {});
    if (word(at + 1) != "by") return;
    const auto [agent, next] = personAhead(at + 2);
    if (agent != kNone && !subjects.empty())
      apply(verb.plain, {agent}, roster_.idOf(subjects.front()));
  }

  /// The place before, adverbs skipped; kNone at the start.
  std::size_t before(std::size_t at) const {
    while (at > 0 && (isIn(lexicon_.grammar.adverbs, at - 1) || word(at - 1).ends_with("ly"))) --at;
    return at == 0 ? kNone : at - 1;
  }

  /// The person who ends at that token, seen through "Mara's hand".
  bool personEndsAt(std::size_t at) const {
    for (std::size_t back = 0; back < 4 && back <= at; ++back)
      for (const Mention& mention : persons_[at - back]) {
        if (mention.at + mention.length == at + 1 && !mention.possessive) return true;
        if (mention.possessive && mention.isFigure && back > 0 && isIn(lexicon_.bodyParts, at))
          return true;
      }
    return false;
  }

  bool isVerbHere(const Verb& verb, VerbForm form, std::size_t at) const {
    const std::size_t previous = before(at);
    if (previous == kNone) return form != VerbForm::Past || verb.stative;
    const Token& token = tokens_[previous];
    if (!token.isWord()) return form != VerbForm::Past || verb.stative;
    if (token.possessive && !isIn(lexicon_.bodyParts, previous)) return false;
    if (lexicon_.grammar.articles.contains(token.low)) return false;
    const bool joins = lexicon_.grammar.conjunctions.contains(token.low);
    if (form == VerbForm::Base) return mayBeBase(previous);
    if (form == VerbForm::Past && !verb.stative) return false;
    if (joins || personEndsAt(previous)) return true;
    if (form == VerbForm::Third) return attachedSubject(previous);
    return lexicon_.grammar.be.contains(token.low) || attachedSubject(previous);
  }

  bool mayBeBase(std::size_t previous) const {
    if (isIn(lexicon_.grammar.modals, previous) || word(previous) == "they") return true;
    if (personEndsAt(previous)) return coordinated(previous);
    return word(previous) == "and" && previous > 0 &&
           lexicon_.verbForms.contains(word(previous - 1));
  }

  /// "Mara and Tobin haul": the verb of two has no ending.
  bool coordinated(std::size_t last) const {
    for (std::size_t back = 1; back < 4 && back <= last; ++back)
      if (word(last - back) == "and" || word(last - back) == "&") return true;
    return false;
  }

  /// "Mara in her diving suit kneels" against "the light on Mara falls": a person directly in
  /// front of a preposition is the subject.
  bool attachedSubject(std::size_t at) const {
    for (std::size_t back = 0; back < kNounReach && back <= at; ++back) {
      const std::size_t i = at - back;
      if (!tokens_[i].isWord()) return false;
      if (isIn(lexicon_.grammar.prepositions, i)) return i > 0 && personEndsAt(i - 1);
    }
    return false;
  }

  Persons subjectsOf(VerbForm form, std::size_t at) const {
    Persons subjects = personsBefore(at);
    if (!subjects.empty()) return subjects;
    const bool opens = tokens_[at].startsSentence;
    if ((form == VerbForm::Ing || form == VerbForm::Past) && opens) {
      const auto [person, next] = personAhead(at + 1);
      if (person != kNone) return {person};
    }
    if (opens || form == VerbForm::Third) return lastPersons(at);
    return {};
  }

  /// Persons named nearest before `at` in its sentence, with those joined to them.
  Persons personsBefore(std::size_t at) const {
    for (std::size_t i = at; i-- > 0 && at - i < kSubjectReach;) {
      if (tokens_[i].kind == Token::Kind::Stop && tokens_[i].text != ":") break;
      if (seenAt(i).empty()) continue;
      Persons found = seenAt(i);
      addJoined(i, found);
      return found;
    }
    return {};
  }

  Persons seenAt(std::size_t at) const {
    Persons seen;
    for (const Mention& mention : persons_[at])
      if (mention.isFigure) seen.push_back(mention.person);
    return seen;
  }

  /// "Mara, Tobin and Ines": walks back over "and" and commas.
  void addJoined(std::size_t at, Persons& persons) const {
    while (at >= 2) {
      const bool joins = word(at - 1) == "and" || tokens_[at - 1].low == "," || word(at - 1) == "&";
      std::size_t i = at - 1;
      if (!joins && isIn(lexicon_.grammar.articles, i) && word(i - 1) == "and")
        --i;
      else if (!joins)
        return;
      bool found = false;
      for (std::size_t back = 1; back <= 3 && back <= i && !found; ++back)
        for (const Mention& mention : persons_[i - back])
          if (mention.at + mention.length == i && mention.isFigure && !mention.possessive) {
            if (tokens_[i].low == "," && persons.size() == 1) return;
            persons.insert(persons.begin(), mention.person);
            at = mention.at;
            found = true;
          }
      if (!found) return;
    }
  }

  Persons lastPersons(std::size_t at) const {
    for (std::size_t i = at; i-- > 0 && at - i < kSubjectReach;)
      if (!seenAt(i).empty()) return seenAt(i);
    return {};
  }

  std::pair<std::size_t, std::size_t> personAhead(std::size_t at) const {
    for (std::size_t i = at; i < std::min(tokens_.size(), at + kTargetReach); ++i) {
      if (tokens_[i].kind == Token::Kind::Stop) break;
      if (!seenAt(i).empty()) return {seenAt(i).front(), i};
    }
    return {kNone, 0};
  }

  Action withParticle(const Verb& verb, std::size_t& behind) const {
    for (const auto& [words, action] : verb.particles) {
      std::size_t i = 0;
      while (i < words.size() && word(behind + i) == words[i]) ++i;
      if (i < words.size()) continue;
      behind += words.size();
      return action;
    }
    return verb.plain;
  }

  /// The first person other than the subjects, or thing, before the clause ends.
  std::string targetFrom(std::size_t at, const Persons& subjects) const {
    for (std::size_t i = at; i < std::min(tokens_.size(), at + kTargetReach); ++i) {
      if (!tokens_[i].isWord() || isIn(lexicon_.grammar.clauseWords, i)) return {};
      if (word(i) == "with") return {};  // "swims down with the lantern" does not swim to it
      if (i > at && word(i - 1) == "and" && lexicon_.verbForms.contains(word(i))) return {};
      if (thingAt_[i] != kNone) return props_[thingAt_[i]].id;
      for (const Mention& mention : persons_[i]) {
        if (std::ranges::find(subjects, mention.person) != subjects.end()) continue;
        if (mention.possessive && thingWithin(i)) break;  // "Mara's lantern": the lantern
        return roster_.idOf(mention.person);
      }
    }
    return {};
  }

  bool thingWithin(std::size_t at) const {
    for (std::size_t i = at + 1; i < std::min(tokens_.size(), at + 4); ++i)
      if (thingAt_[i] != kNone) return true;
    return false;
  }

  void apply(const Action& action, const Persons& subjects, const std::string& target) {
    for (const std::size_t person : subjects) {
      const auto found = doings_.find(person);
      if (found == doings_.end()) continue;
      Doing& doing = found->second;
      if (!action.pose.empty() && action.strength > doing.poseStrength) {
        doing.pose = action.pose;
        doing.poseStrength = action.strength;
      }
      hold(action, person, target);
      // A relation to something beats a stronger one that leads nowhere.
      const int strength = action.strength + (target.empty() ? 0 : 20);
      if (action.relation.empty() || strength <= doing.relationStrength) continue;
      doing.relation = action.relation;
      doing.target = target;
      doing.relationStrength = strength;
    }
  }

  static bool isHolding(std::string_view relation) {
    static const std::set<std::string_view> kHeld = {
        "holds", "holds up", "carries", "throws", "pulls", "gives", "works on", "writes", "reads"};
    return kHeld.contains(relation);
  }

  void hold(const Action& action, std::size_t person, const std::string& target) {
    if (target.empty() || !isHolding(action.relation)) return;
    for (Prop& prop : props_)
      if (prop.id == target && prop.heldBy.empty() && isHandheld(prop, lexicon_))
        prop.heldBy = roster_.idOf(person);
  }

  const std::vector<Token>& tokens_;
  std::vector<Prop>& props_;
  const Roster& roster_;
  const Lexicon& lexicon_;
  std::vector<std::vector<Mention>> persons_;
  std::vector<std::size_t> thingAt_;
  std::map<std::size_t, Doing> doings_;
  Persons order_;
};

}  // namespace

std::vector<BeatFigure> figuresIn(const std::vector<Token>& tokens,
                                  const std::vector<Mention>& mentions,
                                  const std::vector<PropMention>& things, std::vector<Prop>& props,
                                  const Roster& roster, const Lexicon& lexicon) {
  return ActionReader(tokens, mentions, things, props, roster, lexicon).read();
}

}  // namespace tw
