#include "command/pin.h"

#include <fmt/format.h>

#include <algorithm>

#include "arrange/read_notation.h"
#include "command/job_pages.h"
#include "compose/layout_of.h"
#include "geometry/polygon.h"
#include "job/shown_rough.h"
#include "job/write_json.h"
#include "letter/lettering.h"
#include "review/page_case.h"

namespace tw {

namespace {

constexpr double kSameMm = 0.5;

/// Number of the beat among the page's, from 1; 0 when the script has lost it.
int panelOf(const Page& page, const std::string& beat) {
  const auto found = std::ranges::find(page.beats, beat, &Beat::id);
  return found == page.beats.end() ? 0 : static_cast<int>(found - page.beats.begin()) + 1;
}

std::string stagingInWords(const Staging& staging) {
  const StagingChoice& c = staging.choice;
  std::string out = fmt::format("{}, {}", nameOf(c.shot), nameOf(c.eye));
  if (std::abs(c.sideDeg) >= 1)
    out += fmt::format(", from {:.0f}° to the {}", std::abs(c.sideDeg),
                       c.sideDeg > 0 ? "figure's left" : "figure's right");
  if (std::abs(c.tiltDeg) >= 1) out += fmt::format(", tilted {:.0f}°", c.tiltDeg);
  if (c.mirrored) out += ", mirrored";
  if (c.lensMm > 0) out += fmt::format(", {:.0f} mm lens", c.lensMm);
  return out;
}

bool isDragged(const Job& job, const Page& page, const Rough& rough) {
  auto letterer = Letterer::make();
  if (!letterer) return false;
  const auto wishes = pageCaseOf(job, page, *letterer);
  const auto tree = treeNoted(rough.arrangement);
  if (!wishes || !tree || !showsBeatsOf(rough, *wishes)) return false;
  const auto laid =
      layOut(wishes->arrangeRequest(), packed(*tree), treatmentNamed(rough.treatment));
  if (!laid) return true;
  for (std::size_t i = 0; i < rough.panels.size(); ++i)
    for (const Point& p : rough.panels[i].outline.points)
      if (distanceToOutline(laid->panels[i].outline, p) > kSameMm) return true;
  return false;
}

Result<void> takeBack(Page& page, const PinRequest& request) {
  Pins& pins = page.pins;
  if (request.arrangement) {
    if (pins.arrangement.empty() && pins.treatment.empty())
      return badInput("The page's arrangement is not pinned.", {.page = page.number});
    pins.arrangement.clear();
    pins.treatment.clear();
  }
  if (request.panel) {
    const int panel = *request.panel;
    const bool there = panel >= 1 && panel <= static_cast<int>(page.beats.size());
    if (!there || pins.stagings.erase(page.beats[static_cast<std::size_t>(panel) - 1].id) == 0)
      return badInput(fmt::format("Panel {} is not pinned.", panel), {.page = page.number},
                      "`tierwright pin JOB --page N` lists what is.");
  }
  if (!request.arrangement && !request.panel) pins = {};
  return {};
}

Result<void> pin(const Job& job, Page& page, const PinRequest& request,
                 std::vector<std::string>& notes) {
  const Rough* shown = shownRough(page);
  const auto named = roughNamed(page, !request.rough.empty() ? request.rough
                                      : shown == nullptr     ? "A"
                                                             : shown->name);
  if (!named) return tl::unexpected(named.error());
  const Rough& rough = page.roughs[*named];
  if (request.panel) {
    const auto panel = panelNumbered(page, rough, *request.panel);
    if (!panel) return tl::unexpected(panel.error());
    if (auto beat = beatShown(page, rough, *panel); !beat) return tl::unexpected(beat.error());
    pinPanel(page, rough, *panel);
  }
  if (!request.arrangement) return {};
  pinArrangement(page, rough);
  if (isDragged(job, page, rough))
    notes.push_back(
        fmt::format("The borders of rough {} are not where its arrangement puts them: "
                    "the pin keeps the arrangement, not the borders dragged by hand.",
                    rough.name));
  return {};
}

}  // namespace

void pinPanel(Page& page, const Rough& rough, std::size_t panel) {
  page.pins.stagings[rough.panels[panel].beat] = rough.panels[panel].staging;
}

void pinArrangement(Page& page, const Rough& rough) {
  page.pins.arrangement = rough.arrangement;
  page.pins.treatment = rough.treatment;
}

bool isPinned(const Page& page, const Rough& rough, std::size_t panel) {
  const auto found = page.pins.stagings.find(rough.panels[panel].beat);
  if (found == page.pins.stagings.end()) return false;
  return found->second.choice == rough.panels[panel].staging.choice;
}

bool isArrangementPinned(const Page& page, const Rough& rough) {
  return !page.pins.arrangement.empty() && page.pins.arrangement == rough.arrangement &&
         page.pins.treatment == rough.treatment;
}

std::vector<std::string> pinsInWords(const Page& page) {
  std::vector<std::string> out;
  const Pins& pins = page.pins;
  if (!pins.arrangement.empty() || !pins.treatment.empty())
    out.push_back(fmt::format("arrangement: {}{}{}", pins.arrangement,
                              pins.arrangement.empty() || pins.treatment.empty() ? "" : ", ",
                              pins.treatment));
  for (const Beat& beat : page.beats)
    if (const auto found = pins.stagings.find(beat.id); found != pins.stagings.end())
      out.push_back(
          fmt::format("panel {}: {}", panelOf(page, beat.id), stagingInWords(found->second)));
  for (const auto& [beat, staging] : pins.stagings)
    if (panelOf(page, beat) == 0) out.push_back(fmt::format("{}: no longer in the script", beat));
  return out;
}

Result<Pinned> changePins(const PinRequest& request) {
  auto open = openJob(request.job);
  if (!open) return tl::unexpected(open.error());
  const auto numbers = pagesAsked(open->job, request.page);
  if (!numbers) return tl::unexpected(numbers.error());
  Page& page = *open->job.page(numbers->front());
  Pinned out;
  const bool changes = request.back || request.panel || request.arrangement;
  if (changes) {
    if (auto writable = mustBeWritable(*open); !writable) return tl::unexpected(writable.error());
    auto done = request.back ? takeBack(page, request) : pin(open->job, page, request, out.notes);
    if (!done) return tl::unexpected(done.error());
    if (auto saved = open->folder.savePage(page); !saved) return tl::unexpected(saved.error());
  }
  out.page = page;
  return out;
}

std::string pinsJson(const Page& page) {
  OrderedJson panels = OrderedJson::array();
  for (const auto& [beat, staging] : page.pins.stagings) {
    const StagingChoice& c = staging.choice;
    panels.push_back({{"beat", beat},
                      {"panel", panelOf(page, beat)},
                      {"shot", std::string(nameOf(c.shot))},
                      {"eye", std::string(nameOf(c.eye))},
                      {"side_deg", jsonOf(c.sideDeg, degrees())},
                      {"tilt_deg", jsonOf(c.tiltDeg, degrees())},
                      {"mirrored", c.mirrored}});
  }
  return textOf({{"page", page.number},
                 {"arrangement", page.pins.arrangement},
                 {"treatment", page.pins.treatment},
                 {"panels", std::move(panels)}});
}

}  // namespace tw
