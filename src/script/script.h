// Reading a script as writers really send it, and breaking it down into beats. This is all that
// other folders see of it. Odd text gives warnings with line numbers, never silence.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "job/beat.h"
#include "job/scene.h"

namespace tw {

struct ScriptPage {
  int number = 1;
  int lastNumber = 1;  ///< > number for a spread
  bool spread = false;
  int announcedPanels = 0;  ///< 0 = not announced
  int line = 0;
  std::string title;
  std::string note;         ///< text between the page's head and its first panel
  std::vector<Beat> beats;  ///< as broken down
};

struct Script {
  std::string title;
  std::vector<Character> cast;  ///< declared in the script, then speakers in order of entry
  std::vector<ScriptPage> pages;
  std::vector<StoryScene> scenes;  ///< in the script's order
  Problems warnings;               ///< with line numbers; nothing is dropped in silence
};

/// Reads bytes of a text script (UTF-8 with or without BOM, Latin-1, CRLF, tabs…). Never fails
/// on odd text, only on bytes that are no text at all or on a script without a page.
Result<Script> readScript(std::string_view bytes, const std::string& fileName);
/// By extension: .docx through its XML, everything else as text.
Result<Script> readScriptFile(const std::filesystem::path& file);
/// The paragraphs of a .docx as plain text, one per line.
Result<std::string> textOfDocx(std::string_view bytes, const std::string& fileName);

/// What a revised script changes against the beats at hand.
struct ScriptChange {
  int page = 0, panel = 0;
  std::string what;  ///< "new panel", "copy changed: …", "panel gone", "moved from panel 3"
};

/// New pages matched to old ones: ids of beats that are still the same beat are kept, so that
/// overrides and roughs stay attached. Returns the changes.
std::vector<ScriptChange> carryOver(const std::vector<ScriptPage>& before,
                                    std::vector<ScriptPage>& after);

/// New scenes that hold beats of an old one take over its id, so that the artist's corrections stay
/// with it; others get ids that no old scene had. After carryOver.
void carryScenesOver(const std::vector<StoryScene>& before,
                     const std::vector<ScriptPage>& beforePages, std::vector<StoryScene>& after,
                     std::vector<ScriptPage>& afterPages);

}  // namespace tw
