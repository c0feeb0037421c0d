// tierwright continuity and scenes: the story in its own time, and what does not hold together.
#include <fmt/format.h>

#include <algorithm>
#include <memory>

#include "cli/print_findings.h"
#include "cli/terminal.h"
#include "command/continuity.h"
#include "command/looks.h"
#include "job/scene_fields.h"
#include "job/story_time.h"
#include "job/write_json.h"

namespace tw {

namespace {

struct ContinuityArguments {
  std::string job, png, svg, pdf, level = "must";
  double dpi = 150;
  bool json = false;
};

std::string joined(const std::vector<std::string>& words) {
  return fmt::format("{}", fmt::join(words, ", "));
}

void printLooks(const StoryContinuity& story) {
  std::vector<std::vector<std::string>> rows{{"who", "scene", "from", "worn", "marks", "in hand"}};
  for (const LookShown& look : story.looks)
    rows.push_back({look.who, look.scene, look.beat, look.changed ? joined(look.worn) : "as before",
                    joined(look.marks), joined(look.hands)});
  fmt::print("{}\n", table(rows));
}

void printFindings(const StoryContinuity& story) {
  for (const ContinuityFinding& finding : story.findings)
    fmt::print("{}: {}\n    {}\n", nameOf(finding.severity), finding.sentence, finding.remedy);
  if (story.findings.empty())
    fmt::print("Nothing is found against the continuity.\n");
  else
    fmt::print("\nLevels: common practice, no source.\n");
}

int exitCodeOf(const StoryContinuity& story, const std::string& level) {
  const Severity worst = severityNamed(level);
  return std::ranges::any_of(story.findings,
                             [&](const ContinuityFinding& f) { return f.severity <= worst; })
             ? kFindings
             : kDone;
}

int run(const ContinuityArguments& a) {
  const auto story = storyContinuity(a.job);
  if (!story) return report(story.error());
  ContinuitySheetRequest request;
  request.dpi = a.dpi;
  for (const std::string& file : {a.png, a.svg, a.pdf})
    if (!file.empty()) request.files.emplace_back(file);
  if (!request.files.empty()) {
    Watched watched;
    if (auto done = writeContinuitySheets(a.job, *story, request, watched.progress()); !done)
      return report(done.error());
  }
  if (a.json) {
    fmt::print("{}", continuityJson(*story));
  } else {
    printLooks(*story);
    printFindings(*story);
  }
  return exitCodeOf(*story, a.level);
}

struct ScenesArguments {
  std::string job;
  std::vector<std::string> settings, openings;
  bool json = false;
};

int run(const ScenesArguments& a) {
  std::vector<SceneOpening> openings;
  for (const std::string& opening : a.openings) {
    const std::size_t equals = opening.find('=');
    if (equals == std::string::npos)
      return report({{Cause::BadInput,
                      fmt::format("\"{}\" opens no scene.", opening),
                      {},
                      "Write PANEL=HEADING, such as \"p6-4=EXT. PIER - NIGHT\"."}});
    openings.push_back({opening.substr(0, equals), opening.substr(equals + 1)});
  }
  const auto job = changeScenes(a.job, a.settings, openings);
  if (!job) return report(job.error());
  const StoryTime story(*job);
  if (a.json) {
    OrderedJson scenes = OrderedJson::array();
    for (const StoryScene& scene : story.scenes()) scenes.push_back(objectOf(scene));
    fmt::print("{}", textOf({{"scenes", scenes}}));
    return kDone;
  }
  std::vector<std::vector<std::string>> rows{
      {"scene", "panels", "place", "time", "in the story", "heading"}};
  for (std::size_t s = 0; s < story.scenes().size(); ++s) {
    const StoryScene& scene = story.scenes()[s];
    std::string first, last;
    for (const Moment& moment : story.moments())
      if (moment.scene == s) {
        last = moment.beat->id;
        if (first.empty()) first = last;
      }
    rows.push_back({scene.id,
                    first.empty()   ? "none"
                    : first == last ? first
                                    : first + " to " + last,
                    scene.place, scene.time,
                    scene.years == 0 ? scene.strand
                                     : fmt::format("{}, {:.3g} years", scene.strand, scene.years),
                    scene.heading});
  }
  fmt::print("Scenes in story time\n{}", table(rows));
  return kDone;
}

}  // namespace

void addContinuity(CLI::App& app, int& exitCode) {
  auto* command =
      app.add_subcommand("continuity", "Costumes, marks, hands and things along story time");
  auto a = std::make_shared<ContinuityArguments>();
  command->add_option("JOB", a->job, "The job folder")->required();
  command->add_option("--png", a->png, "Chart to write as PNG")->check(endsIn(".png"));
  command->add_option("--svg", a->svg, "Chart to write as SVG")->check(endsIn(".svg"));
  command->add_option("--pdf", a->pdf, "Chart to write as PDF")->check(endsIn(".pdf"));
  command->add_option("--dpi", a->dpi, "Resolution of the PNG")
      ->check(CLI::Range(20.0, 600.0))
      ->capture_default_str();
  command->add_option("--level", a->level, "Exit with 1 from this level on")
      ->check(CLI::IsMember({"must", "should", "look"}))
      ->capture_default_str();
  command->add_flag("--json", a->json, "Print JSON");
  command->footer(
      "Examples:\n"
      "  tierwright continuity job\n"
      "  tierwright continuity job --pdf continuity.pdf --level should");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

void addScenes(CLI::App& app, int& exitCode) {
  auto* command = app.add_subcommand("scenes", "List the scenes in story time; correct them");
  auto a = std::make_shared<ScenesArguments>();
  command->add_option("JOB", a->job, "The job folder")->required();
  command->add_option("--set", a->settings, "SCENE.KEY=VALUE, may be given often")
      ->allow_extra_args(false);
  command->add_option("--open", a->openings, "PANEL=HEADING: a scene begins at that panel")
      ->allow_extra_args(false);
  command->add_flag("--json", a->json, "Print JSON");
  command->footer(
      "Keys: place, time, strand (present, flashback, flash-forward), years, after, before; the "
      "value \"guess\" goes back to the script.\n"
      "Examples:\n"
      "  tierwright scenes job --set s5.after=s2 --set s7.time=night\n"
      "  tierwright scenes job --open \"p6-4=FLASHBACK - TEN YEARS EARLIER\"");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

}  // namespace tw
