#include "press/variant_sheet.h"

#include <fmt/format.h>

#include <algorithm>

#include "geometry/polygon.h"
#include "press/inked_line.h"
#include "press/single_sheet.h"
#include "press/typesetter.h"

namespace tw {

namespace {

constexpr Rect kPaper4{{0, 0}, {297, 210}};
constexpr double kMargin = 10, kHead = 13, kFoot = 7, kBetween = 6;
constexpr double kNamePt = 8, kFactPt = 6.5, kLineMm = 2.8, kNumberMm = 6;
constexpr double kDpi = 200, kBorderMm = 0.35;
constexpr std::size_t kNameLines = 2;
constexpr Ink kQuiet{0.35, 0.35, 0.35};

/// The panel alone, to be placed at any scale.
class PanelSketch final : public Sketch {
 public:
  PanelSketch(const Drawing& drawing, const Polygon& outline)
      : drawing_(drawing), outline_(outline) {}

  Rect bounds() const override { return tw::bounds(outline_); }
  void drawOn(Surface& surface, double smallestMm) const override {
    surface.clip(Path(outline_), FillRule::EvenOdd);
    drawPicture(surface, drawing_, smallestMm);
    surface.unclip();
  }

 private:
  const Drawing& drawing_;
  const Polygon& outline_;
};

class Layout4 {
 public:
  explicit Layout4(const VariantSheet& sheet) : panel_(bounds(sheet.outline)) {
    std::size_t facts = 0;
    for (const SheetCell& cell : sheet.cells) facts = std::max(facts, cell.facts.size());
    words_ = 2 + 3.2 * static_cast<double>(kNameLines) + kLineMm * static_cast<double>(facts);
    const int n = std::max(1, static_cast<int>(sheet.cells.size()));
    for (int columns = 1; columns <= n; ++columns) {
      const int rows = (n + columns - 1) / columns;
      const Vector cell = cellOf(columns, rows);
      const double fits = std::min(cell.x / panel_.width(), (cell.y - words_) / panel_.height());
      if (fits > scale + 1e-9) scale = fits, columns_ = columns, rows_ = rows;
    }
  }

  /// Where the picture of that cell stands.
  Rect picture(std::size_t i) const {
    const Vector cell = cellOf(columns_, rows_);
    const auto column = static_cast<int>(i) % columns_, row = static_cast<int>(i) / columns_;
    const Point corner{kMargin + column * (cell.x + kBetween),
                       kMargin + kHead + row * (cell.y + kBetween)};
    return {corner, corner + Vector{panel_.width(), panel_.height()} * scale};
  }
  double wordsWidth() const { return cellOf(columns_, rows_).x; }

  double scale = 0;

 private:
  static Vector cellOf(int columns, int rows) {
    const double width = kPaper4.width() - 2 * kMargin;
    const double height = kPaper4.height() - 2 * kMargin - kHead - kFoot;
    return {(width - (columns - 1) * kBetween) / columns, (height - (rows - 1) * kBetween) / rows};
  }

  Rect panel_;
  double words_ = 0;
  int columns_ = 1, rows_ = 1;
};

class SheetArtist {
 public:
  SheetArtist(const VariantSheet& sheet, const Typesetter& typesetter)
      : sheet_(sheet), typesetter_(typesetter), layout_(sheet) {}

  void draw(Surface& surface) const {
    drawHead(surface);
    for (std::size_t i = 0; i < sheet_.cells.size(); ++i) {
      drawPicture(surface, i);
      drawWords(surface, i);
    }
  }

 private:
  void drawHead(Surface& surface) const {
    const double y = kMargin + 5;
    surface.fill(Path(kPaper4), kPaper, FillRule::NonZero);
    surface.type({.text = sheet_.title, .face = Face::Bold, .sizePt = 12, .at = {kMargin, y}});
    surface.type({.text = sheet_.about,
                  .sizePt = 8.5,
                  .at = {kPaper4.max.x - kMargin, y},
                  .align = Align::Right});
    Path rule;
    rule.add({{kMargin, y + 2.6}, {kPaper4.max.x - kMargin, y + 2.6}}, false);
    surface.line(rule, {.ink = kBlack, .width = 0.25});
    surface.type({.text = sheet_.foot,
                  .sizePt = kFactPt,
                  .at = {kMargin, kPaper4.max.y - kMargin},
                  .ink = kQuiet});
  }

  void drawPicture(Surface& surface, std::size_t i) const {
    const PanelSketch sketch(sheet_.cells[i].drawing, sheet_.outline);
    const Rect at = layout_.picture(i);
    const Point corner = sketch.bounds().min;
    const Point origin = at.min - Vector{corner.x, corner.y} * layout_.scale;
    surface.place(sketch, layout_.scale, origin);
    Path border;
    std::vector<Point> points;
    for (const Point p : sheet_.outline.points)
      points.push_back(origin + (p - Point{}) * layout_.scale);
    border.add(points, true);
    surface.line(border, {.ink = kBlack,
                          .width = sheet_.cells[i].number.empty() ? 2 * kBorderMm : kBorderMm});
  }

  void drawWords(Surface& surface, std::size_t i) const {
    const SheetCell& cell = sheet_.cells[i];
    const Rect at = layout_.picture(i);
    const double indent = cell.number.empty() ? 0 : kNumberMm;
    double y = at.max.y + 4.2;
    if (!cell.number.empty())
      surface.type(
          {.text = cell.number, .face = Face::Bold, .sizePt = 13, .at = {at.min.x, y + 0.6}});
    const double width = layout_.wordsWidth() - indent;
    std::vector<std::string> name = typesetter_.broken(cell.name, Face::Bold, kNamePt, width);
    if (name.size() > kNameLines) name.resize(kNameLines);
    for (const std::string& line : name) {
      surface.type(
          {.text = line, .face = Face::Bold, .sizePt = kNamePt, .at = {at.min.x + indent, y}});
      y += 3.2;
    }
    for (const std::string& fact : cell.facts) {
      surface.type({.text = typesetter_.shortened(fact, Face::Regular, kFactPt, width),
                    .sizePt = kFactPt,
                    .at = {at.min.x + indent, y},
                    .ink = kQuiet});
      y += kLineMm;
    }
  }

  const VariantSheet& sheet_;
  const Typesetter& typesetter_;
  Layout4 layout_;
};

}  // namespace

Result<void> writeVariantSheet(const std::filesystem::path& file, const VariantSheet& sheet) {
  ensure(!sheet.cells.empty(), "a sheet of variants shows at least the panel as it is");
  const Typesetter typesetter;
  const SheetArtist artist(sheet, typesetter);
  return writeSingleSheet(file,
                          {sheet.title, kPaper4, [&](Surface& surface) { artist.draw(surface); }},
                          typesetter, kDpi);
}

}  // namespace tw
