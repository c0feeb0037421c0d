// Reading scene headings.
//
// Words: a slug is the heading of a place (INT./EXT. PLACE - TIME); a shift moves story time.
// Steps: 1. a line that starts as a slug is cut at dashes, brackets and full stops; a part that is
// a time of day is the time, one that is a shift is the shift, all others are the place. 2. Any
// other line counts only when it is short and every word of it belongs to a shift, or when
// FLASHBACK stands in front of a slug or of a few more words in capitals. 3. Amounts become years.
// Cost: linear in the line. Does badly: absolute years ("1962") are kept as words of the place.
// Common practice of script writers, no source.
#include "script/scene_headings.h"

#include <algorithm>
#include <array>
#include <vector>

#include "script/number_words.h"
#include "script/script_lines.h"
#include "script/text_case.h"

namespace tw {

namespace {

using Words = std::vector<std::string>;

constexpr std::size_t kMostWords = 8;       // of a line that is a shift alone
constexpr std::size_t kMostPlaceWords = 6;  // that may follow FLASHBACK

constexpr std::array<std::string_view, 19> kTimes = {
    "dawn",       "daybreak", "sunrise",   "morning",   "day",       "midday", "noon",
    "afternoon",  "dusk",     "sunset",    "twilight",  "evening",   "night",  "midnight",
    "continuous", "same",     "same time", "meanwhile", "magic hour"};

struct Unit {
  std::string_view word;
  double years;
};
constexpr std::array<Unit, 12> kUnits = {{{"moment", 1e-5},
                                          {"second", 1e-5},
                                          {"minute", 1e-5},
                                          {"hour", 1.0 / 8766},
                                          {"day", 1.0 / 365.25},
                                          {"night", 1.0 / 365.25},
                                          {"week", 7 / 365.25},
                                          {"fortnight", 14 / 365.25},
                                          {"month", 1.0 / 12},
                                          {"year", 1},
                                          {"decade", 10},
                                          {"century", 100}}};
constexpr double kSome = 3;  // "some years", "a few hours": only the order counts

Words wordsOf(std::string_view text) {
  std::string clean = folded(text);
  for (char& c : clean)
    if (std::string_view("()[]:.,;*-\"!").find(c) != std::string_view::npos) c = ' ';
  for (const std::string_view dash : {"\u2013", "\u2014", "\u2026"})
    for (std::size_t at; (at = clean.find(dash)) != std::string::npos;)
      clean.replace(at, dash.size(), " ");
  Words out;
  for (const std::string_view word : splitWords(clean)) out.emplace_back(word);
  return out;
}

/// Reads shifts off the front of words until it meets one that it does not know.
class ShiftReader {
 public:
  explicit ShiftReader(const Words& words) : words_(words) {}

  /// True when a shift was read; `at` is then behind it.
  bool read(SceneHeading& out) {
    bool any = false;
    while (at_ < words_.size() && (readFlash(out) || readReturn(out) || readRelative(out)))
      any = true;
    return any;
  }
  std::size_t at() const { return at_; }

 private:
  std::string_view word(std::size_t i) const {
    return i < words_.size() ? std::string_view(words_[i]) : std::string_view();
  }
  bool take(std::initializer_list<std::string_view> phrase) {
    std::size_t i = at_;
    for (const std::string_view w : phrase)
      if (word(i++) != w) return false;
    at_ = i;
    return true;
  }
  void skip(std::initializer_list<std::string_view> any) {
    while (std::ranges::find(any, word(at_)) != any.end()) ++at_;
  }
  bool takeFlash(std::string_view direction) {
    return take({std::string(direction == "back" ? "flashback" : "flashforward")}) ||
           take({"flash", direction});
  }

  bool readFlash(SceneHeading& out) {
    const std::size_t start = at_;
    const bool ends = take({"end"}) || take({"ends"});
    if (!ends && !take({"begin"})) take({"start"});
    skip({"of", "the"});
    const bool back = takeFlash("back");
    if (!back && !takeFlash("forward")) return at_ = start, false;
    const bool endsBehind = take({"ends"}) || take({"over"}) || take({"end"});
    skip({"to", "begins", "sequence", "scene", "starts"});
    out.shift = ends || endsBehind ? StoryShift::ToPresent
                : back             ? StoryShift::IntoPast
                                   : StoryShift::IntoFuture;
    return true;
  }

  bool readReturn(SceneHeading& out) {
    const bool found =
        take({"back", "to", "the", "present", "day"}) || take({"back", "to", "the", "present"}) ||
        take({"back", "to", "present", "day"}) || take({"back", "to", "present"}) ||
        take({"back", "to", "scene"}) || take({"back", "to", "the", "scene"}) ||
        take({"back", "to", "now"}) || take({"return", "to", "present"}) ||
        take({"return", "to", "the", "present"}) || take({"the", "present", "day"}) ||
        take({"present", "day"}) || take({"the", "present"}) || take({"present"});
    if (found) out.shift = StoryShift::ToPresent;
    return found;
  }

