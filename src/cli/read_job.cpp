#include "cli/read_job.h"

#include <fmt/format.h>

#include "cli/terminal.h"

namespace tw {

namespace {

std::string percent(double share) {
  return fmt::format("{:.0f} %", 100 * share);
}

/// Who the panel is about and how it stands out; the squint test's share over one half holds.
std::vector<std::string> focusCells(const PageRead& read, std::size_t panel) {
  const FocusProminence p = prominenceOf(read, panel);
  const Squint& squint = read.readings.squints[panel];
  if (p.who.empty()) return {"-", "-", "-", "-", "-"};
  return {p.who, fmt::format("{:.1f} mm", p.headMm), fmt::format("{}", p.rank),
          fmt::format("{:+.0f} L*", 100 * squint.contrast), percent(squint.holds)};
}

void printPanels(const PageRead& read) {
  std::vector<std::vector<std::string>> rows{
      {"panel", "fixations", "on copy", "time", "passed over", "lead to next", "off the sheet",
       "focus", "head", "in cast", "against ground", "squint"}};
  for (std::size_t i = 0; i < read.readings.eyes.panels.size(); ++i) {
    const PanelEyes& eyes = read.readings.eyes.panels[i];
    const Arrival& lead = read.measured.arrivals[i];
    const bool leads = read.measured.rough.panels[i].lead.strength > 0;
    rows.push_back({fmt::format("{}", i + 1), fmt::format("{:.1f}", eyes.looks),
                    fmt::format("{:.1f}", eyes.copyLooks),
                    fmt::format("{:.1f} s", eyes.dwellMs / 1000), percent(eyes.passedOver),
                    leads ? percent(lead.next) : "-", leads ? percent(lead.off) : "-"});
    for (std::string& cell : focusCells(read, i)) rows.back().push_back(std::move(cell));
  }
  fmt::print("{}\n", table(rows));
}

void printPartings(const PageReading& order) {
  constexpr double kWorthASentence = 0.08;
  for (const Move& move : order.moves) {
    if (move.to == move.from + 1 || move.share < kWorthASentence) continue;
    const std::string from =
        move.from < 0 ? std::string("At the start") : fmt::format("After panel {}", move.from + 1);
    fmt::print("{} {} go to panel {} ({}).\n", from, percent(move.share), move.to + 1, move.cause);
  }
}

void printTried(const Finding& finding) {
  for (const TriedRemedy& tried : finding.tried) {
    const std::string figures =
        fmt::format("{:.0f} → {:.0f} {}", tried.before, tried.after, finding.unit);
    fmt::print("    {}: {}: {}{}\n", tried.helps ? "tried" : "tried, no help", tried.change,
               figures, tried.aside.empty() ? "" : ", but it costs: " + tried.aside);
  }
}

void printFinding(const Finding& finding) {
  const std::string where =
      finding.panel > 0 ? fmt::format("panel {}", finding.panel) : std::string("page");
  fmt::print("{}, {}, {}: {}\n", nameOf(finding.severity), where, finding.rule, finding.reason);
  if (!finding.silencedWhy.empty()) {
    fmt::print("    silenced: {}\n", finding.silencedWhy);
    return;
  }
  if (finding.tried.empty() || !finding.tried.front().helps) fmt::print("    {}\n", finding.remedy);
  printTried(finding);
  fmt::print("    evidence: {}{}{}\n", nameOf(finding.evidence), finding.source.empty() ? "" : ": ",
             finding.source);
}

void print(const PageRead& read) {
  fmt::print("Page {}, rough {}\n\n", read.page, read.measured.rough.name);
  for (const std::string& fact : pageReadFacts(read)) fmt::print("{}\n", fact);
  printPartings(read.readings.order);
  fmt::print("\n");
  printPanels(read);
  for (const Finding& finding : read.findings) printFinding(finding);
}

Severity levelNamed(const std::string& name) {
  return name == "look" ? Severity::Look : name == "should" ? Severity::Should : Severity::Must;
}

}  // namespace

int readJob(const ReadJobArguments& a) {
  Watched watched;
  const auto read = readStagedPage(a.request, watched.progress());
  if (!read) return report(read.error());
  if (a.json)
    fmt::print("{}", pageReadJson(*read));
  else
    print(*read);
  return findsAtLeast(*read, levelNamed(a.level)) ? kFindings : kDone;
}

}  // namespace tw
