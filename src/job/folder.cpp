// The order of writes is what makes a kill harmless: pages first, then job.json that lists them,
// then the pages that are listed no more go to .history. Whatever instant the program dies at,
// job.json names only pages that exist.
#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <utility>

#include "base/files.h"
#include "job/document.h"
#include "job/history.h"
#include "job/job.h"
#include "job/lock.h"

namespace tw {

namespace fs = std::filesystem;

namespace {

constexpr std::uintmax_t kLargestScriptBytes = 64u << 20;  // .docx with pictures

fs::path pageFile(int number) {
  return fs::path("pages") / fmt::format("{:02}.json", number);
}

template <class T>
using ReadText = Result<T> (*)(std::string_view, const std::string&);

/// Reads and parses one file of the job, which is named in problems as the artist named it.
template <class T>
Result<T> readPart(const fs::path& folder, const fs::path& file, ReadText<T> read) {
  Result<std::string> bytes = readFile(folder / file);
  if (!bytes) return tl::unexpected(std::move(bytes.error()));
  return read(*bytes, (folder / file).string());
}

/// A file that its reader would refuse is never written: what the program made itself must not
/// lock the artist out of the job.
template <class T>
Result<void> checkReadable(const std::string& text, const fs::path& path, ReadText<T> read) {
  const Result<T> back = read(text, path.string());
  if (back) return {};
  Problems problems = back.error();
  for (Problem& problem : problems) {
    problem.cause = Cause::OurFault;
    problem.sentence = "Not saved, because it could not be read back: " + problem.sentence;
  }
  return tl::unexpected(std::move(problems));
}

/// Replaces one file, keeping its former state. A file on disk that cannot be read is left as it
/// is: it may hold work that a person can still rescue.
template <class T>
Result<void> replacePart(const fs::path& folder, const fs::path& file, const std::string& text,
                         ReadText<T> read, Former former) {
  const fs::path path = folder / file;
  std::error_code error;
  if (fs::exists(path, error)) {
    Result<std::string> before = readFile(path);
    if (!before) return tl::unexpected(std::move(before.error()));
    if (*before == text) return {};
    if (const Result<T> sound = read(*before, path.string()); !sound)
      return tl::unexpected(sound.error());
    if (Result<void> sound = checkReadable(text, path, read); !sound) return sound;
    if (former == Former::Keep)
      if (Result<void> kept = keepFormerState(folder, file, *before); !kept) return kept;
  } else if (Result<void> sound = checkReadable(text, path, read); !sound) {
    return sound;
  }
  return writeFileAtomically(path, text);
}

void append(Problems& all, Problems more) {
  all.insert(all.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

tl::unexpected<Problems> refusedReadOnly(const fs::path& folder) {
  return badInput(
      "Another program has this job open, or the folder cannot be written; nothing "
      "was saved.",
      {.file = folder.string()}, "Close the other program and try again.");
}

Result<Page> loadPage(const fs::path& folder, int number) {
  const fs::path file = pageFile(number);
  Result<Page> page = readPart<Page>(folder, file, readPageText);
  if (page && page->number != number)
    return badInput(
        fmt::format("The file holds page {} but its name says page {}.", page->number, number),
        {.file = (folder / file).string(), .path = "/number"});
  return page;
}

/// Page files that job.json does not list any more.
std::vector<fs::path> strayPages(const fs::path& folder, const Job& job) {
  std::set<fs::path> wanted;
  for (const Page& page : job.pages) wanted.insert(pageFile(page.number).filename());
  std::vector<fs::path> stray;
  std::error_code error;
  for (fs::directory_iterator entry(folder / "pages", error), end; !error && entry != end;
       entry.increment(error)) {
    const fs::path name = entry->path().filename();
    if (name.extension() == ".json" && !wanted.contains(name)) stray.push_back("pages" / name);
  }
  std::sort(stray.begin(), stray.end());
  return stray;
}

Result<void> putAwayStrayPages(const fs::path& folder, const Job& job) {
  for (const fs::path& file : strayPages(folder, job)) {
    const Result<std::string> bytes = readFile(folder / file);
    if (!bytes) continue;  // not ours to touch
    if (Result<void> kept = keepFormerState(folder, file, *bytes); !kept) return kept;
    std::error_code ignored;
    fs::remove(folder / file, ignored);
  }
  return {};
}

/// "script.txt", "script-2.txt", "script-3.txt" and so on.
std::string scriptNameFor(const fs::path& file, int attempt) {
  if (attempt == 1) return file.filename().string();
  return fmt::format("{}-{}{}", file.stem().string(), attempt, file.extension().string());
}

}  // namespace

JobFolder::JobFolder(JobFolder&& other) noexcept
    : path_(std::move(other.path_)),
      lock_(std::exchange(other.lock_, -1)),
      readOnly_(other.readOnly_) {}

JobFolder& JobFolder::operator=(JobFolder&& other) noexcept {
  std::swap(path_, other.path_);
  std::swap(lock_, other.lock_);
  std::swap(readOnly_, other.readOnly_);
  return *this;
}

JobFolder::~JobFolder() {
  dropLock(lock_);
}

Result<JobFolder> JobFolder::create(const fs::path& folder, const Job& job) {
  std::error_code error;
  if (fs::exists(folder / "job.json", error))
    return badInput("There is a job in this folder already; nothing was changed.",
                    {.file = folder.string()}, "Name another folder.");
  for (const char* below : {"script", "pages", "art", "out"}) {
    fs::create_directories(folder / below, error);
    if (error)
      return badInput(fmt::format("The folder could not be made: {}.", error.message()),
                      {.file = (folder / below).string()}, "Name a folder that can be written.");
  }
  JobFolder made;
  made.path_ = folder;
  made.lock_ = takeLock(folder / ".lock");
  made.readOnly_ = made.lock_ < 0;
  if (Result<void> saved = made.save(job); !saved) return tl::unexpected(std::move(saved.error()));
  return made;
}

Result<JobFolder> JobFolder::open(const fs::path& folder) {
  std::error_code error;
  if (!fs::is_directory(folder, error))
    return badInput("There is no such folder.", {.file = folder.string()},
                    "Name a job folder; tierwright new makes one.");
  if (!fs::exists(folder / "job.json", error))
    return badInput("This folder holds no job: job.json is missing.", {.file = folder.string()},
                    "Name a job folder; tierwright new makes one.");
  JobFolder opened;
  opened.path_ = folder;
  opened.lock_ = takeLock(folder / ".lock");
  opened.readOnly_ = opened.lock_ < 0;
  return opened;
}

Result<Job> JobFolder::load() const {
  Result<JobFile> file = readPart<JobFile>(path_, "job.json", readJobText);
  if (!file) return tl::unexpected(std::move(file.error()));
  Job job{file->title,      file->client, file->due,    file->sheet,       file->cast,
          file->scriptFile, {},           file->scenes, file->sceneChanges};
  Problems problems;
  for (const int number : file->pages) {
    Result<Page> page = loadPage(path_, number);
    if (page)
      job.pages.push_back(std::move(*page));
    else
      append(problems, std::move(page.error()));
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return job;
}

Result<void> JobFolder::save(const Job& job, Former former) {
  if (readOnly_) return refusedReadOnly(path_);
  for (const Page& page : job.pages)
    if (Result<void> saved = savePage(page, former); !saved) return saved;
  const std::string text = writeJobText(jobFileOf(job));
  if (Result<void> saved = replacePart<JobFile>(path_, "job.json", text, readJobText, former);
      !saved)
    return saved;
  return putAwayStrayPages(path_, job);
}

Result<void> JobFolder::savePage(const Page& page, Former former) {
  if (readOnly_) return refusedReadOnly(path_);
  return replacePart<Page>(path_, pageFile(page.number), writePageText(page), readPageText, former);
}

Result<std::string> JobFolder::keepScript(const fs::path& file) {
  if (readOnly_) return refusedReadOnly(path_);
  const Result<std::string> bytes = readFile(file, kLargestScriptBytes);
  if (!bytes) return tl::unexpected(bytes.error());
  for (int attempt = 1;; ++attempt) {
    const std::string name = scriptNameFor(file, attempt);
    const fs::path kept = path_ / "script" / name;
    std::error_code error;
    if (!fs::exists(kept, error)) {
      if (Result<void> written = writeFileAtomically(kept, *bytes); !written)
        return tl::unexpected(std::move(written.error()));
      return name;
    }
    const Result<std::string> there = readFile(kept, kLargestScriptBytes);
    if (there && *there == *bytes) return name;
  }
}

}  // namespace tw
