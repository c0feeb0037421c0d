// One sheet at a time: pages first, then what lies on them, then lanes, list and key. A page is
// drawn half by half into the slots of its numbers, so a spread that begins on a right-hand page is
// seen torn, as the reader would see it.
#include "press/story_map.h"

#include <fmt/format.h>

#include <algorithm>
#include <memory>

#include "geometry/polygon.h"
#include "press/finding_mark.h"
#include "press/finding_places.h"
#include "press/overlays.h"
#include "press/page_art.h"
#include "press/pdf_book.h"
#include "press/single_sheet.h"
#include "press/story_bands.h"
#include "press/story_lanes.h"
#include "press/story_list.h"

namespace tw {

namespace {

constexpr double kTitlePt = 16, kAboutPt = 10, kSmallPt = 8, kNumberPt = 10.5;
constexpr double kBadge = kFindingMarkMm;
constexpr Ink kQuiet{0.38, 0.38, 0.38}, kEdge{0.45, 0.45, 0.45};

Path lineBetween(Point a, Point b) {
  Path path;
  path.add({a, b}, false);
  return path;
}

void drawLozenge(Surface& surface, Point at, bool filled) {
  const double r = 1.5;
  Path shape;
  shape.add({at + Vector{0, -r}, at + Vector{r, 0}, at + Vector{0, r}, at + Vector{-r, 0}}, true);
  surface.fill(shape, filled ? kOrderInk : kPaper, FillRule::NonZero);
  surface.line(shape, {.ink = kOrderInk, .width = 0.4});
}

/// A leaf going over: an arc with an arrow head, toward the pages that follow.
void drawTurn(Surface& surface, Point at, bool toTheLeft) {
  const double s = toTheLeft ? -1 : 1, wide = 2.1, high = 2.6;
  const auto p = [&](double x, double y) { return at + Vector{s * x, y}; };
  Path arc;
  arc.moveTo(p(-wide, 0));
  arc.curveTo(p(-wide, -high), p(wide - 0.3, -high), p(wide - 0.3, -0.6));
  surface.line(arc, {.ink = kOrderInk, .width = 0.4, .round = true});
  Path head;
  head.add({p(wide - 0.3, 0.5), p(wide - 1.2, -1), p(wide + 0.6, -1)}, true);
  surface.fill(head, kOrderInk, FillRule::NonZero);
}

/// Panels of a page that has no rough yet: tiers of two, or of three from seven panels on.
std::vector<Rect> boxesFor(std::size_t panels, const Rect& page) {
  const std::size_t across = panels <= 1 ? 1 : panels < 7 ? 2 : 3;
  const std::size_t tiers = (panels + across - 1) / across;
  const Rect live = page.inset(0.05 * page.width());
  const double gap = 0.02 * page.width();
  std::vector<Rect> out;
  for (std::size_t i = 0; i < panels; ++i) {
    const std::size_t tier = i / across;
    const std::size_t inTier = std::min(across, panels - tier * across);
    const double wide = live.width() / static_cast<double>(inTier);
    const double high = live.height() / static_cast<double>(tiers);
    const Point corner =
        live.min + Vector{wide * static_cast<double>(i % across), high * static_cast<double>(tier)};
    out.push_back(Rect{corner, corner + Vector{wide, high}}.inset(gap));
  }
  return out;
}

class MapSheet {
 public:
  MapSheet(const StoryMap& map, const std::string& about,
           const std::vector<std::unique_ptr<PageArt>>& arts, int firstPair, int pairs,
           const Typesetter& typesetter)
      : map_(map),
        about_(about),
        arts_(arts),
        grid_(map, firstPair, pairs, listHighOf(map, firstPair, pairs, typesetter)),
        typesetter_(typesetter) {}

  void draw(Surface& surface) const {
    for (std::size_t i = 0; i < map_.pages.size(); ++i) drawPage(surface, i);
    for (const StoryMapPage& page : map_.pages) drawMarks(surface, page);
    drawSceneBands(surface, map_, grid_, typesetter_);
    drawStoryLanes(surface, map_, grid_, typesetter_);
    drawHead(surface);
    drawStoryList(surface, map_, findingsOn(map_, grid_), grid_.list(), typesetter_);
    drawKey(surface);
  }

