// Drawn pages of `tierwright read --panels`: a page of the list that names its picture is measured
// as a picture too. Focus, lead and copy that the list does not mark are proposed.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/result.h"
#include "command/read_panels.h"
#include "job/write_json.h"
#include "read/drawn_page.h"

namespace tw {

/// Reads the page's picture and measures it. A picture named in the list is looked for beside it.
Result<DrawnPage> readDrawn(const ReadMarkedPage& page, const std::filesystem::path& picture,
                            const AttentionWeights& weights);

/// When width and height of page and picture stand to each other so differently that panels may
/// not lie on what they mark; else empty.
std::string shapeNote(const MarkedPage& page, const GreyPicture& picture);

/// Adds `attention`, `squint`, `picture` and `handed_on` to the page's JSON; places in the file's
/// own unit, indices into the panels as the file has them.
void addDrawn(OrderedJson& json, const DrawnPage& page);

/// What there is to say to the artist, one sentence each; panels counted from 1 as in the file.
std::vector<std::string> drawnSentences(const DrawnPage& page);

/// The page dimmed under its heat map; panels numbered as they stand in the file.
Result<void> drawAttentionPng(const std::filesystem::path& file, const ReadMarkedPage& page);

}  // namespace tw
