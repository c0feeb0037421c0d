// How findings are told on a terminal, the same for every command that has some.
#pragma once

#include <string>
#include <vector>

#include "job/finding.h"

namespace tw {

/// Numbered from 1 in their order, silenced ones with their reason.
void printFindings(const std::vector<Finding>& findings);

/// "must", "should", "look" as --level takes them.
Severity severityNamed(const std::string& level);

}  // namespace tw
