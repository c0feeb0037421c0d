// A rough on its sheet: the page at print size with marks around it, overlays above, the score
// card beside it when that is wanted.
#pragma once

#include <functional>

#include "press/page_art.h"
#include "press/pdf_book.h"

namespace tw {

class RoughSheet {
 public:
  /// Both must outlive the sheet.
  RoughSheet(const RoughPicture& picture, const Typesetter& typesetter);

  /// The paper: bleed, slug and, when shown, the column of the score card.
  Rect paper(const Overlays& overlays) const;
  /// Bare rough first. The card is left out altogether when it is not shown: it is a private
  /// talk between artist and program, and a file sent to an editor must not carry it along.
  std::vector<PdfLayer> layers(const Overlays& overlays) const;
  PdfPage pdfPage(const Overlays& overlays) const;
  /// For surfaces without layers of their own: each as a named group, hidden ones marked.
  void drawGroups(Surface& surface, const Overlays& overlays) const;
  /// Only what is shown.
  void drawShown(Surface& surface, const Overlays& overlays) const;
  std::string title() const;
  const PageArt& art() const { return art_; }

 private:
  const RoughPicture& picture_;
  const Typesetter& typesetter_;
  PageArt art_;
};

}  // namespace tw
