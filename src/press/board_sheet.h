// The board to pencil on: the page at the size of the original, its rough in non-photo blue, the
// artist's own lines over it, trim, bleed and live area marked.
#pragma once

#include <filesystem>

#include "press/proof.h"

namespace tw {

struct BoardSheet {
  bool rough = true;    ///< the staged picture and copy; else borders alone
  bool strokes = true;  ///< the artist's own lines
  bool inBlue = true;   ///< the rough; else as it is
};

/// By the file's extension: .pdf, .svg or .png. At 1 / reduction of the print size.
Result<void> writeBoard(const std::filesystem::path& file, const RoughPicture& picture,
                        const BoardSheet& board, double dpi = 300);

}  // namespace tw
