// An empty folder for one test, gone when the test ends. Each has a name of its own, so tests may
// run side by side. For tests only: the program itself writes nothing outside what it is told.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <string>

#include "base/result.h"

namespace tw {

class ScratchFolder {
 public:
  ScratchFolder() {
    std::string name = (std::filesystem::temp_directory_path() / "tierwright-XXXXXX").string();
    ensure(::mkdtemp(name.data()) != nullptr, "a test can make its scratch folder");
    path_ = name;
  }
  ~ScratchFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  ScratchFolder(const ScratchFolder&) = delete;
  ScratchFolder& operator=(const ScratchFolder&) = delete;

  std::filesystem::path operator/(const std::filesystem::path& below) const {
    return path_ / below;
  }
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

}  // namespace tw
