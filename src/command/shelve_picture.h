// Puts a picture into the job under a name of its own. The file that was named is never touched; a
// picture that is there already, byte by byte, is not kept twice.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "base/result.h"

namespace tw {

/// Its name in `shelf`, a folder of the job. `name` is what it was called, with or without folders.
/// Bad input when the bytes are no PNG or JPEG.
Result<std::string> shelvePicture(const std::filesystem::path& shelf, const std::string& name,
                                  std::string_view bytes);
/// The same for a file.
Result<std::string> shelvePictureFile(const std::filesystem::path& shelf,
                                      const std::filesystem::path& file);

}  // namespace tw
