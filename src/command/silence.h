// The artist's answers to findings, kept in the job: silence one with a reason, or take that back.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

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

struct Answered {
  bool isFoundNow = false;            ///< such a finding stands there at present
  std::vector<std::string> standsAt;  ///< else: where on the page the rule has findings
};

/// Bad input when there is no such page, panel or rule, or no reason.
Result<Answered> silenceFinding(const SilenceRequest& request);

}  // namespace tw