 private:
  bool isToTheLeft() const { return map_.direction == ReadingDirection::RightToLeft; }

  static std::vector<std::size_t> findingsOn(const StoryMap& map, const StoryGrid& grid) {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < map.findings.size(); ++i)
      if (grid.holds(map.findings[i].page)) out.push_back(i);
    return out;
  }

  /// What the list needs in full, once it is known which pages the sheet holds.
  static double listHighOf(const StoryMap& map, int firstPair, int pairs,
                           const Typesetter& typesetter) {
    const StoryGrid grid(map, firstPair, pairs, StoryGrid::paper().height());
    const Rect room = grid.list();
    return storyListHeight(map, findingsOn(map, grid), room.width(), room.height(), typesetter);
  }

  void drawPage(Surface& surface, std::size_t index) const {
    const StoryMapPage& page = map_.pages[index];
    for (int number = page.number; number <= page.lastNumber(); ++number) {
      if (!grid_.holds(number)) continue;
      const Rect slot = grid_.slot(number);
      const std::string rough =
          page.picture ? "rough " + page.picture->rough.name : std::string("no rough yet");
      surface.openGroup(fmt::format("page-{}", number), fmt::format("Page {}, {}", number, rough),
                        true);
      surface.fill(Path(slot), kPaper, FillRule::NonZero);
      if (page.picture) drawHalf(surface, *arts_[index], page, number, slot);
      surface.line(Path(slot), {.ink = kEdge, .width = 0.2});
      surface.closeGroup();
    }
    if (!page.picture && grid_.holds(page.number)) drawNoRough(surface, page);
  }

  /// Moves the art so that the half of this page number comes to lie in the slot.
  void drawHalf(Surface& surface, const PageArt& art, const StoryMapPage& page, int number,
                const Rect& slot) const {
    surface.clip(Path(slot), FillRule::NonZero);
    surface.place(art, grid_.scale(), cornerOf(page, number, slot));
    surface.unclip();
  }

  /// Where the trim's top left corner of the whole sheet stands for this half.
  Point cornerOf(const StoryMapPage& page, int number, const Rect& slot) const {
    const bool isSecond = number != page.number;
    const bool isRightHalf = page.spread && (isSecond != isToTheLeft());
    return slot.min - Vector{isRightHalf ? map_.pageWide * grid_.scale() : 0, 0};
  }

  void drawNoRough(Surface& surface, const StoryMapPage& page) const {
    Rect whole = grid_.slot(page.number);
    if (page.spread && grid_.holds(page.number + 1)) {
      const Rect other = grid_.slot(page.number + 1);
      if (other.min.y == whole.min.y)
        whole = {{std::min(whole.min.x, other.min.x), whole.min.y},
                 {std::max(whole.max.x, other.max.x), whole.max.y}};
    }
    for (const Rect& box : boxesFor(page.panels.size(), whole))
      surface.line(Path(box), {.ink = kEdge, .width = 0.2, .dashes = {0.9, 0.9}});
    const Point middle = whole.centre();
    const double half = typesetter_.widthOf("no rough yet", Face::Italic, kSmallPt) / 2 + 1;
    surface.fill(Path(Rect{middle - Vector{half, 2}, middle + Vector{half, 1.6}}), kPaper,
                 FillRule::NonZero);
    surface.type({.text = "no rough yet",
                  .face = Face::Italic,
                  .sizePt = kSmallPt,
                  .at = middle + Vector{0, 0.7},
                  .align = Align::Centre,
                  .ink = kQuiet});
  }

  void drawMarks(Surface& surface, const StoryMapPage& page) const {
    if (!grid_.holds(page.number)) return;
    drawReveals(surface, page);
    drawNumbers(surface, page);
    for (std::size_t i = 0; i < page.panels.size(); ++i) drawPanelBadges(surface, page, i);
    drawTurns(surface, page);
  }