  /// The amount in front of a unit: "ten", "a few", "many"; 0 when there is none.
  double takeAmount() {
    if (take({"a", "few"}) || take({"some"}) || take({"several"}) || take({"many"})) return kSome;
    if (take({"a"}) || take({"an"})) return 1;
    std::string rest;
    for (std::size_t i = at_; i < std::min(words_.size(), at_ + 3); ++i)
      rest += (rest.empty() ? "" : " ") + words_[i];
    const std::optional<NumberRead> number = readNumber(rest);
    if (!number) return 0;
    at_ += 1 + static_cast<std::size_t>(
                   std::count(rest.begin(), rest.begin() + static_cast<long>(number->length), ' '));
    return number->value;
  }

  double takeUnit() {
    std::string_view unit = word(at_);
    if (unit == "centuries") unit = "century";
    if (unit.size() > 3 && unit.ends_with('s')) unit.remove_suffix(1);
    const auto* const found = std::ranges::find(kUnits, unit, &Unit::word);
    if (found == kUnits.end()) return 0;
    ++at_;
    return found->years;
  }

  bool takeEarlier() {
    return take({"earlier"}) || take({"before"}) || take({"ago"}) || take({"previously"});
  }

  void pastBy(double years, SceneHeading& out) {
    out.shift = StoryShift::IntoPast;
    out.years = years;
  }

  bool takeTime(SceneHeading& out) {
    if (std::ranges::find(kTimes, word(at_)) == kTimes.end()) return false;
    out.time = word(at_++);
    return true;
  }

  bool readRelative(SceneHeading& out) {
    const std::size_t start = at_;
    skip({"about", "almost", "nearly", "only", "just"});
    if (take({"meanwhile"})) return out.time = "meanwhile", true;
    if (take({"continuous"})) return out.time = "continuous", true;
    if (take({"same", "time"})) return out.time = "same time", true;
    if (readNextOrLast(out)) return true;
    const double amount = takeAmount();
    const double unit = takeUnit();
    if (unit > 0) {
      const double years = (amount > 0 ? amount : kSome) * unit;
      if (takeEarlier()) return pastBy(years, out), true;
      if (take({"later"}) || take({"on"}) || take({"after"}) || take({"from", "now"})) {
        if (unit < kUnits[3].years) return out.time = "moments later", true;
        out.shift = StoryShift::Onward;
        out.years = years;
        if (unit < kUnits[4].years) out.time = "later";
        return true;
      }
      return at_ = start, false;
    }
    if (amount > 0) return at_ = start, false;
    if (takeEarlier()) {
      pastBy(kUnits[3].years * kSome, out);
      skip({"that", "the", "same"});
      takeTime(out);
      return true;
    }
    if (take({"later"})) {
      out.time = "later";
      skip({"that", "the", "same", "on"});
      takeTime(out);
      return true;
    }
    if (take({"that", "same"}) || take({"that"})) return takeTime(out) || (at_ = start, false);
    return at_ = start, false;
  }

  /// "the next morning", "the night before", "the following year".
  bool readNextOrLast(SceneHeading& out) {
    const std::size_t start = at_;
    skip({"the"});
    const bool next = take({"next"}) || take({"following"});
    const bool last = !next && (take({"previous"}) || take({"last"}));
    const std::string_view what = word(at_);
    const bool time = takeTime(out);
    const double unit = time ? kUnits[4].years : takeUnit();
    if (unit <= 0) return at_ = start, false;
    if (what == "day") out.time.clear();
    if (next) return out.shift = StoryShift::Onward, out.years = unit, true;
    if (last || take({"before"})) return pastBy(unit, out), true;
    out.time.clear();
    return at_ = start, false;
  }

