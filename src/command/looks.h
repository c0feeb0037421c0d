// The artist's own statements on scenes, looks and reference pictures. Of several changes in one
// call all are saved or none.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "job/job.h"

namespace tw {

struct LookStatement {
  std::string who;
  std::string from, until;  ///< "6", "p6-1", "s4" or empty: page, panel or scene
  std::string words;        ///< empty: nothing is stated
  bool instead = false;
  std::optional<std::string> hand;  ///< left, right, both or guess
  std::optional<int> drop;          ///< number of a statement of this character, from 1
};
/// Applies it and saves; a statement without a character only shows. Returns the job as it is then.
Result<Job> changeLooks(const std::filesystem::path& job, const LookStatement& statement);

struct SceneOpening {
  std::string beat, heading;
};
/// "s3.time=night", "s5.strand=flashback", "s5.years=-10", "s5.after=s2", "s5.before=s1",
/// "s3.place=the pier"; the value guess goes back to the script. A scene that is opened runs from
/// that beat to the end of the scene it was in.
Result<Job> changeScenes(const std::filesystem::path& job, const std::vector<std::string>& settings,
                         const std::vector<SceneOpening>& openings);

struct ReferenceRequest {
  std::string who;
  std::filesystem::path add;
  std::string note, rights;
  std::string drop;  ///< name below art/reference/; the file itself stays
};
struct ReferenceShown {
  std::string who, file, note, rights;
  int width = 0, height = 0;
  std::string trouble;  ///< empty when the file is there and sound
};
/// Copies the picture to art/reference/, attaches it and saves; then lists all.
Result<std::vector<ReferenceShown>> changeReferences(const std::filesystem::path& job,
                                                     const ReferenceRequest& request);
std::vector<ReferenceShown> referencesOf(const std::filesystem::path& job, const Job& loaded);

}  // namespace tw
