#include "press/story_list.h"

#include <fmt/format.h>

#include <algorithm>

#include "press/finding_mark.h"
#include "press/overlays.h"

namespace tw {

namespace {

constexpr double kTextPt = 7.5, kLineMm = 3.25, kAfter = 1.6, kIndent = 6.2;
constexpr int kFull = 3;
constexpr double kColumnGap = 8;
constexpr Ink kQuiet{0.38, 0.38, 0.38};

struct Entry {
  std::size_t finding = 0;
  std::vector<std::string> head, words;
  double height() const {
    return kLineMm * static_cast<double>(head.size() + words.size()) + kAfter;
  }
};

/// Heads alone are short.
int columnsFor(int detail) {
  return detail == 0 ? 5 : 3;
}

double columnWide(const Rect& room, int columns) {
  return (room.width() - (columns - 1) * kColumnGap) / columns;
}

/// 0 heads alone, 1 with reasons, 2 and remedies, 3 and what was tried.
Entry entryOf(const StoryMap& map, std::size_t index, int detail, double wide,
              const Typesetter& typesetter) {
  const StoryMapFinding& finding = map.findings[index];
  Entry out{index, typesetter.broken(finding.head, Face::Bold, kTextPt, wide - kIndent), {}};
  std::string words;
  const auto add = [&](const std::string& text) {
    if (!text.empty()) words += (words.empty() ? "" : " ") + text;
  };
  if (detail > 0) add(finding.reason);
  if (detail > 1) add(finding.remedy);
  if (detail > 2) add(finding.tried);
  if (!words.empty()) out.words = typesetter.broken(words, Face::Regular, kTextPt, wide - kIndent);
  return out;
}

struct Placed {
  Entry entry;
  Point at;
};

/// As many as fit, column by column; an entry is never torn.
std::vector<Placed> placed(const std::vector<Entry>& entries, const Rect& room, int columns) {
  std::vector<Placed> out;
  Point at = room.min;
  int column = 0;
  for (const Entry& entry : entries) {
    if (at.y + entry.height() > room.max.y && at.y > room.min.y) {
      if (++column == columns) break;
      at = {room.min.x + column * (columnWide(room, columns) + kColumnGap), room.min.y};
    }
    if (at.y + entry.height() - kAfter > room.max.y) break;
    out.push_back({entry, at});
    at.y += entry.height();
  }
  return out;
}

/// The lowest height at which all entries fit.
double evenHeight(const std::vector<Entry>& entries, const Rect& room, int columns) {
  for (double high = kLineMm; high < room.height(); high += kLineMm / 2)
    if (placed(entries, {room.min, {room.max.x, room.min.y + high}}, columns).size() ==
        entries.size())
      return high;
  return room.height();
}

/// Columns of about one height.
std::vector<Placed> evenly(const std::vector<Entry>& entries, const Rect& room, int columns) {
  return placed(entries, {room.min, {room.max.x, room.min.y + evenHeight(entries, room, columns)}},
                columns);
}

std::vector<Entry> entriesOf(const StoryMap& map, const std::vector<std::size_t>& shown, int detail,
                             const Rect& room, const Typesetter& typesetter) {
  std::vector<Entry> out;
  for (const std::size_t index : shown)
    out.push_back(entryOf(map, index, detail, columnWide(room, columnsFor(detail)), typesetter));
  return out;
}

void drawEntry(Surface& surface, const StoryMap& map, const Placed& placed) {
  Point at = placed.at + Vector{kIndent, kLineMm - 0.6};
  const std::size_t index = placed.entry.finding;
  surface.openGroup(fmt::format("finding-{}", index + 1), map.findings[index].head, true);
  drawFindingMark(surface, placed.at + Vector{1.9, kLineMm - 1.6}, map.findings[index].severity,
                  index + 1);
  for (const std::string& line : placed.entry.head) {
    surface.type({.text = line, .face = Face::Bold, .sizePt = kTextPt, .at = at});
    at.y += kLineMm;
  }
  for (const std::string& line : placed.entry.words) {
    surface.type({.text = line, .sizePt = kTextPt, .at = at});
    at.y += kLineMm;
  }
  surface.closeGroup();
}

}  // namespace

double storyListHeight(const StoryMap& map, const std::vector<std::size_t>& shown, double wide,
                       double most, const Typesetter& typesetter) {
  const Rect room{{0, 0}, {wide, most}};
  return evenHeight(entriesOf(map, shown, kFull, room, typesetter), room, columnsFor(kFull));
}

void drawStoryList(Surface& surface, const StoryMap& map, const std::vector<std::size_t>& shown,
                   const Rect& room, const Typesetter& typesetter) {
  if (shown.empty()) {
    surface.type({.text = "Nothing is found on these pages.",
                  .face = Face::Italic,
                  .sizePt = kTextPt,
                  .at = room.min + Vector{0, kLineMm}});
    return;
  }
  std::vector<Placed> list;
  for (int detail = kFull; detail >= 0; --detail) {
    const auto entries = entriesOf(map, shown, detail, room, typesetter);
    list = placed(entries, detail > 0 ? room : Rect{room.min, room.max - Vector{0, kLineMm}},
                  columnsFor(detail));
    if (list.size() < shown.size()) continue;
    list = evenly(entries, room, columnsFor(detail));
    break;
  }
  for (const Placed& entry : list) drawEntry(surface, map, entry);
  if (list.size() < shown.size())
    surface.type({.text = fmt::format("and {} more: tierwright story lists them all",
                                      shown.size() - list.size()),
                  .face = Face::Italic,
                  .sizePt = kTextPt,
                  .at = {room.max.x, room.max.y},
                  .align = Align::Right,
                  .ink = kQuiet});
}

}  // namespace tw
