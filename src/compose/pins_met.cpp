// What a page's pins come to.
//
// 1. The arrangement is read back from its notation and laid out in the pinned treatment, or in any
//    when none is pinned. It must have as many panels as the page; over a ground one fewer.
// 2. Where both together give no page, the arrangement is kept and the treatment given up: the
//    artist sees the shapes of a page before how its borders are drawn.
// 3. Stagings are taken by beat. One whose beat has left the page, or that shows somebody who has
//    left the beat, is told.
#include "compose/pins_met.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "arrange/read_notation.h"
#include "review/called.h"

namespace tw {

namespace {

constexpr std::array kTreatments = {Treatment::Plain, Treatment::Bled, Treatment::Ground,
                                    Treatment::Slanted};

std::optional<Treatment> treatmentPinned(const std::string& name) {
  for (const Treatment t : kTreatments)
    if (nameOf(t) == name) return t;
  return std::nullopt;
}

bool canBeLaidOut(const ArrangeRequest& request, const PackedTree& tree,
                  std::optional<Treatment> treatment) {
  return std::ranges::any_of(kTreatments, [&](Treatment t) {
    return (!treatment || *treatment == t) && layOut(request, tree, t).has_value();
  });
}

void meetTreatment(PinsMet& out, const std::string& name) {
  if (name.empty()) return;
  out.treatment = treatmentPinned(name);
  if (!out.treatment)
    out.unkept.push_back(fmt::format("The pinned treatment \"{}\" is none of ours.", name));
}

void meetArrangement(PinsMet& out, const PageCase& page) {
  const std::string& pinned = page.page->pins.arrangement;
  if (pinned.empty()) return;
  const auto tree = treeNoted(pinned);
  if (!tree) {
    out.unkept.push_back(fmt::format("The pinned arrangement \"{}\" cannot be read.", pinned));
    return;
  }
  const ArrangeRequest request = page.arrangeRequest();
  const PackedTree packedTree = packed(*tree);
  if (!canBeLaidOut(request, packedTree, {})) {
    out.unkept.push_back(fmt::format("The pinned arrangement {} has {} panels and the page {}.",
                                     pinned, leavesOf(*tree), page.panels.size()));
    return;
  }
  out.tree = packedTree;
  if (out.treatment && !canBeLaidOut(request, packedTree, out.treatment)) giveUpTreatment(out);
}

std::string strangersIn(const Staging& staging, const PanelCase& panel, const Job& job) {
  std::string out;
  for (const SetFigure& figure : staging.figures)
    if (std::ranges::find(panel.beat.figures, figure.who, &BeatFigure::who) ==
        panel.beat.figures.end())
      out += (out.empty() ? "" : ", ") + calledIn(job, figure.who);
  return out;
}

void meetStagings(PinsMet& out, const PageCase& page) {
  out.stagings.resize(page.panels.size());
  for (const auto& [beat, staging] : page.page->pins.stagings) {
    const auto panel = std::ranges::find(
        page.panels, beat, [](const PanelCase& p) -> const std::string& { return p.beat.id; });
    if (panel == page.panels.end()) {
      out.unkept.push_back(
          fmt::format("A staging is pinned for panel {}, which the script no longer has.", beat));
      continue;
    }
    const auto index = static_cast<std::size_t>(panel - page.panels.begin());
    out.stagings[index] = &staging;
    if (const std::string gone = strangersIn(staging, *panel, *page.job); !gone.empty())
      out.unkept.push_back(fmt::format(
          "The pinned staging of panel {} shows {}, no longer in the panel.", index + 1, gone));
  }
}

}  // namespace

void giveUpTreatment(PinsMet& pins) {
  ensure(pins.treatment.has_value(), "only a pinned treatment can be given up");
  pins.unkept.push_back(
      fmt::format("The page cannot be {} {}; the treatment was left free.", nameOf(*pins.treatment),
                  pins.tree ? "in the pinned arrangement" : "in any arrangement"));
  pins.treatment.reset();
}

PinsMet pinsMet(const PageCase& page) {
  PinsMet out;
  meetTreatment(out, page.page->pins.treatment);
  meetArrangement(out, page);
  meetStagings(out, page);
  return out;
}

}  // namespace tw
