// tierwright mix: a new rough from two.
#include <fmt/format.h>

#include <memory>

#include "cli/terminal.h"
#include "command/mix.h"

namespace tw {

namespace {

struct MixArguments {
  MixRequest request;
  int panel = 0;
  bool arrangement = false;
};

int run(const MixArguments& a) {
  MixRequest request = a.request;
  if (a.panel > 0) request.panel = a.panel;
  if (request.panel.has_value() == a.arrangement)
    return report({{Cause::BadInput,
                    "Name either a panel to take or the arrangement.",
                    {.page = request.page},
                    "--panel K, or --arrangement."}});
  const auto made = mixRoughs(request);
  if (!made) return report(made.error());
  const std::string what =
      request.panel ? fmt::format("panel {}", *request.panel) : std::string("the arrangement");
  fmt::print("Rough {}: {} of {} in {}. It costs {:.2f}; {} costs {:.2f}, {} {:.2f}.\n",
             made->rough.name, what, request.from, request.into, made->rough.score, request.into,
             made->scoreInto, request.from, made->scoreFrom);
  for (const std::string& note : made->notes) fmt::print("{}\n", note);
  return kDone;
}

}  // namespace

void addMix(CLI::App& app, int& exitCode) {
  auto* command = app.add_subcommand("mix", "Make a new rough from two of a page");
  auto a = std::make_shared<MixArguments>();
  command->add_option("JOB", a->request.job, "The job folder")->required();
  command->add_option("--page", a->request.page, "Page")->required()->check(CLI::Range(1, 99999));
  command->add_option("--panel", a->panel, "Panel whose staging to take, in reading order")
      ->check(CLI::Range(1, 999));
  command->add_flag("--arrangement", a->arrangement, "Take the arrangement instead of a panel");
  command->add_option("--from", a->request.from, "Rough to take it from")->required();
  command->add_option("--into", a->request.into, "Rough that gives all else")->required();
  command->footer(
      "Both roughs stay as they are; the new one stands beside them under the next free name,\n"
      "measured whole. Choose it (tierwright choose) to keep it when new roughs are made.\n"
      "Examples:\n"
      "  tierwright mix job --page 4 --panel 2 --from B --into A\n"
      "  tierwright mix job --page 4 --arrangement --from C --into A");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

}  // namespace tw
