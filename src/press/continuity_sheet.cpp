#include "press/continuity_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>

#include "press/inked_line.h"
#include "press/picture_mosaic.h"
#include "press/single_sheet.h"
#include "press/typesetter.h"

namespace tw {

namespace {

constexpr double kMargin = 10, kTitleHigh = 13, kNameWide = 46, kHeadHigh = 17;
constexpr double kLineMm = 3.1, kTextPt = 7.5, kSmallPt = 6.8, kNamePt = 11;
constexpr double kWordsHigh = 16, kGap = 2;
constexpr double kPictureMm = 20;  // longest side of a reference picture
constexpr Ink kQuiet{0.42, 0.42, 0.42}, kRule{0.72, 0.72, 0.72}, kPast{0.90, 0.90, 0.90};

/// One drawn figure, from its cell's top left corner.
class FigureArt final : public Sketch {
 public:
  FigureArt(const Drawing& drawing, double wide, double high)
      : drawing_(drawing), wide_(wide), high_(high) {}
  Rect bounds() const override { return {{0, 0}, {wide_, high_}}; }
  void drawOn(Surface& surface, double smallestMm) const override {
    surface.clip(Path(bounds()), FillRule::NonZero);
    drawPicture(surface, drawing_, smallestMm);
    surface.unclip();
  }

 private:
  const Drawing& drawing_;
  double wide_, high_;
};

class ChartArtist {
 public:
  ChartArtist(const ContinuitySheet& sheet, const Typesetter& typesetter)
      : sheet_(sheet), typesetter_(typesetter) {
    for (std::size_t c = 0; c < sheet.columns.size(); ++c)
      widths_.push_back(sheet.cellWide * static_cast<double>(mostFigures(c)));
    for (const ContinuityRow& row : sheet.rows)
      for (const ContinuityCell& cell : row.cells)
        for (const ContinuityCell::Figure& figure : cell.figures) {
          arts_.emplace_back(figure.whole, sheet.wholeWide, sheet.pictureHigh);
          arts_.emplace_back(figure.head, sheet.headWide, sheet.headHigh);
        }
    for (const std::string& finding : sheet.findings)
      for (std::string& line : wrapped(finding, paper().width() - 2 * kMargin - 8, kTextPt, 9))
        listed_.push_back(std::move(line)), numbered_.push_back(&finding);
  }

  Rect paper() const {
    double wide = 2 * kMargin + kNameWide;
    for (const double width : widths_) wide += width;
    const double list = listed_.empty() ? kLineMm : 8 + kLineMm * double(listed_.size());
    return {{0, 0},
            {std::max(wide, 180.0), 2 * kMargin + kTitleHigh + kHeadHigh +
                                        rowHigh() * double(sheet_.rows.size()) + list + 8}};
  }

  void draw(Surface& surface) const {
    drawStrands(surface);
    std::size_t next = 0;
    for (std::size_t r = 0; r < sheet_.rows.size(); ++r) {
      surface.openGroup(fmt::format("row-{}", r + 1), sheet_.rows[r].name, true);
      drawFigures(surface, r, next);
      drawPictures(surface, r);
      surface.closeGroup();
    }
    drawRules(surface);
    drawTitle(surface);
    for (std::size_t c = 0; c < sheet_.columns.size(); ++c) drawColumnHead(surface, c);
    for (std::size_t r = 0; r < sheet_.rows.size(); ++r) drawRowWords(surface, r);
    drawFindings(surface);
  }

 private:
  std::size_t mostFigures(std::size_t column) const {
    std::size_t most = 1;
    for (const ContinuityRow& row : sheet_.rows)
      if (column < row.cells.size()) most = std::max(most, row.cells[column].figures.size());
    return most;
  }
  double rowHigh() const { return sheet_.pictureHigh + kWordsHigh + kGap; }
  double top() const { return kMargin + kTitleHigh + kHeadHigh; }
  double columnX(std::size_t column) const {
    double x = kMargin + kNameWide;
    for (std::size_t c = 0; c < column; ++c) x += widths_[c];
    return x;
  }
  double rowY(std::size_t row) const { return top() + double(row) * rowHigh(); }

  void drawStrands(Surface& surface) const {
    for (std::size_t c = 0; c < sheet_.columns.size(); ++c)
      if (!sheet_.columns[c].strand.empty())
        surface.fill(Path(Rect{{columnX(c), top() - kHeadHigh},
                               {columnX(c) + widths_[c], rowY(sheet_.rows.size())}}),
                     kPast, FillRule::NonZero);
  }

