// What each rule measures, how grave a finding against it is, and what ground the rule stands on,
// as data: presets/rules/evidence.json.
#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "base/result.h"
#include "job/finding.h"

namespace tw {

struct RuleEvidence {
  Severity level = Severity::Should;
  Evidence evidence = Evidence::Ours;
  std::string source;   ///< of published evidence, with how surely we know it
  std::string measure;  ///< what is measured, in words
  std::string unit;
  std::string remedy;  ///< of rules that no score card pays for; the others' are in rules.json
};

class EvidenceBook {
 public:
  /// presets/rules/evidence.json, or the file named. Bad input when a rule lacks a level, an
  /// evidence or a measure, or claims published evidence without a source.
  static Result<EvidenceBook> load(const std::optional<std::filesystem::path>& file = {});

  /// The rule must be known.
  const RuleEvidence& of(std::string_view rule) const;
  bool knows(std::string_view rule) const { return rules_.contains(rule); }
  const std::map<std::string, RuleEvidence, std::less<>>& rules() const { return rules_; }

 private:
  std::map<std::string, RuleEvidence, std::less<>> rules_;
};

}  // namespace tw
