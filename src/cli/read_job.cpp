#include "cli/read_job.h"

#include <fmt/format.h>

#include "cli/print_findings.h"
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
  fmt::print("{}", table(rows));
  fmt::print(
      "Lead: share of its cone that arrives; from the last panel, at the page turn. In cast: rank "
      "of the "
      "focus's head by size.\nAgainst ground: its lightness less that of what is around it. "
      "Squint: "
      "over 50 % the focus stays the strongest place of its\npanel when small, blurred and "
      "grey.\n\n");
}

void printPartings(const PageReading& order) {
  for (const Move& move : partingsOf(order)) {
    const std::string from =
        move.from < 0 ? std::string("At the start") : fmt::format("After panel {}", move.from + 1);
    fmt::print("{} {} go to panel {} ({}).\n", from, percent(move.share), move.to + 1, move.cause);
  }
}

void print(const PageRead& read) {
  fmt::print("{}, rough {}\n\n", pageReadTitle(read), read.measured.rough.name);
  for (const std::string& fact : pageReadFacts(read)) fmt::print("{}\n", fact);
  printPartings(read.readings.order);
  fmt::print("\n");
  printPanels(read);
  printFindings(read.findings);
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
  return findsAtLeast(*read, severityNamed(a.level)) ? kFindings : kDone;
}

}  // namespace tw
