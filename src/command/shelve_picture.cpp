#include "command/shelve_picture.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/files.h"
#include "job/picture_size.h"

namespace tw {

namespace fs = std::filesystem;

namespace {

/// A name that a job can hold: no folder, no control characters.
std::string nameFor(const fs::path& file, PictureKind kind, int attempt) {
  std::string stem = file.stem().string();
  std::erase_if(stem, [](char c) { return static_cast<unsigned char>(c) < ' ' || c == '\x7f'; });
  if (stem.empty() || stem == "." || stem == "..") stem = "picture";
  const char* extension = kind == PictureKind::Png ? ".png" : ".jpg";
  return attempt == 1 ? stem + extension : fmt::format("{}-{}{}", stem, attempt, extension);
}

}  // namespace

Result<std::string> shelvePicture(const fs::path& shelf, const std::string& called,
                                  std::string_view bytes) {
  const auto size = pictureSizeOf(bytes, called);
  if (!size) return tl::unexpected(size.error());
  for (int attempt = 1;; ++attempt) {
    std::string name = nameFor(called, size->kind, attempt);
    const fs::path kept = shelf / name;
    std::error_code error;
    if (!fs::exists(kept, error)) {
      if (auto written = writeFileAtomically(kept, bytes); !written)
        return tl::unexpected(written.error());
      return name;
    }
    const auto there = readFile(kept, kLargestPictureBytes);
    if (there && *there == bytes) return name;
  }
}

Result<std::string> shelvePictureFile(const fs::path& shelf, const fs::path& file) {
  const auto bytes = readFile(file, kLargestPictureBytes);
  if (!bytes) return tl::unexpected(bytes.error());
  return shelvePicture(shelf, file.string(), *bytes);
}

}  // namespace tw
