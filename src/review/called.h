// How people are called in findings.
#pragma once

#include <string>

#include "job/job.h"

namespace tw {

/// "Ines" for the cast list's INES; the id where the cast does not know it.
std::string calledIn(const Job& job, const std::string& id);

}  // namespace tw
