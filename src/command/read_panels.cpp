#include "command/read_panels.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/files.h"
#include "command/read_drawn.h"
#include "job/field.h"
#include "job/write_json.h"

namespace tw {

namespace {

constexpr std::uintmax_t kLargestListBytes = kLargestTextBytes;
constexpr double kDoubtful = 0.9;  // below it the artist is told where readers part

std::vector<Polygon> outlinesOf(const MarkedPage& page) {
  std::vector<Polygon> outlines;
  for (const MarkedPanel& panel : page.panels) outlines.push_back(panel.outline);
  return outlines;
}

ReadMarkedPage readOne(MarkedPage page, std::optional<ReadingDirection> direction,
                       const ReaderPreferences& likes) {
  ReadMarkedPage out;
  out.direction = direction.value_or(page.direction.value_or(ReadingDirection::LeftToRight));
  const std::vector<Polygon> outlines = outlinesOf(page);
  out.reading = readPage(outlines, out.direction, likes);
  if (auto order = intendedOrder(page))
    out.intended = {*order, followedShare(outlines, out.direction, *order, likes)};
  out.page = std::move(page);
  return out;
}

OrderedJson jsonOf(const ReadMarkedPage& page) {
  OrderedJson steps = OrderedJson::array();
  for (const Move& move : page.reading.moves) {
    OrderedJson from = nullptr;
    if (move.from >= 0) from = move.from;
    steps.push_back({{"from", from},
                     {"to", move.to},
                     {"share", rounded(move.share, 4)},
                     {"cause", move.cause}});
  }
  OrderedJson json = {{"page", page.page.name},
                      {"direction", std::string(nameOf(page.direction))},
                      {"order", page.reading.order},
                      {"followed", rounded(page.reading.followed, 6)},
                      {"steps", steps}};
  if (page.intended)
    json["intended"] = {{"order", page.intended->order},
                        {"followed", rounded(page.intended->followed, 6)}};
  if (page.drawn) addDrawn(json, *page.drawn);
  if (!page.pictureNote.empty()) json["picture_note"] = page.pictureNote;
  if (!page.pictureProblem.empty()) json["picture_problem"] = page.pictureProblem;
  return json;
}

std::string percent(double share) {
  return share < 0.01 ? fmt::format("{:.2f} %", 100 * share) : fmt::format("{:.0f} %", 100 * share);
}

std::string numbered(const std::vector<int>& order) {
  std::string out;
  for (const int panel : order) out += fmt::format("{}{}", out.empty() ? "" : ", ", panel + 1);
  return out;
}

/// Where readers part: the entry or a panel whose best move is not taken by nearly all.
void addForks(const PageReading& reading, std::vector<std::string>& out) {
  for (std::size_t i = 0; i < reading.moves.size();) {
    const Move& best = reading.moves[i];
    std::size_t end = i;
    while (end < reading.moves.size() && reading.moves[end].from == best.from) ++end;
    const bool last = !reading.order.empty() && best.from == reading.order.back();
    if (best.share < kDoubtful && end - i > 1 && !last && !catchesUp(best)) {
      std::string others;
      for (std::size_t k = i + 1; k < end; ++k)
        others += fmt::format("{}{} to panel {}", k == i + 1 ? "" : ", ",
                              percent(reading.moves[k].share), reading.moves[k].to + 1);
      out.push_back(
          fmt::format("{}: {} go to panel {}, {}: {}.",
                      best.from < 0 ? "At the start" : fmt::format("After panel {}", best.from + 1),
                      percent(best.share), best.to + 1, others, best.cause));
    }
    i = end;
  }
}

/// The pictures that the list or the request names, each measured.
Result<void> addPictures(const ReadPanelsRequest& request, std::vector<ReadMarkedPage>& pages) {
  if (!request.picture.empty() && pages.size() != 1)
    return badInput("One picture was given for a list of several pages.",
                    {.file = request.file.string()},
                    "Name each page's picture in the list, in its field \"picture\".");
  std::optional<AttentionWeights> weights;
  for (ReadMarkedPage& page : pages) {
    std::filesystem::path picture = request.picture;
    if (picture.empty() && !page.page.picture.empty())
      picture = request.file.parent_path() / page.page.picture;
    if (picture.empty()) continue;
    if (!weights) {
      const auto read = readAttentionWeights();
      if (!read) return tl::unexpected(read.error());
      weights = *read;
    }
    auto drawn = readDrawn(page, picture, *weights);
    if (drawn) {
      page.pictureNote = shapeNote(page.page, drawn->picture);
      page.drawn = std::move(*drawn);
    } else if (request.picture.empty()) {
      page.pictureProblem = describe(drawn.error());  // its panels are read all the same
    } else {
      return tl::unexpected(drawn.error());
    }
  }
  return {};
}

}  // namespace

Result<std::vector<ReadMarkedPage>> readPanels(const ReadPanelsRequest& request) {
  const auto likes = loadPreferences();
  if (!likes) return tl::unexpected(likes.error());
  const Result<std::string> bytes = readFile(request.file, kLargestListBytes);
  if (!bytes) return tl::unexpected(bytes.error());
  Result<std::vector<MarkedPage>> pages = readPanelList(*bytes, request.file.string());
  if (!pages) return tl::unexpected(pages.error());
  std::vector<ReadMarkedPage> out;
  for (MarkedPage& page : *pages)
    out.push_back(readOne(std::move(page), request.direction, *likes));
  if (auto drawn = addPictures(request, out); !drawn) return tl::unexpected(drawn.error());
  return out;
}

std::string readPanelsJson(const std::vector<ReadMarkedPage>& pages) {
  OrderedJson list = OrderedJson::array();
  for (const ReadMarkedPage& page : pages) list.push_back(jsonOf(page));
  return textOf(list);
}

std::vector<std::string> readPanelsSentences(const ReadMarkedPage& page) {
  std::vector<std::string> out;
  if (page.page.panels.empty()) return {"The page has no panels."};
  out.push_back(
      fmt::format("Most readers take the panels in the order {}; {} take the whole of it.",
                  numbered(page.reading.order), percent(page.reading.followed)));
  if (page.intended && page.intended->order != page.reading.order)
    out.push_back(fmt::format("You mean {}; {} of readers follow it.",
                              numbered(page.intended->order), percent(page.intended->followed)));
  addForks(page.reading, out);
  if (!page.pictureProblem.empty())
    out.push_back("Only its panels were read: " + page.pictureProblem);
  if (!page.pictureNote.empty()) out.push_back(page.pictureNote);
  if (page.drawn)
    for (std::string& sentence : drawnSentences(*page.drawn)) out.push_back(std::move(sentence));
  return out;
}

}  // namespace tw
