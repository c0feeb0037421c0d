// The brief as it is typed and shown in the terminal: one plain key per demand. Also the check of
// a brief against the page it is for.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "job/job.h"

namespace tw {

/// One demand as a person reads it. `value` is what brief --set takes for that key.
struct BriefEntry {
  std::string key, value, meaning;
};

/// Sets one demand from "KEY=VALUE"; the value none takes it back. The brief is unchanged when
/// the key or the value is refused.
Result<void> setBriefKey(Brief& brief, std::string_view assignment);

/// Every key with its present value, in a fixed order.
std::vector<BriefEntry> describeBrief(const Brief& brief);
/// The same as a table of three columns.
std::string briefTable(const Brief& brief);

/// Demands that contradict each other, the page or the job. They are findings, not refusals: a
/// brief that cannot be met still gets the nearest roughs.
Problems contradictionsOf(const Brief& brief, const Page& page, const Job& job);

/// Those among them that name a beat or a character that does not exist: slips of the hand, which
/// are refused when they are typed.
Problems unknownNamesIn(const Brief& brief, const Page& page, const Job& job);

}  // namespace tw
