// Finding looks in descriptions.
//
// The idea: few verbs tell of dressing, and what is dressed in follows them at once. Words defined:
// a statement is *told* when the panel shows how it comes about.
// Steps: 1. at each token try the dressing phrases; the garment is what follows up to a stop, a
// joining word or six words; the wearer is the person named nearest before in the sentence, else
// the only one in the panel. 2. Clauses that name a mark and a place on the body are marks of the
// person named last in or before them. 3. What is put on holds from the next beat, what is worn
// from this one; both end when the time of day changes, a change of costume and marks do not. Cost:
// words times phrases. Does badly: "the man in the coat", what a speaker says of somebody.
#include "script/dressing.h"

#include <fmt/format.h>

#include <algorithm>

#include "job/job.h"
#include "job/story_time.h"

namespace tw {

namespace {

constexpr std::size_t kMostGarmentWords = 6;

struct DressPhrase {
  std::vector<std::string_view> words;
  bool off = false, instead = false, told = false, afterwards = false, passing = false;
};

const std::vector<DressPhrase>& phrases() {
  static const std::vector<DressPhrase> all = {
      {{"puts", "on"}, false, false, true, true, true},
      {{"put", "on"}, false, false, true, true, true},
      {{"slips", "on"}, false, false, true, true, true},
      {{"dons"}, false, false, true, true, true},
      {{"takes", "off"}, true, false, true, true, false},
      {{"sheds"}, true, false, true, true, false},
      {{"changes", "into"}, false, true, true, false, false},
      {{"has", "changed", "into"}, false, true, true, false, false},
      {{"wrapped", "in"}, false, false, false, false, true},
      {{"wearing"}, false, false, false, false, true},
      {{"wears"}, false, false, false, false, true},
      {{"clad", "in"}, false, true, false, false, false},
      {{"dressed", "in"}, false, true, false, false, false},
      {{"now", "in"}, false, true, false, false, false},
      {{"back", "in", "her"}, false, true, false, false, false},
      {{"back", "in", "his"}, false, true, false, false, false}};
  return all;
}

bool isOneOf(const std::string& word, std::initializer_list<std::string_view> words) {
  return std::ranges::find(words, word) != words.end();
}

class LookFinder {
 public:
  LookFinder(const std::vector<Token>& tokens, const std::vector<Mention>& mentions,
             const LookWords& words)
      : tokens_(tokens), mentions_(mentions), words_(words) {}

  std::vector<FoundLook> find() {
    for (std::size_t i = 0; i < tokens_.size(); ++i) readDressing(i);
    readMarks();
    return std::move(found_);
  }

 private:
  const std::string& word(std::size_t at) const { return wordAt(tokens_, at); }

  void readDressing(std::size_t at) {
    for (const DressPhrase& phrase : phrases()) {
      std::size_t n = 0;
      while (n < phrase.words.size() && word(at + n) == phrase.words[n]) ++n;
      if (n < phrase.words.size()) continue;
      const auto person = wearer(at);
      if (!person) return;
      FoundLook look;
      look.person = *person;
      look.at = at + n;
      while (isOneOf(word(look.at), {"a", "an", "the", "her", "his", "their"})) ++look.at;
      look.note.words = garmentFrom(look.at, look.length);
      if (look.note.words.empty()) return;
      if (phrase.off) look.note.words = "no " + look.note.words;
      look.note.instead = phrase.instead;
      look.note.told = phrase.told;
      look.afterwards = phrase.afterwards;
      look.passing = phrase.passing;
      found_.push_back(std::move(look));
      return;
    }
  }

  std::string garmentFrom(std::size_t at, std::size_t& length) const {
    std::string out;
    for (length = 0; length < kMostGarmentWords; ++length) {
      const std::size_t i = at + length;
      if (i >= tokens_.size() || !tokens_[i].isWord()) break;
      if (isOneOf(word(i), {"and", "but", "while", "as", "then", "on", "over", "at", "with", "by",
                            "beside", "behind", "from", "to", "in", "off", "he", "she", "they"}))
        break;
      out += (out.empty() ? "" : " ") + word(i);
    }
    return out;
  }

  /// The person named nearest before in the sentence, else the only one in the panel.
  std::optional<std::size_t> wearer(std::size_t at) const {
    std::size_t start = at;
    while (start > 0 && tokens_[start - 1].kind != Token::Kind::Stop) --start;
    const Mention* nearest = nullptr;
    for (const Mention& mention : mentions_)
      if (mention.at >= start && mention.at < at && mention.isFigure) nearest = &mention;
    if (nearest != nullptr) return nearest->person;
    std::optional<std::size_t> only;
    for (const Mention& mention : mentions_) {
      if (!mention.isFigure) continue;
      if (only && *only != mention.person) return {};
      only = mention.person;
    }
    return only;
  }

  void readMarks() {
    for (std::size_t start = 0; start < tokens_.size();) {
      std::size_t end = start;
      std::string clause;
      for (; end < tokens_.size() && tokens_[end].isWord() && word(end) != "and"; ++end)
        clause += (clause.empty() ? "" : " ") + word(end);
      readMark(clause, end);
      start = end + 1;
    }
  }

