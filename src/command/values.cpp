#include "command/values.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/parallel.h"
#include "command/job_models.h"
#include "command/job_pages.h"
#include "press/proof.h"
#include "review/page_case.h"
#include "stage/light_wish.h"
#include "stage/panel_light.h"

namespace tw {

namespace {

/// A panel of the rough with what is needed to plan it.
struct PanelAsked {
  int number;
  const RoughPanel* panel;
  Beat beat;
};

/// The solids of a staging in words.
class Names {
 public:
  Names(const Job& job, const RoughPanel& panel, const Beat& beat, std::vector<Solid> solids)
      : job_(job), panel_(panel), beat_(beat), solids_(std::move(solids)) {}

  std::string of(int solid) const {
    if (solid < 0) return "the backdrop";
    const Solid& s = solids_[static_cast<std::size_t>(solid)];
    if (s.figure >= 0)
      return person(panel_.staging.figures[static_cast<std::size_t>(s.figure)].who);
    if (s.prop >= 0) return thing(panel_.staging.props[static_cast<std::size_t>(s.prop)].prop);
    return s.isSet ? "the set" : "the seat";
  }

 private:
  std::string person(const std::string& id) const {
    for (const Character& c : job_.cast)
      if (c.id == id) return c.name;
    return id;
  }
  std::string thing(const std::string& id) const {
    for (const Prop& p : beat_.props)
      if (p.id == id) return "the " + p.name;
    return "the " + id;
  }

  const Job& job_;
  const RoughPanel& panel_;
  const Beat& beat_;
  std::vector<Solid> solids_;
};

std::string percent(double share) {
  return fmt::format("{:.0f} %", 100 * share);
}

std::string areaOf(const SpottedBlack& black, const Names& names) {
  const std::string whose = names.of(black.solid);
  switch (black.what) {
    case BlackOf::Costume:
      return "the dark clothes or hair of " + whose;
    case BlackOf::CastShadow:
      return "the shadows on the ground";
    case BlackOf::Set:
      return whose + " behind the figures";
    case BlackOf::Sky:
      return "the dark of the backdrop";
    case BlackOf::ShadowSide:
    case BlackOf::SetShadow:
      return "the shadow side of " + whose;
  }
  return whose;
}

/// One sentence for each area; a set of several pieces is one area.
std::vector<std::string> sentencesOf(const std::vector<SpottedBlack>& blacks, const Names& names) {
  std::vector<std::pair<std::string, SpottedBlack>> areas;
  for (const SpottedBlack& black : blacks) {
    const std::string area = areaOf(black, names);
    const auto same = std::find_if(areas.begin(), areas.end(),
                                   [&](const auto& known) { return known.first == area; });
    if (same == areas.end()) {
      areas.emplace_back(area, black);
    } else {
      same->second.share += black.share;
      same->second.apartGain += black.apartGain;
    }
  }
  std::vector<std::string> out;
  for (const auto& [area, black] : areas) {
    std::string more = ".";
    if (black.apartGain > 0.01)
      more =
          fmt::format(": {} more of the focus's outline stands clear.", percent(black.apartGain));
    out.push_back(fmt::format("Fill {} ({} of the panel){}", area, percent(black.share), more));
  }
  return out;
}

std::vector<std::string> findingsOf(const ValuePlan& plan, const Names& names) {
  std::vector<std::string> out;
  if (!plan.separates())
    out.push_back(fmt::format(
        "The focus stands clear along {} of its outline only (60 % wanted): set it a step lighter "
        "or darker than its ground.",
        percent(plan.apart)));
  for (const RunTogether& r : plan.runTogether)
    out.push_back(
        fmt::format("{} and {} are of one value along {} of their border: keep a line "
                    "of paper between them or change one.",
                    names.of(r.a), names.of(r.b), percent(r.share)));
  return out;
}

Result<std::vector<PanelAsked>> panelsAsked(const ValuesRequest& request, const Page& page,
                                            const Rough& rough) {
  if (request.panel)
    if (auto known = panelNumbered(page, rough, *request.panel); !known)
      return tl::unexpected(known.error());
  std::vector<PanelAsked> out;
  for (std::size_t i = 0; i < rough.panels.size(); ++i) {
    const int number = static_cast<int>(i) + 1;
    if (request.panel && *request.panel != number) continue;
    auto beat = beatShown(page, rough, i);
    if (!beat) return tl::unexpected(beat.error());
    out.push_back({number, &rough.panels[i], std::move(*beat)});
  }
  return out;
}

Result<void> write(const ValuesRequest& request, const RoughPicture& picture) {
  if (request.svg)
    if (auto done = writeSvg(*request.svg, picture, {}); !done) return done;
  if (request.png)
    if (auto done = writePng(*request.png, picture, {}, request.dpi); !done) return done;
  return {};
}

}  // namespace

Result<std::vector<PanelValues>> valuesOf(const ValuesRequest& request) {
  const auto open = openJob(request.job);
  if (!open) return tl::unexpected(open.error());
  const auto numbers = pagesAsked(open->job, request.page);
  if (!numbers) return tl::unexpected(numbers.error());
  const Page& page = *open->job.page(numbers->front());
  const auto named = roughNamed(page, request.rough);
  if (!named) return tl::unexpected(named.error());
  const Rough* const rough = &page.roughs[*named];
  const auto stager = stagerFor(*open);
  if (!stager) return tl::unexpected(stager.error());
  const auto lights = LightWords::load();
  if (!lights) return tl::unexpected(lights.error());
  const auto asked = panelsAsked(request, page, *rough);
  if (!asked) return tl::unexpected(asked.error());

  RoughPicture picture;
  picture.sheet = open->job.sheetFor(page);
  picture.rightHand = Job::isRightHand(page);
  picture.page = page.number;
  picture.jobTitle = open->job.title;
  picture.direction = page.brief.direction;
  picture.rough = *rough;
  picture.panels.resize(rough->panels.size());
  std::vector<PanelValues> out(asked->size());
  parallelFor(asked->size(), 0, [&](std::size_t i) {
    const auto& [number, panel, beat] = (*asked)[i];
    const std::string focus = focusOf(beat, page.brief);
    PlannedPanel planned = plannedPanel(*stager, *panel, beat, focus, {}, *lights);
    const Names names(open->job, *panel, beat, stager->solidsOf(panel->staging, beat, 0.3));
    PanelValues& values = out[i];
    values = {number,       beat.id, focus, lightOf(panel->staging, beat, *lights).title,
              planned.plan, {},      {}};
    values.blacks = sentencesOf(planned.plan.blacks, names);
    values.findings = findingsOf(planned.plan, names);
    picture.panels[static_cast<std::size_t>(number - 1)] = drawnInValues(std::move(planned));
  });
  if (auto done = write(request, picture); !done) return tl::unexpected(done.error());
  return out;
}

}  // namespace tw
