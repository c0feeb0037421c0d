// Taking a script apart.
//
// The idea: most lines tell by their shape what they are (script_lines, cues); the few shapes that
// mean two things are decided by their surroundings:
//   - "1." heads a panel on a page that has no "Panel 1"; elsewhere it numbers an item of copy.
//   - A capitalised line is a cue when text follows it directly and it is a name: known, marked
//     with "(OFF)", or of at most two words that are not words of the trade.
//   - "Mara: …" is a cue when MARA is known, or when the same form comes twice.
//   - A paragraph behind copy and a blank line is more copy when it speaks (I, you, a question or
//     an indent) and description when it shows (a name or "she" and a verb).
// Steps: 1. find the page heads; what stands before the first is front matter. 2. Gather the names
// that are surely cues. 3. Walk each page's lines with the open panel and the open copy item as
// state. 4. Text before the first panel becomes the page's note, or its only panel.
// Cost: linear in the bytes.
// What it does badly: description directly under a line of copy, without a blank line, is taken
// for copy; it cannot be told apart.
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "script/cast_section.h"
#include "script/raw_script.h"
#include "script/scene_headings.h"
#include "script/text_case.h"
#include "script/tokens.h"

namespace tw {

namespace {

constexpr std::size_t kWrappedWidth = 50;  // a shorter line was ended on purpose
constexpr int kMostPanelNumber = 999;

using Names = std::set<std::string, std::less<>>;

/// Names that stand before a colon in capitals, or twice in title case, and the declared cast.
Names surelyNames(const std::vector<ScriptLine>& lines, std::size_t from, const Lexicon& lexicon,
                  const std::vector<Character>& cast) {
  Names names;
  for (const Character& person : cast) {
    names.insert(folded(person.name));
    for (const std::string& alias : person.aliases) names.insert(folded(alias));
  }
  std::map<std::string, int> titleCase;
  const IsKnownName nobody = [](std::string_view) { return false; };
  for (std::size_t i = from; i < lines.size(); ++i) {
    if (lines[i].text.find(':') == std::string::npos) continue;
    if (const auto cue = colonCueFrom(lines[i].text, lexicon.cues, nobody))
      for (const std::string& name : cue->names) names.insert(folded(name));
    if (const auto name = titleCaseCueName(lines[i].text, lexicon.cues))
      if (++titleCase[*name] > 1) names.insert(*name);
  }
  return names;
}

bool isSecondPerson(const std::string& word) {
  static const Names kWords = {"i",      "i'm",  "i'll",  "i've",  "i'd",   "me",    "my",
                               "mine",   "we",   "we're", "us",    "our",   "we'll", "you",
                               "you're", "your", "yours", "don't", "can't", "won't"};
  return kWords.contains(word);
}

enum class Paragraph { Shows, Speaks, Unclear };

/// Whether a paragraph describes a picture or says something.
Paragraph natureOf(const std::string& text, const Lexicon& lexicon, const Names& names) {
  const std::vector<Token> tokens = tokensOf(text);
  std::size_t length = 0;
  if (lexicon.shots.find([&](std::size_t i) { return wordAt(tokens, i); }, length))
    return Paragraph::Shows;
  static const Names kShowing = {"he", "she", "they", "same", "behind", "on", "in"};
  const std::string& first = wordAt(tokens, 0);
  const bool subject = names.contains(first) || kShowing.contains(first) || first == "the";
  for (std::size_t i = 1; subject && i < std::min<std::size_t>(tokens.size(), 8); ++i) {
    const auto verb = lexicon.verbForms.find(tokens[i].low);
    if (verb != lexicon.verbForms.end() && verb->second.form == VerbForm::Third)
      return Paragraph::Shows;
  }
  for (const Token& token : tokens)
    if (isSecondPerson(token.low)) return Paragraph::Speaks;
  const bool exclaims = text.ends_with('!') || text.ends_with('?') || text.ends_with("--") ||
                        text.ends_with("\u2026") || text.ends_with("...");
  return exclaims ? Paragraph::Speaks : Paragraph::Unclear;
}

class PageWalker {
 public:
  PageWalker(RawScript& script, const Lexicon& lexicon, const Names& names, std::string file)
      : script_(script), lexicon_(lexicon), names_(names), file_(std::move(file)) {}