  /// After every right-hand page but the story's last.
  void drawTurns(Surface& surface, const StoryMapPage& page) const {
    for (int number = page.number; number <= page.lastNumber(); ++number)
      if (number % 2 == 1 && grid_.holds(number) && number != map_.pages.back().lastNumber())
        drawTurn(surface, grid_.turnAfter(number), isToTheLeft());
  }

  void drawReveals(Surface& surface, const StoryMapPage& page) const {
    for (std::size_t i = 0; i < page.panels.size(); ++i) {
      if (!page.panels[i].reveal) continue;
      const bool inView = page.number % 2 == 1 && page.number > 1;
      drawLozenge(surface,
                  {grid_.column(page, i).middle(), grid_.headLine(grid_.rowOf(page.number))},
                  !inView);
    }
  }

  void drawNumbers(Surface& surface, const StoryMapPage& page) const {
    for (int number = page.number; number <= page.lastNumber(); ++number) {
      if (!grid_.holds(number)) continue;
      const double y = grid_.numberLine(grid_.rowOf(number));
      const double x = grid_.slot(number).centre().x;
      surface.type({.text = std::to_string(number),
                    .face = Face::Bold,
                    .sizePt = kNumberPt,
                    .at = {x, y},
                    .align = Align::Centre});
      if (number == page.number && page.picture)
        surface.type({.text = "rough " + page.picture->rough.name,
                      .sizePt = kSmallPt,
                      .at = {grid_.slot(number).min.x + 0.3, y},
                      .ink = kQuiet});
    }
    Point at{grid_.slot(page.number).max.x - 1.35 * kBadge,
             grid_.numberLine(grid_.rowOf(page.number)) - 1.1};
    for (const std::size_t finding : page.findings) {
      drawMark(surface, at, finding);
      at.x -= 2.7 * kBadge + 0.4;
    }
  }

  void drawMark(Surface& surface, Point at, std::size_t index) const {
    const StoryMapFinding& finding = map_.findings[index];
    drawFindingMark(surface, at, finding.severity, index + 1, !finding.silencedWhy.empty());
  }

  /// Inside the panel, near the corner where reading leaves it.
  void drawPanelBadges(Surface& surface, const StoryMapPage& page, std::size_t panel) const {
    if (page.panels[panel].findings.empty()) return;
    MarkRoom room{outlineOf(page, panel), {}, {}, {}};
    const double side = isToTheLeft() ? -1 : 1;
    const Point corner = *std::ranges::max_element(room.outline.points, {},
                                                   [&](Point p) { return side * p.x + p.y; });
    for (const std::size_t finding : page.panels[panel].findings) {
      const Point at = markPlace(room, corner);
      room.taken.push_back(at);
      drawMark(surface, at, finding);
    }
  }

  /// What of the panel is seen on this sheet, as it stands there.
  Polygon outlineOf(const StoryMapPage& page, std::size_t panel) const {
    const Rect slot = grid_.slot(page.number);
    if (!page.picture) return polygonOf(boxesFor(page.panels.size(), slot)[panel]);
    const Point corner = cornerOf(page, page.number, slot);
    Polygon placed = page.picture->rough.panels[panel].outline;
    for (Point& p : placed.points) p = corner + (p - Point{}) * grid_.scale();
    std::vector<Polygon> seen{polygonOf(slot)};
    if (page.spread && grid_.holds(page.number + 1))
      seen.push_back(polygonOf(grid_.slot(page.number + 1)));
    Polygon largest = polygonOf(slot);
    double most = 0;
    for (const Polygon& part : common({placed}, united(seen)))
      if (const double own = area(part); own > most) {
        most = own;
        largest = part;
      }
    return largest;
  }

  void drawHead(Surface& surface) const {
    const double left = StoryGrid::kMargin, right = StoryGrid::paper().max.x - StoryGrid::kMargin;
    const double y = StoryGrid::kMargin + 5;
    const double wide = typesetter_.widthOf(about_, Face::Regular, kAboutPt);
    surface.type(
        {.text = typesetter_.shortened(map_.title, Face::Bold, kTitlePt, right - left - wide - 8),
         .face = Face::Bold,
         .sizePt = kTitlePt,
         .at = {left, y}});
    surface.type({.text = about_, .sizePt = kAboutPt, .at = {right, y}, .align = Align::Right});
    surface.line(lineBetween({left, y + 2.6}, {right, y + 2.6}), {.ink = kBlack, .width = 0.25});
  }

