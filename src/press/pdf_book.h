// Makes a PDF out of pages, each a pile of layers drawn on the common surface. Pages carry exact
// boxes; layers with a title can be switched in the reader (optional content, ISO 32000-1, 8.11);
// a sketch placed several times is stored once. The same drawing always gives the same bytes.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "base/result.h"
#include "press/surface.h"
#include "press/typesetter.h"

namespace tw {

struct PdfLayer {
  std::string title;  ///< empty: always there
  bool shown = true;  ///< when the file opens
  std::function<void(Surface&)> draw;
};

/// Boxes in mm on the sheet, trim within bleed within media.
struct PdfPage {
  Rect media, bleed, trim;
  std::string bookmark;  ///< in the reader's list of contents; empty: none
  int depth = 0;         ///< 0 heads a chapter, 1 stands below the last 0
  std::vector<PdfLayer> layers;
};

class PdfBook {
 public:
  /// The typesetter and every sketch placed must outlive the book.
  PdfBook(const Typesetter& typesetter, std::string title);
  ~PdfBook();

  /// Draws the page's layers now.
  void add(const PdfPage& page);
  /// The whole file. Takes no more pages after that.
  Result<std::string> finished();

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

}  // namespace tw
