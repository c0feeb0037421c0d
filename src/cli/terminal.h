// What every terminal command shares: exit codes, how problems and tables are printed, progress
// on a terminal, and Ctrl-C. Results go to stdout, everything else to stderr.
#pragma once

#include <CLI/CLI.hpp>
#include <chrono>
#include <functional>
#include <mutex>
#include <string>
#include <vector>

#include "base/progress.h"
#include "base/result.h"

namespace tw {

enum ExitCode : int { kDone = 0, kFindings = 1, kBadInput = 2, kStopped = 3, kOurFault = 4 };

/// The worst cause decides: our own fault, then bad input, then stopped.
int exitCodeOf(const Problems& problems);

/// Prints the problems to stderr and returns their exit code.
int report(const Problems& problems);

/// Warnings to stderr, one per line.
void warn(const Problems& warnings);

/// Rows of cells as columns with two spaces between; the first row is the head.
std::string table(const std::vector<std::vector<std::string>>& rows);

/// A Progress that stops on Ctrl-C and, when stderr is a terminal and the work takes longer than
/// half a second, shows what is being done on one line that is wiped at the end.
class Watched {
 public:
  Watched();
  ~Watched();
  Watched(const Watched&) = delete;
  Progress& progress() { return progress_; }

 private:
  void show(std::string_view what, double share);
  std::chrono::steady_clock::time_point start_, shown_;
  bool onTerminal_, dirty_ = false;
  std::string last_;
  Progress progress_;
};

/// For options that name a file to write: its name says the same as the option.
CLI::Validator endsIn(const std::string& ending);

/// Adds one command; running it sets the exit code.
using AddCommand = void (*)(CLI::App& app, int& exitCode);

void addBoard(CLI::App& app, int& exitCode);
void addDesk(CLI::App& app, int& exitCode);
void addNew(CLI::App& app, int& exitCode);
void addRevise(CLI::App& app, int& exitCode);
void addBeats(CLI::App& app, int& exitCode);
void addBrief(CLI::App& app, int& exitCode);
void addSheets(CLI::App& app, int& exitCode);
void addRoughs(CLI::App& app, int& exitCode);
void addShow(CLI::App& app, int& exitCode);
void addVariants(CLI::App& app, int& exitCode);
void addChoose(CLI::App& app, int& exitCode);
void addProof(CLI::App& app, int& exitCode);
void addFit(CLI::App& app, int& exitCode);
void addValues(CLI::App& app, int& exitCode);
void addPoses(CLI::App& app, int& exitCode);
void addContinuity(CLI::App& app, int& exitCode);
void addScenes(CLI::App& app, int& exitCode);
void addLooks(CLI::App& app, int& exitCode);
void addReference(CLI::App& app, int& exitCode);
void addMend(CLI::App& app, int& exitCode);
void addSilence(CLI::App& app, int& exitCode);
void addRead(CLI::App& app, int& exitCode);
void addPin(CLI::App& app, int& exitCode);
void addMix(CLI::App& app, int& exitCode);
void addCompare(CLI::App& app, int& exitCode);
void addStory(CLI::App& app, int& exitCode);

/// The whole program; returns the exit code.
int runTerminal(int argc, const char* const* argv);

}  // namespace tw
