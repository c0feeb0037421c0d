#include "press/single_sheet.h"

#include <fmt/format.h>

#include "base/files.h"
#include "press/pdf_book.h"
#include "press/png_surface.h"
#include "press/svg_surface.h"

namespace tw {

Result<void> writeSingleSheet(const std::filesystem::path& file, const SingleSheet& sheet,
                              const Typesetter& typesetter, double dpi) {
  const std::filesystem::path kind = file.extension();
  if (kind == ".png") {
    PngSurface surface(typesetter, sheet.paper, dpi);
    sheet.draw(surface);
    return save(file, surface.finished());
  }
  if (kind == ".svg") {
    SvgSurface surface(typesetter, sheet.paper, sheet.title);
    sheet.draw(surface);
    return save(file, std::move(surface).finished());
  }
  if (kind != ".pdf")
    return badInput(fmt::format("\"{}\" names no kind of file that can be written here.",
                                file.filename().string()),
                    {}, "End the name in .pdf, .svg or .png.");
  PdfBook book(typesetter, sheet.title);
  book.add({.media = sheet.paper,
            .bleed = sheet.paper,
            .trim = sheet.paper,
            .bookmark = "",
            .layers = {{"", true, sheet.draw}}});
  return save(file, book.finished());
}

Result<void> save(const std::filesystem::path& file, const Result<std::string>& bytes) {
  if (!bytes) return tl::unexpected(bytes.error());
  return writeFileAtomically(file, *bytes);
}

}  // namespace tw
