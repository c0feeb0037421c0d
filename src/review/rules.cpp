#include "review/rules.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "base/files.h"
#include "read/preferences.h"

namespace tw {

namespace {

using nlohmann::json;

constexpr double kLargestWeight = 1000;

constexpr std::array<std::string_view, kRules> kNames = {
    "area follows weight", "dominant share",
    "panel shape",         "least size",
    "small panels",        "reading order",
    "asked shot",          "asked eye height",
    "head height",         "largest figure",
    "focus prominent",     "frame cuts",
    "joint cuts",          "tangents",
    "whole figure",        "liftable",
    "room for copy",       "speakers in order",
    "faces seen",          "pose reads",
    "handed on",           "leaks off the sheet",
    "shot changes",        "axis kept",
    "view changes",        "rhythm",
    "words on the page",   "words in a panel",
    "copy fits",           "copy covers",
    "keep clear",          "continuity"};

bool isWeight(const json& value) {
  return value.is_number() && value.get<double>() >= 0 && value.get<double>() <= kLargestWeight;
}

void readRule(const json& rules, std::string_view name, Rule& out, const std::string& file,
              Problems& problems) {
  const std::string path = fmt::format("/rules/{}", name);
  const auto found = rules.find(std::string(name));
  if (found == rules.end() || !found->is_object() || !isWeight(found->value("weight", json()))) {
    problems.push_back({Cause::BadInput,
                        fmt::format("The rule needs a \"weight\" from 0 to {}.", kLargestWeight),
                        {.file = file, .path = path},
                        "Copy the rule from the rules.json that came with the program."});
    return;
  }
  out.weight = (*found)["weight"].get<double>();
  out.demand = found->contains("demand") && (*found)["demand"] == true;
  if (found->contains("remedy") && (*found)["remedy"].is_string()) out.remedy = (*found)["remedy"];
}

void refuseUnknown(const json& rules, const std::string& file, Problems& problems) {
  for (const auto& [name, rule] : rules.items())
    if (std::find(kNames.begin(), kNames.end(), name) == kNames.end())
      problems.push_back({Cause::BadInput,
                          fmt::format("There is no rule \"{}\".", name),
                          {.file = file, .path = "/rules/" + name},
                          "Check the spelling."});
}

}  // namespace

std::string_view nameOf(RuleId rule) {
  return kNames[static_cast<std::size_t>(rule)];
}

std::optional<RuleId> ruleNamed(std::string_view name) {
  const auto found = std::ranges::find(kNames, name);
  if (found == kNames.end()) return std::nullopt;
  return static_cast<RuleId>(found - kNames.begin());
}

bool isAboutStaging(RuleId rule) {
  return rule >= RuleId::AskedShot && rule <= RuleId::ViewChanges;
}

Result<RuleBook> RuleBook::load(const std::optional<std::filesystem::path>& file) {
  const auto path = file ? Result<std::filesystem::path>(*file) : presetPath("rules/rules.json");
  if (!path) return tl::unexpected(path.error());
  // The cards read with the shipped preferences; a missing file must end in a sentence.
  if (const auto likes = loadPreferences(); !likes) return tl::unexpected(likes.error());
  const auto bytes = readFile(*path);
  if (!bytes) return tl::unexpected(bytes.error());
  const std::string name = path->string();
  const json document = json::parse(*bytes, nullptr, /*allow_exceptions=*/false);
  if (!document.is_object() || !document.contains("rules") || !document["rules"].is_object())
    return badInput("A rules file is a JSON object with an object \"rules\".", {.file = name});
  auto evidence = EvidenceBook::load();
  if (!evidence) return tl::unexpected(evidence.error());
  RuleBook book;
  book.evidence_ = std::move(*evidence);
  Problems problems;
  refuseUnknown(document["rules"], name, problems);
  for (std::size_t i = 0; i < kRules; ++i)
    readRule(document["rules"], kNames[i], book.rules_[i], name, problems);
  const json spread = document.value("spread_of_roughs", json(book.spread_));
  if (!isWeight(spread))
    problems.push_back({Cause::BadInput,
                        "\"spread_of_roughs\" must be a number from 0 to 1000.",
                        {.file = name, .path = "/spread_of_roughs"},
                        ""});
  if (!problems.empty()) return tl::unexpected(problems);
  book.spread_ = spread.get<double>();
  return book;
}

}  // namespace tw
