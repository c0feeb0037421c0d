#include "command/letter_again.h"

#include <algorithm>

#include "compose/finish.h"
#include "review/page_case.h"

namespace tw {

namespace {

std::vector<Polygon> insetsOn(const Rough& rough, std::size_t panel) {
  std::vector<Polygon> out;
  if (rough.panels[panel].ground)
    for (std::size_t k = 0; k < rough.panels.size(); ++k)
      if (k != panel) out.push_back(rough.panels[k].outline);
  return out;
}

/// Told once on a card, however often copy is retyped.
void noteOn(Rough& rough, int panel) {
  const CardLine line{"changed by hand", 0,
                      "copy was retyped; the rest of this card was made before", "", panel};
  if (std::ranges::find(rough.card, line) == rough.card.end()) rough.card.push_back(line);
}

}  // namespace

Result<void> letterAgain(Page& page, const Job& job, const std::string& beat,
                         const Letterer& letterer) {
  if (page.roughs.empty()) return {};
  const auto wishes = pageCaseOf(job, page, letterer);
  if (!wishes) return tl::unexpected(wishes.error());
  const auto wish =
      std::ranges::find(wishes->panels, beat, [](const PanelCase& panel) { return panel.beat.id; });
  if (wish == wishes->panels.end()) return {};
  const auto index = static_cast<std::size_t>(wish - wishes->panels.begin());
  for (Rough& rough : page.roughs) {
    const auto panel = std::ranges::find(rough.panels, beat, &RoughPanel::beat);
    if (panel == rough.panels.end()) continue;
    const auto at = static_cast<std::size_t>(panel - rough.panels.begin());
    panel->balloons =
        letterer.place(letterRequest(*wishes, index, *panel, insetsOn(rough, at))).balloons;
    noteOn(rough, static_cast<int>(at) + 1);
  }
  return {};
}

}  // namespace tw
