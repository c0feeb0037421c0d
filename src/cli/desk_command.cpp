// The desk is a program of its own beside this one; it takes this one's place.
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>

#include "cli/terminal.h"

namespace tw {

namespace fs = std::filesystem;

namespace {

constexpr const char* kProgram = "tierwright-desk";

/// Beside this program, else left to the search path.
std::string deskProgram() {
  std::error_code error;
  const fs::path self = fs::read_symlink("/proc/self/exe", error);
  const fs::path beside = self.parent_path() / kProgram;
  return !error && fs::exists(beside, error) ? beside.string() : kProgram;
}

int run(const std::string& job) {
  std::error_code error;
  if (!job.empty() && !fs::exists(fs::path(job) / "job.json", error))
    return report({{Cause::BadInput,
                    "This folder holds no job: job.json is missing.",
                    {.file = job},
                    "Name a job folder; tierwright new makes one."}});
  std::string program = deskProgram();
  std::string folder = job;
  char* words[] = {program.data(), folder.empty() ? nullptr : folder.data(), nullptr};
  ::execvp(program.c_str(), words);
  return report({{Cause::OurFault,
                  fmt::format("The desk could not be started: {}.", std::strerror(errno)),
                  {.file = program},
                  "Build the target tierwright-desk; it needs Qt 6."}});
}

}  // namespace

void addDesk(CLI::App& app, int& exitCode) {
  auto* command =
      app.add_subcommand("desk", "Open the window: lay out, stage, letter and mend pages by hand");
  auto job = std::make_shared<std::string>();
  command->add_option("JOB", *job, "The job folder; left out: the start page");
  command->footer(
      "Everything done there is saved as it is done, into the same files that the other commands\n"
      "read.\n"
      "Examples:\n"
      "  tierwright desk\n"
      "  tierwright desk job");
  command->callback([job, &exitCode] { exitCode = run(*job); });
}

}  // namespace tw
