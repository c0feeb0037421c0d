// The Wavefront OBJ files that a job keeps under art/models, read for drawing and never written.
// Whoever stages a job's pages makes its stager here.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "command/job_pages.h"
#include "compose/compose.h"
#include "stage/models.h"

namespace tw {

/// Names of the models that the job has, sorted: art/models/NAME.obj, lower case.
std::vector<std::string> modelNames(const std::filesystem::path& job);
/// Bad input, naming the file, when there is none or it cannot be read.
Result<Mesh> readModel(const std::filesystem::path& job, const std::string& name);

/// The models that props of the job's pages are drawn with; others are not read. Bad input when
/// one cannot be read or a prop names one that is not there.
Result<Models> modelsOf(const std::filesystem::path& folder, const Job& job);

Result<Stager> stagerFor(const OpenJob& open);
Result<Workshop> workshopFor(const std::filesystem::path& folder, const Job& job,
                             const std::string& rulesFile = {});
inline Result<Workshop> workshopFor(const OpenJob& open, const std::string& rulesFile = {}) {
  return workshopFor(open.folder.path(), open.job, rulesFile);
}

}  // namespace tw
