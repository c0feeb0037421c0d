#include "script/breakdown.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "script/count_words.h"
#include "script/dressing.h"
#include "script/not_drawn.h"
#include "script/text_case.h"

namespace tw {

namespace {

// How weights grow, relative to an ordinary panel; tuned by eye on invented scripts, no source.
constexpr double kEstablishingFactor = 1.3;
constexpr double kPerExtraFigure = 0.15;    // beyond two
constexpr double kPerTenExtraWords = 0.15;  // beyond 25, the stricter custom for one panel
constexpr double kMostWordsFactor = 1.6;
constexpr double kCloseFactor = 0.85;
constexpr int kUsualWords = 25;
constexpr double kSplashWeight = 4;

class PageBreakdown {
 public:
  PageBreakdown(const RawPage& page, const Roster& roster, const Lexicon& lexicon, Context& context)
      : page_(page), roster_(roster), lexicon_(lexicon), context_(context) {}

  std::vector<Beat> run() {
    if (!page_.slug.empty())
      takeSetting(settingIn(page_.slug, tokensOf(page_.slug), lexicon_, context_.setting));
    for (const RawPanel& panel : page_.panels) beats_.push_back(beatOf(panel));
    chooseDominant();
    return std::move(beats_);
  }

 private:
  Beat beatOf(const RawPanel& panel) {
    Beat beat;
    beat.panel = panel.number;
    beat.id = fmt::format("p{}-{}", page_.head.first, panel.number);
    beat.line = panel.line;
    beat.description = panel.description;
    addCopy(panel, beat);
    const std::vector<Token> tokens = tokensOf(panel.description);
    const std::vector<Mention> mentions = mentionsIn(tokens, roster_, lexicon_, context_);
    std::vector<FoundLook> looks = looksIn(tokens, mentions, lexicon_.looks);
    std::vector<PropMention> things = propsIn(tokens, mentions, lexicon_, beat.props);
    beat.notDrawn = notDrawn(tokens, mentions, things, lexicon_);
    leaveOutWorn(looks, things, beat.props);
    beat.figures = figuresIn(tokens, mentions, things, beat.props, roster_, lexicon_);
    faceEachOther(tokens, beat);
    repeatFigures(tokens, beat);
    addSpeakers(panel, beat);
    takeSetting(settingIn(panel.description, tokens, lexicon_, context_.setting));
    beat.setting = context_.setting;
    fillPoses(beat);
    giveProps(tokens, mentions, things, beat);
    frame(framingIn(tokens, lexicon_), beat);
    remember(mentions, beat);
    context_.looks.push_back(std::move(looks));
    return beat;
  }

  /// What somebody is dressed in is no thing beside them.
  static void leaveOutWorn(const std::vector<FoundLook>& looks, std::vector<PropMention>& things,
                           std::vector<Prop>& props) {
    const auto isWorn = [&](const PropMention& thing) {
      return std::ranges::any_of(looks, [&](const FoundLook& look) {
        return !look.note.told && thing.at >= look.at && thing.at < look.at + look.length;
      });
    };
    std::vector<PropMention> kept;
    for (const PropMention& thing : things)
      if (!isWorn(thing)) kept.push_back(thing);
    if (kept.size() == things.size()) return;
    std::vector<Prop> left;
    for (PropMention& thing : kept) {
      const Prop& prop = props[thing.prop];
      auto known = std::ranges::find(left, prop.id, &Prop::id);
      if (known == left.end()) left.push_back(prop), known = left.end() - 1;
      thing.prop = static_cast<std::size_t>(known - left.begin());
    }
    props = std::move(left);
    things = std::move(kept);
  }

  void takeSetting(std::string setting) {
    if (!setting.empty()) context_.setting = std::move(setting);
  }

  void addCopy(const RawPanel& panel, Beat& beat) {
    for (const RawCopy& raw : panel.copy) {
      CopyItem item;
      item.id = fmt::format("{}-c{}", beat.id, beat.copy.size() + 1);
      item.kind = raw.cue.kind;
      item.offPanel = raw.cue.offPanel;
      item.text = raw.text;
      item.words = counter_.count(raw.text);
      if (!raw.cue.names.empty())
        if (const auto person = roster_.find(raw.cue.names.front()))
          item.speaker = roster_.idOf(*person);
      const bool voice = item.speaker.empty() && isSpoken(item.kind);
      item.offPanel |= voice;
      beat.copy.push_back(std::move(item));
    }
  }

  static bool isSpoken(CopyKind kind) {
    return kind == CopyKind::Speech || kind == CopyKind::Whisper || kind == CopyKind::Shout ||
           kind == CopyKind::Thought;
  }

