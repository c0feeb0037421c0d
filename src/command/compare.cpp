#include "command/compare.h"

#include "command/job_pages.h"
#include "job/write_json.h"

namespace tw {

namespace {

constexpr Spec kNumber = number(-1e9, 1e9);

OrderedJson standingJson(const Standing& standing) {
  return {{"rule", standing.rule},
          {"panel", standing.panel},
          {"cost", jsonOf(standing.cost, kNumber)},
          {"usual", jsonOf(standing.usual, kNumber)},
          {"words", standing.words}};
}

OrderedJson roughJson(const std::string& name, double score, const Standing& strongest,
                      const Standing& weakest) {
  return {{"name", name},
          {"score", jsonOf(score, kNumber)},
          {"strongest", standingJson(strongest)},
          {"weakest", standingJson(weakest)}};
}

OrderedJson ruleJson(const RuleDifference& d) {
  return {{"rule", d.rule},
          {"cost_a", jsonOf(d.costA, kNumber)},
          {"cost_b", jsonOf(d.costB, kNumber)},
          {"reason_a", d.reasonA},
          {"reason_b", d.reasonB},
          {"panels_a", d.panelsA},
          {"panels_b", d.panelsB}};
}

OrderedJson panelJson(const PanelDifference& d) {
  return {{"beat", d.beat},      {"panel_a", d.panelA},
          {"panel_b", d.panelB}, {"outline_mm", jsonOf(d.outlineMm, number(0, 1e6))},
          {"shape", d.shape},    {"staging", d.staging}};
}

}  // namespace

Result<Compared> compareOnPage(const CompareRequest& request) {
  const auto open = openJob(request.job);
  if (!open) return tl::unexpected(open.error());
  const auto numbers = pagesAsked(open->job, request.page);
  if (!numbers) return tl::unexpected(numbers.error());
  const Page& page = *open->job.page(numbers->front());
  const auto a = roughNamed(page, request.a), b = roughNamed(page, request.b);
  if (!a) return tl::unexpected(a.error());
  if (!b) return tl::unexpected(b.error());
  const Rough &first = page.roughs[*a], &second = page.roughs[*b];
  Compared out;
  out.page = page.number;
  out.difference = compareRoughs(open->job, first, second);
  out.strongestA = strongestOf(first, page.roughs);
  out.weakestA = weakestOf(first, page.roughs);
  out.strongestB = strongestOf(second, page.roughs);
  out.weakestB = weakestOf(second, page.roughs);
  return out;
}

std::string comparedJson(const Compared& compared) {
  const RoughComparison& d = compared.difference;
  OrderedJson rules = OrderedJson::array(), panels = OrderedJson::array();
  for (const RuleDifference& rule : d.rules) rules.push_back(ruleJson(rule));
  for (const PanelDifference& panel : d.panels) panels.push_back(panelJson(panel));
  return textOf({{"page", compared.page},
                 {"a", roughJson(d.a, d.scoreA, compared.strongestA, compared.weakestA)},
                 {"b", roughJson(d.b, d.scoreB, compared.strongestB, compared.weakestB)},
                 {"rules", std::move(rules)},
                 {"panels", std::move(panels)}});
}

}  // namespace tw
