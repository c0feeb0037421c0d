// Pictures of pages that are known as marked panels: where the eye goes on a drawn page, else how
// the bare layout will be read.
#pragma once

#include <filesystem>
#include <vector>

#include "command/read_panels.h"
#include "press/reading_sheet.h"

namespace tw {

/// The page as outlines at a usual size, numbered in the order that most readers take.
struct LayoutPicture {
  RoughPicture picture;
  ReadingSheet sheet;
};
/// Bad input when neither the list nor the panels give the page a size.
Result<LayoutPicture> layoutPictureOf(const ReadMarkedPage& page);

/// One picture for each page: FILE, FILE-2, … by their place in the list, .png, .svg or .pdf. Where
/// the eye goes on a drawn page can be had as PNG alone.
Result<void> drawReadPanels(const std::filesystem::path& file,
                            const std::vector<ReadMarkedPage>& pages, double dpi);

}  // namespace tw
