#include "cli/print_findings.h"

#include <fmt/format.h>

#include <cmath>

namespace tw {

namespace {

std::string whereInWords(const Finding& finding) {
  std::string out = fmt::format("page {}", finding.page);
  if (finding.panel > 0) out += fmt::format(" panel {}", finding.panel);
  return out;
}

/// "7.9 mm", "1 joint", "60 %".
std::string amount(double value, const std::string& unit) {
  const bool whole = std::abs(value - std::round(value)) < 0.05 || std::abs(value) >= 20;
  std::string out = whole ? fmt::format("{:.0f}", value) : fmt::format("{:.1f}", value);
  if (unit.empty()) return out;
  const bool one = out == "1" && unit.ends_with('s') && unit != "s";
  return out + " " + (one ? unit.substr(0, unit.size() - 1) : unit);
}

void printTried(const Finding& finding) {
  for (const TriedRemedy& tried : finding.tried)
    fmt::print("    tried: {}: {} → {}{}\n", tried.change, amount(tried.before, finding.unit),
               amount(tried.after, finding.unit),
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
             amount(finding.value, finding.unit), amount(finding.limit, finding.unit),
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
