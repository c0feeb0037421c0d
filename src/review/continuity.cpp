// Checking continuity.
//
// Words: an appearance is a beat that shows a character; between two appearances running, along
// story time, lies a step (see story_time): straight on, at the same time, or apart. Something is
// *told* when a panel shows how it comes about.
//  1 Costume: of two appearances in one scene, or straight on, everything worn must be the same but
//    for what is told. A cut to another scene at the same time asks for a look.
//  2 Marks: one that comes without a cause in words between, or goes although no time has passed;
//    a lasting mark that goes at all; the same mark stated on the other side; a side not stated.
//  3 Things: who holds it changes with no word of handing over; used after it was lost with no word
//    of getting it back; its hand changes within a scene.
//  4 Words of a look that name no garment, mark or hand that the program knows.
// Cost: appearances × statements. Does badly: causes are single words, so a fight that misses
// counts as a cause; two things of one name are taken for one.
#include "review/continuity.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <set>
#include <tuple>

namespace tw {

namespace {

using Texts = std::vector<std::string>;

std::string joined(const Texts& texts) {
  return fmt::format("{}", fmt::join(texts, ", "));
}

Texts missing(const Texts& from, const Texts& in) {
  Texts out;
  for (const std::string& text : from)
    if (std::ranges::find(in, text) == in.end()) out.push_back(text);
  return out;
}

bool shows(const Beat& beat, const std::string& who) {
  return std::ranges::any_of(beat.figures, [&](const BeatFigure& f) { return f.who == who; });
}

std::string inWords(const BodyMark& mark) {
  return fmt::format("{} on the {}{}{}", mark.kind, mark.side, mark.side.empty() ? "" : " ",
                     mark.place);
}

class ContinuityReader {
 public:
  ContinuityReader(const Job& job, const StoryTime& story, const LookWords& words,
                   const Wardrobe& wardrobe)
      : job_(job), story_(story), words_(words), wardrobe_(wardrobe) {}

  std::vector<ContinuityFinding> read() {
    for (const Character& character : job_.cast) readCharacter(character);
    readThings();
    std::ranges::stable_sort(found_, [&](const auto& a, const auto& b) { return key(a) < key(b); });
    return std::move(found_);
  }

 private:
  struct Shown {
    std::size_t moment;
    LookHeld look;
    Texts worn;
  };

  std::tuple<Severity, std::size_t> key(const ContinuityFinding& f) const {
    return {f.severity, story_.momentOf(f.here.beat).value_or(0)};
  }

  const Beat& beat(std::size_t moment) const { return *story_.moments()[moment].beat; }

  void add(std::string rule, Severity severity, const std::string& who, std::string thing,
           std::string sentence, std::string remedy, std::size_t here, std::size_t there) {
    found_.push_back({std::move(rule), severity, who, std::move(thing), std::move(sentence),
                      std::move(remedy), placeOf(story_, here), placeOf(story_, there)});
  }

  /// Any of the words stands in the descriptions from one moment to the other, both included.
  bool isSaid(const LookWords::Words& any, std::size_t from, std::size_t to) const {
    for (std::size_t m = from; m <= to; ++m)
      for (const std::string& word : plainWords(beat(m).description))
        if (any.contains(word)) return true;
    return false;
  }

  void readCharacter(const Character& character) {
    const LooksAlong looks(character, story_, words_);
    std::optional<Shown> before;
    for (std::size_t m = 0; m < story_.moments().size(); ++m) {
      if (!shows(beat(m), character.id)) continue;
      Shown now{m, looks.at(m), {}};
      now.worn =
          before && before->look == now.look ? before->worn : wardrobe_.wornBy(character, now.look);
      if (before) compare(character, *before, now);
      before = std::move(now);
    }
    readStatements(character);
    findDeadStatements(character);
  }

  /// Scenes may be put in another order after a look was stated for a stretch of them.
  void findDeadStatements(const Character& who) {
    for (std::size_t i = 0; i < who.looks.size(); ++i) {
      const LookNote& note = who.looks[i];
      const auto from = story_.momentOf(note.from), until = story_.momentOf(note.until);
      if (!from || !until || *from <= *until) continue;
      add("statement", Severity::Should, who.id, note.words,
          fmt::format("{}'s look \"{}\" never holds: in story time {}, where it ends, comes before "
                      "{}, where it begins.",
                      who.name, note.words, story_.inWords(*until), story_.inWords(*from)),
          fmt::format("Drop it and state it anew: tierwright looks JOB --who {} --drop {}.", who.id,
                      i + 1),
          *from, *until);
    }
  }

