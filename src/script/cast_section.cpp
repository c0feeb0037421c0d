#include "script/cast_section.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "script/text_case.h"
#include "script/tokens.h"

namespace tw {

namespace {

constexpr double kOldAge = 74;
constexpr double kFewestHeads = 3, kMostHeads = 10;
constexpr double kLeastHeightM = 0.5, kMostHeightM = 2.6;  // people, giants left to the artist

bool isCastHead(std::string_view line) {
  static constexpr std::array<std::string_view, 11> kHeads = {
      "cast",     "characters", "cast of characters", "dramatis personae", "cast list",
      "the cast", "main cast",  "character list",     "character notes",   "the characters",
      "character"};
  std::string text = folded(line);
  std::erase_if(text, [](char c) { return c == ':' || c == '.' || c == '(' || c == ')'; });
  return std::ranges::find(kHeads, bareText(text)) != kHeads.end();
}

bool isReservedFrontLabel(std::string_view name, const Lexicon& lexicon) {
  const std::string low = folded(name);
  return lexicon.cues.notSpeakers.contains(low) || lexicon.cues.keywords.contains(low);
}

struct Entry {
  std::string name, note;
};

/// Where the name ends: at " - ", a dash, a colon, a comma or a bracket, whichever comes first.
std::optional<Entry> castEntry(std::string_view line, const Lexicon& lexicon) {
  std::size_t end = line.size(), skip = 0;
  for (const std::string_view mark :
       {" - ", " -- ", "\u2014", "\u2013", ":", ",", "(", "\u2014", " = "})
    if (const std::size_t at = line.find(mark); at < end) end = at, skip = mark.size();
  const std::string_view name = bareText(line.substr(0, end));
  if (!hasLetter(name) || name.size() > 60 || splitWords(name).size() > 5) return {};
  if (isReservedFrontLabel(name, lexicon)) return {};
  if (!isAllCaps(name) && !(isTitleCase(name) && end < line.size())) return {};
  std::string note(bareText(line.substr(std::min(line.size(), end + skip))));
  if (skip == 1 && line[end] == '(')
    if (const std::size_t close = note.find(')'); close != std::string::npos)
      note.replace(close, 1, close + 1 == note.size() ? "" : ",");
  return Entry{std::string(name), std::string(withoutLeadingMarks(note, "-:,"))};
}

/// A number such as 1.72, 1,72, 172 at the start of a word; 0 when there is none.
double numberIn(std::string word, std::size_t& length) {
  std::replace(word.begin(), word.end(), ',', '.');
  length = 0;
  double value = 0, place = 0;
  for (; length < word.size() && length < 6; ++length) {
    const char c = word[length];
    if (c == '.' && place == 0)
      place = 1;
    else if (c >= '0' && c <= '9')
      value = place > 0 ? value + (c - '0') * (place /= 10) : value * 10 + (c - '0');
    else
      break;
  }
  return value;
}

/// "1.72 m", "1.72m", "1,72 m", "172 cm", "5'8\"", "5 ft 8", "5 foot 8 in"; 0 without a height.
double heightIn(std::string_view note) {
  const std::string low = folded(note);
  const std::vector<std::string_view> words = splitWords(low);
  for (std::size_t i = 0; i < words.size(); ++i) {
    std::size_t length = 0;
    const double value = numberIn(std::string(words[i]), length);
    if (length == 0) continue;
    std::string_view unit = words[i].substr(length);
    std::string_view after = i + 1 < words.size() ? words[i + 1] : std::string_view();
    if (unit.empty())
      unit = after, after = i + 2 < words.size() ? words[i + 2] : std::string_view();
    std::size_t used = 0;
    if (unit.starts_with("cm")) return value / 100;
    if (unit.starts_with('\''))
      return (value * 12 + numberIn(std::string(unit.substr(1)), used)) * 0.0254;
    if (unit.starts_with("ft") || unit.starts_with("foot") || unit.starts_with("feet"))
      return (value * 12 + numberIn(std::string(after), used)) * 0.0254;
    const bool metres = unit == "m" || unit == "m," || unit == "m." || unit == "m;" ||
                        unit == "m)" || unit.starts_with("met");
    if (metres) return value;
  }
  return 0;
}

/// "9" or "nine"; 0 when it is no number below a hundred.
int smallNumber(const std::string& word, const std::vector<std::string>& numbers) {
  const bool digits = !word.empty() && word.size() < 3 &&
                      std::ranges::all_of(word, [](char c) { return c >= '0' && c <= '9'; });
  if (digits) return std::stoi(word);
  const auto found = std::ranges::find(numbers, word);
  return found == numbers.end() ? 0 : static_cast<int>(found - numbers.begin()) + 1;
}

/// "aged 9", "9 years old", "boy of eight", "in her seventies": the age, or 0.
int ageIn(const std::vector<std::string>& words, const Lexicon& lexicon) {
  static constexpr std::array<std::string_view, 8> kDecades = {
      "twenties", "thirties", "forties", "fifties", "sixties", "seventies", "eighties", "nineties"};
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (const auto* const decade = std::ranges::find(kDecades, words[i]); decade != kDecades.end())
      return 25 + 10 * static_cast<int>(decade - kDecades.begin());
    const int age = smallNumber(words[i], lexicon.numbers);
    if (age == 0) continue;
    const std::string before = i > 0 ? words[i - 1] : std::string();
    const bool aged = before == "aged" || before == "age";
    const bool years = i + 1 < words.size() && words[i + 1].starts_with("year");
    std::size_t length = 0;
    const bool ofSo =
        before == "of" && i > 1 &&
        lexicon.people.find([&](std::size_t k) { return k == 0 ? words[i - 2] : std::string(); },
                            length) != nullptr;
    if (aged || years || ofSo) return age;
  }
  return 0;
}

/// "old" alone between commas; elsewhere it may be said of a coat.
bool isCalledOld(std::string_view note) {
  const std::string low = folded(note) + ",";
  std::size_t from = 0;
  for (std::size_t i = 0; i < low.size(); ++i) {
    if (low[i] != ',' && low[i] != ';' && low[i] != '.') continue;
    if (bareText(std::string_view(low).substr(from, i - from)) == "old") return true;
    from = i + 1;
  }
  return false;
}

/// "8 heads", "7½ heads tall"; 0 when the note does not count them.
double headsIn(std::string_view note) {
  const std::string low = folded(note);
  const std::vector<std::string_view> words = splitWords(low);
  for (std::size_t i = 0; i + 1 < words.size(); ++i) {
    if (!words[i + 1].starts_with("heads")) continue;
    std::size_t length = 0;
    const double whole = numberIn(std::string(words[i]), length);
    if (length > 0) return whole + (words[i].substr(length).starts_with("½") ? 0.5 : 0);
  }
  return 0;
}

// Heights of growing children, medians of boys and girls together, WHO reference 2007 rounded to
// 5 cm; from memory.
double heightAtAge(int age) {
  static constexpr std::array<double, 17> kMetres = {0.50, 0.75, 0.85, 0.95, 1.05, 1.10,
                                                     1.15, 1.20, 1.25, 1.35, 1.40, 1.45,
                                                     1.50, 1.55, 1.60, 1.65, 1.70};
  return kMetres[static_cast<std::size_t>(std::clamp(age, 0, 16))];
}

void addAliases(Character& person, std::string_view note) {
  const std::vector<std::string_view> words = splitWords(person.name);
  if (words.size() > 1)
    for (const std::string_view word : words) person.aliases.emplace_back(word);
  for (const std::string_view mark : {"aka ", "a.k.a. ", "alias ", "called ", "known as "}) {
    const std::size_t at = folded(note).find(mark);
    if (at == std::string::npos || at + mark.size() >= note.size()) continue;
    std::string_view alias = note.substr(at + mark.size());
    alias = alias.substr(0, alias.find_first_of(",.;)"));
    alias = withoutLeadingMarks(bareText(alias), "\"'");
    while (alias.ends_with('"') || alias.ends_with('\'')) alias.remove_suffix(1);
    if (!alias.empty() && splitWords(alias).size() < 4) person.aliases.emplace_back(alias);
  }
}

Character characterFrom(const Entry& entry, const Lexicon& lexicon, std::vector<DatedLook>& dated) {
  Character person;
  person.id = idFrom(entry.name);
  person.name = entry.name;
  person.note = entry.note;
  for (DatedLook& look : takeDatedLooks(person.note)) {
    look.who = person.id;
    dated.push_back(std::move(look));
  }
  addAliases(person, person.note);
  readPersonNote(person.note, lexicon, person);
  return person;
}

/// Gathers what is neither title nor cast, one warning per run of lines.
class LooseText {
 public:
  LooseText(Problems& warnings, std::string file) : warnings_(warnings), file_(std::move(file)) {}
  void add(const ScriptLine& line) {
    if (text_.empty()) first_ = line.number;
    text_ += (text_.empty() ? "" : " ") + line.text;
  }
  void end() {
    if (text_.empty()) return;
    Problem problem;
    problem.sentence = fmt::format("Front matter, on no page: \u201c{}\u201d.", text_);
    problem.place.file = file_;
    problem.place.line = first_;
    problem.advice = "Nothing to do, unless it belongs to a panel.";
    warnings_.push_back(std::move(problem));
    text_.clear();
  }

