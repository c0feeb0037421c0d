// The sheets that settle a page's dominant picture: how large its figure can be, what else the
// pose could be, its values and its perspective. Each by the command that answers that question.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/result.h"
#include "job/job.h"

namespace tw {

/// What the sheets are about: the dominant panel of the chosen rough, or else of the best.
struct DominantPanel {
  int page = 1;
  std::string rough;
  int panel = 1;  ///< of the rough, as read, from 1
};

/// The dominant panel of each page that has one with a figure in it.
std::vector<DominantPanel> dominantPanels(const Job& job, const std::vector<int>& pages);

/// Writes STEM-fit, STEM-variants, STEM-values and STEM-grid, each as .png and .svg; names them.
Result<std::vector<std::filesystem::path>> writeDominantSheets(const std::filesystem::path& job,
                                                               const DominantPanel& about,
                                                               const std::filesystem::path& stem);

}  // namespace tw
