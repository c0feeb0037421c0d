// tierwright beats, brief and sheets: what a page has to show and what is asked of it.
#include <fmt/format.h>

#include <cmath>
#include <memory>

#include "cli/terminal.h"
#include "command/job_pages.h"
#include "command/page_wishes.h"
#include "job/brief_keys.h"
#include "job/missing_things.h"
#include "job/output_json.h"
#include "job/override_keys.h"
#include "job/sheet_fields.h"
#include "job/story_time.h"
#include "job/write_json.h"

namespace tw {

namespace {

struct BeatsArguments {
  std::string job;
  int page = 0;
  std::vector<std::string> settings;
  bool json = false;
};

std::string figureText(const BeatFigure& figure) {
  std::string out = figure.who + " " + figure.pose;
  if (!figure.relation.empty())  // "looks at …": at something that is not in the picture
    out += fmt::format(" ({} {})", figure.relation, figure.target.empty() ? "…" : figure.target);
  return out;
}

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : "; ") + word;
  return out;
}

/// ", flashback, 10 years earlier"; nothing in the story's present.
std::string strandInWords(const StoryScene& scene) {
  if (scene.strand == kPresent) return "";
  if (std::abs(scene.years) < 1) return ", " + scene.strand;
  return fmt::format(", {}, {:.0f} years {}", scene.strand, std::abs(scene.years),
                     scene.years < 0 ? "earlier" : "later");
}

std::vector<std::string> beatRow(const Beat& beat) {
  std::vector<std::string> figures;
  for (const BeatFigure& figure : beat.figures) figures.push_back(figureText(figure));
  std::string shot = beat.shot ? std::string(nameOf(*beat.shot)) : "any";
  if (beat.eye) shot += fmt::format(", {}", nameOf(*beat.eye));
  return {beat.id + (beat.dominant ? " dominant" : ""),
          fmt::format("{:.1f}", beat.weight),
          shot,
          joined(figures),
          std::to_string(beat.words()),
          beat.scene,
          beat.setting};
}

void printPage(const Page& page, const std::vector<StoryScene>& scenes) {
  fmt::print("Page {}{}{}\n", page.number,
             page.spread ? fmt::format("-{} (spread)", page.number + 1) : "",
             page.title.empty() ? "" : ": " + page.title);
  std::vector<std::vector<std::string>> rows{
      {"panel", "weight", "shot", "figures", "words", "scene", "setting"}};
  std::vector<std::string> shown;  // ids of scenes, in the page's order
  for (const Beat& beat : page.correctedBeats()) {
    rows.push_back(beatRow(beat));
    if (std::ranges::find(shown, beat.scene) == shown.end()) shown.push_back(beat.scene);
  }
  fmt::print("{}", table(rows));
  if (const std::string things = thingsNotDrawn(page.correctedBeats()); !things.empty())
    fmt::print("named but not drawn: {}\n  {}\n", things, kDrawMissingThings);
  for (const std::string& id : shown)
    for (const StoryScene& scene : scenes)
      if (scene.id == id) fmt::print("{}: {}{}\n", id, titleOf(scene), strandInWords(scene));
  for (const auto& [beat, change] : page.overrides)
    fmt::print("corrected: {}\n", joined(describeOverride(beat, change)));
  fmt::print("\n");
}

int run(const BeatsArguments& a) {
  if (!a.settings.empty())
    if (auto changed = changeBeats(a.job, a.settings); !changed) return report(changed.error());
  const auto open = openJob(a.job);
  if (!open) return report(open.error());
  const auto pages = pagesAsked(open->job, a.page == 0 ? std::nullopt : std::optional<int>(a.page));
  if (!pages) return report(pages.error());
  std::vector<const Page*> shown;
  for (int number : *pages) shown.push_back(open->job.page(number));
  if (a.json)
    fmt::print("{}", beatsJson(shown));
  else
    for (const Page* page : shown) printPage(*page, correctedScenes(open->job));
  return kDone;
}

struct BriefArguments {
  std::string job;
  int page = 1;
  std::vector<std::string> settings;
  bool json = false;
};

