// A new job from a script, and a revised script for a job at hand. Reading is the script folder's
// work and storing the document's; this joins the two and keeps the artist's own where it fits.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/result.h"
#include "job/job.h"
#include "script/script.h"

namespace tw {

struct NewJobRequest {
  std::filesystem::path folder, script;
  std::string sheet = "us-comic-a";
  std::string title;  ///< empty: the script's
  std::string client;
};

struct Imported {
  Job job;
  Problems warnings;                  ///< of the script, with line numbers
  std::vector<ScriptChange> changes;  ///< against the script before; empty for a new job
};

/// Makes the job folder. Refused when it already holds a job.
Result<Imported> newJob(const NewJobRequest& request);

/// Reads a revised script into the job: beats that are still the same keep their ids, overrides,
/// briefs and roughs. Pages that are gone from the script are reported and kept in .history.
Result<Imported> reviseJob(const std::filesystem::path& folder,
                           const std::filesystem::path& script);

}  // namespace tw
