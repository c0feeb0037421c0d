// tierwright story: the whole story in numbers, what is found of it, and the map of its spreads.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <memory>

#include "cli/print_findings.h"
#include "cli/terminal.h"
#include "command/story.h"

namespace tw {

namespace {

struct StoryArguments {
  std::string job, png, svg, pdf, level = "must";
  double dpi = 150;
  bool json = false;
};

void printTempo(const StoryTold& told) {
  double seconds = 0;
  for (const double s : told.tempo.seconds) seconds += s;
  const int whole = static_cast<int>(std::lround(seconds));
  fmt::print(
      "{} panels, about {} min {:02} s of reading; the story's middle panel takes {:.1f} s.\n",
      told.tempo.places.size(), whole / 60, whole % 60, told.tempo.median);
  for (const Reveal& reveal : told.reveals)
    fmt::print("Reveal on {} ({}): {}.\n", inWords(told.story, reveal.at), nameOf(reveal.place),
               reveal.why);
  fmt::print("\n");
}

int exitCodeOf(const StoryTold& told, const std::string& level) {
  const Severity worst = severityNamed(level);
  return std::ranges::any_of(
             told.findings,
             [&](const Finding& f) { return f.silencedWhy.empty() && f.severity <= worst; })
             ? kFindings
             : kDone;
}

int run(const StoryArguments& a) {
  const auto told = storyTold(a.job);
  if (!told) return report(told.error());
  StoryMapRequest request;
  request.dpi = a.dpi;
  for (const std::string& file : {a.png, a.svg, a.pdf})
    if (!file.empty()) request.files.emplace_back(file);
  if (!request.files.empty()) {
    Watched watched;
    if (auto done = writeStoryMaps(a.job, *told, request, watched.progress()); !done)
      return report(done.error());
  }
  if (a.json) {
    fmt::print("{}", storyJson(*told));
  } else {
    fmt::print("{}\n", table(storyRows(*told)));
    printTempo(*told);
    printFindings(told->findings);
    if (!told->findings.empty())
      fmt::print("\nAll of these are common practice or ours; none is measured on readers.\n");
  }
  return exitCodeOf(*told, a.level);
}

}  // namespace

void addStory(CLI::App& app, int& exitCode) {
  auto* command =
      app.add_subcommand("story", "The whole story: page turns, settings, tempo, and its map");
  auto a = std::make_shared<StoryArguments>();
  command->add_option("JOB", a->job, "The job folder")->required();
  command->add_option("--png", a->png, "Write the map as PNG")->check(endsIn(".png"));
  command->add_option("--svg", a->svg, "Write the map as SVG")->check(endsIn(".svg"));
  command->add_option("--pdf", a->pdf, "Write the map as PDF")->check(endsIn(".pdf"));
  command->add_option("--dpi", a->dpi, "Resolution of the PNG")->check(CLI::Range(20.0, 1200.0));
  command->add_option("--level", a->level, "Exit with 1 from this level on")
      ->check(CLI::IsMember({"must", "should", "look"}))
      ->capture_default_str();
  command->add_flag("--json", a->json, "Print JSON");
  command->footer(
      "Each page counts as its chosen rough, or else the best, shows it; pages without a rough "
      "are\n"
      "told as not measured.\n"
      "Examples:\n"
      "  tierwright story job\n"
      "  tierwright story job --pdf map.pdf --level should");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

}  // namespace tw
