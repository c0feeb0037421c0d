#include "cli/print_findings.h"

#include <fmt/format.h>

#include "job/amount_words.h"

namespace tw {

namespace {

std::string whereInWords(const Finding& finding) {
  std::string out = fmt::format("page {}", finding.page);
  if (finding.panel > 0) out += fmt::format(" panel {}", finding.panel);
  return out;
}

void printTried(const Finding& finding) {
  for (const TriedRemedy& tried : finding.tried)
    fmt::print("    tried: {}: {} → {}{}\n", tried.change,
               amountInWords(tried.before, finding.unit), amountInWords(tried.after, finding.unit),
               tried.aside.empty() ? "" : ", but it costs: " + tried.aside);
}

void printOne(const Finding& finding, std::size_t number) {
  fmt::print("{}. {}, {}, {}: {}\n", number, nameOf(finding.severity), whereInWords(finding),
             finding.rule, finding.reason);
  if (!finding.silencedWhy.empty()) {
    fmt::print("    silenced: {}\n", finding.silencedWhy);
    return;
  }
  fmt::print("    {}\n", finding.remedy);
  printTried(finding);
  fmt::print("    measured: {}: {}, limit {}; {}{}{}\n", finding.measure,
             amountInWords(finding.value, finding.unit), amountInWords(finding.limit, finding.unit),
             nameOf(finding.evidence), finding.source.empty() ? "" : ": ", finding.source);
}

}  // namespace

void printFindings(const std::vector<Finding>& findings) {
  for (std::size_t i = 0; i < findings.size(); ++i) printOne(findings[i], i + 1);
  if (findings.empty()) fmt::print("Nothing is found.\n");
}

Severity severityNamed(const std::string& level) {
  return level == "look" ? Severity::Look : level == "should" ? Severity::Should : Severity::Must;
}

}  // namespace tw
