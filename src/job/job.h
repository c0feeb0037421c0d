// The document: a job folder with job.json, script/, pages/NN.json, art/ and out/.
// Loading reports every problem it finds; saving is atomic and keeps a bounded history.
#pragma once

#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "job/beat.h"
#include "job/brief.h"
#include "job/finding.h"
#include "job/rough.h"
#include "job/scene.h"
#include "job/sheet.h"

namespace tw {

inline constexpr int kFormat = 2;        ///< version that this program writes
inline constexpr int kHistoryKept = 20;  ///< former states kept per file

/// What new roughs of a page must keep of roughs that are there: taken over, not referred to.
struct Pins {
  std::string arrangement, treatment;       ///< as Rough has them; empty: any
  std::map<std::string, Staging> stagings;  ///< by beat id
  bool operator==(const Pins&) const = default;
};

/// A picture laid under a page or one of its panels to work over.
struct Underlay {
  std::string file;       ///< name below art/
  std::string beat;       ///< empty: the page's
  Rect at;                ///< mm on the page
  double strength = 0.5;  ///< 0 unseen … 1 as it is
  bool operator==(const Underlay&) const = default;
};

/// One page, or one spread under its left page's number.
struct Page {
  int number = 1;
  bool spread = false;
  std::string title;
  std::vector<Beat> beats;                        ///< as broken down, overrides not applied
  std::map<std::string, BeatOverride> overrides;  ///< by beat id
  Brief brief;
  std::vector<Rough> roughs;
  std::string choice;  ///< name of the rough chosen, or empty
  std::string note;
  std::vector<Silenced> silenced;  ///< findings that the artist has answered
  Pins pins;
  std::vector<Underlay> underlays;

  /// The beats with the artist's corrections applied.
  std::vector<Beat> correctedBeats() const;
  bool operator==(const Page&) const = default;
};

struct Job {
  std::string title;
  std::string client;
  std::string due;  ///< ISO 8601 date or empty
  Sheet sheet;
  std::vector<Character> cast;
  std::string scriptFile;                           ///< below script/
  std::vector<Page> pages;                          ///< by number
  std::vector<StoryScene> scenes;                   ///< in the script's order, uncorrected
  std::map<std::string, SceneChange> sceneChanges;  ///< the artist's, by scene id

  const Page* page(int number) const;
  Page* page(int number);
  const Character* character(const std::string& id) const;
  /// The sheet on which that page is drawn: the job's, or its spread.
  Sheet sheetFor(const Page& page) const;
  /// Odd pages are right-hand pages. Common practice, no source.
  static bool isRightHand(const Page& page) { return page.number % 2 == 1; }
  bool operator==(const Job&) const = default;
};

/// Whether a save puts what it replaces into .history/.
enum class Former { Keep, Drop };

/// Holds the lock of a job folder while it lives. When another process has the job open,
/// `readOnly()` is true and every save is refused with a sentence.
class JobFolder {
 public:
  static Result<JobFolder> create(const std::filesystem::path& folder, const Job& job);
  static Result<JobFolder> open(const std::filesystem::path& folder);

  JobFolder(JobFolder&&) noexcept;
  JobFolder& operator=(JobFolder&&) noexcept;
  ~JobFolder();

  const std::filesystem::path& path() const { return path_; }
  bool readOnly() const { return readOnly_; }

  Result<Job> load() const;
  /// Writes job.json and those pages whose text changed.
  Result<void> save(const Job& job, Former former = Former::Keep);
  Result<void> savePage(const Page& page, Former former = Former::Keep);
  /// Copies a received script, unchanged, to script/ and returns its name there.
  Result<std::string> keepScript(const std::filesystem::path& file);

 private:
  JobFolder() = default;
  std::filesystem::path path_;
  int lock_ = -1;
  bool readOnly_ = false;
};

}  // namespace tw
