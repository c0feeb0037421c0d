#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "base/files.h"
#include "script/breakdown.h"
#include "script/decode_text.h"
#include "script/dressing.h"
#include "script/raw_script.h"
#include "script/read_script.h"
#include "script/scenes.h"
#include "script/script.h"
#include "script/text_case.h"
#include "script/who_is_who.h"

namespace tw {

namespace {

ScriptPage pageOf(const RawPage& raw, const Roster& roster, const Lexicon& lexicon,
                  Context& context) {
  ScriptPage page;
  page.number = raw.head.first;
  page.lastNumber = raw.head.last;
  page.spread = raw.head.spread;
  page.announcedPanels = raw.head.announcedPanels;
  page.line = raw.line;
  page.title = raw.head.title;
  page.note = raw.note;
  if (!raw.slug.empty()) page.note = raw.slug + (raw.note.empty() ? "" : "\n") + raw.note;
  page.beats = breakDown(raw, roster, lexicon, context);
  return page;
}

/// Panel ids stay unique when a page number comes twice.
void makeIdsUnique(std::vector<ScriptPage>& pages) {
  std::vector<std::string> seen;
  for (ScriptPage& page : pages)
    for (Beat& beat : page.beats) seen.push_back(beat.id);
  std::ranges::sort(seen);
  if (std::ranges::adjacent_find(seen) == seen.end()) return;
  std::map<std::string, int> count;
  for (ScriptPage& page : pages)
    for (Beat& beat : page.beats) {
      const int times = ++count[beat.id];
      if (times == 1) continue;
      beat.id += fmt::format("x{}", times);
      for (std::size_t i = 0; i < beat.copy.size(); ++i)
        beat.copy[i].id = fmt::format("{}-c{}", beat.id, i + 1);
    }
}

Problem encodingGuess(const std::string& file) {
  return {Cause::BadInput,
          "The text is not UTF-8; it was read as Windows-1252 (Latin-1).",
          {.file = file},
          "If accents look wrong, save it again as UTF-8."};
}

}  // namespace

Result<Script> readScript(std::string_view bytes, const std::string& fileName) {
  const Result<Lexicon> lexicon = loadLexicon();
  if (!lexicon) return tl::unexpected(lexicon.error());
  return readScriptWith(*lexicon, bytes, fileName);
}

Result<Script> readScriptWith(const Lexicon& lexicon, std::string_view bytes,
                              const std::string& fileName) {
  Result<DecodedText> decoded = decodeText(bytes, fileName);
  if (!decoded) return tl::unexpected(decoded.error());
  RawScript raw = takeApart(splitLines(decoded->text), lexicon, fileName);
  if (raw.pages.empty())
    return badInput(
        "No page was found in the script.", {.file = fileName},
        "Start each page with a line such as \u201cPAGE ONE\u201d or \u201cPage 1\u201d.");
  checkNumbers(raw, fileName);
  const Roster roster = whoIsWho(raw, lexicon, fileName);
  Script script;
  script.title = raw.title;
  Context context;
  for (const RawPage& page : raw.pages)
    script.pages.push_back(pageOf(page, roster, lexicon, context));
  makeIdsUnique(script.pages);
  script.scenes = scenesIn(raw.pages, script.pages);
  script.cast = roster.people();
  placeLooks(context.looks, raw.dated, script);
  script.warnings = std::move(raw.warnings);
  if (decoded->takenAsWindows1252) script.warnings.push_back(encodingGuess(fileName));
  std::ranges::stable_sort(script.warnings, {}, [](const Problem& p) { return p.place.line; });
  return script;
}

Result<Script> readScriptFile(const std::filesystem::path& file) {
  const Result<std::string> bytes = readFile(file);
  if (!bytes) return tl::unexpected(bytes.error());
  if (folded(file.extension().string()) != ".docx") return readScript(*bytes, file.string());
  const Result<std::string> text = textOfDocx(*bytes, file.string());
  if (!text) return tl::unexpected(text.error());
  return readScript(*text, file.string());
}

}  // namespace tw