  void compare(const Character& who, const Shown& was, const Shown& is) {
    const bool sameScene = story_.moments()[was.moment].scene == story_.moments()[is.moment].scene;
    const SceneStep step = story_.stepBetween(was.moment, is.moment);
    if (sameScene || step != SceneStep::Apart) compareCostume(who, was, is, sameScene, step);
    compareMarks(who, was, is, sameScene, step);
  }

  /// A statement that begins or ends between the two and is told, or that the artist made to end.
  bool isTold(const Character& who, const Shown& was, const Shown& is,
              const std::string& garment) const {
    return std::ranges::any_of(who.looks, [&](const LookNote& note) {
      if (!note.told) return false;
      const auto from = story_.momentOf(note.from);
      const bool here = from && *from > was.moment && *from <= is.moment;
      const Texts names = wardrobe_.garmentsIn(withoutDenial(note.words));
      return here && (note.instead || std::ranges::find(names, garment) != names.end());
    });
  }

  static std::string withoutDenial(const std::string& words) {
    return words.starts_with("no ") ? words.substr(3) : words;
  }

  void compareCostume(const Character& who, const Shown& was, const Shown& is, bool sameScene,
                      SceneStep step) {
    const auto untold = [&](Texts garments) {
      std::erase_if(garments, [&](const std::string& g) { return isTold(who, was, is, g); });
      return garments;
    };
    const Texts on = untold(missing(is.worn, was.worn)), off = untold(missing(was.worn, is.worn));
    if (on.empty() && off.empty()) return;
    const Severity severity =
        sameScene || step == SceneStep::StraightOn ? Severity::Must : Severity::Look;
    std::string change;
    if (!on.empty()) change += fmt::format(" has {} on", joined(on));
    if (!off.empty())
      change += fmt::format("{} is without {}", on.empty() ? "" : " and", joined(off));
    add("costume", severity, who.id, joined(on.empty() ? off : on),
        fmt::format("{}{} on {}, not as on {}; no panel between shows the change.", who.name,
                    change, story_.inWords(is.moment), story_.inWords(was.moment)),
        fmt::format("Show the change in a panel, or let the look begin with the scene: tierwright "
                    "looks JOB --who {} --from {} --words \"…\".",
                    who.id, story_.sceneOf(is.moment).id),
        is.moment, was.moment);
  }

  static const BodyMark* same(const std::vector<BodyMark>& marks, const BodyMark& wanted) {
    for (const BodyMark& mark : marks)
      if (mark.kind == wanted.kind && mark.place == wanted.place &&
          (mark.side == wanted.side || mark.side.empty() || wanted.side.empty()))
        return &mark;
    return nullptr;
  }

  static const BodyMark* onOtherSide(const std::vector<BodyMark>& marks, const BodyMark& wanted) {
    for (const BodyMark& mark : marks)
      if (mark.kind == wanted.kind && mark.place == wanted.place && mark.side != wanted.side &&
          mark.side != "both" && wanted.side != "both" && !mark.side.empty() &&
          !wanted.side.empty())
        return &mark;
    return nullptr;
  }

  void compareMarks(const Character& who, const Shown& was, const Shown& is, bool sameScene,
                    SceneStep step) {
    for (const BodyMark& mark : is.look.marks) {
      if (same(was.look.marks, mark)) continue;
      const BodyMark* other = onOtherSide(was.look.marks, mark);
      const bool second = other != nullptr && onOtherSide(is.look.marks, mark);
      if (other != nullptr && !(second && isCaused(mark, was, is))) {
        onWrongSide(who, *other, mark, was.moment, is.moment);
      } else if (other == nullptr) {
        appears(who, mark, was, is, sameScene, step);
      }
    }
    for (const BodyMark& mark : was.look.marks)
      if (!same(is.look.marks, mark) && !onOtherSide(is.look.marks, mark))
        vanishes(who, mark, was, is, sameScene, step);
  }

  /// A second one on the other side, as a fight leaves it; nobody gets a scar between two panels.
  bool isCaused(const BodyMark& mark, const Shown& was, const Shown& is) const {
    return !mark.lasting && isSaid(words_.causes, was.moment, is.moment);
  }

  void onWrongSide(const Character& who, const BodyMark& was, const BodyMark& is,
                   std::size_t before, std::size_t now) {
    add("side", Severity::Must, who.id, inWords(is),
        fmt::format("{} has the {} on {}, but the {} on {}.", who.name, inWords(is),
                    story_.inWords(now), inWords(was), story_.inWords(before)),
        "Left and right are the character's own; correct one of the two statements.", now, before);
  }

