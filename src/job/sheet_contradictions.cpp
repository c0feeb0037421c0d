// A sheet is three nested rectangles (bleed, trim, live), gutters, and a board that a reduction
// maps onto one of the three. Each check below states one identity or one bound among them.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>

#include "job/sheet.h"

namespace tw {

namespace {

constexpr double kSmallestTrim = 30;       // mm; a stamp-sized booklet
constexpr double kLargestTrim = 3000;      // mm; a poster of three metres
constexpr double kLargestBleed = 30;       // mm; printers ask for 3 to 7
constexpr double kBoardTolerance = 1;      // mm at print size; sources round reductions to 0.1 %
constexpr double kSpreadTolerance = 0.01;  // mm
constexpr double kMmPerInch = 25.4;

struct Finder {
  Problems found;
  void add(std::string path, std::string sentence, std::string advice = {}) {
    found.push_back(
        {Cause::BadInput, std::move(sentence), {.path = std::move(path)}, std::move(advice)});
  }
};

void checkSigns(const Sheet& s, Finder& f) {
  const std::pair<const char*, double> lengths[] = {{"/bleed", s.bleed},
                                                    {"/live/top", s.live.top},
                                                    {"/live/bottom", s.live.bottom},
                                                    {"/live/inner", s.live.inner},
                                                    {"/live/outer", s.live.outer},
                                                    {"/gutter_across", s.gutterAcross},
                                                    {"/gutter_down", s.gutterDown},
                                                    {"/least_panel_width", s.leastPanelWidth},
                                                    {"/least_panel_height", s.leastPanelHeight},
                                                    {"/board_width", s.boardWidth},
                                                    {"/board_height", s.boardHeight},
                                                    {"/page_width", s.pageWidth}};
  for (const auto& [path, length] : lengths)
    if (!(length >= 0))
      f.add(path, fmt::format("A length cannot be negative; {} mm was found.", length));
  if (s.live.inner < 0 || s.live.outer < 0 || s.live.top < 0 || s.live.bottom < 0)
    f.add("/live", "The live area reaches outside the trim.",
          "Margins are counted from the trim inward.");
}

void checkTrim(const Sheet& s, Finder& f) {
  for (const auto& [path, length] :
       {std::pair("/trim_width", s.trimWidth), std::pair("/trim_height", s.trimHeight)})
    if (!(length >= kSmallestTrim && length <= kLargestTrim))
      f.add(path,
            fmt::format("The trim must be {} to {} mm; {} mm was found.", kSmallestTrim,
                        kLargestTrim, length),
            "Lengths are in mm; 1 in is 25.4 mm.");
  if (s.bleed > kLargestBleed)
    f.add("/bleed", fmt::format("A bleed of {} mm is more than {} mm.", s.bleed, kLargestBleed),
          "Bleed is the part beyond the trim on one side, usually 3 to 6 mm.");
}

void checkLive(const Sheet& s, Finder& f) {
  const Rect live = s.liveRect(true);
  if (!(live.width() > 0 && live.height() > 0)) {
    f.add("/live", "The margins leave no live area.");
    return;
  }
  if (s.leastPanelWidth > live.width() || s.leastPanelHeight > live.height())
    f.add("/least_panel_width",
          fmt::format("The least panel, {:.1f} × {:.1f} mm, does not fit the live area, {:.1f} × "
                      "{:.1f} mm.",
                      s.leastPanelWidth, s.leastPanelHeight, live.width(), live.height()));
  if (s.gutterAcross >= live.width() / 2 || s.gutterDown >= live.height() / 2)
    f.add("/gutter_across", "The gutters are wider than half the live area.");
}

void checkReduction(const Sheet& s, Finder& f) {
  if (!(s.reduction > 0 && s.reduction <= 4))
    f.add("/reduction",
          fmt::format("The reduction is {}; print size over drawn size lies between 0 and 4.",
                      s.reduction),
          "60 % is 0.6.");
  if (s.boardHolds != "live" && s.boardHolds != "trim" && s.boardHolds != "bleed")
    f.add("/board_holds",
          fmt::format("\"{}\" was found; live, trim or bleed was expected.", s.boardHolds));
  if ((s.boardWidth > 0) != (s.boardHeight > 0))
    f.add("/board_width", "Only one side of the board is given.", "Give both, or neither.");
}

void checkBoard(const Sheet& s, Finder& f) {
  if (!(s.boardWidth > 0 && s.boardHeight > 0 && s.reduction > 0)) return;
  const Rect printed = printedBoardArea(s);
  const double across = s.boardWidth * s.reduction;
  const double down = s.boardHeight * s.reduction;
  if (std::abs(across - printed.width()) <= kBoardTolerance &&
      std::abs(down - printed.height()) <= kBoardTolerance)
    return;
  f.add("/reduction",
        fmt::format("The board of {:.1f} × {:.1f} mm at {:.4g} prints {:.1f} × {:.1f} mm, but the "
                    "{} area is {:.1f} × {:.1f} mm: that asks for {:.4f} across and {:.4f} down.",
                    s.boardWidth, s.boardHeight, s.reduction, across, down, s.boardHolds,
                    printed.width(), printed.height(), printed.width() / s.boardWidth,
                    printed.height() / s.boardHeight),
        "A reduction is the same both ways: give the drawn area, not the whole board.");
}

void checkSpread(const Sheet& s, Finder& f) {
  if (s.pageWidth <= 0) return;
  const double wanted = s.spread ? 2 * s.pageWidth : s.pageWidth;
  if (std::abs(s.trimWidth - wanted) <= kSpreadTolerance) return;
  f.add("/trim_width",
        s.spread
            ? fmt::format("A spread of two pages of {:.3f} mm is {:.3f} mm wide; {:.3f} mm was "
                          "found.",
                          s.pageWidth, wanted, s.trimWidth)
            : fmt::format("The page is {:.3f} mm wide by page_width and {:.3f} mm by "
                          "trim_width.",
                          s.pageWidth, s.trimWidth),
        s.spread ? "The bleeds at the fold vanish; they do not add to the width." : "");
}

void checkCanvas(const Sheet& s, Finder& f) {
  if (s.canvas.dpi <= 0) return;
  const auto check = [&](const char* path, int pixels, double mm) {
    const double expected = mm / kMmPerInch * s.canvas.dpi;
    if (std::abs(pixels - expected) <= 1) return;  // rounded up or down
    f.add(path,
          fmt::format("{} px at {} dpi are {:.1f} mm, but trim and bleed make {:.1f} mm, which is "
                      "{:.0f} px.",
                      pixels, s.canvas.dpi, pixels * kMmPerInch / s.canvas.dpi, mm,
                      std::ceil(expected)),
          "Ask the printer which of the two is meant.");
  };
  check("/canvas/width", s.canvas.width, s.bleedRect().width());
  check("/canvas/height", s.canvas.height, s.bleedRect().height());
}

}  // namespace

Rect printedBoardArea(const Sheet& sheet) {
  if (sheet.boardHolds == "live") return sheet.liveRect(true);
  return sheet.boardHolds == "bleed" ? sheet.bleedRect() : sheet.trimRect();
}

Problems contradictionsOf(const Sheet& sheet) {
  Finder finder;
  for (const auto check :
       {checkSigns, checkTrim, checkLive, checkReduction, checkBoard, checkSpread, checkCanvas})
    check(sheet, finder);
  return std::move(finder.found);
}

}  // namespace tw
