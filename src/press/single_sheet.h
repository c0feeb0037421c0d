// A sheet of one picture, written as the kind of file that its name asks for.
#pragma once

#include <filesystem>
#include <functional>
#include <string>

#include "base/result.h"
#include "geometry/shapes.h"
#include "press/surface.h"
#include "press/typesetter.h"

namespace tw {

struct SingleSheet {
  std::string title;
  Rect paper;  ///< mm
  std::function<void(Surface&)> draw;
};

/// Writes the sheet as .pdf, .svg or .png by the file's ending; another ending is bad input. `dpi`
/// is the PNG's resolution.
Result<void> writeSingleSheet(const std::filesystem::path& file, const SingleSheet& sheet,
                              const Typesetter& typesetter, double dpi);

/// Writes the bytes, or passes on why there are none.
Result<void> save(const std::filesystem::path& file, const Result<std::string>& bytes);

}  // namespace tw
