// The list of commands, help and exit codes. Each command has a file of its own.
#include <fmt/format.h>

#include <algorithm>
#include <exception>
#include <regex>

#include "cli/terminal.h"

namespace tw {

namespace {

constexpr const char* kAbout =
    "Tierwright takes a script and an editor's brief and gives ranked roughs of the page, on "
    "paper,\n"
    "with the reasons for their ranking.\n";

constexpr const char* kFooter =
    "Examples:\n"
    "  tierwright new job --script story.txt --sheet us-comic-a\n"
    "  tierwright brief job --page 4 --set dominant-share=0.4 --set liftable=yes\n"
    "  tierwright roughs job --page 4\n"
    "  tierwright show job --page 4 --rough A --png page-4-A.png\n"
    "  tierwright proof job --out proof\n"
    "\n"
    "Exit codes: 0 done; 1 findings above the level asked for; 2 bad input;\n"
    "3 stopped (Ctrl-C); 4 our own fault (a write that failed, a missing preset).\n"
    "`tierwright COMMAND --help` explains a command with examples.";

constexpr AddCommand kCommands[] = {
    addNew,      addRevise, addBeats,     addBrief,   addSheets, addRoughs,  addShow,
    addVariants, addChoose, addProof,     addFit,     addValues, addPoses,   addContinuity,
    addScenes,   addLooks,  addReference, addRead,    addMend,   addSilence, addStory,
    addDesk,     addPin,    addMix,       addCompare, addBoard};

/// What was wrong, in a sentence, and where the help is.
std::string failureWords(const CLI::App* app, const CLI::Error& error) {
  static const std::regex range(R"(^(\S+): Value (.*) not in range (\S+) to (\S+)$)");
  const auto asked = app->get_subcommands();
  const std::string command = asked.empty() ? "" : " " + asked.front()->get_name();
  const std::string words = std::regex_replace(std::string(error.what()), range,
                                               R"($1 takes a number from $3 to $4, not "$2".)");
  return fmt::format("{}\n`tierwright{} --help` explains it with examples.\n", words, command);
}

}  // namespace

int runTerminal(int argc, const char* const* argv) {
  CLI::App app(kAbout, "tierwright");
  app.footer(kFooter);
  app.set_version_flag("--version", "tierwright 0.1.0");
  app.require_subcommand(1);
  app.failure_message(failureWords);
  int exitCode = kDone;
  for (AddCommand add : kCommands) add(app, exitCode);
  const std::string_view first = argc > 1 ? argv[1] : "-";
  const auto all = app.get_subcommands({});
  const bool known = std::ranges::any_of(
      all, [&](const CLI::App* command) { return command->get_name() == first; });
  if (!first.starts_with('-') && !known) {
    fmt::print(stderr, "There is no command \"{}\".\n`tierwright --help` lists them.\n", first);
    return kBadInput;
  }
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? kDone : kBadInput;
  } catch (const std::exception& error) {
    fmt::print(stderr, "tierwright: an error of our own: {}\n", error.what());
    return kOurFault;
  }
  return exitCode;
}

}  // namespace tw