  void readMark(const std::string& clause, std::size_t end) {
    for (const LookItem& item : words_.itemsIn(clause)) {
      if (item.kind != LookItem::Kind::Mark || item.place.empty()) continue;
      // "Her cut on the left cheek" is a mark; "She cuts his left arm" an action.
      if (item.paired && item.side.empty()) continue;
      const auto person = wearer(end);
      if (!person) continue;
      FoundLook look;
      look.person = *person;
      look.note.words = fmt::format("{}{} on the {}{}", item.off ? "no " : "", item.mark,
                                    item.side.empty() ? "" : item.side + " ", item.place);
      found_.push_back(std::move(look));
    }
  }

  const std::vector<Token>& tokens_;
  const std::vector<Mention>& mentions_;
  const LookWords& words_;
  std::vector<FoundLook> found_;
};

class LookPlacer {
 public:
  explicit LookPlacer(Script& script) : script_(script), story_(jobOf(script)) {
    for (const ScriptPage& page : script.pages)
      for (const Beat& beat : page.beats) ids_.push_back(beat.id);
  }

  void place(std::size_t beat, FoundLook found) {
    std::size_t from = story_.momentOf(ids_[beat]).value_or(0);
    const std::size_t shown = from;
    if (found.afterwards && ++from == story_.moments().size()) return;
    if (!story_.sameStrand(shown, from)) return;  // put on as the flashback ends
    LookNote note = std::move(found.note);
    note.from = story_.moments()[from].beat->id;
    note.source = "script";
    if (found.passing) note.until = endOfTime(note.from);
    add(script_.cast[found.person], std::move(note));
  }

  void place(const DatedLook& dated) {
    const auto who = std::ranges::find(script_.cast, dated.who, &Character::id);
    if (who == script_.cast.end()) return;
    if (dated.flashback) return placeInFlashbacks(dated, *who);
    LookNote note;
    note.words = dated.words;
    note.source = "cast";
    note.from = firstOf(dated.page, dated.panel);
    if (dated.lastPage > 0) note.until = lastOf(dated.lastPage, dated.lastPanel);
    if (!note.from.empty()) who->looks.push_back(std::move(note));
  }

 private:
  static Job jobOf(const Script& script) {
    Job job;
    job.scenes = script.scenes;
    for (const ScriptPage& page : script.pages) {
      Page made;
      made.number = page.number;
      made.beats = page.beats;
      job.pages.push_back(std::move(made));
    }
    return job;
  }

  /// Said again of what holds already says nothing new.
  static void add(Character& who, LookNote note) {
    for (const LookNote& known : who.looks)
      if (known.words == note.words && known.until == note.until && known.source == note.source)
        return;
    who.looks.push_back(std::move(note));
  }

  /// The last beat before the time of day changes.
  std::string endOfTime(const std::string& from) const {
    const auto at = story_.momentOf(from);
    if (!at) return {};
    std::size_t last = *at;
    while (last + 1 < story_.moments().size() &&
           story_.stepBetween(*at, last + 1) != SceneStep::Apart)
      ++last;
    return last + 1 == story_.moments().size() ? std::string() : story_.moments()[last].beat->id;
  }

  bool isOnPage(const ScriptPage& page, int number) const {
    return page.number <= number && number <= std::max(page.number, page.lastNumber);
  }
  std::string firstOf(int page, int panel) const {
    for (const ScriptPage& each : script_.pages)
      for (const Beat& beat : each.beats)
        if (isOnPage(each, page) && (panel == 0 || beat.panel == panel)) return beat.id;
    return {};
  }
  std::string lastOf(int page, int panel) const {
    std::string last;
    for (const ScriptPage& each : script_.pages)
      for (const Beat& beat : each.beats)
        if (isOnPage(each, page) && (panel == 0 || beat.panel == panel)) last = beat.id;
    return last;
  }

  void placeInFlashbacks(const DatedLook& dated, Character& who) {
    const auto& moments = story_.moments();
    for (std::size_t m = 0; m < moments.size(); ++m) {
      const std::size_t scene = moments[m].scene;
      if (story_.scenes()[scene].strand != kFlashback) continue;
      std::size_t last = m;
      while (last + 1 < moments.size() && moments[last + 1].scene == scene) ++last;
      who.looks.push_back({moments[m].beat->id, moments[last].beat->id, dated.words,
                           /*instead=*/true, false, "cast"});
      m = last;
    }
  }

  Script& script_;
  StoryTime story_;
  std::vector<std::string> ids_;
};

}  // namespace

std::vector<FoundLook> looksIn(const std::vector<Token>& tokens,
                               const std::vector<Mention>& mentions, const LookWords& words) {
  return LookFinder(tokens, mentions, words).find();
}

void placeLooks(const std::vector<std::vector<FoundLook>>& byBeat,
                const std::vector<DatedLook>& dated, Script& script) {
  if (dated.empty() && std::ranges::all_of(byBeat, [](const auto& l) { return l.empty(); })) return;
  LookPlacer placer(script);
  for (const DatedLook& look : dated) placer.place(look);
  for (std::size_t beat = 0; beat < byBeat.size(); ++beat)
    for (const FoundLook& look : byBeat[beat]) placer.place(beat, look);
}

}  // namespace tw
