// From a measured drawn page to the picture that shows it.
#include <fmt/format.h>

#include "command/read_drawn.h"
#include "press/attention_art.h"

namespace tw {

namespace {

HeatPanel heatPanelOf(const DrawnPanel& panel, int number) {
  const PlaceMap& map = panel.attention.map;
  HeatPanel out{.outline = panel.outline,
                .number = number,
                .width = map.width,
                .height = map.height,
                .heat = map.value,
                .covers = map.covers,
                .focus = panel.focus.box,
                .focusMarked = panel.focus.marked,
                .leadFrom = panel.focus.at,
                .lead = panel.lead.lead.direction,
                .leadMarked = panel.lead.marked};
  for (const Spot& spot : panel.attention.spots) out.spots.push_back(spot.at);
  for (const auto* list : {&panel.attention.marked, &panel.attention.proposed})
    for (const SeenElement& e : *list)
      if (e.kind == SeenKind::Copy) out.copy.push_back(e.box);
  return out;
}

}  // namespace

Result<void> drawAttentionPng(const std::filesystem::path& file, const ReadMarkedPage& page) {
  ensure(page.drawn.has_value(), "only a drawn page has an attention picture");
  const DrawnPage& drawn = *page.drawn;
  AttentionPicture picture{.title = fmt::format("Where the eye goes: page {}", page.page.name),
                           .sentences = drawnSentences(drawn),
                           .page = drawn.picture,
                           .pageBox = drawn.page};
  if (!page.pictureNote.empty())
    picture.sentences.insert(picture.sentences.begin(), page.pictureNote);
  for (std::size_t i = 0; i < drawn.panels.size(); ++i)
    picture.panels.push_back(heatPanelOf(drawn.panels[i], static_cast<int>(i) + 1));
  for (const Peak& peak : drawn.onePicture.centres) picture.centres.push_back(peak.at);
  return writeAttentionPng(file, picture);
}

}  // namespace tw