  /// "Same.", "Same angle, but …" without a name shows whoever was there before.
  void repeatFigures(const std::vector<Token>& tokens, Beat& beat) const {
    if (!beat.figures.empty() || wordAt(tokens, 0) != "same") return;
    beat.figures = context_.figures;
    const auto known = [&](const std::string& id) {
      return std::ranges::any_of(beat.props, [&](const Prop& prop) { return prop.id == id; }) ||
             std::ranges::any_of(beat.figures, [&](const BeatFigure& f) { return f.who == id; });
    };
    for (BeatFigure& figure : beat.figures)
      if (!figure.target.empty() && !known(figure.target)) figure.target = figure.relation = "";
  }

  BeatFigure* figure(Beat& beat, const std::string& who) const {
    const auto found = std::ranges::find(beat.figures, who, &BeatFigure::who);
    return found == beat.figures.end() ? nullptr : &*found;
  }

  /// Who speaks on the panel is in it, after those whom the description names.
  void addSpeakers(const RawPanel& panel, Beat& beat) const {
    for (std::size_t i = 0; i < panel.copy.size(); ++i) {
      const CopyItem& item = beat.copy[i];
      if (!isSpoken(item.kind) || item.offPanel) continue;
      for (const std::string& name : panel.copy[i].cue.names)
        if (const auto person = roster_.find(name);
            person && beat.figures.size() < kMostFigures && !figure(beat, roster_.idOf(*person)))
          beat.figures.push_back({roster_.idOf(*person), "", "", ""});
      BeatFigure* speaker = figure(beat, item.speaker);
      if (speaker == nullptr) continue;
      if (item.kind == CopyKind::Shout && speaker->pose.empty()) speaker->pose = "shout";
      const auto listener = roster_.find(panel.copy[i].cue.spokenTo);
      if (listener && speaker->target.empty() && figure(beat, roster_.idOf(*listener)))
        speaker->relation = "looks at", speaker->target = roster_.idOf(*listener);
    }
  }

  const std::string& firstSpeaker(const Beat& beat) const {
    static const std::string kNobody;
    for (const CopyItem& item : beat.copy)
      if (isSpoken(item.kind) && !item.offPanel && !item.speaker.empty()) return item.speaker;
    return kNobody;
  }

  /// What the words leave open: water floats, speakers shift their weight, two figures look at
  /// each other.
  void fillPoses(Beat& beat) const {
    const bool water = beat.setting.starts_with("underwater");
    const std::string speaker = firstSpeaker(beat);
    for (BeatFigure& figure : beat.figures) {
      const bool speaks = std::ranges::any_of(beat.copy, [&](const CopyItem& item) {
        return item.speaker == figure.who && isSpoken(item.kind) && !item.offPanel;
      });
      if (figure.pose.empty()) figure.pose = water ? "float" : speaks ? "contrapposto" : "stand";
      if (water && figure.pose == "run") figure.pose = "swim";
      if (beat.figures.size() < 2 || !figure.target.empty() || !speaksWithin(beat)) continue;
      if (!figure.relation.empty() && figure.relation != "talks to" &&
          figure.relation != "calls to" && figure.relation != "looks at")
        continue;
      if (figure.relation.empty()) figure.relation = "looks at";
      figure.target = figure.who == speaker ? otherThan(beat, speaker) : speaker;
    }
  }

  /// "at each other"
  static void faceEachOther(const std::vector<Token>& tokens, Beat& beat) {
    for (std::size_t i = 0; i < tokens.size(); ++i) {
      if (wordAt(tokens, i) != "each" || wordAt(tokens, i + 1) != "other") continue;
      for (BeatFigure& figure : beat.figures)
        if (figure.target.empty() && !figure.relation.empty())
          figure.target = otherThan(beat, figure.who);
    }
  }

  bool speaksWithin(const Beat& beat) const { return !firstSpeaker(beat).empty(); }

  static std::string otherThan(const Beat& beat, const std::string& who) {
    for (const BeatFigure& figure : beat.figures)
      if (figure.who != who) return figure.who;
    return {};
  }

  void giveProps(const std::vector<Token>& tokens, const std::vector<Mention>& mentions,
                 const std::vector<PropMention>& things, Beat& beat) const {
    for (const PropMention& thing : things) {
      Prop& prop = beat.props[thing.prop];
      if (prop.heldBy.empty() && isHandheld(prop, lexicon_))
        prop.heldBy = bearer(tokens, mentions, thing, beat);
      if (prop.heldBy.empty()) continue;
      BeatFigure* holder = figure(beat, prop.heldBy);
      if (holder->relation.empty()) holder->relation = "holds", holder->target = prop.id;
      if (holder->pose == "stand" || holder->pose == "contrapposto")
        if (holder->relation == "holds" && holder->target == prop.id) holder->pose = "hold";
    }
  }

  /// The first mention behind that token; mentions stand in order.
  static std::vector<Mention>::const_iterator firstBehind(const std::vector<Mention>& mentions,
                                                          std::size_t at) {
    return std::ranges::upper_bound(mentions, at, {}, &Mention::at);
  }

