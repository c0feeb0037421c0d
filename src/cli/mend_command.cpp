// tierwright mend: keeps one of the changes that `tierwright read` tried.
#include <fmt/format.h>

#include <memory>

#include "cli/terminal.h"
#include "command/mend.h"

namespace tw {

namespace {

void printOnes(const char* head, const std::vector<Finding>& findings) {
  for (const Finding& finding : findings)
    fmt::print("{}: {}, panel {}, {}: {}\n", head, nameOf(finding.severity), finding.panel,
               finding.rule, finding.reason);
}

int run(const MendRequest& request) {
  const auto mended = mendPanel(request);
  if (!mended) return report(mended.error());
  if (request.change.empty()) {
    for (const std::string& change : mended->changes) fmt::print("{}\n", change);
    return kDone;
  }
  fmt::print("Panel {} of rough {}: {}. The page's cost was {:.2f} and is {:.2f}.\n", request.panel,
             mended->rough, request.change, mended->scoreBefore, mended->scoreAfter);
  printOnes("gone", mended->gone);
  printOnes("new", mended->fresh);
  if (mended->scoreAfter > mended->scoreBefore) fmt::print("The page costs more than before.\n");
  fmt::print(
      "The page as it was is the newest file of this page in .history/pages; copied over "
      "pages/{:02}.json it is back.\n",
      request.page);
  return kDone;
}

}  // namespace

void addMend(CLI::App& app, int& exitCode) {
  auto* command =
      app.add_subcommand("mend", "Make a change that read has tried, or list what can be tried");
  auto request = std::make_shared<MendRequest>();
  command->add_option("JOB", request->job, "The job folder")->required();
  command->add_option("--page", request->page, "Page")->required()->check(CLI::Range(1, 99999));
  command->add_option("--rough", request->rough, "Rough; left out: the chosen one, else the first");
  command->add_option("--panel", request->panel, "Panel, in reading order")
      ->required()
      ->check(CLI::Range(1, 999));
  command->add_option("--change", request->change,
                      "The change in the words of read; left out: all are listed");
  command->footer(
      "The page is measured again and its score card written anew; the state before stays in\n"
      ".history.\n"
      "Examples:\n"
      "  tierwright mend job --page 4 --panel 2\n"
      "  tierwright mend job --page 4 --panel 2 --change \"mirror the picture\"");
  command->callback([request, &exitCode] { exitCode = run(*request); });
}

}  // namespace tw
