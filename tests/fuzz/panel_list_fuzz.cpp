// Feeds bytes to the reader of marked panels and lets the reader of pages order what comes out:
// every panel once, shares that are shares. Whatever is refused must come with a sentence.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "base/result.h"
#include "job/panel_list.h"
#include "read/page_reading.h"

namespace {

using namespace tw;

void checkPage(const MarkedPage& page) {
  std::vector<Polygon> outlines;
  for (const MarkedPanel& panel : page.panels) outlines.push_back(panel.outline);
  if (outlines.size() > 12) outlines.resize(12);  // long pages only slow the search for crashes
  const PageReading reading =
      readPage(outlines, page.direction.value_or(ReadingDirection::LeftToRight));
  std::vector<int> order = reading.order;
  std::sort(order.begin(), order.end());
  for (std::size_t i = 0; i < order.size(); ++i)
    ensure(order[i] == static_cast<int>(i), "every panel stands once in the order");
  ensure(order.size() == outlines.size(), "no panel is left out of the order");
  ensure(reading.followed >= 0 && reading.followed <= 1, "followed is a share");
  for (const Move& move : reading.moves)
    ensure(move.share > 0 && move.share < 1.000001 && !move.cause.empty(), "a move is a share");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  const auto pages = readPanelList(bytes, "pages.json");
  if (pages) {
    for (const MarkedPage& page : *pages) checkPage(page);
    return 0;
  }
  ensure(!pages.error().empty(), "a refusal names a problem");
  for (const Problem& problem : pages.error())
    ensure(!problem.sentence.empty(), "a problem has a sentence");
  return 0;
}
