// Findings as every command prints them: docs/formats/finding.schema.json.
#pragma once

#include <vector>

#include "job/finding.h"
#include "job/write_json.h"

namespace tw {

OrderedJson findingJson(const Finding& finding);
OrderedJson findingsJson(const std::vector<Finding>& findings);

}  // namespace tw