  void walk(const std::vector<ScriptLine>& lines, std::size_t begin, std::size_t end) {
    lines_ = &lines;
    end_ = end;
    openPage(lines[begin], *pageHeadFrom(lines[begin].text));
    panelsAreNamed_ = false;
    for (std::size_t i = begin + 1; i < end; ++i)
      panelsAreNamed_ |= panelHeadFrom(lines[i].text).has_value();
    for (std::size_t i = begin + 1; i < end; ++i) take(i);
    closePage();
  }

  /// A heading behind the last panel opens nothing.
  void finish(int line) {
    if (waiting_.empty()) return;
    warn(line,
         fmt::format("A scene heading behind the last panel: \u201c{}\u201d.",
                     std::exchange(waiting_, {})),
         "Add the panels that it opens, or take it out.");
  }

 private:
  RawPage& page() { return script_.pages.back(); }
  RawPanel* panel() { return page().panels.empty() ? nullptr : &page().panels.back(); }
  RawCopy* copy() { return inCopy_ ? &panel()->copy.back() : nullptr; }

  void warn(int line, std::string sentence, std::string advice = {}) {
    const int panelNumber = panel() ? panel()->number : 0;
    script_.warnings.push_back(
        {Cause::BadInput,
         std::move(sentence),
         {.file = file_, .line = line, .page = page().head.first, .panel = panelNumber},
         std::move(advice)});
  }

  void openPage(const ScriptLine& line, PageHead head) {
    closeCopy();
    const bool continues =
        head.continued && !script_.pages.empty() && page().head.first == head.first;
    if (!continues) {
      script_.pages.push_back({});
      page().head = std::move(head);
      page().line = line.number;
    }
    if (!continues && !waiting_.empty()) page().slug = std::exchange(waiting_, {});
    afterBlank_ = false;
  }

  void take(std::size_t index) {
    const ScriptLine& line = (*lines_)[index];
    if (line.text.empty()) {
      afterBlank_ = true;
      return;
    }
    if (!takeHead(line) && !takeSceneHeading(index) && !takeCue(index) && !takeBracket(line) &&
        !isFurnitureHere(index))
      takeText(line);
    afterBlank_ = false;
    lastWidth_ = line.width;
  }

  bool isFurnitureHere(std::size_t index) const {
    if (!isPageFurniture((*lines_)[index].text)) return false;
    for (std::size_t i = index + 1; i < end_; ++i)
      if (!(*lines_)[i].text.empty()) return false;
    return true;
  }

  bool takeHead(const ScriptLine& line) {
    std::optional<PanelHead> head = panelHeadFrom(line.text);
    if (!head && !panelsAreNamed_) {
      head = numberedHeadFrom(line.text);
      if (head && colonCueFrom(line.text, lexicon_.cues, isKnown())) head.reset();
    }
    if (!head) return false;
    closeCopy();
    if (head->last - head->first > 0 && head->last - head->first < 30) {
      for (int number = head->first; number <= head->last; ++number)
        openPanel(line.number, number, head->rest);
      warn(line.number, fmt::format("One description for panels {} to {}; each panel got it.",
                                    head->first, head->last));
    } else {
      openPanel(line.number, std::min(head->first, kMostPanelNumber), head->rest);
    }
    return true;
  }

  /// A scene heading ends copy and is no cue. In front of a panel's or page's head it opens what
  /// follows, not the panel that it closes.
  bool takeSceneHeading(std::size_t index) {
    const ScriptLine& line = (*lines_)[index];
    if (inCopy_ && copy()->text.empty() && !afterBlank_) return false;  // words of a cue
    if (names_.contains(folded(line.text)) || !sceneHeadingFrom(line.text)) return false;
    if (inCopy_ && !afterBlank_ && !isSlugline(line.text)) return false;
    closeCopy();
    if (panel() && !isSaidBeforeHead(index)) {
      addText(panel()->description, line.text);
    } else {
      std::string& text = panel() ? waiting_ : page().slug;
      text += (text.empty() ? "" : "\n") + line.text;
    }
    return true;
  }

  bool isSaidBeforeHead(std::size_t index) const {
    if (script_.pages.back().panels.back().description.empty() &&
        script_.pages.back().panels.back().copy.empty())
      return false;
    for (std::size_t i = index + 1; i < end_; ++i) {
      const std::string& text = (*lines_)[i].text;
      if (!text.empty() && !sceneHeadingFrom(text)) return startsPanel(text);
    }
    return true;
  }

  bool startsPanel(const std::string& text) const {
    if (panelHeadFrom(text)) return true;
    return !panelsAreNamed_ && numberedHeadFrom(text).has_value();
  }