 private:
  Problems& warnings_;
  std::string file_, text_;
  int first_ = 0;
};

class FrontReader {
 public:
  FrontReader(const Lexicon& lexicon, const std::string& file)
      : lexicon_(lexicon), loose_(front_.warnings, file) {}

  FrontMatter read(const std::vector<ScriptLine>& lines, std::size_t count) {
    for (std::size_t i = 0; i < count; ++i) take(lines[i]);
    loose_.end();
    addNotes();
    return std::move(front_);
  }

 private:
  void take(const ScriptLine& line) {
    if (line.text.empty()) {
      afterBlank_ = true;
      return;
    }
    if (isCastHead(line.text)) {
      inCast_ = front_.hasCast = true;
    } else if (!(inCast_ ? takeCastLine(line) : takeTitle(line))) {
      loose_.add(line);
      afterBlank_ = false;
      return;
    }
    loose_.end();
    afterBlank_ = false;
  }

  bool takeTitle(const ScriptLine& line) {
    if (startsWithFolded(line.text, "title:")) {
      front_.title = std::string(bareText(std::string_view(line.text).substr(6)));
      return true;
    }
    if (!front_.title.empty() || seenOther_) return false;
    seenOther_ = true;
    front_.title = line.text;
    return true;
  }

  bool takeCastLine(const ScriptLine& line) {
    const std::optional<Entry> entry = castEntry(line.text, lexicon_);
    const bool continues = !entries_.empty() && !afterBlank_;
    if (continues && (!entry || startsLower(line.text))) {
      entries_.back().note += " " + line.text;
      return true;
    }
    if (!entry) return false;
    entries_.push_back(*entry);
    return true;
  }

