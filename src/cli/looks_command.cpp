// tierwright looks and reference: how a character looks from when on, and pictures that show it.
#include <fmt/format.h>

#include <memory>

#include "cli/terminal.h"
#include "command/looks.h"
#include "job/beat_fields.h"
#include "job/write_json.h"

namespace tw {

namespace {

struct LooksArguments {
  std::string job;
  LookStatement said;
  std::string hand;
  int drop = 0;
  bool json = false;
};

void printCharacter(const Character& who) {
  fmt::print("{} ({}): {}{}\n", who.name, who.id, who.note.empty() ? "no note" : who.note,
             who.hand.empty() ? "" : "; " + who.hand + "-handed");
  if (who.looks.empty()) return;
  std::vector<std::vector<std::string>> rows{{"", "from", "until", "said by", "words"}};
  int number = 0;
  for (const LookNote& note : who.looks)
    rows.push_back({std::to_string(++number), note.from.empty() ? "the start" : note.from,
                    note.until.empty() ? "-" : note.until, note.source,
                    (note.instead ? "instead: " : "") + note.words});
  fmt::print("{}", table(rows));
}

int run(LooksArguments& a) {
  if (!a.hand.empty()) a.said.hand = a.hand;
  if (a.drop > 0) a.said.drop = a.drop;
  const bool says = !a.said.words.empty() || a.said.hand || a.said.drop;
  if (says && a.said.who.empty())
    return report({{Cause::BadInput, "A look is stated of a character.", {}, "Add --who NAME."}});
  if (a.said.words.empty() && !(a.said.from.empty() && a.said.until.empty()))
    return report({{Cause::BadInput,
                    "There are no words to hold from then on.",
                    {},
                    "Add --words \"wrapped in a blanket\"."}});
  const auto job = changeLooks(a.job, a.said);
  if (!job) return report(job.error());
  OrderedJson cast = OrderedJson::array();
  for (const Character& who : job->cast) {
    if (!a.said.who.empty() && who.id != a.said.who) continue;
    if (a.json)
      cast.push_back(objectOf(who));
    else
      printCharacter(who);
  }
  if (a.json) fmt::print("{}", textOf({{"cast", cast}}));
  return kDone;
}

struct ReferenceArguments {
  std::string job, add;
  ReferenceRequest request;
  bool json = false;
};

constexpr const char* kRights =
    "Pictures of real people and other people's work need their permission; note whose it is with "
    "--rights. In doubt, ask a lawyer.";

int run(ReferenceArguments& a) {
  a.request.add = a.add;
  const auto shown = changeReferences(a.job, a.request);
  if (!shown) return report(shown.error());
  OrderedJson list = OrderedJson::array();
  std::vector<std::vector<std::string>> rows{{"who", "file", "pixels", "note", "rights"}};
  Problems troubles;
  for (const ReferenceShown& r : *shown) {
    rows.push_back({r.who, r.file, r.width > 0 ? fmt::format("{} × {}", r.width, r.height) : "-",
                    r.note, r.rights.empty() ? "not stated" : r.rights});
    list.push_back({{"who", r.who},
                    {"file", r.file},
                    {"width", r.width},
                    {"height", r.height},
                    {"note", r.note},
                    {"rights", r.rights},
                    {"trouble", r.trouble}});
    if (!r.trouble.empty())
      troubles.push_back({Cause::BadInput,
                          r.trouble,
                          {},
                          fmt::format("Put the file back, or let go of it: tierwright reference "
                                      "JOB --who {} --drop {}.",
                                      r.who, r.file)});
  }
  fmt::print("{}", a.json ? textOf({{"references", list}}) : table(rows));
  if (!a.add.empty()) fmt::print(stderr, "{}\n", kRights);
  warn(troubles);
  return troubles.empty() ? kDone : kFindings;
}

}  // namespace

void addLooks(CLI::App& app, int& exitCode) {
  auto* command = app.add_subcommand("looks", "How each character looks from when on; state it");
  auto a = std::make_shared<LooksArguments>();
  command->add_option("JOB", a->job, "The job folder")->required();
  command->add_option("--who", a->said.who, "Only this character");
  command->add_option("--words", a->said.words,
                      "Costume, marks, hands: \"helmet, scar on the left "
                      "cheek, lantern in the right hand\"");
  command->add_option("--from", a->said.from, "Page, panel or scene from which it holds");
  command->add_option("--until", a->said.until, "Page, panel or scene up to which it holds");
  command->add_flag("--instead", a->said.instead, "In place of the costume before, not over it");
  command->add_option("--hand", a->hand, "The hand that works: left, right, both or guess");
  command->add_option("--drop", a->drop, "Number of a statement to take back")
      ->check(CLI::Range(1, 100000));
  command->add_flag("--json", a->json, "Print JSON");
  command->footer(
      "Words are those of the cast list; \"no helmet\" takes off. Left and right are the "
      "character's own.\n"
      "Examples:\n"
      "  tierwright looks job\n"
      "  tierwright looks job --who ines --from p5-7 --words \"cut on the left cheek\"\n"
      "  tierwright looks job --who ines --from s4 --until s4 --words \"dress\" --instead");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

void addReference(CLI::App& app, int& exitCode) {
  auto* command =
      app.add_subcommand("reference", "Reference pictures of the characters: attach and list");
  auto a = std::make_shared<ReferenceArguments>();
  command->add_option("JOB", a->job, "The job folder")->required();
  command->add_option("--who", a->request.who, "The character it shows");
  command->add_option("--add", a->add, "PNG or JPEG to copy to art/reference/ and attach");
  command->add_option("--note", a->request.note, "What it shows");
  command->add_option("--rights", a->request.rights, "Whose it is and who allowed its use");
  command->add_option("--drop", a->request.drop, "Name of a picture to let go; the file stays");
  command->add_flag("--json", a->json, "Print JSON");
  command->footer(
      std::string(kRights) +
      "\nExample:\n"
      "  tierwright reference job --who ines --add suit.png --note \"the canvas suit\"");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

}  // namespace tw
