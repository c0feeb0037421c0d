#include "review/evidence.h"

#include <fmt/format.h>

#include <array>
#include <nlohmann/json.hpp>

#include "base/files.h"

namespace tw {

namespace {

using nlohmann::json;

/// The field's text, or nothing when it is absent or no text.
std::string textIn(const json& rule, const char* field) {
  const auto found = rule.find(field);
  return found != rule.end() && found->is_string() ? found->get<std::string>() : std::string();
}

template <class T, std::size_t N>
std::optional<T> namedIn(const std::array<T, N>& all, const std::string& name) {
  for (const T value : all)
    if (nameOf(value) == name) return value;
  return std::nullopt;
}

class Reading {
 public:
  explicit Reading(std::string file) : file_(std::move(file)) {}

  RuleEvidence rule(const std::string& name, const json& rule) {
    RuleEvidence out;
    if (!rule.is_object()) {
      wrong(name, "", "A rule is an object.");
      return out;
    }
    const auto level = namedIn(std::array{Severity::Must, Severity::Should, Severity::Look},
                               textIn(rule, "level"));
    const auto evidence =
        namedIn(std::array{Evidence::Published, Evidence::CommonPractice, Evidence::Ours},
                textIn(rule, "evidence"));
    if (!level) wrong(name, "/level", "The level is must, should or look.");
    if (!evidence) wrong(name, "/evidence", "Evidence is published, common practice or ours.");
    out = {level.value_or(Severity::Should),
           evidence.value_or(Evidence::Ours),
           textIn(rule, "source"),
           textIn(rule, "measure"),
           textIn(rule, "unit"),
           textIn(rule, "remedy")};
    if (out.measure.empty()) wrong(name, "/measure", "Say in words what is measured.");
    if (out.evidence == Evidence::Published && out.source.empty())
      wrong(name, "/source", "Published evidence needs its source.");
    return out;
  }

  Problems problems;

 private:
  void wrong(const std::string& name, const char* field, std::string sentence) {
    problems.push_back({Cause::BadInput,
                        std::move(sentence),
                        {.file = file_, .path = fmt::format("/rules/{}{}", name, field)},
                        "Copy the rule from the evidence.json that came with the program."});
  }
  std::string file_;
};

}  // namespace

Result<EvidenceBook> EvidenceBook::load(const std::optional<std::filesystem::path>& file) {
  const auto path = file ? Result<std::filesystem::path>(*file) : presetPath("rules/evidence.json");
  if (!path) return tl::unexpected(path.error());
  const auto bytes = readFile(*path);
  if (!bytes) return tl::unexpected(bytes.error());
  const json document = json::parse(*bytes, nullptr, /*allow_exceptions=*/false);
  if (!document.is_object() || !document.contains("rules") || !document["rules"].is_object())
    return badInput("A file of evidence is a JSON object with an object \"rules\".",
                    {.file = path->string()});
  EvidenceBook book;
  Reading reading(path->string());
  for (const auto& [name, rule] : document["rules"].items())
    book.rules_[name] = reading.rule(name, rule);
  if (!reading.problems.empty()) return tl::unexpected(std::move(reading.problems));
  return book;
}

const RuleEvidence& EvidenceBook::of(std::string_view rule) const {
  const auto found = rules_.find(rule);
  ensure(found != rules_.end(), "evidence: a rule without an entry");
  return found->second;
}

}  // namespace tw
