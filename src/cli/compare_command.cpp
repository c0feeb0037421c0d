// tierwright compare: two roughs of a page, rule by rule and panel by panel.
#include <fmt/format.h>

#include <algorithm>
#include <memory>

#include "cli/terminal.h"
#include "command/compare.h"

namespace tw {

namespace {

struct CompareArguments {
  CompareRequest request;
  bool json = false;
};

void printRules(const RoughComparison& d) {
  if (d.rules.empty()) {
    fmt::print("No rule costs one more than the other.\n");
    return;
  }
  std::vector<std::vector<std::string>> rows{{"rule", d.a, d.b, "less in", "why the other costs"}};
  for (const RuleDifference& rule : d.rules) {
    const bool aIsDearer = rule.costA > rule.costB;
    rows.push_back({rule.rule, fmt::format("{:.2f}", rule.costA), fmt::format("{:.2f}", rule.costB),
                    aIsDearer ? d.b : d.a, aIsDearer ? rule.reasonA : rule.reasonB});
  }
  fmt::print("{}", table(rows));
}

void printPanel(const PanelDifference& panel, const RoughComparison& d) {
  if (panel.panelA == 0 || panel.panelB == 0) {
    fmt::print("{}: only in {}\n", panel.beat, panel.panelA == 0 ? d.b : d.a);
    return;
  }
  if (!panel.differs()) {
    fmt::print("panel {}: the same\n", panel.panelA);
    return;
  }
  std::vector<std::string> words;
  if (!panel.shape.empty())
    words.push_back(fmt::format("in {} {}", d.b, fmt::join(panel.shape, ", ")));
  words.insert(words.end(), panel.staging.begin(), panel.staging.end());
  fmt::print("panel {}: {}\n", panel.panelA, fmt::join(words, "; "));
}

int run(const CompareArguments& a) {
  const auto compared = compareOnPage(a.request);
  if (!compared) return report(compared.error());
  if (a.json) {
    fmt::print("{}", comparedJson(*compared));
    return kDone;
  }
  const RoughComparison& d = compared->difference;
  fmt::print("Page {}: rough {} costs {:.2f}, rough {} {:.2f}\n", compared->page, d.a, d.scoreA,
             d.b, d.scoreB);
  fmt::print("{}: strongest {}; weakest {}\n", d.a, compared->strongestA.words,
             compared->weakestA.words);
  fmt::print("{}: strongest {}; weakest {}\n", d.b, compared->strongestB.words,
             compared->weakestB.words);
  printRules(d);
  for (const PanelDifference& panel : d.panels) printPanel(panel, d);
  return kDone;
}

}  // namespace

void addCompare(CLI::App& app, int& exitCode) {
  auto* command = app.add_subcommand("compare", "Set two roughs of a page against each other");
  auto a = std::make_shared<CompareArguments>();
  command->add_option("JOB", a->request.job, "The job folder")->required();
  command->add_option("A", a->request.a, "A rough")->required();
  command->add_option("B", a->request.b, "Another")->required();
  command->add_option("--page", a->request.page, "Page")->required()->check(CLI::Range(1, 99999));
  command->add_flag("--json", a->json, "Print JSON");
  command->footer(
      "Rules first, the largest difference on top; then panels: how the second rough's shape and\n"
      "staging differ from the first's.\n"
      "Example:\n"
      "  tierwright compare job --page 4 A B");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

}  // namespace tw
