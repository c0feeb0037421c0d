// tierwright roughs: the main job.
#include <fmt/format.h>

#include <memory>

#include "base/files.h"
#include "cli/terminal.h"
#include "command/roughs.h"

namespace tw {

namespace {

struct RoughsArguments {
  std::string job, json, rules;
  std::vector<std::string> unlike;
  int page = 0;
  ComposeOptions options;
  bool strict = false;
};

/// The dearest line of the card in a few words.
std::string dearest(const Rough& rough) {
  if (rough.card.empty() || rough.card.front().cost <= 0) return "nothing found against it";
  const CardLine& line = rough.card.front();
  const std::string where = line.panel > 0 ? fmt::format("panel {}: ", line.panel) : "";
  return where + line.reason;
}

std::string percent(double share) {
  return fmt::format("{:.0f} %", 100 * share);
}

void printPage(const PageRoughs& page) {
  const Composed& c = page.composed;
  fmt::print("Page {}: {} trees{}, {} layouts sized, {} staged, {:.1f} s\n", c.page, c.counted,
             c.exhaustive ? "" : " exist (the most regular of them tried)", c.sized, c.staged,
             page.seconds);
  std::vector<std::vector<std::string>> rows{
      {"", "score", "treatment", "arrangement", "followed", "handed on", "dearest reason"}};
  for (const Rough& rough : c.roughs)
    rows.push_back({rough.name, fmt::format("{:.1f}", rough.score), rough.treatment,
                    rough.arrangement, percent(rough.reading.followed),
                    percent(rough.reading.handedOn), dearest(rough)});
  fmt::print("{}", table(rows));
  if (page.replaced > 0)
    fmt::print("Replaced {} that stood there; the page as it was is in .history.\n",
               page.replaced == 1 ? "one rough" : fmt::format("{} roughs", page.replaced));
  for (const std::string& demand : c.unmet) fmt::print("Not met, even by the best: {}\n", demand);
  for (const std::string& pin : c.unkept) fmt::print("Not kept: {}\n", pin);
  for (const auto& [beat, things] : page.notDrawn)
    fmt::print("Named but not drawn: {} {}\n", beat, fmt::join(things, ", "));
  fmt::print("\n");
}

bool anyUnmet(const std::vector<PageRoughs>& pages) {
  for (const PageRoughs& page : pages)
    if (!page.composed.unmet.empty()) return true;
  return false;
}

int run(const RoughsArguments& a) {
  Watched watched;
  RoughsRequest request{a.job, std::nullopt, a.options, a.rules, a.unlike};
  if (a.page != 0) request.page = a.page;
  const auto made = makeRoughs(request, watched.progress());
  if (!made) return report(made.error());
  if (a.json == "-") {
    fmt::print("{}", roughsJson(*made));
  } else {
    if (!a.json.empty())
      if (auto done = writeFileAtomically(a.json, roughsJson(*made)); !done)
        return report(done.error());
    for (const PageRoughs& page : *made) printPage(page);
  }
  return a.strict && anyUnmet(*made) ? kFindings : kDone;
}

}  // namespace

void addRoughs(CLI::App& app, int& exitCode) {
  auto* command = app.add_subcommand("roughs", "Make ranked roughs and write them into the job");
  auto a = std::make_shared<RoughsArguments>();
  command->add_option("JOB", a->job, "The job folder")->required();
  command->add_option("--page", a->page, "Only this page")->check(CLI::Range(1, 99999));
  command->add_option("--keep", a->options.keep, "How many roughs")
      ->check(CLI::Range(1, 26))
      ->capture_default_str();
  command->add_option("--seed", a->options.seed, "Another seed looks at other arrangements")
      ->capture_default_str();
  command->add_option("--unlike", a->unlike, "Keep these roughs and find others, such as A,B")
      ->delimiter(',')
      ->allow_extra_args(false);
  command->add_option("--threads", a->options.threads, "0 = all cores; never changes the result")
      ->check(CLI::Range(0, 256));
  command->add_option("--rules", a->rules, "Rules file with weights of your own");
  command->add_option("--json", a->json, "Write JSON to this file, - for standard output");
  command->add_flag("--strict", a->strict, "Exit 1 when even the best rough misses the brief");
  command->footer(
      "Examples:\n"
      "  tierwright roughs job                      every page, six roughs each\n"
      "  tierwright roughs job --page 4 --keep 3 --seed 7\n"
      "  tierwright roughs job --page 4 --json -\n"
      "  tierwright roughs job --page 4 --unlike A,B    keeps A and B and finds others\n"
      "Pinned panels and arrangements (tierwright pin) are kept. New roughs take the place of all\n"
      "others but the chosen one, those named by --unlike and those that you drew on or placed\n"
      "balloons in; the page as it was goes to .history.");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

}  // namespace tw
