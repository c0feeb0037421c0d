// The kept script of a job as lines, each with the beat and the copy item that were read from it,
// so that a person can go from the words to the panel and back.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "job/job.h"

namespace tw {

struct ScriptTextLine {
  int number = 0;  ///< from 1
  std::string text;
  bool pageHead = false;
  std::string beat;  ///< id; empty before the first panel of a page
  std::string item;  ///< id of the copy item that stands here, without its speaker's cue
};

struct ScriptText {
  std::string file;  ///< name below script/; empty when nothing was kept
  std::vector<ScriptTextLine> lines;

  /// The first line of a beat or of an item.
  std::optional<std::size_t> lineOfBeat(std::string_view beat) const;
  std::optional<std::size_t> lineOfItem(std::string_view item) const;
};

/// Beats say their line; their copy is found by its words, in order. Retyped copy is sought as the
/// script has it.
ScriptText linkedText(std::string_view text, const std::vector<Page>& pages);

/// Of .docx the paragraphs. A job without a kept script gives no lines.
Result<ScriptText> scriptTextOf(const std::filesystem::path& folder, const Job& job);

}  // namespace tw
