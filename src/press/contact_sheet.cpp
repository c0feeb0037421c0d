#include "press/contact_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/result.h"
#include "press/in_words.h"
#include "press/score_card.h"

namespace tw {

namespace {

// A4 on its side; nothing on it is set smaller than 6.5 pt.
constexpr Rect kPaper4{{0, 0}, {297, 210}};
constexpr double kMargin = 10, kHead = 14, kFoot = 6;
constexpr double kBetween = 8;                       // between cells
constexpr double kWordsWidth = 32, kWordsGap = 3.5;  // words beside the miniature
constexpr double kWordsHeight = 25;                  // words below it
constexpr double kLargest = 0.6;
constexpr double kTextPt = 7, kSmallPt = 6.5, kLineMm = 2.95;
constexpr std::size_t kReasons = 2;
constexpr Ink kQuiet{0.35, 0.35, 0.35};

Rect field() {
  return {{kMargin, kMargin + kHead}, {kPaper4.max.x - kMargin, kPaper4.max.y - kMargin - kFoot}};
}

Vector cellSize(int columns, int rows) {
  const Rect room = field();
  return {(room.width() - (columns - 1) * kBetween) / columns,
          (room.height() - (rows - 1) * kBetween) / rows};
}

double scaleIn(Vector cell, bool beside, double width, double height) {
  const double roomX = cell.x - (beside ? kWordsWidth + kWordsGap : 0);
  const double roomY = cell.y - (beside ? 0 : kWordsHeight);
  return std::max(0.0, std::min({kLargest, roomX / width, roomY / height}));
}

/// What is said about one rough, from the top of its column downward.
class WordColumn {
 public:
  WordColumn(Surface& surface, const Rect& column, const Typesetter& typesetter)
      : surface_(surface), column_(column), typesetter_(typesetter), y_(column.min.y) {}

  void tell(const Rough& rough, bool narrow) {
    name(rough);
    facts(rough, narrow);
    const std::vector<CardLine> lines = dearestFirst(rough.card);
    for (std::size_t i = 0; i < std::min(kReasons, lines.size()); ++i) {
      y_ += 1.2;
      say(costInWords(lines[i].cost) + "  " + lines[i].rule, Face::Bold, kBlack, 1);
      say(lines[i].reason, Face::Regular, kBlack, narrow ? 5 : 2);
    }
  }

 private:
  void name(const Rough& rough) {
    y_ += 5;
    const Point at{column_.min.x, y_};
    const double width = typesetter_.widthOf(rough.name, Face::Bold, 19);
    surface_.type({.text = rough.name, .face = Face::Bold, .sizePt = 19, .at = at});
    surface_.type({.text = costInWords(rough.score),
                   .face = Face::Bold,
                   .sizePt = 11,
                   .at = at + Vector{width + 2.2, 0}});
    y_ += 1;
  }

  void facts(const Rough& rough, bool narrow) {
    const std::string shape = fmt::format("{}, {} panels", rough.treatment, rough.panels.size());
    const std::string order = fmt::format("order kept by {:.0f} %", rough.reading.followed * 100);
    const std::string leads = fmt::format("leads hand on {:.0f} %", rough.reading.handedOn * 100);
    if (!narrow) return say(shape + ", " + order + ", " + leads, Face::Regular, kQuiet, 2);
    say(shape, Face::Regular, kBlack, 1);
    say(rough.arrangement, Face::Regular, kQuiet, 1);
    say(order, Face::Regular, kQuiet, 1);
    say(leads, Face::Regular, kQuiet, 1);
  }

  /// At most that many lines; the last one ends in an ellipsis when there would be more.
  void say(const std::string& text, Face face, Ink ink, std::size_t most) {
    if (text.empty()) return;
    std::vector<std::string> lines = typesetter_.broken(text, face, kTextPt, column_.width());
    if (lines.size() > most) {
      for (std::size_t i = most; i < lines.size(); ++i) lines[most - 1] += " " + lines[i];
      lines[most - 1] = typesetter_.shortened(lines[most - 1], face, kTextPt, column_.width());
      lines.resize(most);
    }
    for (const std::string& line : lines) {
      if (y_ + kLineMm > column_.max.y) return;
      y_ += kLineMm;
      surface_.type(
          {.text = line, .face = face, .sizePt = kTextPt, .at = {column_.min.x, y_}, .ink = ink});
    }
  }

