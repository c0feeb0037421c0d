// tierwright read: how a page will be read.
#include <fmt/format.h>

#include <map>
#include <memory>

#include "cli/read_job.h"
#include "cli/terminal.h"
#include "command/read_panels.h"
#include "command/read_panels_sheet.h"

namespace tw {

namespace {

struct ReadArguments {
  std::string job, panels, direction, picture;
  std::string png, svg, pdf;
  ReadJobArguments staged;
  bool json = false, noRemedies = false;
};

const std::map<std::string, ReadingDirection> kDirections{
    {"ltr", ReadingDirection::LeftToRight},
    {"left-to-right", ReadingDirection::LeftToRight},
    {"rtl", ReadingDirection::RightToLeft},
    {"right-to-left", ReadingDirection::RightToLeft}};

/// Words first: they are there even when a picture cannot be made.
int runPanels(const ReadArguments& a) {
  ReadPanelsRequest request{a.panels, {}, a.picture};
  if (!a.direction.empty()) request.direction = kDirections.at(a.direction);
  const auto pages = readPanels(request);
  if (!pages) return report(pages.error());
  if (a.json) fmt::print("{}", readPanelsJson(*pages));
  for (const ReadMarkedPage& page : *pages) {
    if (a.json) break;
    fmt::print("Page {}, {}\n", page.page.name, nameOf(page.direction));
    for (const std::string& sentence : readPanelsSentences(page)) fmt::print("  {}\n", sentence);
  }
  for (const std::string& file : {a.png, a.svg, a.pdf}) {
    if (file.empty()) continue;
    if (auto done = drawReadPanels(file, *pages, a.staged.request.dpi); !done)
      return report(done.error());
  }
  return kDone;
}

int runJob(const ReadArguments& a) {
  ReadJobArguments staged = a.staged;
  if (staged.request.page < 1)
    return report({{Cause::BadInput, "Which page of the job?", {}, "Add --page N."}});
  staged.request.job = a.job;
  staged.request.tryRemedies = !a.noRemedies;
  staged.json = a.json;
  for (const std::string& file : {a.png, a.svg, a.pdf})
    if (!file.empty()) staged.request.sheets.emplace_back(file);
  return readJob(staged);
}

/// Options that only a job's page takes.
void addJobOptions(CLI::App& command, ReadArguments& a) {
  ReadPageRequest& request = a.staged.request;
  request.page = 0;
  command.add_option("--page", request.page, "Page of the job")->check(CLI::Range(1, 99999));
  command.add_option("--rough", request.rough, "Rough; left out: the chosen one, else the first");
  command.add_option("--readers", request.readers, "Readers to simulate")
      ->check(CLI::Range(1, 1000000))
      ->capture_default_str();
  command.add_option("--seed", request.seed, "Another seed sends other readers")
      ->capture_default_str();
  command
      .add_option("--png", a.png,
                  "Reading sheet to write as PNG; of a drawn page: where the eye goes;\n"
                  "of a list's further pages: FILE-2, FILE-3, ...")
      ->check(endsIn(".png"));
  command.add_option("--svg", a.svg, "Reading sheet to write as SVG")->check(endsIn(".svg"));
  command.add_option("--pdf", a.pdf, "Reading sheet to write as PDF")->check(endsIn(".pdf"));
  command.add_option("--dpi", request.dpi, "Resolution of the PNG")
      ->check(CLI::Range(20.0, 1200.0))
      ->capture_default_str();
  command.add_option("--level", a.staged.level, "Exit with 1 from this level on")
      ->check(CLI::IsMember({"must", "should", "look"}))
      ->capture_default_str();
  command.add_flag("--no-remedies", a.noRemedies, "Do not try what would mend the findings");
}

int run(const ReadArguments& a) {
  if (!a.panels.empty() && a.job.empty()) return runPanels(a);
  if (!a.panels.empty())
    return report({{Cause::BadInput,
                    "A job and a list of panels cannot be read in one go.",
                    {},
                    "Name either JOB or --panels FILE."}});
  if (!a.job.empty()) return runJob(a);
  return report({{Cause::BadInput,
                  "Nothing to read was named.",
                  {},
                  "Name a JOB and its --page, or --panels FILE."}});
}

}  // namespace

void addRead(CLI::App& app, int& exitCode) {
  auto* command = app.add_subcommand(
      "read", "How a page will be read: order, eye path, findings and what would mend them");
  auto a = std::make_shared<ReadArguments>();
  command->add_option("JOB", a->job, "A job folder, with --page");
  command->add_option("--panels", a->panels, "A list of pages with marked panels, as JSON");
  command
      ->add_option("--direction", a->direction,
                   "ltr or rtl; goes before what the file says of a page")
      ->check(CLI::IsMember({"ltr", "rtl", "left-to-right", "right-to-left"}));
  command->add_option("--picture", a->picture,
                      "PNG or JPEG of the drawn page, when the list holds one page");
  command->add_flag("--json", a->json, "Print JSON");
  addJobOptions(*command, *a);
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
      "  tierwright read job --page 4 --rough A --png reading.png\n"
      "  tierwright read --panels pages.json --pdf layouts.pdf\n"
      "  tierwright read --panels pages.json --direction rtl --json\n"
      "  tierwright read --panels page.json --picture page.png --png eye.png");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

}  // namespace tw
