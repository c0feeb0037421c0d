#include "press/fit_art.h"

#include <algorithm>

#include "base/files.h"
#include "press/inked_line.h"
#include "press/png_surface.h"
#include "press/surface.h"
#include "press/svg_surface.h"
#include "press/typesetter.h"

namespace tw {

namespace {

// As wide as A4 on its side and at most as high.
constexpr double kPaperWide = 297, kPaperHigh = 210;
constexpr double kMargin = 10, kHead = 16, kWords = 24, kBetween = 9;
constexpr double kTitlePt = 15, kAboutPt = 8.5, kHeadingPt = 11, kTextPt = 7.5, kLineMm = 3.3;
constexpr double kDpi = 200;
constexpr Ink kQuiet{0.35, 0.35, 0.35};
const Ink kOwn = greyOf(0.05), kEntered = greyOf(0.16);

/// The page in outline with the figure on it.
class FitPage final : public Sketch {
 public:
  FitPage(const FitPicture& picture, const FitColumn& column)
      : picture_(picture), column_(column) {}
  Rect bounds() const override { return picture_.sheet.trimRect(); }

  void drawOn(Surface& surface, double smallestMm) const override {
    for (std::size_t i = 0; i < picture_.panels.size(); ++i) drawPanel(surface, i);
    for (const Polygon& face : picture_.faces)
      surface.line(Path(face), {.ink = greyOf(0.55), .width = 0.4});
    for (const Polygon& balloon : picture_.balloons) {
      surface.fill(Path(balloon), kPaper, FillRule::NonZero);
      surface.line(Path(balloon), {.ink = greyOf(0.55), .width = 0.3});
    }
    if (column_.placed) drawFigure(surface, smallestMm);
  }

 private:
  void drawPanel(Surface& surface, std::size_t i) const {
    const bool own = i == picture_.own;
    const bool entered =
        std::find(column_.entered.begin(), column_.entered.end(), i) != column_.entered.end();
    const Path outline(picture_.panels[i]);
    surface.fill(outline, own ? kOwn : entered ? kEntered : kPaper, FillRule::NonZero);
    surface.line(outline, {.ink = own ? kBlack : greyOf(0.5), .width = own ? 0.9 : 0.45});
  }

  void drawFigure(Surface& surface, double smallestMm) const {
    const Path outline(column_.silhouette);
    const bool cut = !column_.shownIn.empty();
    if (cut) {
      surface.line(outline, {.ink = greyOf(0.45), .width = 0.35, .dashes = {1.6, 1.2}});
      surface.clip(Path(column_.shownIn), FillRule::EvenOdd);
    }
    surface.fill(outline, kPaper, FillRule::EvenOdd);
    surface.clip(Path(column_.drawing.clip), FillRule::EvenOdd);
    drawPicture(surface, column_.drawing, smallestMm);
    surface.unclip();
    if (!cut) return;
    surface.unclip();
    drawOwnBorder(surface);
  }

  /// Over what it cuts, but not over what stands above it.
  void drawOwnBorder(Surface& surface) const {
    Path free(picture_.sheet.trimRect());
    for (const Polygon& shape : column_.above) free.add(shape.points, true);
    surface.clip(free, FillRule::EvenOdd);
    surface.line(Path(picture_.panels[picture_.own]), {.ink = kBlack, .width = 0.9});
    surface.unclip();
  }

  const FitPicture& picture_;
  const FitColumn& column_;
};

class FitSheet {
 public:
  FitSheet(const FitPicture& picture, const Typesetter& typesetter)
      : picture_(picture), typesetter_(typesetter) {
    for (const FitColumn& column : picture.columns) pages_.emplace_back(picture, column);
  }

  Rect paper() const {
    const double high = 2 * kMargin + kHead + kWords + picture_.sheet.trimHeight * scale();
    return {{0, 0}, {kPaperWide, high}};
  }

  void drawOn(Surface& surface) const {
    surface.fill(Path(paper()), kPaper, FillRule::NonZero);
    drawHead(surface);
    for (std::size_t i = 0; i < pages_.size(); ++i) drawColumn(surface, i);
  }

 private:
  double columnWidth() const {
    const auto n = static_cast<double>(std::max<std::size_t>(1, pages_.size()));
    return (kPaperWide - 2 * kMargin - (n - 1) * kBetween) / n;
  }
  double scale() const {
    const double high = kPaperHigh - 2 * kMargin - kHead - kWords;
    return std::min(
        {1.0, columnWidth() / picture_.sheet.trimWidth, high / picture_.sheet.trimHeight});
  }

  void drawHead(Surface& surface) const {
    const double y = kMargin + 5, right = kPaperWide - kMargin;
    surface.type(
        {.text = picture_.title, .face = Face::Bold, .sizePt = kTitlePt, .at = {kMargin, y}});
    surface.type({.text = picture_.about,
                  .sizePt = kAboutPt,
                  .at = {right, y},
                  .align = Align::Right,
                  .ink = kQuiet});
    Path rule;
    rule.add({{kMargin, y + 2.6}, {right, y + 2.6}}, false);
    surface.line(rule, {.ink = kBlack, .width = 0.25});
  }

  void drawColumn(Surface& surface, std::size_t i) const {
    const Sheet& sheet = picture_.sheet;
    const double wide = columnWidth(), scale = this->scale();
    const double left = kMargin + static_cast<double>(i) * (wide + kBetween);
    const Point corner{left + (wide - sheet.trimWidth * scale) / 2, kMargin + kHead};
    const Rect page{corner, corner + Vector{sheet.trimWidth, sheet.trimHeight} * scale};
    surface.clip(Path(page), FillRule::NonZero);
    surface.place(pages_[i], scale, corner);
    surface.unclip();
    surface.line(Path(page), {.ink = greyOf(0.45), .width = 0.15});
    drawWords(surface, picture_.columns[i], {left, page.max.y + 6}, wide);
  }

  void drawWords(Surface& surface, const FitColumn& column, Point at, double wide) const {
    surface.type({.text = column.heading, .face = Face::Bold, .sizePt = kHeadingPt, .at = at});
    surface.type({.text = column.number,
                  .face = Face::Bold,
                  .sizePt = kHeadingPt,
                  .at = {at.x + wide, at.y},
                  .align = Align::Right});
    double y = at.y + 1.5;
    for (const std::string& line :
         typesetter_.broken(column.sentence, Face::Regular, kTextPt, wide)) {
      y += kLineMm;
      surface.type({.text = line, .sizePt = kTextPt, .at = {at.x, y}});
    }
  }

  const FitPicture& picture_;
  const Typesetter& typesetter_;
  std::vector<FitPage> pages_;
};

}  // namespace

Result<void> writeFitPng(const std::filesystem::path& file, const FitPicture& picture) {
  const Typesetter typesetter;
  const FitSheet sheet(picture, typesetter);
  PngSurface surface(typesetter, sheet.paper(), kDpi);
  sheet.drawOn(surface);
  const Result<std::string> bytes = surface.finished();
  if (!bytes) return tl::unexpected(bytes.error());
  return writeFileAtomically(file, *bytes);
}

Result<void> writeFitSvg(const std::filesystem::path& file, const FitPicture& picture) {
  const Typesetter typesetter;
  const FitSheet sheet(picture, typesetter);
  SvgSurface surface(typesetter, sheet.paper(), picture.title);
  sheet.drawOn(surface);
  return writeFileAtomically(file, std::move(surface).finished());
}

}  // namespace tw
