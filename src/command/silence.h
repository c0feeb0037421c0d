// The artist's answers to findings, kept in the job: silence one with a reason, or take that back.
#pragma once

#include <filesystem>
#include <string>

#include "base/result.h"

namespace tw {

struct SilenceRequest {
  std::filesystem::path job;
  int page = 1;
  std::string rule;
  int panel = 0;       ///< in reading order from 1; 0 = the page as a whole
  std::string reason;  ///< empty with `back`
  bool back = false;   ///< take the answer back
};

/// Bad input when there is no such page, panel or rule, or no reason.
Result<void> silenceFinding(const SilenceRequest& request);

}  // namespace tw