  void drawFigures(Surface& surface, std::size_t r, std::size_t& next) const {
    const ContinuityRow& row = sheet_.rows[r];
    for (std::size_t c = 0; c < row.cells.size(); ++c) {
      const ContinuityCell& cell = row.cells[c];
      for (std::size_t i = 0; i < cell.figures.size(); ++i) {
        const Point at{columnX(c) + double(i) * sheet_.cellWide, rowY(r) + kGap / 2};
        surface.place(arts_[next++], 1, at + Vector{sheet_.cellWide - sheet_.wholeWide, 0});
        surface.place(arts_[next++], 1, at + Vector{1, 0.5});
      }
      if (cell.seen && cell.figures.empty()) drawAsBefore(surface, r, c);
    }
  }

  /// The look goes on: a line through the cell with an arrow at its end.
  void drawAsBefore(Surface& surface, std::size_t r, std::size_t c) const {
    const double y = rowY(r) + sheet_.pictureHigh / 2;
    const double x0 = columnX(c) + 4, x1 = columnX(c) + widths_[c] - 4;
    Path line;
    line.add({{x0, y}, {x1, y}}, false);
    surface.line(line, {.ink = kQuiet, .width = 0.3});
    Path head;
    head.add({{x1 - 2, y - 1}, {x1, y}, {x1 - 2, y + 1}}, false);
    surface.line(head, {.ink = kQuiet, .width = 0.3});
  }

  void drawPictures(Surface& surface, std::size_t r) const {
    double x = kMargin;
    int shown = 0;
    for (const std::string& png : sheet_.rows[r].pictures) {
      const auto mosaic = mosaicOf(png);
      if (!mosaic) continue;
      const double wide = kPictureMm * std::min(1.0, mosaic->aspect());
      const double high = wide / mosaic->aspect();
      if (x + wide > kMargin + kNameWide - 2) return;
      const Rect in{{x, rowY(r) + 21}, {x + wide, rowY(r) + 21 + high}};
      surface.openGroup(fmt::format("reference-{}-{}", r + 1, ++shown), "Reference", true);
      drawMosaic(surface, *mosaic, in);
      surface.line(Path(in), {.ink = kQuiet, .width = 0.15});
      surface.closeGroup();
      x += wide + 2;
    }
  }

  void drawRules(Surface& surface) const {
    const double right = columnX(sheet_.columns.size());
    const auto rule = [&](Point a, Point b, double width) {
      Path line;
      line.add({a, b}, false);
      surface.line(line, {.ink = kRule, .width = width});
    };
    for (std::size_t r = 0; r <= sheet_.rows.size(); ++r)
      rule({kMargin, rowY(r)}, {right, rowY(r)}, 0.25);
    for (std::size_t c = 0; c <= sheet_.columns.size(); ++c)
      rule({columnX(c), top() - kHeadHigh}, {columnX(c), rowY(sheet_.rows.size())}, 0.15);
  }

  void say(Surface& surface, const std::string& text, Point at, double room, double size = kTextPt,
           Face face = Face::Regular, Ink ink = kBlack) const {
    surface.type({.text = typesetter_.shortened(text, face, size, room),
                  .face = face,
                  .sizePt = size,
                  .at = at,
                  .ink = ink});
  }

  void drawTitle(Surface& surface) const {
    const double y = kMargin + 5;
    surface.type({.text = sheet_.title, .face = Face::Bold, .sizePt = 15, .at = {kMargin, y}});
    say(surface, sheet_.about, {kMargin, y + 4.6}, paper().width() - 2 * kMargin, 8, Face::Regular,
        kQuiet);
  }

  void drawColumnHead(Surface& surface, std::size_t c) const {
    const ContinuityColumn& column = sheet_.columns[c];
    Point at{columnX(c) + 1.2, top() - kHeadHigh + kLineMm};
    const double room = widths_[c] - 2.4;
    std::vector<std::string> lines = wrapped(column.heading, room, kTextPt, 2);
    say(surface, column.id + "  " + column.panels, at, room, kSmallPt, Face::Regular, kQuiet);
    for (const std::string& line : lines)
      say(surface, line, at = at + Vector{0, kLineMm}, room, kTextPt, Face::Bold);
    if (!column.strand.empty())
      say(surface, column.strand, at + Vector{0, kLineMm}, room, kSmallPt, Face::Italic);
  }

