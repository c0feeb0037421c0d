// Reference pictures: copied to art/reference/ and attached to a character.
#include <fmt/format.h>

#include <algorithm>

#include "base/files.h"
#include "command/job_pages.h"
#include "command/looks.h"
#include "command/shelve_picture.h"
#include "job/field.h"
#include "job/picture_size.h"

namespace tw {

namespace {

namespace fs = std::filesystem;

fs::path shelf(const fs::path& job) {
  return job / "art" / "reference";
}

ReferenceShown shown(const fs::path& job, const std::string& who, const Reference& reference) {
  ReferenceShown out{who, reference.file, reference.note, reference.rights, 0, 0, {}};
  const fs::path file = shelf(job) / reference.file;
  const auto bytes = readFile(file, kLargestPictureBytes);
  const auto size = bytes ? pictureSizeOf(*bytes, reference.file)
                          : Result<PictureSize>(tl::unexpected(bytes.error()));
  if (size) {
    out.width = size->width;
    out.height = size->height;
  } else {
    std::error_code error;
    out.trouble = fs::exists(file, error)
                      ? size.error().front().sentence
                      : fmt::format("art/reference/{} is missing.", reference.file);
  }
  return out;
}

Result<void> attach(Character& who, const fs::path& job, const ReferenceRequest& request) {
  const auto name = shelvePictureFile(shelf(job), request.add);
  if (!name) return tl::unexpected(name.error());
  const auto known = std::ranges::find(who.references, *name, &Reference::file);
  if (known == who.references.end())
    who.references.push_back({*name, request.note, request.rights});
  else
    *known = {*name, request.note.empty() ? known->note : request.note,
              request.rights.empty() ? known->rights : request.rights};
  return {};
}

Result<void> detach(Character& who, const std::string& file) {
  if (std::erase_if(who.references, [&](const Reference& r) { return r.file == file; }) > 0)
    return {};
  return badInput(fmt::format("{} has no reference picture \"{}\".", who.id, file), {},
                  "tierwright reference JOB lists them.");
}

}  // namespace

std::vector<ReferenceShown> referencesOf(const fs::path& job, const Job& loaded) {
  std::vector<ReferenceShown> out;
  for (const Character& who : loaded.cast)
    for (const Reference& reference : who.references) out.push_back(shown(job, who.id, reference));
  return out;
}

Result<std::vector<ReferenceShown>> changeReferences(const fs::path& folder,
                                                     const ReferenceRequest& request) {
  auto open = openJob(folder);
  if (!open) return tl::unexpected(open.error());
  if (!request.add.empty() || !request.drop.empty()) {
    if (auto writable = mustBeWritable(*open); !writable) return tl::unexpected(writable.error());
    const auto who = std::ranges::find(open->job.cast, request.who, &Character::id);
    if (who == open->job.cast.end())
      return badInput(request.who.empty() ? "It is not said whose picture this is."
                                          : fmt::format("{} is not in the cast.", request.who),
                      {}, "Name a character with --who.");
    if (!request.drop.empty())
      if (auto done = detach(*who, request.drop); !done) return tl::unexpected(done.error());
    if (!request.add.empty())
      if (auto done = attach(*who, folder, request); !done) return tl::unexpected(done.error());
    if (auto saved = open->folder.save(open->job); !saved) return tl::unexpected(saved.error());
  }
  return referencesOf(folder, open->job);
}

}  // namespace tw