  void addNotes() {
    for (const Entry& entry : entries_) {
      Character person = characterFrom(entry, lexicon_, front_.dated);
      const bool known = std::ranges::any_of(
          front_.cast, [&](const Character& other) { return other.id == person.id; });
      if (!known && !person.id.empty()) {
        front_.cast.push_back(std::move(person));
      } else if (known) {
        Character& other = *std::ranges::find(front_.cast, person.id, &Character::id);
        other.note += "; " + person.note;
      }
    }
  }

  const Lexicon& lexicon_;
  FrontMatter front_;
  LooseText loose_;
  std::vector<Entry> entries_;
  bool inCast_ = false, afterBlank_ = true, seenOther_ = false;
};

}  // namespace

void readPersonNote(std::string_view note, const Lexicon& lexicon, Character& person) {
  const std::vector<std::string> words = phraseOf(note);
  std::optional<Sex> sex;
  std::string build;
  double height = 0, add = 0, years = isCalledOld(note) ? kOldAge : 0;
  for (std::size_t i = 0; i < words.size();) {
    std::size_t length = 1;
    const auto word = [&](std::size_t k) {
      return i + k < words.size() ? words[i + k] : std::string();
    };
    if (const PersonWord* found = lexicon.people.find(word, length)) {
      if (!sex && found->sex) sex = found->sex;
      if (build.empty()) build = found->build;
      if (height == 0) height = found->heightM;
      if (add == 0) add = found->addM;
      if (years == 0) years = found->ageYears;
    }
    i += length;
  }
  if (sex) person.sex = *sex;
  if (!build.empty()) person.build = build;
  const int age = ageIn(words, lexicon);
  if (age > 0 && age < 16) {
    height = heightAtAge(age);
    if (age < 12) person.build = "child";
  }
  person.ageYears = age > 0 ? age : years;
  const double heads = headsIn(note);
  person.heads = heads >= kFewestHeads && heads <= kMostHeads ? heads : 0;
  const double usual = person.sex == Sex::Male ? lexicon.usualMaleM : lexicon.usualFemaleM;
  const double stated = heightIn(note);
  person.heightM = stated > 0 ? stated : (height > 0 ? height : usual) + add;
  person.heightM =
      std::clamp(std::round(person.heightM * 1000) / 1000, kLeastHeightM, kMostHeightM);
}

FrontMatter readFrontMatter(const std::vector<ScriptLine>& lines, std::size_t count,
                            const Lexicon& lexicon, const std::string& fileName) {
  return FrontReader(lexicon, fileName).read(lines, count);
}

}  // namespace tw
