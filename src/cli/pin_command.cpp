// tierwright pin: what new roughs of a page must keep.
#include <fmt/format.h>

#include <memory>

#include "cli/terminal.h"
#include "command/pin.h"

namespace tw {

namespace {

struct PinArguments {
  PinRequest request;
  int panel = 0;
  bool json = false;
};

int run(const PinArguments& a) {
  PinRequest request = a.request;
  if (a.panel > 0) request.panel = a.panel;
  if (!a.request.rough.empty() && a.panel == 0 && !a.request.arrangement)
    return report({{Cause::BadInput,
                    "Nothing of the rough was named to be kept.",
                    {},
                    "Add --panel N or --arrangement."}});
  const auto pinned = changePins(request);
  if (!pinned) return report(pinned.error());
  if (a.json) {
    fmt::print("{}", pinsJson(pinned->page));
    return kDone;
  }
  const std::vector<std::string> pins = pinsInWords(pinned->page);
  if (pins.empty()) fmt::print("Nothing is pinned on page {}.\n", pinned->page.number);
  for (const std::string& line : pins) fmt::print("pinned: {}\n", line);
  for (const std::string& note : pinned->notes) fmt::print("{}\n", note);
  return kDone;
}

}  // namespace

void addPin(CLI::App& app, int& exitCode) {
  auto* command =
      app.add_subcommand("pin", "Keep a panel's staging or the arrangement in new roughs");
  auto a = std::make_shared<PinArguments>();
  command->add_option("JOB", a->request.job, "The job folder")->required();
  command->add_option("--page", a->request.page, "Page")->required()->check(CLI::Range(1, 99999));
  command->add_option("--panel", a->panel, "Panel whose staging to keep, in reading order")
      ->check(CLI::Range(1, 999));
  command->add_flag("--arrangement", a->request.arrangement,
                    "Keep the arrangement and its treatment");
  command->add_option("--rough", a->request.rough,
                      "Rough to take it from; left out: the chosen one, else the first");
  command->add_flag("--back", a->request.back, "Take the pin away; alone: all of the page's pins");
  command->add_flag("--json", a->json, "Print JSON");
  command->footer(
      "Without --panel, --arrangement and --back the page's pins are listed. What you set by hand\n"
      "in a staging is kept with it; it is solved again for the shapes of new roughs.\n"
      "Examples:\n"
      "  tierwright pin job --page 4 --panel 2 --rough B\n"
      "  tierwright pin job --page 4 --arrangement --rough A\n"
      "  tierwright pin job --page 4 --panel 2 --back\n"
      "  tierwright roughs job --page 4");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

}  // namespace tw
