// The proof of a job on paper, and one rough as a file. Roughs are made before, by roughs.h; here
// they are only drawn and printed.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/progress.h"
#include "base/result.h"
#include "press/proof.h"

namespace tw {

struct ProofRequest {
  std::filesystem::path job;
  std::optional<int> page;  ///< nothing: every page that has roughs
  std::filesystem::path out;
  bool sheetFiles = true;  ///< also a PDF, PNG and SVG file per rough
  unsigned threads = 0;
};

struct ProofFiles {
  std::filesystem::path book;                   ///< everything in one PDF
  std::vector<std::filesystem::path> contact;   ///< one PNG per page
  int sheets = 0;                               ///< roughs with files of their own
  std::vector<std::filesystem::path> dominant;  ///< PNGs about the dominant pictures
  std::filesystem::path continuity;             ///< the story's chart, when all pages are shown
};

/// Writes proof.pdf, per page page-NN-roughs.{pdf,png,svg}, per rough page-NN-X.{pdf,png,svg}, and
/// for each dominant picture page-NN-X-{fit,variants,values,grid}.{png,svg}. A proof
/// of all pages has continuity.{pdf,svg,png} too.
Result<ProofFiles> makeProof(const ProofRequest& request, Progress& progress);

struct ShowRequest {
  std::filesystem::path job;
  int page = 1;
  std::string rough = "A";
  std::optional<std::filesystem::path> png, svg, pdf;
  Overlays overlays;
  double dpi = 150;
};

/// Writes one rough to each of the files asked for.
Result<void> showRough(const ShowRequest& request);

/// Marks the rough that the artist chose; new roughs leave it alone. Empty: none.
Result<void> chooseRough(const std::filesystem::path& job, int page, const std::string& rough);

}  // namespace tw
