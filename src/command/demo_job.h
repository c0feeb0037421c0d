// The demo's story as a job in a folder of its own, gone with the test. For tests only.
#pragma once

#include <doctest/doctest.h>

#include <filesystem>
#include <string>
#include <vector>

#include "base/scratch_folder.h"
#include "command/new_job.h"
#include "command/page_wishes.h"
#include "command/roughs.h"

namespace tw {

class DemoJob {
 public:
  DemoJob() {
    NewJobRequest request;
    request.folder = folder_;
    request.script = std::filesystem::path(TIERWRIGHT_SOURCE_DIR) / "demo/the-low-bell.txt";
    REQUIRE(newJob(request).has_value());
  }

  const std::filesystem::path& folder() const { return folder_; }
  /// Of page 4, the one with the dominant picture.
  void brief(const std::vector<std::string>& settings) {
    REQUIRE(changeBrief(folder_, 4, settings).has_value());
  }
  /// Roughs of page 4.
  PageRoughs roughs(int keep = 6, std::uint64_t seed = 1) {
    Progress progress;
    auto made = makeRoughs({folder_, 4, {.keep = keep, .seed = seed}, {}}, progress);
    REQUIRE_MESSAGE(made.has_value(), (made ? std::string() : describe(made.error())));
    return made->front();
  }

 private:
  ScratchFolder scratch_;
  std::filesystem::path folder_ = scratch_ / "job";
};

}  // namespace tw