  void appears(const Character& who, const BodyMark& mark, const Shown& was, const Shown& is,
               bool sameScene, SceneStep step) {
    if (mark.lasting || (step == SceneStep::Apart && !sameScene)) return;
    if (mark.note != nullptr && mark.note->told) return;
    if (isSaid(words_.causes, was.moment, is.moment)) return;
    add("mark", sameScene ? Severity::Should : Severity::Look, who.id, inWords(mark),
        fmt::format("{} has a {} on {} that was not there on {}; nothing between brings it about.",
                    who.name, inWords(mark), story_.inWords(is.moment), story_.inWords(was.moment)),
        "Show or tell what causes it, or let it begin earlier.", is.moment, was.moment);
  }

  void vanishes(const Character& who, const BodyMark& mark, const Shown& was, const Shown& is,
                bool sameScene, SceneStep step) {
    const bool apart = step == SceneStep::Apart && !sameScene;
    const bool strandsDiffer = !story_.sameStrand(was.moment, is.moment);
    if (apart && (!mark.lasting || strandsDiffer)) return;
    if (isToldOff(who, mark, was.moment, is.moment)) return;
    const Severity severity = mark.lasting ? Severity::Must : Severity::Should;
    add("mark", severity, who.id, inWords(mark),
        fmt::format("{}'s {} of {} is gone on {}; nothing between takes it away.", who.name,
                    inWords(mark), story_.inWords(was.moment), story_.inWords(is.moment)),
        "Let it hold longer, or show what covers or heals it.", is.moment, was.moment);
  }

  bool isToldOff(const Character& who, const BodyMark& mark, std::size_t was,
                 std::size_t is) const {
    return std::ranges::any_of(who.looks, [&](const LookNote& note) {
      const auto from = story_.momentOf(note.from);
      if (!from || *from <= was || *from > is) return false;
      return std::ranges::any_of(words_.itemsIn(note.words), [&](const LookItem& item) {
        return item.kind == LookItem::Kind::Mark && item.off && item.mark == mark.kind;
      });
    });
  }

  /// Sides that are not said, words that say nothing.
  void readStatements(const Character& who) {
    std::set<std::string> said;
    const auto first = firstOf(who.id);
    if (!first) return;
    const auto read = [&](const std::string& text, std::size_t at, bool note) {
      for (const LookItem& item : words_.itemsIn(text)) {
        if (!said.insert(item.words).second) continue;
        if (item.kind == LookItem::Kind::Mark && item.paired && item.side.empty() && !item.off)
          add("side", Severity::Should, who.id, item.words,
              fmt::format("{}'s {} on {} has no side; it is drawn on the left.", who.name,
                          item.words, story_.inWords(at)),
              "Say \"left\" or \"right\", as the character has it.", at, at);
        const bool known = item.kind != LookItem::Kind::Costume ||
                           !wardrobe_.garmentsIn(withoutDenial(item.words)).empty();
        if (note && !known)
          add("words", Severity::Look, who.id, item.words,
              fmt::format(
                  "\"{}\" names no garment, mark or hand that is known; {} is drawn without "
                  "it from {} on.",
                  item.words, who.name, story_.inWords(at)),
              "Use words of presets/wardrobe, or add yours there.", at, at);
      }
    };
    read(who.note, *first, false);
    for (const LookNote& note : who.looks)
      read(note.words, story_.momentOf(note.from).value_or(*first), note.source != "script");
  }

  std::optional<std::size_t> firstOf(const std::string& who) const {
    for (std::size_t m = 0; m < story_.moments().size(); ++m)
      if (shows(beat(m), who)) return m;
    return {};
  }

  struct LastSeen {
    std::string holder, hand;
    std::size_t held = 0;
    std::optional<std::size_t> lost;
  };

  void readThings() {
    std::map<std::string, LastSeen> things;
    for (std::size_t m = 0; m < story_.moments().size(); ++m) {
      for (const Prop& prop : beat(m).props) readThing(prop, m, things[prop.id]);
      const Texts text = plainWords(beat(m).description);
      for (auto& [id, seen] : things)
        if (isLost(text, id)) seen.lost = m;
    }
  }

  /// "the rope sinks", "drops the rope": the thing just before, or soon behind, a word of loss.
  bool isLost(const Texts& text, const std::string& id) const {
    const std::string name = id.substr(id.rfind('-') + 1);
    for (std::size_t i = 0; i < text.size(); ++i) {
      if (text[i] != name) continue;
      if (i + 1 < text.size() && words_.isLost.contains(text[i + 1])) return true;
      for (std::size_t back = 1; back <= 3 && back <= i && text[i - back] != ","; ++back)
        if (words_.lostBy.contains(text[i - back])) return true;
    }
    return false;
  }

