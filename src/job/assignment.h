// The text "KEY=VALUE" as typed after --set, and the values that such texts hold. What a key means
// is for brief_keys and override_keys to say.
#pragma once

#include <optional>
#include <string_view>

#include "base/result.h"

namespace tw {

struct Assignment {
  std::string_view key, value;  ///< trimmed; they borrow from the text
};

Result<Assignment> assignmentIn(std::string_view text);

/// yes, no, true, false, on, off in any case.
std::optional<bool> yesOrNo(std::string_view text);
/// A whole number without anything after it.
std::optional<int> wholeNumber(std::string_view text);
/// A finite number; "40%" is 0.4.
std::optional<double> decimalNumber(std::string_view text);
std::string_view trimmed(std::string_view text);

/// "head-mm: VALUE was found; WHAT was expected."
tl::unexpected<Problems> wrongValue(const Assignment& assignment, std::string_view expected);

}  // namespace tw
