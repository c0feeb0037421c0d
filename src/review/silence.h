// The artist's answers to findings: a finding that she has answered stays in the list with her
// reason, and no longer counts.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "job/job.h"

namespace tw {

/// Marks the findings that the page's artist has answered.
void applySilenced(std::vector<Finding>& findings, const Page& page);

/// Adds the answer, or takes the former one's place. Bad input when the page has no such beat
/// or there is no reason.
Result<void> silence(Page& page, Silenced answer);
/// Takes an answer back. Bad input when there is none.
Result<void> unsilence(Page& page, const std::string& rule, const std::string& beat);

/// The gravest level among findings that are not silenced, or nothing.
std::optional<Severity> gravestOf(const std::vector<Finding>& findings);

}  // namespace tw
