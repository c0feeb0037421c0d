// The file's unit says nothing of a printed size, so the page's longer side is taken as usual ones
// are. Panels are numbered as most readers take them; the file's own numbering is told beside.
#include "command/read_panels_sheet.h"

#include <fmt/format.h>

#include <algorithm>

#include "command/read_drawn.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kParting = 0.08;  // a share of readers worth an arrow

/// The page in the file's unit, with panels that stand beyond its edges.
Rect pageBoxOf(const MarkedPage& page) {
  std::vector<Point> corners;
  for (const MarkedPanel& panel : page.panels)
    corners.insert(corners.end(), panel.outline.points.begin(), panel.outline.points.end());
  if (page.width > 0 && page.height > 0) {
    corners.push_back({0, 0});
    corners.push_back({page.width, page.height});
  }
  return corners.empty() ? Rect{} : bounds(corners);
}

/// Place of each panel in the order that most readers take, from 1.
std::vector<int> placesOf(const PageReading& reading, std::size_t panels) {
  std::vector<int> out(panels, 0);
  for (std::size_t i = 0; i < reading.order.size(); ++i)
    out[static_cast<std::size_t>(reading.order[i])] = static_cast<int>(i) + 1;
  return out;
}

/// Another panel lies wholly on it.
bool isGround(const Polygon& outline, const MarkedPage& page) {
  const Rect box = bounds(outline);
  return std::ranges::any_of(page.panels, [&](const MarkedPanel& other) {
    const Rect inset = bounds(other.outline);
    return inset.width() * inset.height() < 0.9 * box.width() * box.height() &&
           box.contains(inset.min) && box.contains(inset.max) && contains(outline, inset.centre());
  });
}

/// Told of a panel, the cause why readers part is that of its likeliest move.
std::vector<PanelMove> partingsOf(const ReadMarkedPage& page, const std::vector<int>& places) {
  std::vector<PanelMove> out;
  const Move* best = nullptr;
  for (const Move& move : page.reading.moves) {
    if (best == nullptr || best->from != move.from) best = &move;
    const int from = move.from < 0 ? 0 : places[static_cast<std::size_t>(move.from)];
    const int to = places[static_cast<std::size_t>(move.to)];
    const bool isLast = from == static_cast<int>(page.page.panels.size());
    if (to != from + 1 && !isLast && move.share >= kParting)
      out.push_back({from, to, move.share, best->cause});
  }
  return out;
}

std::string listed(const std::vector<int>& numbers) {
  std::string out;
  for (const int n : numbers) out += fmt::format("{}{}", out.empty() ? "" : ", ", n);
  return out;
}

std::vector<std::string> factsOf(const ReadMarkedPage& page, const std::vector<int>& places) {
  if (page.page.panels.empty()) return {"The page has no panels."};
  std::vector<std::string> out{fmt::format(
      "Panels are numbered as most readers take them, {}; {:.0f} % take the whole of "
      "this order.",
      page.direction == ReadingDirection::RightToLeft ? "right to left" : "left to right",
      100 * page.reading.followed)};
  if (!std::ranges::is_sorted(places))
    out.push_back(fmt::format("In the file they stand as {}.", listed(places)));
  if (!page.intended) return out;
  std::vector<int> meant;
  for (const int panel : page.intended->order)
    meant.push_back(places[static_cast<std::size_t>(panel)]);
  if (std::ranges::is_sorted(meant))
    out.push_back("This is the order that you mean.");
  else
    out.push_back(fmt::format("You mean {}; {:.0f} % of readers follow that.", listed(meant),
                              100 * page.intended->followed));
  return out;
}

std::filesystem::path fileOf(const std::filesystem::path& file, std::size_t page) {
  if (page == 0) return file;
  std::filesystem::path out = file;
  return out.replace_filename(
      fmt::format("{}-{}{}", file.stem().string(), page + 1, file.extension().string()));
}

Result<void> drawOne(const std::filesystem::path& file, const ReadMarkedPage& page, double dpi) {
  if (!page.drawn) {
    const auto layout = layoutPictureOf(page);
    if (!layout) return tl::unexpected(layout.error());
    return writeReadingSheet(file, layout->picture, layout->sheet, dpi);
  }
  if (file.extension() == ".png") return drawAttentionPng(file, page);
  return badInput("Where the eye goes on a drawn page can be written as PNG alone.",
                  {.file = file.filename().string()}, "Use --png FILE.");
}

}  // namespace

Result<LayoutPicture> layoutPictureOf(const ReadMarkedPage& page) {
  const Rect box = pageBoxOf(page.page);
  if (box.width() <= 0 || box.height() <= 0)
    return badInput(fmt::format("Page {} has no size and no panels to draw.", page.page.name), {},
                    "Give its width and height.");
  const FileScale scale{(box.width() > box.height() ? kDrawnSpreadMm : kDrawnPageMm) /
                        std::max(box.width(), box.height())};
  const std::vector<int> places = placesOf(page.reading, page.page.panels.size());
  LayoutPicture out;
  RoughPicture& picture = out.picture;
  picture.direction = page.direction;
  picture.jobTitle = fmt::format("page {}", page.page.name);
  picture.sheet.trimWidth = box.width() * scale.mmPerUnit;
  picture.sheet.trimHeight = box.height() * scale.mmPerUnit;
  for (const int index : page.reading.order) {
    const MarkedPanel& marked = page.page.panels[static_cast<std::size_t>(index)];
    RoughPanel panel;
    panel.outline = scale.onPage(moved(marked.outline, Point{} - box.min));
    panel.ground = isGround(marked.outline, page.page);
    picture.rough.panels.push_back(std::move(panel));
  }
  out.sheet.about = fmt::format("Page {}, its panels alone", page.page.name);
  out.sheet.facts = factsOf(page, places);
  if (!page.pictureProblem.empty())
    out.sheet.facts.push_back("Only its panels were read: " + page.pictureProblem);
  out.sheet.partings = partingsOf(page, places);
  return out;
}

Result<void> drawReadPanels(const std::filesystem::path& file,
                            const std::vector<ReadMarkedPage>& pages, double dpi) {
  for (std::size_t i = 0; i < pages.size(); ++i)
    if (auto done = drawOne(fileOf(file, i), pages[i], dpi); !done) return done;
  return {};
}

}  // namespace tw