  /// "stands over her": not the one who acts.
  static bool isObject(const std::vector<Token>& tokens, const Mention& mention) {
    return tokens[mention.at].low == "him" ||
           (tokens[mention.at].low == "her" && !mention.possessive);
  }

  /// "the lantern shakes in Mara's hand": who owns the hand, or nobody.
  std::string handOf(const std::vector<Token>& tokens, const std::vector<Mention>& mentions,
                     const PropMention& thing) const {
    for (auto it = firstBehind(mentions, thing.at); it != mentions.end() && it->at - thing.at <= 5;
         ++it) {
      const Mention& mention = *it;
      const std::size_t hand = mention.at + mention.length;
      if (!mention.possessive || !mention.isFigure) continue;
      if (wordAt(tokens, mention.at - 1) != "in") continue;
      if (wordAt(tokens, hand).starts_with("hand")) return roster_.idOf(mention.person);
    }
    return {};
  }

  /// "Mara with a lantern", "Mara, lantern in hand", "Mara's knife in her hand".
  std::string bearer(const std::vector<Token>& tokens, const std::vector<Mention>& mentions,
                     const PropMention& thing, const Beat& beat) const {
    if (std::string owner = handOf(tokens, mentions, thing); !owner.empty()) return owner;
    const std::size_t end = thing.at + thing.length;
    const bool inHand = wordAt(tokens, end) == "in" && (wordAt(tokens, end + 1).find("hand") == 0 ||
                                                        wordAt(tokens, end + 2).find("hand") == 0);
    const Mention* nearest = nullptr;
    for (auto it = firstBehind(mentions, thing.at); it != mentions.begin() && nearest == nullptr;)
      if (--it; it->isFigure && !isObject(tokens, *it)) nearest = &*it;
    if (nearest == nullptr) return {};
    const std::size_t gapBegin = nearest->at + nearest->length;
    bool with = false;
    for (std::size_t i = gapBegin; i < thing.at; ++i) {
      if (tokens[i].kind == Token::Kind::Stop) return {};
      with |= tokens[i].low == "with" && thing.at - i <= 4;
    }
    if (!inHand && !(with && thing.at - gapBegin <= 6)) return {};
    const std::string& who = roster_.idOf(nearest->person);
    const bool figures =
        std::ranges::any_of(beat.figures, [&](const BeatFigure& f) { return f.who == who; });
    return figures ? who : std::string();
  }

  void frame(const Framing& framing, Beat& beat) {
    beat.shot = framing.shot;
    beat.eye = framing.eye;
    beat.lensMm = framing.lensMm;
    beat.rollDeg = framing.rollDeg;
    const double figures = static_cast<double>(beat.figures.size());
    double weight = framing.weight;
    if (framing.shot && *framing.shot >= ShotSize::VeryLong) weight *= kEstablishingFactor;
    if (framing.shot && *framing.shot <= ShotSize::CloseUp && beat.words() <= kUsualWords)
      weight *= kCloseFactor;
    weight *= 1 + kPerExtraFigure * std::max(0.0, figures - 2);
    const double extra = std::max(0, beat.words() - kUsualWords) / 10.0;
    weight *= std::min(kMostWordsFactor, 1 + kPerTenExtraWords * extra);
    beat.weight = std::round(weight * 100) / 100;
    asked_.push_back(framing.dominant);
  }

  void remember(const std::vector<Mention>& mentions, const Beat& beat) {
    for (const Mention& mention : mentions) {
      std::erase(context_.mentioned, mention.person);
      context_.mentioned.push_back(mention.person);
    }
    if (!beat.figures.empty()) context_.figures = beat.figures;
  }

  /// One panel at most is dominant: the one that asks in the strongest words, else the only
  /// panel of a splash page or spread. Others that ask are only larger.
  void chooseDominant() {
    if (beats_.empty()) return;
    if (page_.head.splash && *std::ranges::max_element(asked_) <= 0) asked_.front() = kSplashWeight;
    if (beats_.size() == 1 && page_.head.spread) asked_.front() = kSplashWeight;
    const auto strongest = std::ranges::max_element(asked_);
    if (*strongest <= 0) return;
    for (std::size_t i = 0; i < beats_.size(); ++i) {
      if (asked_[i] <= 0) continue;
      const bool first = asked_.begin() + static_cast<std::ptrdiff_t>(i) == strongest;
      beats_[i].dominant = first;
      beats_[i].weight =
          first ? std::max(asked_[i], beats_[i].weight) : std::max(1.5, beats_[i].weight);
    }
  }

  const RawPage& page_;
  const Roster& roster_;
  const Lexicon& lexicon_;
  Context& context_;
  WordCounter counter_;
  std::vector<Beat> beats_;
  std::vector<double> asked_;  ///< dominance asked for, per beat
};

}  // namespace

std::vector<Beat> breakDown(const RawPage& page, const Roster& roster, const Lexicon& lexicon,
                            Context& context) {
  return PageBreakdown(page, roster, lexicon, context).run();
}

}  // namespace tw
