#include "command/mend.h"

#include <fmt/format.h>

#include <algorithm>

#include "command/staged_page.h"
#include "compose/trials.h"

namespace tw {

namespace {

std::string listed(const std::vector<std::string>& changes) {
  return fmt::format("They are: {}.", fmt::join(changes, "; "));
}

/// Findings whose rule and panel the other list does not have.
std::vector<Finding> onlyIn(const std::vector<Finding>& findings,
                            const std::vector<Finding>& others) {
  std::vector<Finding> out;
  for (const Finding& finding : findings)
    if (std::ranges::none_of(others, [&](const Finding& other) {
          return other.rule == finding.rule && other.panel == finding.panel;
        }))
      out.push_back(finding);
  return out;
}

}  // namespace

Result<Mended> mendPanel(const MendRequest& request) {
  auto staged = openStagedPage(request.job, request.page, request.rough);
  if (!staged) return tl::unexpected(staged.error());
  StagedPage& page = **staged;
  MeasuredPage& measured = *page.measured;
  const auto panel = panelNumbered(page.stored(), measured.rough(), request.panel);
  if (!panel) return tl::unexpected(panel.error());
  Mended out;
  out.rough = measured.rough().name;
  out.scoreBefore = out.scoreAfter = measured.rough().score;
  const std::vector<Trial> trials = trialsFor(measured, *panel);
  for (const Trial& trial : trials) out.changes.push_back(trial.change);
  if (request.change.empty()) return out;

  const auto trial = std::ranges::find(trials, request.change, &Trial::change);
  if (trial == trials.end())
    return badInput(fmt::format("\"{}\" is not a change that can be tried there.", request.change),
                    {.page = request.page, .panel = request.panel}, listed(out.changes));
  if (auto writable = mustBeWritable(*page.folder); !writable)
    return tl::unexpected(writable.error());
  const std::vector<Finding> before = measured.measured().findings;
  measured.restage(*panel, trial->staging);
  out.gone = onlyIn(before, measured.measured().findings);
  out.fresh = onlyIn(measured.measured().findings, before);
  out.scoreAfter = measured.rough().score;
  page.stored().roughs[page.rough] = measured.rough();
  if (auto saved = page.folder->savePage(page.stored()); !saved)
    return tl::unexpected(saved.error());
  return out;
}

}  // namespace tw
