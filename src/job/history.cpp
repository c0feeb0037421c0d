#include "job/history.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "base/files.h"
#include "job/job.h"

namespace tw {

namespace fs = std::filesystem;

namespace {

/// The number in "job.json.0012", or -1 when the name is not one of `name`'s.
int numberIn(std::string_view entry, std::string_view name) {
  if (!entry.starts_with(name) || entry.size() <= name.size() + 1 || entry[name.size()] != '.')
    return -1;
  int number = -1;
  const char* end = entry.data() + entry.size();
  const auto read = std::from_chars(entry.data() + name.size() + 1, end, number);
  return read.ec == std::errc() && read.ptr == end ? number : -1;
}

}  // namespace

std::vector<FormerState> formerStates(const fs::path& folder, const fs::path& file) {
  std::vector<FormerState> states;
  const fs::path place = folder / ".history" / file.parent_path();
  std::error_code error;
  for (fs::directory_iterator entry(place, error), end; !error && entry != end;
       entry.increment(error)) {
    const int number = numberIn(entry->path().filename().string(), file.filename().string());
    if (number >= 0) states.push_back({number, entry->path()});
  }
  std::ranges::sort(states, {}, &FormerState::number);
  return states;
}

Result<void> keepFormerState(const fs::path& folder, const fs::path& file, std::string_view bytes) {
  const auto states = formerStates(folder, file);
  const int next = states.empty() ? 1 : states.back().number + 1;
  const fs::path place = folder / ".history" / file.parent_path() /
                         fmt::format("{}.{:04}", file.filename().string(), next);
  if (Result<void> written = writeFileAtomically(place, bytes); !written) return written;
  std::error_code ignored;  // a former state that stays too long does no harm
  for (std::size_t i = 0; i + kHistoryKept <= states.size(); ++i)
    fs::remove(states[i].file, ignored);
  return {};
}

}  // namespace tw
