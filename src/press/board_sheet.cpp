#include "press/board_sheet.h"

#include <fmt/format.h>

#include "press/blue_surface.h"
#include "press/in_words.h"
#include "press/overlays.h"
#include "press/page_art.h"
#include "press/single_sheet.h"
#include "press/stroke_ink.h"

namespace tw {

namespace {

constexpr double kLiveDashMm = 2, kHairlineMm = 0.12;

class BoardArt final : public Sketch {
 public:
  BoardArt(const RoughPicture& picture, const BoardSheet& board, const Typesetter& typesetter)
      : picture_(picture), board_(board), typesetter_(typesetter) {}

  Rect bounds() const override { return picture_.sheet.bleedRect().outset(kSlugMm); }
  void drawOn(Surface& surface, double smallestMm) const override {
    BlueSurface blue(surface);
    drawFrames(blue);  // below the borders, which would look nibbled
    Surface& under = board_.inBlue ? static_cast<Surface&>(blue) : surface;
    if (board_.rough) {
      PageArt(picture_, typesetter_).drawOn(under, smallestMm);
    } else {
      for (const std::size_t i : paintingOrder(picture_.rough))
        drawPanelBorder(under, picture_.rough.panels[i], picture_.sheet.trimRect());
    }
    if (board_.strokes) drawStrokes(surface);
    drawTrimMarks(surface, picture_, typesetter_);
  }

 private:
  void drawStrokes(Surface& surface) const {
    for (const RoughPanel& panel : picture_.rough.panels)
      for (const PenStroke& stroke : panel.strokes)
        surface.fill(Path(outlineOf(stroke)), inkOf(stroke), FillRule::NonZero);
  }
  void drawFrames(Surface& surface) const {
    const Sheet& sheet = picture_.sheet;
    for (const Rect& frame : {sheet.trimRect(), sheet.bleedRect()})
      surface.line(Path(frame), {.ink = kBlack, .width = kHairlineMm});
    surface.line(Path(sheet.liveRect(picture_.rightHand)),
                 {.ink = kBlack, .width = kHairlineMm, .dashes = {kLiveDashMm, kLiveDashMm}});
  }

  const RoughPicture& picture_;
  const BoardSheet& board_;
  const Typesetter& typesetter_;
};

}  // namespace

Result<void> writeBoard(const std::filesystem::path& file, const RoughPicture& picture,
                        const BoardSheet& board, double dpi) {
  const Typesetter typesetter;
  const BoardArt art(picture, board, typesetter);
  const double scale = 1 / picture.sheet.reduction;
  const Rect print = art.bounds();
  const Rect paper{{0, 0}, {print.width() * scale, print.height() * scale}};
  SingleSheet sheet;
  sheet.title = fmt::format("{}, {}, board", picture.jobTitle, pageInWords(picture));
  sheet.paper = paper;
  sheet.draw = [&](Surface& surface) {
    surface.place(art, scale, Point{} - (print.min - Point{}) * scale);
  };
  return writeSingleSheet(file, sheet, typesetter, dpi);
}

}  // namespace tw
