// tierwright silence: answers a finding with a reason.
#include <fmt/format.h>

#include <memory>

#include "cli/terminal.h"
#include "command/silence.h"

namespace tw {

namespace {

int run(const SilenceRequest& request) {
  const auto done = silenceFinding(request);
  if (!done) return report(done.error());
  const std::string where = request.panel > 0
                                ? fmt::format("panel {} of page {}", request.panel, request.page)
                                : fmt::format("page {}", request.page);
  if (request.back)
    fmt::print("\"{}\" is heard again on {}.\n", request.rule, where);
  else
    fmt::print("\"{}\" is silenced on {}: {}\n", request.rule, where, request.reason);
  if (!request.back && !done->isFoundNow)
    fmt::print("Nothing of that rule is found there now{}. The answer is kept for when it is.\n",
               done->standsAt.empty()
                   ? std::string()
                   : fmt::format("; it stands at {}", fmt::join(done->standsAt, ", ")));
  return kDone;
}

}  // namespace

void addSilence(CLI::App& app, int& exitCode) {
  auto* command =
      app.add_subcommand("silence", "Answer a finding with a reason, so that it no longer counts");
  auto request = std::make_shared<SilenceRequest>();
  command->add_option("JOB", request->job, "The job folder")->required();
  command->add_option("--page", request->page, "Page")->required()->check(CLI::Range(1, 99999));
  command->add_option("--rule", request->rule, "Name of the rule, as findings give it")->required();
  command
      ->add_option("--panel", request->panel,
                   "Panel, in reading order; left out: the page as a whole")
      ->check(CLI::Range(1, 999));
  auto* reason = command->add_option("--reason", request->reason, "Why it may stay as it is");
  command->add_flag("--back", request->back, "Take the answer back")->excludes(reason);
  command->footer(
      "The finding stays in every list, with the reason.\n"
      "Examples:\n"
      "  tierwright silence job --page 4 --panel 2 --rule tangents --reason \"the rope touches\"\n"
      "  tierwright silence job --page 4 --panel 2 --rule tangents --back");
  command->callback([request, &exitCode] { exitCode = run(*request); });
}

}  // namespace tw
