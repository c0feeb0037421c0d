#include "review/card_writer.h"

#include <algorithm>

namespace tw {

namespace {

/// A fault that costs less than this share of its rule's weight is only worth a look; our choice.
constexpr double kSlight = 0.2;

}  // namespace

Finding findingOf(std::string_view rule, const RuleEvidence& evidence, Found found) {
  Finding out;
  out.rule = std::string(rule);
  out.severity = found.severity.value_or(evidence.level);
  out.panel = found.panel;
  out.measure = evidence.measure;
  out.value = found.value;
  out.limit = found.limit;
  out.unit = evidence.unit;
  out.place = std::move(found.place);
  out.reason = std::move(found.reason);
  out.remedy = found.remedy.empty() ? evidence.remedy : std::move(found.remedy);
  out.evidence = evidence.evidence;
  out.source = evidence.source;
  return out;
}

void CardWriter::add(RuleId rule, double weighted, Found found) {
  if (weighted < kWorthALine) return;
  if (found.remedy.empty()) found.remedy = book_[rule].remedy;
  if (!found.severity) found.severity = severityOf(rule, weighted);
  const std::string name(nameOf(rule));
  CardLine line{name, weighted, found.reason, found.remedy, found.panel};
  Finding finding = findingOf(name, book_.evidence().of(name), std::move(found));
  finding.page = page_;
  const bool isFinding =
      finding.severity == Severity::Must || weighted >= kWorthAFinding * book_.weight(rule);
  entries_.push_back({std::move(line), std::move(finding), isFinding});
}

Severity CardWriter::severityOf(RuleId rule, double weighted) const {
  if (book_[rule].demand) return Severity::Must;
  const Severity level = book_.evidence().of(nameOf(rule)).level;
  const bool slight = weighted < kSlight * book_.weight(rule);
  return level == Severity::Should && slight ? Severity::Look : level;
}

void CardWriter::finish(Rough& rough, std::vector<Finding>& findings) {
  std::ranges::stable_sort(entries_, std::greater{}, [](const Entry& e) { return e.line.cost; });
  rough.card.clear();
  findings.clear();
  rough.score = 0;
  for (Entry& entry : entries_) {
    rough.score += entry.line.cost;
    if (entry.isFinding) findings.push_back(std::move(entry.finding));
    rough.card.push_back(std::move(entry.line));
  }
  for (std::size_t i = 0; i < kRules; ++i) {
    const std::string name(nameOf(static_cast<RuleId>(i)));
    if (std::ranges::find(rough.card, name, &CardLine::rule) == rough.card.end())
      rough.card.push_back({name, 0, "kept", "", 0});
  }
}

}  // namespace tw