  void drawKey(Surface& surface) const {
    const double y = StoryGrid::paper().max.y - StoryGrid::kMargin - 0.8;
    double x = StoryGrid::kMargin;
    surface.line(lineBetween({x, y - 4.4}, {StoryGrid::paper().max.x - x, y - 4.4}),
                 {.ink = kEdge, .width = 0.15});
    const auto word = [&](const std::string& text) {
      surface.type({.text = text, .sizePt = kSmallPt, .at = {x, y}, .ink = kQuiet});
      x += typesetter_.widthOf(text, Face::Regular, kSmallPt) + 5;
    };
    const auto badge = [&](Severity severity, const std::string& text, bool silenced = false) {
      drawFindingMark(surface, {x + 1.35 * kBadge, y - 0.9}, severity, 0, silenced);
      x += 2.7 * kBadge + 1;
      word(text);
    };
    badge(Severity::Must, "must");
    badge(Severity::Should, "should");
    badge(Severity::Look, "worth a look");
    const auto silenced = std::ranges::find_if(
        map_.findings, [](const auto& finding) { return !finding.silencedWhy.empty(); });
    if (silenced != map_.findings.end()) badge(silenced->severity, "silenced", true);
    for (const bool filled : {true, false}) {
      drawLozenge(surface, {x + 1.5, y - 0.9}, filled);
      x += 4.2;
      word(filled ? "a reveal, behind a turn" : "a reveal in view before its turn");
    }
    drawTurn(surface, {x + 2.2, y - 0.2}, false);
    x += 6;
    word("the page is turned");
    word("dashed line: the story's middle panel");
    surface.type({.text = "Common practice or ours, none measured on readers.",
                  .sizePt = kSmallPt,
                  .at = {StoryGrid::paper().max.x - StoryGrid::kMargin, y},
                  .align = Align::Right,
                  .ink = kQuiet});
  }

  const StoryMap& map_;
  std::string about_;
  const std::vector<std::unique_ptr<PageArt>>& arts_;
  StoryGrid grid_;
  const Typesetter& typesetter_;
};

/// "map.png", "map-2.png"
std::filesystem::path fileOf(const std::filesystem::path& file, std::size_t sheet) {
  if (sheet == 0) return file;
  return file.parent_path() /
         fmt::format("{}-{}{}", file.stem().string(), sheet + 1, file.extension().string());
}

}  // namespace

Result<void> writeStoryMap(const std::filesystem::path& file, const StoryMap& map, double dpi) {
  if (map.pages.empty()) return badInput("The story has no pages.", {}, "Import a script.");
  const Typesetter typesetter;
  std::vector<std::unique_ptr<PageArt>> arts;
  for (const StoryMapPage& page : map.pages)
    arts.push_back(page.picture ? std::make_unique<PageArt>(*page.picture, typesetter) : nullptr);
  std::vector<std::unique_ptr<MapSheet>> sheets;
  const auto spans = storySheets(map);
  for (const auto& [first, pairs] : spans) {
    std::string about = map.about;
    if (spans.size() > 1)
      about += fmt::format(" · sheet {} of {}", sheets.size() + 1, spans.size());
    sheets.push_back(std::make_unique<MapSheet>(map, about, arts, first, pairs, typesetter));
  }
  if (file.extension() == ".pdf" && sheets.size() > 1) {
    PdfBook book(typesetter, map.title);
    for (const auto& sheet : sheets)
      book.add({.media = StoryGrid::paper(),
                .bleed = StoryGrid::paper(),
                .trim = StoryGrid::paper(),
                .bookmark = "",
                .layers = {{"", true, [&](Surface& surface) { sheet->draw(surface); }}}});
    return save(file, book.finished());
  }
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    const SingleSheet sheet{map.title, StoryGrid::paper(),
                            [&](Surface& surface) { sheets[i]->draw(surface); }};
    if (auto done = writeSingleSheet(fileOf(file, i), sheet, typesetter, dpi); !done) return done;
  }
  return {};
}

}  // namespace tw
