#include "press/story_list.h"

#include <fmt/format.h>

#include <algorithm>

#include "press/finding_mark.h"
#include "press/overlays.h"

namespace tw {

namespace {

constexpr double kAfter = 1.6, kIndent = 6.8;
constexpr int kFull = 3;
constexpr double kSlack = 1e-6;  // of sums of heights
constexpr double kColumnGap = 8;
constexpr Ink kQuiet{0.38, 0.38, 0.38};

/// Read on a wall from a step away, and where that takes too much room from near.
struct ListType {
  double pt, lineMm;
};
constexpr ListType kLarge{9, 3.9}, kNear{7.5, 3.25};

struct Entry {
  std::size_t finding = 0;
  ListType type;
  std::vector<std::string> head, words;
  double height() const {
    return type.lineMm * static_cast<double>(head.size() + words.size()) + kAfter;
  }
};

/// Heads alone are short.
int columnsFor(int detail) {
  return detail == 0 ? 5 : 3;
}

double columnWide(const Rect& room, int columns) {
  return (room.width() - (columns - 1) * kColumnGap) / columns;
}

/// How much is told and in which type: 0 heads alone, 1 with reasons, 2 and remedies, 3 and what
/// was tried.
struct Telling {
  int detail;
  ListType type;
};
constexpr Telling kTellings[] = {{kFull, kLarge}, {kFull, kNear}, {2, kNear},
                                 {1, kNear},      {0, kLarge},    {0, kNear}};

Entry entryOf(const StoryMap& map, std::size_t index, Telling telling, double wide,
              const Typesetter& typesetter) {
  const StoryMapFinding& finding = map.findings[index];
  const double pt = telling.type.pt;
  Entry out{
      index, telling.type, typesetter.broken(finding.head, Face::Bold, pt, wide - kIndent), {}};
  std::string words;
  const auto add = [&](const std::string& text) {
    if (!text.empty()) words += (words.empty() ? "" : " ") + text;
  };
  const bool isSilenced = !finding.silencedWhy.empty();
  if (telling.detail > 0) add(finding.reason);
  if (telling.detail > 0 && isSilenced) add("Silenced: " + finding.silencedWhy);
  if (telling.detail > 1 && !isSilenced) add(finding.remedy);
  if (telling.detail > 2 && !isSilenced) add(finding.tried);
  if (!words.empty()) out.words = typesetter.broken(words, Face::Regular, pt, wide - kIndent);
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
    if (at.y + entry.height() > room.max.y + kSlack && at.y > room.min.y) {
      if (++column == columns) break;
      at = {room.min.x + column * (columnWide(room, columns) + kColumnGap), room.min.y};
    }
    if (at.y + entry.height() - kAfter > room.max.y + kSlack) break;
    out.push_back({entry, at});
    at.y += entry.height();
  }
  return out;
}

/// The lowest height at which all entries fit.
double evenHeight(const std::vector<Entry>& entries, const Rect& room, int columns) {
  for (double high = kNear.lineMm; high < room.height(); high += kNear.lineMm / 2)
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

std::vector<Entry> entriesOf(const StoryMap& map, const std::vector<std::size_t>& shown,
                             Telling telling, const Rect& room, const Typesetter& typesetter) {
  std::vector<Entry> out;
  for (const std::size_t index : shown)
    out.push_back(
        entryOf(map, index, telling, columnWide(room, columnsFor(telling.detail)), typesetter));
  return out;
}

void drawEntry(Surface& surface, const StoryMap& map, const Placed& placed) {
  const ListType type = placed.entry.type;
  Point at = placed.at + Vector{kIndent, type.lineMm - 0.6};
  const std::size_t index = placed.entry.finding;
  const bool isSilenced = !map.findings[index].silencedWhy.empty();
  surface.openGroup(fmt::format("finding-{}", index + 1),
                    map.findings[index].head + (isSilenced ? ", silenced" : ""), true);
  drawFindingMark(surface, placed.at + Vector{2.6, type.lineMm - 0.6 - 0.33 * type.pt * kMmPerPt},
                  map.findings[index].severity, index + 1, isSilenced);
  for (const std::string& line : placed.entry.head) {
    surface.type({.text = line, .face = Face::Bold, .sizePt = type.pt, .at = at});
    at.y += type.lineMm;
  }
  for (const std::string& line : placed.entry.words) {
    surface.type({.text = line, .sizePt = type.pt, .at = at});
    at.y += type.lineMm;
  }
  surface.closeGroup();
}

}  // namespace

double storyListHeight(const StoryMap& map, const std::vector<std::size_t>& shown, double wide,
                       double most, const Typesetter& typesetter) {
  const Rect room{{0, 0}, {wide, most}};
  double high = most;
  for (const ListType type : {kLarge, kNear})
    if (high >= most)
      high = evenHeight(entriesOf(map, shown, {kFull, type}, room, typesetter), room,
                        columnsFor(kFull));
  return high;
}

void drawStoryList(Surface& surface, const StoryMap& map, const std::vector<std::size_t>& shown,
                   const Rect& room, const Typesetter& typesetter) {
  if (shown.empty()) {
    surface.type({.text = "Nothing is found on these pages.",
                  .face = Face::Italic,
                  .sizePt = kLarge.pt,
                  .at = room.min + Vector{0, kLarge.lineMm}});
    return;
  }
  std::vector<Placed> list;
  for (const Telling telling : kTellings) {
    const auto entries = entriesOf(map, shown, telling, room, typesetter);
    const int columns = columnsFor(telling.detail);
    list = placed(entries,
                  telling.detail > 0 ? room : Rect{room.min, room.max - Vector{0, kNear.lineMm}},
                  columns);
    if (list.size() < shown.size()) continue;
    list = evenly(entries, room, columns);
    break;
  }
  for (const Placed& entry : list) drawEntry(surface, map, entry);
  if (list.size() < shown.size())
    surface.type({.text = fmt::format("and {} more: tierwright story lists them all",
                                      shown.size() - list.size()),
                  .face = Face::Italic,
                  .sizePt = kNear.pt,
                  .at = {room.max.x, room.max.y},
                  .align = Align::Right,
                  .ink = kQuiet});
}

}  // namespace tw