  Surface& surface_;
  Rect column_;
  const Typesetter& typesetter_;
  double y_;
};

}  // namespace

ContactGrid contactGrid(std::size_t roughs, double trimWidth, double trimHeight) {
  ContactGrid best{1, 1, 0, false};
  const int n = std::max(1, static_cast<int>(roughs));
  for (int columns = 1; columns <= n; ++columns)
    for (const bool beside : {true, false}) {
      const int rows = (n + columns - 1) / columns;
      const double scale = scaleIn(cellSize(columns, rows), beside, trimWidth, trimHeight);
      if (scale > best.scale + 1e-9) best = {columns, rows, scale, beside};
    }
  return best;
}

ContactSheet::ContactSheet(const std::vector<const RoughPicture*>& pictures,
                           const std::vector<const PageArt*>& arts, const Typesetter& typesetter)
    : pictures_(pictures), arts_(arts), typesetter_(typesetter) {
  ensure(!pictures.empty() && pictures.size() == arts.size(), "a contact sheet shows roughs");
  const Sheet& sheet = pictures.front()->sheet;
  grid_ = contactGrid(pictures.size(), sheet.trimWidth, sheet.trimHeight);
  for (const RoughPicture* picture : pictures_)
    numbers_.emplace_back(*picture, typesetter, 0.72 / grid_.scale);
}

Rect ContactSheet::paper() const {
  return kPaper4;
}

std::string ContactSheet::title() const {
  return fmt::format("{}, {}, roughs", pictures_.front()->jobTitle,
                     pageInWords(*pictures_.front()));
}

Point ContactSheet::trimCorner(std::size_t index) const {
  const Vector cell = cellSize(grid_.columns, grid_.rows);
  const int column = static_cast<int>(index) % grid_.columns;
  const int row = static_cast<int>(index) / grid_.columns;
  return field().min + Vector{column * (cell.x + kBetween), row * (cell.y + kBetween)};
}

std::vector<PdfLayer> ContactSheet::layers() const {
  return {{"", true, [this](Surface& surface) { drawBare(surface); }},
          {"Panel order", true, [this](Surface& surface) {
             for (std::size_t i = 0; i < pictures_.size(); ++i)
               surface.place(numbers_[i], grid_.scale, trimCorner(i));
           }}};
}

PdfPage ContactSheet::pdfPage() const {
  return {.media = kPaper4, .bleed = kPaper4, .trim = kPaper4, .bookmark = "", .layers = layers()};
}

void ContactSheet::drawBare(Surface& surface) const {
  for (std::size_t i = 0; i < pictures_.size(); ++i) drawMiniature(surface, i);
  drawHead(surface);
  for (std::size_t i = 0; i < pictures_.size(); ++i) drawWords(surface, i);
}

void ContactSheet::drawHead(Surface& surface) const {
  const RoughPicture& first = *pictures_.front();
  const double left = kMargin, right = kPaper4.max.x - kMargin, y = kMargin + 4.5;
  const std::string about =
      fmt::format("{} · {} roughs · {}", pageInWords(first), pictures_.size(), first.sheet.title);
  const double room = right - left - typesetter_.widthOf(about, Face::Regular, 8.5) - 6;
  surface.type({.text = typesetter_.shortened(first.jobTitle, Face::Bold, 15, room),
                .face = Face::Bold,
                .sizePt = 15,
                .at = {left, y}});
  surface.type({.text = about, .sizePt = 8.5, .at = {right, y}, .align = Align::Right});
  Path rule;
  rule.add({{left, y + 2.6}, {right, y + 2.6}}, false);
  surface.line(rule, {.ink = kBlack, .width = 0.25});
  surface.type({.text = "The number after each letter is the rough's total cost: less is better.",
                .sizePt = kSmallPt,
                .at = {left, kPaper4.max.y - kMargin},
                .ink = kQuiet});
}

void ContactSheet::drawMiniature(Surface& surface, std::size_t index) const {
  const Sheet& sheet = pictures_[index]->sheet;
  const Point corner = trimCorner(index);
  const Rect page{corner,
                  corner + Vector{sheet.trimWidth * grid_.scale, sheet.trimHeight * grid_.scale}};
  surface.clip(Path(page), FillRule::NonZero);
  surface.place(*arts_[index], grid_.scale, corner);
  surface.unclip();
  surface.line(Path(page), {.ink = greyOf(0.45), .width = 0.12});
}

void ContactSheet::drawWords(Surface& surface, std::size_t index) const {
  const RoughPicture& picture = *pictures_[index];
  const Vector cell = cellSize(grid_.columns, grid_.rows);
  const Vector page{picture.sheet.trimWidth * grid_.scale, picture.sheet.trimHeight * grid_.scale};
  const Point corner = trimCorner(index);
  Rect column{corner + Vector{0, page.y + 1.5}, corner + Vector{page.x, cell.y + 0.5}};
  if (grid_.wordsBeside) {
    const double left = page.x + kWordsGap;
    column = {corner + Vector{left, 0},
              corner + Vector{std::min(cell.x, left + kWordsWidth + 10), cell.y + 0.5}};
  }
  WordColumn(surface, column, typesetter_).tell(picture.rough, grid_.wordsBeside);
}

}  // namespace tw
