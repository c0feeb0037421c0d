#include "press/pose_sheet.h"

#include <fmt/format.h>

#include "press/inked_line.h"
#include "press/overlays.h"
#include "press/single_sheet.h"
#include "press/typesetter.h"

namespace tw {

namespace {

constexpr double kMargin = 8, kHead = 12, kFoot = 5;
constexpr double kWordsHigh = 8.6, kLineMm = 2.7;
constexpr double kNamePt = 8, kTextPt = 6.5;
constexpr Ink kQuiet{0.35, 0.35, 0.35};

/// One pose, from the cell's top left corner.
class PoseArt final : public Sketch {
 public:
  PoseArt(const PoseCell& cell, const PoseSheet& sheet) : cell_(cell), sheet_(sheet) {}

  Rect bounds() const override { return {{0, 0}, {sheet_.cellWide, sheet_.pictureHigh}}; }

  void drawOn(Surface& surface, double smallestMm) const override {
    surface.clip(Path(bounds()), FillRule::NonZero);
    drawPicture(surface, cell_.drawing, smallestMm);
    for (const std::vector<Point>& action : cell_.actions) {
      Path line;
      line.add(action, false);
      surface.line(line, {.ink = kLeadInk, .width = 0.22, .dashes = {1.4, 0.8}});
    }
    surface.unclip();
  }

 private:
  const PoseCell& cell_;
  const PoseSheet& sheet_;
};

class SheetArtist {
 public:
  SheetArtist(const PoseSheet& sheet, const Typesetter& typesetter)
      : sheet_(sheet), typesetter_(typesetter) {
    for (const PoseCell& cell : sheet.cells) arts_.emplace_back(cell, sheet);
  }

  Rect paper() const {
    const auto n = static_cast<int>(sheet_.cells.size());
    const int rows = (n + sheet_.columns - 1) / sheet_.columns;
    return {{0, 0},
            {2 * kMargin + sheet_.columns * sheet_.cellWide,
             2 * kMargin + kHead + kFoot + rows * (sheet_.pictureHigh + kWordsHigh)}};
  }

  void draw(Surface& surface) const {
    for (std::size_t i = 0; i < arts_.size(); ++i) {
      surface.openGroup("pose-" + std::to_string(i + 1), sheet_.cells[i].name, true);
      surface.place(arts_[i], 1, corner(i));
      surface.closeGroup();
    }
    drawHead(surface);
    for (std::size_t i = 0; i < arts_.size(); ++i) drawWords(surface, i);
  }

 private:
  Point corner(std::size_t i) const {
    const auto columns = static_cast<std::size_t>(sheet_.columns);
    return {kMargin + static_cast<double>(i % columns) * sheet_.cellWide,
            kMargin + kHead + static_cast<double>(i / columns) * (sheet_.pictureHigh + kWordsHigh)};
  }

  void drawHead(Surface& surface) const {
    const double right = paper().max.x - kMargin, y = kMargin + 4.5;
    surface.type({.text = sheet_.title, .face = Face::Bold, .sizePt = 15, .at = {kMargin, y}});
    surface.type({.text = sheet_.about, .sizePt = 8.5, .at = {right, y}, .align = Align::Right});
    Path rule;
    rule.add({{kMargin, y + 2.6}, {right, y + 2.6}}, false);
    surface.line(rule, {.ink = kBlack, .width = 0.25});
    surface.type({.text = "Dashed: the line of action. All figures at one scale.",
                  .sizePt = kTextPt,
                  .at = {kMargin, paper().max.y - kMargin},
                  .ink = kQuiet});
  }

  void drawWords(Surface& surface, std::size_t i) const {
    const PoseCell& cell = sheet_.cells[i];
    const double room = sheet_.cellWide - 2;
    Point at = corner(i) + Vector{1, sheet_.pictureHigh + kLineMm};
    const auto say = [&](const std::string& text, Face face, double size, Ink ink) {
      surface.type({.text = typesetter_.shortened(text, face, size, room),
                    .face = face,
                    .sizePt = size,
                    .at = at,
                    .ink = ink});
      at.y += kLineMm;
    };
    say(cell.name, Face::Bold, kNamePt, kBlack);
    say(cell.title, Face::Regular, kTextPt, kBlack);
    if (!cell.note.empty()) say(cell.note, Face::Regular, kTextPt, kQuiet);
  }

  const PoseSheet& sheet_;
  const Typesetter& typesetter_;
  std::vector<PoseArt> arts_;
};

}  // namespace

Result<void> writePoseSheet(const std::filesystem::path& file, const PoseSheet& sheet, double dpi) {
  ensure(sheet.columns > 0, "a pose sheet has columns");
  const Typesetter typesetter;
  const SheetArtist artist(sheet, typesetter);
  return writeSingleSheet(
      file, {sheet.title, artist.paper(), [&](Surface& surface) { artist.draw(surface); }},
      typesetter, dpi);
}

}  // namespace tw