  void openPanel(int line, int number, std::string description) {
    if (!waiting_.empty()) description = std::exchange(waiting_, {}) + "\n" + description;
    RawPanel opened;
    opened.number = number;
    opened.line = line;
    opened.description = std::move(description);
    page().panels.push_back(std::move(opened));
  }

  bool takeCue(std::size_t index) {
    const ScriptLine& line = (*lines_)[index];
    std::optional<Cue> cue = colonCueFrom(line.text, lexicon_.cues, isKnown());
    if (!cue && mayBeBareCue(index)) cue = bareCueFrom(line.text, lexicon_.cues, isKnown());
    if (!cue) return false;
    closeCopy();
    if (!panel()) openImpliedPanel(line.number);
    for (const std::string& modifier : cue->unknown) unknownModifier(line.number, modifier);
    RawCopy item;
    item.line = line.number;
    item.text = withStress(line, cue->words);
    item.cue = std::move(*cue);
    panel()->copy.push_back(std::move(item));
    inCopy_ = true;
    copyIndent_ = 0;
    return true;
  }

  /// Copy open and still without words: the line is those words. Otherwise text must follow.
  bool mayBeBareCue(std::size_t index) const {
    if (inCopy_ && script_.pages.back().panels.back().copy.back().text.empty() && !afterBlank_)
      return false;
    std::size_t next = index + 1;
    const bool known = names_.contains(folded(std::string_view((*lines_)[index].text)));
    if (known)
      while (next < end_ && (*lines_)[next].text.empty()) ++next;
    if (next >= end_ || (*lines_)[next].text.empty()) return false;
    const std::string& text = (*lines_)[next].text;
    return !panelHeadFrom(text) && !isSlugline(text) &&
           !colonCueFrom(text, lexicon_.cues, isKnown());
  }

  bool takeBracket(const ScriptLine& line) {
    if (!inCopy_) return false;
    const auto inside = bracketedLine(line.text);
    if (!inside) return false;
    Cue trial;
    applyModifiers(*inside, lexicon_.cues, trial);
    if (!trial.unknown.empty() && afterBlank_) return false;  // a note to the artist
    Cue& cue = copy()->cue;
    if (trial.kind != CopyKind::Speech) cue.kind = trial.kind;
    cue.offPanel |= trial.offPanel;
    if (!trial.spokenTo.empty()) cue.spokenTo = trial.spokenTo;
    for (const std::string& modifier : trial.unknown) unknownModifier(line.number, modifier);
    return true;
  }

  void unknownModifier(int line, const std::string& modifier) {
    warn(line, fmt::format("The mark \u201c({})\u201d at a cue has no known meaning.", modifier),
         "It is left out of the copy; say it in the description if it matters to the drawing.");
  }

  void takeText(const ScriptLine& line) {
    if (RawCopy* item = copy()) {
      if (item->text.empty() || !afterBlank_ || isMoreCopy(line)) return addCopy(*item, line);
      closeCopy();
    }
    if (panel())
      addText(panel()->description, line.text);
    else if (isSlugline(line.text))
      addText(page().slug, line.text);
    else
      addNote(line);
  }

  bool isMoreCopy(const ScriptLine& line) {
    if (line.indent > 0 && line.indent >= copyIndent_ && copyIndent_ > 0) return true;
    if (isSlugline(line.text)) return false;
    const Paragraph nature = natureOf(line.text, lexicon_, names_);
    if (nature == Paragraph::Unclear)
      warn(line.number,
           "It is not clear whether this paragraph is copy or description; it was taken as copy.",
           "Put a cue in front of it if it is spoken, or move it above the copy if it is not.");
    return nature != Paragraph::Shows;
  }

  void addCopy(RawCopy& item, const ScriptLine& line) {
    const bool wrapped = !item.text.empty() && !afterBlank_ &&
                         (lastWidth_ >= kWrappedWidth || startsLower(line.text));
    if (!item.text.empty()) item.text += wrapped ? ' ' : '\n';
    item.text += withStress(line, line.text);
    if (copyIndent_ == 0) copyIndent_ = line.indent;
  }

  void addText(std::string& text, const std::string& more) {
    const std::size_t lastLine = text.rfind('\n') + 1;  // 0 when there is only one
    const bool slug = sceneHeadingFrom(more) ||
                      sceneHeadingFrom(std::string_view(text).substr(lastLine)).has_value();
    if (!text.empty()) text += afterBlank_ || slug ? '\n' : ' ';
    text += more;
  }