  bool isInUse(const Prop& prop, const Beat& at) const {
    return !prop.heldBy.empty() || std::ranges::any_of(at.figures, [&](const BeatFigure& f) {
      return f.target == prop.id && f.relation != "looks at" && f.relation != "points at";
    });
  }

  void readThing(const Prop& prop, std::size_t m, LastSeen& seen) {
    const Beat& at = beat(m);
    if (seen.lost && *seen.lost < m && isInUse(prop, at)) {
      const bool regained = isSaid(words_.found, *seen.lost + 1, m);
      if (!regained && story_.sameStrand(*seen.lost, m)) usedAfterLoss(prop, m, *seen.lost);
      seen.lost.reset();
    }
    if (prop.heldBy.empty()) return;
    if (!seen.holder.empty() && seen.holder != prop.heldBy) changesHolder(prop, m, seen);
    if (seen.holder == prop.heldBy) changesHand(prop, m, seen);
    seen.holder = prop.heldBy;
    seen.hand = prop.hand;
    seen.held = m;
  }

  void usedAfterLoss(const Prop& prop, std::size_t m, std::size_t lost) {
    const bool sameScene = story_.moments()[lost].scene == story_.moments()[m].scene;
    add("lost thing", sameScene ? Severity::Must : Severity::Should, prop.heldBy, prop.id,
        fmt::format("The {} is in use on {}, but was lost on {}; nobody gets it back.", prop.name,
                    story_.inWords(m), story_.inWords(lost)),
        fmt::format("Show how it comes back, call it another {0}, or take it out: tierwright beats "
                    "JOB --set {1}.prop.drop={2}.",
                    prop.name, beat(m).id, prop.id),
        m, lost);
  }

  void changesHolder(const Prop& prop, std::size_t m, const LastSeen& seen) {
    const SceneStep step = story_.stepBetween(seen.held, m);
    if (step == SceneStep::Apart || isSaid(words_.handOver, seen.held, m)) return;
    const bool sameScene = story_.moments()[seen.held].scene == story_.moments()[m].scene;
    add("holder", sameScene ? Severity::Should : Severity::Look, prop.heldBy, prop.id,
        fmt::format("{} holds the {} on {}, {} held it on {}; nobody hands it over.",
                    nameOf(prop.heldBy), prop.name, story_.inWords(m), nameOf(seen.holder),
                    story_.inWords(seen.held)),
        fmt::format("Show the hand-over, or say that there are two of the {}.", prop.name), m,
        seen.held);
  }

  void changesHand(const Prop& prop, std::size_t m, const LastSeen& seen) {
    const bool differ = !prop.hand.empty() && !seen.hand.empty() && prop.hand != seen.hand &&
                        prop.hand != "both" && seen.hand != "both";
    if (!differ || story_.moments()[seen.held].scene != story_.moments()[m].scene) return;
    if (isSaid(words_.handOver, seen.held, m)) return;
    add("hand", Severity::Should, prop.heldBy, prop.id,
        fmt::format("{} holds the {} in the {} hand on {}, in the {} hand on {}.",
                    nameOf(prop.heldBy), prop.name, prop.hand, story_.inWords(m), seen.hand,
                    story_.inWords(seen.held)),
        fmt::format("Set one of them: tierwright beats JOB --set {}.prop.{}.hand={}.", beat(m).id,
                    prop.id, seen.hand),
        m, seen.held);
  }

  std::string nameOf(const std::string& who) const {
    const Character* character = job_.character(who);
    return character == nullptr ? who : character->name;
  }

  const Job& job_;
  const StoryTime& story_;
  const LookWords& words_;
  const Wardrobe& wardrobe_;
  std::vector<ContinuityFinding> found_;
};

}  // namespace

ContinuityPlace placeOf(const StoryTime& story, std::size_t moment) {
  const Moment& at = story.moments()[moment];
  const StoryScene& scene = story.sceneOf(moment);
  return {at.beat->id, at.page, at.beat->panel, scene.id, titleOf(scene)};
}

std::vector<ContinuityFinding> continuityOf(const Job& job, const StoryTime& story,
                                            const LookWords& words, const Wardrobe& wardrobe) {
  return ContinuityReader(job, story, words, wardrobe).read();
}

}  // namespace tw
