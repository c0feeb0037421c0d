#include "press/proof.h"

#include <fmt/format.h>

#include <memory>

#include "press/contact_sheet.h"
#include "press/in_words.h"
#include "press/pdf_book.h"
#include "press/png_surface.h"
#include "press/rough_sheet.h"
#include "press/single_sheet.h"
#include "press/svg_surface.h"
#include "press/typesetter.h"

namespace tw {

namespace {

constexpr double kContactDpi = 200;

/// Everything that a file of several roughs places; keeps addresses stable.
class Portfolio {
 public:
  explicit Portfolio(const Typesetter& typesetter) : typesetter_(typesetter) {}

  const RoughSheet& add(const RoughPicture& picture) {
    sheets_.push_back(std::make_unique<RoughSheet>(picture, typesetter_));
    return *sheets_.back();
  }

  const ContactSheet& addContact(const std::vector<const RoughPicture*>& pictures,
                                 const std::vector<const PageArt*>& arts) {
    contacts_.push_back(std::make_unique<ContactSheet>(pictures, arts, typesetter_));
    return *contacts_.back();
  }

 private:
  const Typesetter& typesetter_;
  std::vector<std::unique_ptr<RoughSheet>> sheets_;
  std::vector<std::unique_ptr<ContactSheet>> contacts_;
};

Result<void> nothingToPrint() {
  return badInput("There is no rough to print.", {}, "Make roughs for the page first.");
}

/// The contact sheet of one page, then a sheet per rough.
void addPageTo(PdfBook& book, Portfolio& portfolio, const std::vector<RoughPicture>& roughs) {
  if (roughs.empty()) return;
  std::vector<const RoughPicture*> pictures;
  std::vector<const PageArt*> arts;
  std::vector<PdfPage> sheets;
  for (const RoughPicture& picture : roughs) {
    const RoughSheet& sheet = portfolio.add(picture);
    pictures.push_back(&picture);
    arts.push_back(&sheet.art());
    sheets.push_back(sheet.pdfPage({.order = true, .leads = true, .live = true, .card = true}));
    sheets.back().bookmark = "Rough " + picture.rough.name;
    sheets.back().depth = 1;
  }
  PdfPage contact = portfolio.addContact(pictures, arts).pdfPage();
  contact.bookmark = pageInWords(roughs.front());
  contact.bookmark.front() = 'P';
  book.add(contact);
  for (const PdfPage& sheet : sheets) book.add(sheet);
}

}  // namespace

Result<void> writePdf(const std::filesystem::path& file, const std::vector<RoughPicture>& pages,
                      const Overlays& overlays) {
  if (pages.empty()) return nothingToPrint();
  const Typesetter typesetter;
  Portfolio portfolio(typesetter);
  PdfBook book(typesetter, RoughSheet(pages.front(), typesetter).title());
  for (const RoughPicture& picture : pages) book.add(portfolio.add(picture).pdfPage(overlays));
  return save(file, book.finished());
}

Result<void> writeSvg(const std::filesystem::path& file, const RoughPicture& page,
                      const Overlays& overlays) {
  const Typesetter typesetter;
  const RoughSheet sheet(page, typesetter);
  SvgSurface surface(typesetter, sheet.paper(overlays), sheet.title());
  sheet.drawGroups(surface, overlays);
  return save(file, std::move(surface).finished());
}

Result<void> writePng(const std::filesystem::path& file, const RoughPicture& page,
                      const Overlays& overlays, double dpi) {
  const Typesetter typesetter;
  const RoughSheet sheet(page, typesetter);
  PngSurface surface(typesetter, sheet.paper(overlays), dpi);
  sheet.drawShown(surface, overlays);
  return save(file, surface.finished());
}

Result<void> writeContactSheet(const std::filesystem::path& file,
                               const std::vector<RoughPicture>& roughs) {
  if (roughs.empty()) return nothingToPrint();
  const Typesetter typesetter;
  Portfolio portfolio(typesetter);
  std::vector<const RoughPicture*> pictures;
  std::vector<const PageArt*> arts;
  for (const RoughPicture& picture : roughs) {
    pictures.push_back(&picture);
    arts.push_back(&portfolio.add(picture).art());
  }
  const ContactSheet sheet(pictures, arts, typesetter);
  const std::filesystem::path kind = file.extension();
  if (kind == ".pdf") {
    PdfBook book(typesetter, sheet.title());
    book.add(sheet.pdfPage());
    return save(file, book.finished());
  }
  if (kind == ".png") {
    PngSurface surface(typesetter, sheet.paper(), kContactDpi);
    for (const PdfLayer& layer : sheet.layers()) layer.draw(surface);
    return save(file, surface.finished());
  }
  if (kind != ".svg")
    return badInput(fmt::format("\"{}\" names no kind of file that can be written here.",
                                file.filename().string()),
                    {}, "End the name in .pdf, .svg or .png.");
  SvgSurface surface(typesetter, sheet.paper(), sheet.title());
  for (const PdfLayer& layer : sheet.layers()) {
    surface.openGroup(layer.title.empty() ? "roughs" : "panel-order",
                      layer.title.empty() ? "Roughs" : layer.title, true);
    layer.draw(surface);
    surface.closeGroup();
  }
  return save(file, std::move(surface).finished());
}

Result<void> writeProof(const std::filesystem::path& file,
                        const std::vector<std::vector<RoughPicture>>& pages) {
  const Typesetter typesetter;
  Portfolio portfolio(typesetter);
  std::string title;
  for (const std::vector<RoughPicture>& roughs : pages)
    if (title.empty() && !roughs.empty()) title = roughs.front().jobTitle + ", proof";
  if (title.empty()) return nothingToPrint();
  PdfBook book(typesetter, title);
  for (const std::vector<RoughPicture>& roughs : pages) addPageTo(book, portfolio, roughs);
  return save(file, book.finished());
}

}  // namespace tw
