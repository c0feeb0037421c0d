// tierwright new and tierwright revise: a script comes in.
#include <fmt/format.h>

#include <memory>

#include "cli/terminal.h"
#include "command/new_job.h"
#include "job/write_json.h"

namespace tw {

namespace {

OrderedJson warningsJson(const Problems& warnings) {
  OrderedJson out = OrderedJson::array();
  for (const Problem& w : warnings)
    out.push_back({{"line", w.place.line}, {"sentence", w.sentence}, {"advice", w.advice}});
  return out;
}

OrderedJson changesJson(const std::vector<ScriptChange>& changes) {
  OrderedJson out = OrderedJson::array();
  for (const ScriptChange& c : changes)
    out.push_back({{"page", c.page}, {"panel", c.panel}, {"what", c.what}});
  return out;
}

void printJson(const Imported& imported) {
  fmt::print("{}", textOf({{"title", imported.job.title},
                           {"pages", imported.job.pages.size()},
                           {"warnings", warningsJson(imported.warnings)},
                           {"changes", changesJson(imported.changes)}}));
}

void printSummary(const Job& job, const std::string& folder) {
  std::size_t panels = 0;
  for (const Page& page : job.pages) panels += page.beats.size();
  fmt::print("{}: \"{}\", {} page{}, {} panel{}, cast of {}, sheet {}.\n", folder, job.title,
             job.pages.size(), job.pages.size() == 1 ? "" : "s", panels, panels == 1 ? "" : "s",
             job.cast.size(), job.sheet.name);
}

void printChanges(const std::vector<ScriptChange>& changes) {
  if (changes.empty()) fmt::print("Nothing changed.\n");
  for (const ScriptChange& c : changes) {
    const std::string panel = c.panel > 0 ? fmt::format(", panel {}", c.panel) : std::string();
    if (c.page > 0)
      fmt::print("page {}{}: {}\n", c.page, panel, c.what);
    else
      fmt::print("{}\n", c.what);
  }
}

struct ReviseArguments {
  std::string folder, script;
  bool json = false;
};

}  // namespace

void addNew(CLI::App& app, int& exitCode) {
  struct Arguments : NewJobRequest {
    bool json = false;
  };
  auto* command = app.add_subcommand("new", "Make a job folder from a script");
  auto a = std::make_shared<Arguments>();
  command->add_option("JOB", a->folder, "The folder to make")->required();
  command->add_option("--script", a->script, "The script: text or .docx")->required();
  command->add_option("--sheet", a->sheet, "Sheet name (see `sheets`) or JSON file")
      ->capture_default_str();
  command->add_option("--title", a->title, "Title, if not the script's");
  command->add_option("--client", a->client, "For whom");
  command->add_flag("--json", a->json, "Print JSON");
  command->footer(
      "Example:\n  tierwright new job --script story.docx --sheet album --title \"The Low Bell\"");
  command->callback([a, &exitCode] {
    const auto made = newJob(*a);
    if (!made) {
      exitCode = report(made.error());
      return;
    }
    warn(made->warnings);
    if (a->json)
      printJson(*made);
    else
      printSummary(made->job, a->folder.string());
  });
}

void addRevise(CLI::App& app, int& exitCode) {
  auto* command =
      app.add_subcommand("revise", "Read a revised script into a job and report what changed");
  auto a = std::make_shared<ReviseArguments>();
  command->add_option("JOB", a->folder, "The job folder")->required();
  command->add_option("--script", a->script, "The revised script")->required();
  command->add_flag("--json", a->json, "Print JSON");
  command->footer(
      "Briefs, corrections and roughs stay with the panels that are still the same.\n"
      "Example:\n  tierwright revise job --script story-2nd-draft.txt");
  command->callback([a, &exitCode] {
    const auto revised = reviseJob(a->folder, a->script);
    if (!revised) {
      exitCode = report(revised.error());
      return;
    }
    warn(revised->warnings);
    if (a->json)
      printJson(*revised);
    else
      printChanges(revised->changes);
  });
}

}  // namespace tw
