#include "review/silence.h"

#include <fmt/format.h>

#include <algorithm>

namespace tw {

namespace {

bool answers(const Silenced& answer, const std::string& rule, const std::string& beat) {
  return answer.rule == rule && answer.beat == beat;
}

std::string placeOf(const std::string& beat) {
  return beat.empty() ? "the page" : "beat " + beat;
}

}  // namespace

void applySilenced(std::vector<Finding>& findings, const Page& page) {
  for (Finding& finding : findings) {
    if (finding.page != page.number) continue;
    for (const Silenced& answer : page.silenced)
      if (answers(answer, finding.rule, finding.beat)) finding.silencedWhy = answer.reason;
  }
}

Result<void> silence(Page& page, Silenced answer) {
  if (answer.reason.find_first_not_of(" \t\n") == std::string::npos)
    return badInput("An answer to a finding needs a reason.", {.page = page.number},
                    "Say in a few words why it may stay.");
  const bool known = answer.beat.empty() ||
                     std::ranges::find(page.beats, answer.beat, &Beat::id) != page.beats.end();
  if (!known)
    return badInput(fmt::format("The page has no beat \"{}\".", answer.beat), {.page = page.number},
                    "`tierwright beats` lists them.");
  for (Silenced& old : page.silenced)
    if (answers(old, answer.rule, answer.beat)) {
      old = std::move(answer);
      return {};
    }
  page.silenced.push_back(std::move(answer));
  return {};
}

Result<void> unsilence(Page& page, const std::string& rule, const std::string& beat) {
  const auto taken = std::erase_if(
      page.silenced, [&](const Silenced& answer) { return answers(answer, rule, beat); });
  if (taken > 0) return {};
  return badInput(fmt::format("\"{}\" is not silenced on {}.", rule, placeOf(beat)),
                  {.page = page.number}, "`tierwright read` lists the findings and their answers.");
}

std::optional<Severity> gravestOf(const std::vector<Finding>& findings) {
  std::optional<Severity> out;
  for (const Finding& finding : findings)
    if (finding.silencedWhy.empty() && (!out || finding.severity < *out)) out = finding.severity;
  return out;
}

}  // namespace tw