  void drawRowWords(Surface& surface, std::size_t r) const {
    const ContinuityRow& row = sheet_.rows[r];
    Point at{kMargin, rowY(r) + 5};
    say(surface, row.name, at, kNameWide - 2, kNamePt, Face::Bold);
    at.y += 1;
    for (const std::string& line : wrapped(row.note, kNameWide - 3, kSmallPt, 4))
      say(surface, line, at = at + Vector{0, kLineMm}, kNameWide - 2, kSmallPt);
    at = {kMargin, rowY(r) + 24.5 + (row.pictures.empty() ? -4 : kPictureMm)};
    for (const std::string& caption : row.captions) {
      if (at.y > rowY(r) + rowHigh() - 1) break;
      say(surface, caption, at, kNameWide - 3, kSmallPt, Face::Italic, kQuiet);
      at.y += kLineMm;
    }
    for (std::size_t c = 0; c < row.cells.size(); ++c) drawCellWords(surface, r, c);
  }

  void drawCellWords(Surface& surface, std::size_t r, std::size_t c) const {
    const ContinuityCell& cell = sheet_.rows[r].cells[c];
    const double room = widths_[c] - 2.4;
    Point at{columnX(c) + 1.2, rowY(r) + sheet_.pictureHigh + kGap};
    if (cell.seen && cell.figures.empty())
      say(surface, "as before", {columnX(c) + 4, rowY(r) + sheet_.pictureHigh / 2 - 1.2}, room,
          kSmallPt, Face::Italic, kQuiet);
    for (const std::string& line : cell.words) {
      if (at.y > rowY(r) + rowHigh() - 0.5) break;
      say(surface, line, at, room, kSmallPt);
      at.y += kLineMm;
    }
    double x = columnX(c) + widths_[c] - 3.6;
    for (const int number : cell.findings) {
      drawBadge(surface, {x, rowY(r) + 3.8}, number);
      x -= 5;
    }
  }

  void drawBadge(Surface& surface, Point at, int number) const {
    const double half = 2.1;
    Path box;
    box.add({{at.x, at.y - half - 0.7},
             {at.x + half, at.y + half - 0.7},
             {at.x - half, at.y + half - 0.7}},
            true);
    surface.fill(box, kPaper, FillRule::NonZero);
    surface.line(box, {.width = 0.3});
    surface.type({.text = std::to_string(number),
                  .face = Face::Bold,
                  .sizePt = 5.5,
                  .at = {at.x, at.y + 0.95},
                  .align = Align::Centre});
  }

  void drawFindings(Surface& surface) const {
    Point at{kMargin, rowY(sheet_.rows.size()) + 6};
    if (listed_.empty()) {
      say(surface, "Nothing is found against the continuity.", at, 150, kTextPt, Face::Italic);
    }
    int number = 0;
    for (std::size_t i = 0; i < listed_.size(); ++i) {
      const bool first = i == 0 || numbered_[i] != numbered_[i - 1];
      if (first) say(surface, fmt::format("{}", ++number), at, 8, kTextPt, Face::Bold);
      say(surface, listed_[i], at + Vector{6, 0}, paper().width() - 2 * kMargin - 6);
      at.y += kLineMm;
    }
    at.y = paper().max.y - kMargin;
    say(surface,
        "Left and right are the character's own: a figure that faces you has its left on your "
        "right. Levels: common practice, no source.",
        at, paper().width() - 2 * kMargin, kSmallPt, Face::Regular, kQuiet);
  }

  std::vector<std::string> wrapped(const std::string& text, double room, double size,
                                   std::size_t most) const {
    std::vector<std::string> lines;
    std::istringstream words(text);
    std::string word;
    while (words >> word) {
      const std::string longer = lines.empty() ? word : lines.back() + " " + word;
      const bool fits =
          !lines.empty() && typesetter_.shortened(longer, Face::Bold, size, room) == longer;
      if (fits || lines.size() == most)
        lines.back() = longer;
      else
        lines.push_back(word);
    }
    return lines;
  }

  const ContinuitySheet& sheet_;
  const Typesetter& typesetter_;
  std::vector<double> widths_;
  std::vector<FigureArt> arts_;
  std::vector<std::string> listed_;
  std::vector<const std::string*> numbered_;
};

}  // namespace

Result<void> writeContinuitySheet(const std::filesystem::path& file, const ContinuitySheet& sheet,
                                  double dpi) {
  const Typesetter typesetter;
  const ChartArtist artist(sheet, typesetter);
  return writeSingleSheet(
      file, {sheet.title, artist.paper(), [&](Surface& surface) { artist.draw(surface); }},
      typesetter, dpi);
}

}  // namespace tw
