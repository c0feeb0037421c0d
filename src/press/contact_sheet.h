// All roughs of a page in miniature on one landscape A4 sheet, with what tells them apart.
#pragma once

#include <memory>
#include <vector>

#include "press/overlays.h"
#include "press/page_art.h"
#include "press/pdf_book.h"

namespace tw {

/// How the miniatures share the sheet.
struct ContactGrid {
  int columns = 1, rows = 1;
  double scale = 1;          ///< miniature over print size
  bool wordsBeside = false;  ///< else below
};

/// The grid that shows the roughs largest, mm.
ContactGrid contactGrid(std::size_t roughs, double trimWidth, double trimHeight);

class ContactSheet {
 public:
  /// The pictures, arts (one per picture) and typesetter must outlive the sheet.
  ContactSheet(const std::vector<const RoughPicture*>& pictures,
               const std::vector<const PageArt*>& arts, const Typesetter& typesetter);

  Rect paper() const;
  std::vector<PdfLayer> layers() const;
  PdfPage pdfPage() const;
  std::string title() const;

 private:
  /// Where the trim's top left corner of that miniature stands, and its cell begins.
  Point trimCorner(std::size_t index) const;
  void drawBare(Surface& surface) const;
  void drawHead(Surface& surface) const;
  void drawMiniature(Surface& surface, std::size_t index) const;
  void drawWords(Surface& surface, std::size_t index) const;

  std::vector<const RoughPicture*> pictures_;
  std::vector<const PageArt*> arts_;
  const Typesetter& typesetter_;
  ContactGrid grid_;
  std::vector<OrderNumbers> numbers_;
};

}  // namespace tw