  void addNote(const ScriptLine& line) {
    if (page().note.empty()) page().noteLine = line.number;
    addText(page().note, line.text);
  }

  void openImpliedPanel(int line) {
    openPanel(line, 0, {});
    panel()->implied = true;
  }

  void closeCopy() {
    if (!inCopy_) return;
    inCopy_ = false;
    const RawCopy& item = panel()->copy.back();
    if (!bareText(item.text).empty()) return;
    const std::string who =
        item.cue.names.empty() ? "A caption, SFX or title" : item.cue.names.front() + "'s cue";
    warn(item.line, fmt::format("{} has no words.", who), "Add the words or take out the cue.");
    panel()->copy.pop_back();
  }

  void closePage() {
    closeCopy();
    if (page().panels.empty() && !(page().note.empty() && page().slug.empty()))
      openImpliedPanel(page().noteLine > 0 ? page().noteLine : page().line);
    if (page().panels.empty()) return;
    const bool onlyImplied = page().panels.size() == 1 && page().panels.front().implied;
    if (onlyImplied) return useNoteAsPanel();
    if (!page().note.empty()) {
      warn(page().noteLine,
           fmt::format("Text outside any panel, kept as the page's note: \u201c{}\u201d.",
                       page().note),
           "Put it into a panel if it is to be drawn.");
      script_.warnings.back().place.panel = 0;
    }
    if (page().panels.front().implied) mergeImpliedPanel();
  }

  /// A page written without panel heads: its text is one panel.
  void useNoteAsPanel() {
    RawPanel& only = page().panels.front();
    if (page().note.empty() && page().head.continued) return;
    if (!page().note.empty() && !only.description.empty()) page().note += '\n';
    only.description = page().note + only.description;
    only.line = page().noteLine > 0 ? page().noteLine : only.line;
    page().note.clear();
    const PageHead& head = page().head;
    if (head.splash || head.spread || head.announcedPanels == 1) return;
    warn(only.line,
         "Text outside any panel: no panel is named on this page, so its text was taken as one "
         "panel.",
         "Start each panel with \u201cPanel 1\u201d, \u201cPanel 2\u201d and so on.");
  }

  /// Copy before the first panel head belongs to that panel.
  void mergeImpliedPanel() {
    RawPanel before = std::move(page().panels.front());
    page().panels.erase(page().panels.begin());
    RawPanel& first = page().panels.front();
    warn(before.line, "Copy before the first panel; it was put into the first panel.",
         "Move it below a panel head.");
    if (!before.description.empty())
      first.description = before.description + "\n" + first.description;
    first.copy.insert(first.copy.begin(), before.copy.begin(), before.copy.end());
  }

  IsKnownName isKnown() const {
    return [this](std::string_view name) { return names_.contains(folded(name)); };
  }

  RawScript& script_;
  const Lexicon& lexicon_;
  const Names& names_;
  const std::string file_;
  const std::vector<ScriptLine>* lines_ = nullptr;
  std::size_t end_ = 0;
  bool panelsAreNamed_ = false, inCopy_ = false, afterBlank_ = false;
  std::size_t copyIndent_ = 0, lastWidth_ = 0;
  std::string waiting_;  ///< scene headings for the panel to come
};

std::vector<std::size_t> pageHeads(const std::vector<ScriptLine>& lines) {
  std::vector<std::size_t> heads;
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (pageHeadFrom(lines[i].text)) heads.push_back(i);
  return heads;
}

}  // namespace

RawScript takeApart(const std::vector<ScriptLine>& lines, const Lexicon& lexicon,
                    const std::string& fileName) {
  RawScript script;
  std::vector<std::size_t> heads = pageHeads(lines);
  if (heads.empty()) return script;
  FrontMatter front = readFrontMatter(lines, heads.front(), lexicon, fileName);
  script.title = std::move(front.title);
  script.hasCast = front.hasCast;
  script.cast = std::move(front.cast);
  script.dated = std::move(front.dated);
  script.warnings = std::move(front.warnings);
  const Names names = surelyNames(lines, heads.front(), lexicon, script.cast);
  heads.push_back(lines.size());
  PageWalker walker(script, lexicon, names, fileName);
  for (std::size_t i = 0; i + 1 < heads.size(); ++i) walker.walk(lines, heads[i], heads[i + 1]);
  walker.finish(lines.empty() ? 0 : lines.back().number);
  return script;
}

}  // namespace tw
