// tierwright read: how a page will be read.
#include <fmt/format.h>

#include <map>
#include <memory>

#include "cli/terminal.h"
#include "command/read_panels.h"

namespace tw {

namespace {

struct ReadArguments {
  std::string job, panels, direction;
  bool json = false;
};

const std::map<std::string, ReadingDirection> kDirections{
    {"ltr", ReadingDirection::LeftToRight},
    {"left-to-right", ReadingDirection::LeftToRight},
    {"rtl", ReadingDirection::RightToLeft},
    {"right-to-left", ReadingDirection::RightToLeft}};

int runPanels(const ReadArguments& a) {
  ReadPanelsRequest request{a.panels, {}};
  if (!a.direction.empty()) request.direction = kDirections.at(a.direction);
  const auto pages = readPanels(request);
  if (!pages) return report(pages.error());
  if (a.json) {
    fmt::print("{}", readPanelsJson(*pages));
    return kDone;
  }
  for (const ReadMarkedPage& page : *pages) {
    fmt::print("Page {}, {}\n", page.page.name, nameOf(page.direction));
    for (const std::string& sentence : readPanelsSentences(page)) fmt::print("  {}\n", sentence);
  }
  return kDone;
}

int run(const ReadArguments& a) {
  if (!a.panels.empty() && a.job.empty()) return runPanels(a);
  if (!a.panels.empty())
    return report({{Cause::BadInput,
                    "A job and a list of panels cannot be read in one go.",
                    {},
                    "Name either JOB or --panels FILE."}});
  if (!a.job.empty())
    return report({{Cause::BadInput,
                    "Roughs of a job are not read here.",
                    {},
                    "`tierwright show JOB --measures` tells their order; pages of your own: add "
                    "--panels FILE."}});
  return report({{Cause::BadInput, "Nothing to read was named.", {}, "Add --panels FILE."}});
}

}  // namespace

void addRead(CLI::App& app, int& exitCode) {
  auto* command = app.add_subcommand(
      "read", "In which order readers will take the panels, how many, and where they part");
  auto a = std::make_shared<ReadArguments>();
  command->add_option("JOB", a->job, "A job folder; its roughs are read by show --measures");
  command->add_option("--panels", a->panels, "A list of pages with marked panels, as JSON");
  command
      ->add_option("--direction", a->direction,
                   "ltr or rtl; goes before what the file says of a page")
      ->check(CLI::IsMember({"ltr", "rtl", "left-to-right", "right-to-left"}));
  command->add_flag("--json", a->json, "Print JSON");
  command->footer(
      "FILE is a list of pages, or one page:\n"
      "  [{\"page\": \"7\", \"width\": 170, \"height\": 260, \"direction\": \"ltr\",\n"
      "    \"panels\": [{\"bbox\": [0, 0, 80, 120]},\n"
      "               {\"polygon\": [[84, 0], [170, 0], [170, 110], [90, 120]]}]}]\n"
      "Boxes are [x0, y0, x1, y1] in any unit, y down; panels may stand in any order. A polygon\n"
      "goes before a hull, a hull before a bbox. With an \"order\" from 1 on every panel the "
      "share\n"
      "of readers who follow that order is told too. More fields: docs/formats/panel-list.md.\n"
      "A page without \"direction\" is read left to right.\n"
      "Examples:\n"
      "  tierwright read --panels pages.json\n"
      "  tierwright read --panels pages.json --direction rtl --json");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

}  // namespace tw