  const Words& words_;
  std::size_t at_ = 0;
};

/// Cuts a slug at dashes, brackets, slashes and full stops.
std::vector<std::string> partsOf(std::string_view rest) {
  std::vector<std::string> parts(1);
  for (std::size_t i = 0; i < rest.size(); ++i) {
    const std::string_view ahead = rest.substr(i);
    const bool wide = ahead.starts_with("\u2013") || ahead.starts_with("\u2014");
    const bool dash = ahead.starts_with(" - ") || ahead.starts_with("--");
    const bool mark = std::string_view("().,/:;").find(ahead.front()) != std::string_view::npos;
    if (!wide && !dash && !mark) {
      parts.back() += ahead.front();
      continue;
    }
    parts.emplace_back();
    i += wide ? 2 : dash ? (ahead.front() == ' ' ? 2 : 1) : 0;
  }
  return parts;
}

void readPart(const std::string& part, SceneHeading& out) {
  const Words words = wordsOf(part);
  if (words.empty()) return;
  std::string joined;
  for (const std::string& word : words) joined += (joined.empty() ? "" : " ") + word;
  if (std::ranges::find(kTimes, joined) != kTimes.end()) {
    out.time = joined;
    return;
  }
  ShiftReader shift(words);
  SceneHeading trial = out;
  if (shift.read(trial) && shift.at() == words.size()) {
    out = std::move(trial);
    return;
  }
  out.place += (out.place.empty() ? "" : ", ") + joined;
}

SceneHeading fromSlug(std::string_view slug) {
  SceneHeading out;
  out.text = std::string(bareText(slug));
  const std::string low = folded(out.text);
  const bool in = low.starts_with("int"), ext = low.starts_with("ext");
  const bool both = low.starts_with("int/ext") || low.starts_with("int./ext") ||
                    low.starts_with("i/e") || low.starts_with("ext/int") ||
                    low.starts_with("ext./int");
  out.side = both ? "both" : in ? "interior" : ext ? "exterior" : "both";
  std::size_t start = std::min(low.find_first_of(" .:"), low.size());
  if (both) {
    const std::size_t behind = low.find_first_of(" .:", low.find('/') + 2);
    start = std::min(behind, low.size());
  }
  const std::string rest = low.substr(start);
  for (const std::string& part : partsOf(withoutLeadingMarks(rest, ".:-"))) readPart(part, out);
  out.thisOnly = out.shift == StoryShift::IntoPast || out.shift == StoryShift::IntoFuture;
  return out;
}

/// Where a slug begins behind the words of a shift ("FLASHBACK - INT. CHAPEL - DAY"), or npos.
std::size_t slugWithin(std::string_view line) {
  const std::string low = folded(line);
  for (const std::string_view mark : {"int.", "ext.", "int ", "ext "})
    if (const std::size_t at = low.find(mark);
        at != std::string::npos && at > 0 &&
        std::string_view(" -(:").find(low[at - 1]) != std::string_view::npos)
      return low.size() == line.size() ? at : std::string::npos;
  return std::string::npos;
}

std::optional<SceneHeading> fromShiftAndSlug(std::string_view line, std::size_t at) {
  const Words words = wordsOf(line.substr(0, at));
  SceneHeading shift;
  ShiftReader reader(words);
  if (!reader.read(shift) || reader.at() != words.size()) return {};
  SceneHeading out = fromSlug(slugPart(line.substr(at)));
  out.text = std::string(bareText(line));
  if (shift.shift == StoryShift::None) return out;
  out.shift = shift.shift;
  out.years = shift.years;
  out.thisOnly = false;
  return out;
}

}  // namespace

std::string_view slugPart(std::string_view line) {
  std::size_t end = 0;
  for (const std::string_view word : splitWords(line)) {
    if (hasLetter(word) && !isAllCaps(word)) break;
    end = static_cast<std::size_t>(word.data() - line.data()) + word.size();
  }
  const std::size_t mark = line.find_first_of(" .:/");
  if (mark != std::string_view::npos && end > mark + 1) return line.substr(0, end);
  const std::size_t stop = line.find('.', mark == std::string_view::npos ? 0 : mark + 1);
  return line.substr(0, std::min(stop, line.size()));
}

std::optional<SceneHeading> storyTimeFrom(std::string_view text) {
  if (text.size() > 80) return {};
  const Words words = wordsOf(text);
  if (words.empty() || words.size() > kMostWords) return {};
  SceneHeading out;
  ShiftReader reader(words);
  if (!reader.read(out) || reader.at() != words.size()) return {};
  out.text = std::string(bareText(text));
  return out;
}

std::optional<SceneHeading> sceneHeadingFrom(std::string_view line) {
  line = bareText(line);
  if (line.empty() || line.size() > 200) return {};
  if (isSlugline(line)) return fromSlug(slugPart(line));
  if (line.size() > 120 || !isAllCaps(line)) return {};
  if (const std::size_t at = slugWithin(line); at != std::string::npos)
    return fromShiftAndSlug(line, at);
  if (auto alone = storyTimeFrom(line)) return alone;
  const Words words = wordsOf(line);
  SceneHeading out;
  ShiftReader reader(words);
  const bool flashback = reader.read(out) && out.shift != StoryShift::None;
  if (!flashback || words.size() - reader.at() > kMostPlaceWords || reader.at() > kMostWords)
    return {};
  if (std::string_view("-(:.,").find(
          line[std::min(line.find_first_of("-(:.,"), line.size() - 1)]) == std::string_view::npos &&
      line.find("\u2013") == std::string_view::npos &&
      line.find("\u2014") == std::string_view::npos)
    return {};
  for (std::size_t i = reader.at(); i < words.size(); ++i)
    out.place += (i == reader.at() ? "" : " ") + words[i];
  out.text = std::string(line);
  return out;
}

}  // namespace tw
