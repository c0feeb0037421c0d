#include "cli/terminal.h"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <cctype>
#include <csignal>
#include <filesystem>

namespace tw {

namespace {

constexpr auto kQuietFor = std::chrono::milliseconds(500);
constexpr auto kBetweenLines = std::chrono::milliseconds(80);

std::atomic<Progress*> watched{nullptr};

extern "C" void stopWatched(int) {
  if (Progress* progress = watched.load()) progress->stop();
}

/// Columns on screen; UTF-8 continuation bytes take none.
std::size_t widthOf(const std::string& text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

}  // namespace

int exitCodeOf(const Problems& problems) {
  const auto has = [&](Cause cause) {
    return std::any_of(problems.begin(), problems.end(),
                       [&](const Problem& p) { return p.cause == cause; });
  };
  if (has(Cause::OurFault)) return kOurFault;
  if (has(Cause::BadInput)) return kBadInput;
  return kStopped;
}

CLI::Validator endsIn(const std::string& ending) {
  const auto check = [ending](std::string& file) {
    std::string its = std::filesystem::path(file).extension().string();
    std::ranges::transform(its, its.begin(), [](unsigned char c) { return std::tolower(c); });
    return its == ending ? std::string()
                         : fmt::format("names the file \"{}\"; one that ends in {} was expected.",
                                       file, ending);
  };
  return CLI::Validator(check, "");
}

int report(const Problems& problems) {
  fmt::print(stderr, "{}", describe(problems));
  return exitCodeOf(problems);
}

void warn(const Problems& warnings) {
  fmt::print(stderr, "{}", describe(warnings));
}

std::string table(const std::vector<std::vector<std::string>>& rows) {
  std::vector<std::size_t> widths;
  for (const auto& row : rows)
    for (std::size_t i = 0; i < row.size(); ++i) {
      if (widths.size() <= i) widths.push_back(0);
      widths[i] = std::max(widths[i], widthOf(row[i]));
    }
  std::string out;
  for (const auto& row : rows) {
    std::string line;
    for (std::size_t i = 0; i < row.size(); ++i) {
      line += row[i];
      if (i + 1 < row.size()) line += std::string(widths[i] - widthOf(row[i]) + 2, ' ');
    }
    out += line + "\n";
  }
  return out;
}

Watched::Watched()
    : start_(std::chrono::steady_clock::now()),
      shown_(start_),
      onTerminal_(isatty(STDERR_FILENO) == 1),
      progress_([this](std::string_view what, double share) { show(what, share); }) {
  watched = &progress_;
  std::signal(SIGINT, stopWatched);
  std::signal(SIGTERM, stopWatched);
}

Watched::~Watched() {
  std::signal(SIGINT, SIG_DFL);
  std::signal(SIGTERM, SIG_DFL);
  watched = nullptr;
  if (dirty_) fmt::print(stderr, "\r\033[K");
}

void Watched::show(std::string_view what, double share) {
  if (!onTerminal_) return;
  const auto now = std::chrono::steady_clock::now();
  if (now - start_ < kQuietFor || now - shown_ < kBetweenLines) return;
  shown_ = now;
  dirty_ = true;
  fmt::print(stderr, "\r\033[K{} {:.0f} %", what, 100 * share);
  std::fflush(stderr);
}

}  // namespace tw