int run(const BriefArguments& a) {
  const auto shown = changeBrief(a.job, a.page, a.settings);
  if (!shown) return report(shown.error());
  if (a.json) {
    fmt::print("{}", briefJson(shown->page, shown->job));
    return kDone;
  }
  fmt::print("Brief of page {}\n{}", shown->page.number, briefTable(shown->page.brief));
  warn(shown->contradictions);
  return kDone;
}

int listSheets(bool json) {
  std::vector<std::vector<std::string>> rows{{"sheet", "trim mm", "bleed", "what", "source"}};
  OrderedJson list = OrderedJson::array();
  for (const std::string& name : sheetNames()) {
    const auto sheet = loadSheet(name);
    if (!sheet) return report(sheet.error());
    rows.push_back({name, fmt::format("{:.1f} × {:.1f}", sheet->trimWidth, sheet->trimHeight),
                    fmt::format("{:.1f}", sheet->bleed), sheet->title, sheet->source});
    list.push_back(objectOf(*sheet));
  }
  fmt::print("{}", json ? textOf({{"sheets", list}}) : table(rows));
  return kDone;
}

}  // namespace

void addBeats(CLI::App& app, int& exitCode) {
  auto* command = app.add_subcommand("beats", "Show what each panel has to show; correct it");
  auto a = std::make_shared<BeatsArguments>();
  command->add_option("JOB", a->job, "The job folder")->required();
  command->add_option("--page", a->page, "Only this page")->check(CLI::Range(1, 99999));
  command->add_option("--set", a->settings, "PANEL.KEY=VALUE, may be given often")
      ->allow_extra_args(false);
  command->add_flag("--json", a->json, "Print JSON");
  command->footer(
      "Keys: shot, eye, lens (14 to 300 mm), roll (degrees), light (trade words), dominant, "
      "weight, "
      "setting, scene, pose.WHO, does.WHO (RELATION TARGET, or nothing), add, drop, prop.add, "
      "prop.drop; of a thing prop.THING.hand (left, right, both, any), .place (aside,up,away in "
      "metres), .turn (degrees), .size (W,H,D), .shape, .model, .up (y, z); copy.ITEM (other "
      "words for a balloon, or none); the value \"guess\" goes back.\n"
      "Examples:\n"
      "  tierwright beats job --page 4\n"
      "  tierwright beats job --set p4-2.shot=close-up --set p4-2.pose.ines=kneel\n"
      "  tierwright beats job --set p4-5.lens=28 --set p4-5.roll=-12 --set \"p4-5.light=back-lit, "
      "rim 0.6\"\n"
      "  tierwright beats job --set p1-2.prop.lantern.hand=left --set p4-1.prop.bell.place=2,0,1\n"
      "  tierwright beats job --set \"p4-2.copy.p4-2-c1=Somebody is ringing it.\"\n"
      "  tierwright beats job --set p4-4.prop.drop=lantern --set \"p4-3.does.ines=points at "
      "rope\"");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

void addBrief(CLI::App& app, int& exitCode) {
  auto* command = app.add_subcommand("brief", "Show or change what the editor asks of a page");
  auto a = std::make_shared<BriefArguments>();
  command->add_option("JOB", a->job, "The job folder")->required();
  command->add_option("--page", a->page, "Page")->required()->check(CLI::Range(1, 99999));
  command->add_option("--set", a->settings, "KEY=VALUE, may be given often")
      ->allow_extra_args(false);
  command->add_flag("--json", a->json, "Print JSON");
  command->footer(
      "Example:\n"
      "  tierwright brief job --page 4 --set small-panels=3-5 --set dominant=p4-5 \\\n"
      "      --set dominant-share=0.4 --set focus=ines --set liftable=yes");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

void addSheets(CLI::App& app, int& exitCode) {
  auto* command = app.add_subcommand("sheets", "List the sheets that come with the program");
  auto json = std::make_shared<bool>(false);
  command->add_flag("--json", *json, "Print JSON");
  command->footer(
      "A sheet of your own works too.\n"
      "Example:\n  tierwright new job --script story.txt --sheet my-printer.json");
  command->callback([json, &exitCode] { exitCode = listSheets(*json); });
}

}  // namespace tw
