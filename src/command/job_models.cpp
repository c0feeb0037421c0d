#include "command/job_models.h"

#include <fmt/format.h>

#include <map>
#include <set>

#include "base/files.h"
#include "stage/read_obj.h"

namespace tw {

namespace {

namespace fs = std::filesystem;

/// File by the model's name. Of two that differ in case only the first in the alphabet counts.
std::map<std::string, fs::path> modelFiles(const fs::path& job) {
  std::map<std::string, fs::path> files;
  std::error_code ignored;
  std::set<fs::path> found;
  for (const auto& entry : fs::directory_iterator(job / "art" / "models", ignored))
    if (modelNameOf(entry.path().extension().string()) == ".obj") found.insert(entry.path());
  for (const fs::path& path : found) files.emplace(modelNameOf(path.stem().string()), path);
  return files;
}

Result<Mesh> readFileOf(const fs::path& path) {
  const auto bytes = readFile(path, kLargestObjBytes);
  if (!bytes) return tl::unexpected(bytes.error());
  return readObj(*bytes, path.string());
}

}  // namespace

std::vector<std::string> modelNames(const fs::path& job) {
  std::vector<std::string> names;
  for (const auto& [name, path] : modelFiles(job)) names.push_back(name);
  return names;
}

Result<Mesh> readModel(const fs::path& job, const std::string& name) {
  const auto files = modelFiles(job);
  const auto file = files.find(modelNameOf(name));
  if (file == files.end())
    return badInput(fmt::format("There is no model \"{}\".", name),
                    {.file = (job / "art" / "models").string()},
                    fmt::format("Put the file {}.obj there.", name));
  return readFileOf(file->second);
}

Result<Models> modelsOf(const fs::path& folder, const Job& job) {
  const auto files = modelFiles(folder);
  Models models;
  Problems problems;
  std::set<std::string> tried;
  for (const Page& page : job.pages)
    for (const Beat& beat : page.correctedBeats())
      for (const Prop& prop : beat.props) {
        std::string name = modelNameFor(prop, files);
        if (name.empty()) name = modelNameOf(prop.model);
        if (name.empty() || !tried.insert(name).second) continue;
        auto mesh = readModel(folder, name);
        if (mesh)
          models.emplace(name, std::move(*mesh));
        else
          problems.insert(problems.end(), mesh.error().begin(), mesh.error().end());
      }
  if (!problems.empty()) return tl::unexpected(problems);
  return models;
}

Result<Stager> stagerFor(const OpenJob& open) {
  auto models = modelsOf(open.folder.path(), open.job);
  if (!models) return tl::unexpected(models.error());
  return Stager::make(open.job, std::move(*models));
}

Result<Workshop> workshopFor(const fs::path& folder, const Job& job, const std::string& rulesFile) {
  auto models = modelsOf(folder, job);
  if (!models) return tl::unexpected(models.error());
  return Workshop::make(job, rulesFile, std::move(*models));
}

}  // namespace tw
