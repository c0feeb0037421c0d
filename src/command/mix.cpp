#include "command/mix.h"

#include <fmt/format.h>

#include <algorithm>

#include "command/job_models.h"
#include "command/job_pages.h"
#include "compose/layout_of.h"
#include "compose/measured_page.h"
#include "compose/mix.h"
#include "compose/rough_names.h"

namespace tw {

namespace {

Result<void> mustShowThePage(const Rough& rough, const PageCase& page) {
  if (showsBeatsOf(rough, page)) return {};
  return badInput(fmt::format("Rough {} was made for another state of the script.", rough.name),
                  {.page = page.page->number}, "Make the page's roughs again.");
}

/// The same shapes, stagings and lines.
bool isAs(const Rough& a, const Rough& b) {
  return std::ranges::equal(a.panels, b.panels, [](const RoughPanel& p, const RoughPanel& q) {
    return p.outline == q.outline && p.staging == q.staging && p.strokes == q.strokes;
  });
}

Result<Mixed> mixed(const PageCase& wishes, const Page& page, const Stager& stager,
                    const MixRequest& request) {
  const auto into = roughNamed(page, request.into), from = roughNamed(page, request.from);
  if (!into) return tl::unexpected(into.error());
  if (!from) return tl::unexpected(from.error());
  if (*into == *from)
    return badInput("A rough cannot be mixed with itself.", {.page = page.number},
                    "Name another rough.");
  const Rough &a = page.roughs[*into], &b = page.roughs[*from];
  for (const Rough* rough : {&a, &b})
    if (auto shown = mustShowThePage(*rough, wishes); !shown) return tl::unexpected(shown.error());
  if (!request.panel) return withArrangementOf(wishes, stager, b, a);
  const auto panel = panelNumbered(page, a, *request.panel);
  if (!panel) return tl::unexpected(panel.error());
  return withPanelOf(wishes, stager, a, b, *panel);
}

}  // namespace

Result<MixMade> mixedOn(const Job& job, const Page& page, const Workshop& workshop,
                        const MixRequest& request) {
  const auto wishes = pageCaseOf(job, page, workshop.letterer);
  if (!wishes) return tl::unexpected(wishes.error());
  const auto lights = LightWords::load();
  if (!lights) return tl::unexpected(lights.error());
  auto made = mixed(*wishes, page, workshop.stager, request);
  if (!made) return tl::unexpected(made.error());
  if (isAs(made->rough, page.roughs[*roughNamed(page, request.into)]))
    return badInput(fmt::format("Nothing of {} differs there from {}: no rough is made.",
                                request.from, request.into),
                    {.page = page.number}, "Take another panel, or another rough.");
  made->rough.name = freeRoughName(page.roughs);
  auto measured = MeasuredPage::of(*wishes, workshop, *lights, std::move(made->rough));
  if (!measured) return tl::unexpected(measured.error());
  MixMade out;
  out.rough = measured->rough();
  out.notes = std::move(made->notes);
  out.scoreInto = page.roughs[*roughNamed(page, request.into)].score;
  out.scoreFrom = page.roughs[*roughNamed(page, request.from)].score;
  return out;
}

Result<MixMade> mixRoughs(const MixRequest& request) {
  auto open = openJob(request.job);
  if (!open) return tl::unexpected(open.error());
  if (auto writable = mustBeWritable(*open); !writable) return tl::unexpected(writable.error());
  const auto numbers = pagesAsked(open->job, request.page);
  if (!numbers) return tl::unexpected(numbers.error());
  auto workshop = workshopFor(*open);
  if (!workshop) return tl::unexpected(workshop.error());
  Page& page = *open->job.page(numbers->front());
  auto made = mixedOn(open->job, page, *workshop, request);
  if (!made) return tl::unexpected(made.error());
  page.roughs.push_back(made->rough);
  if (auto saved = open->folder.savePage(page); !saved) return tl::unexpected(saved.error());
  return made;
}

}  // namespace tw
