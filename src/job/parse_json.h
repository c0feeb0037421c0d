// Bytes to a JSON tree, distrusting the bytes: size, nesting, encoding, doubled keys. Every
// refusal is a sentence with a line number; nothing throws.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "base/result.h"

namespace tw {

using Json = nlohmann::json;

inline constexpr int kDeepestNesting = 40;  // our own documents nest 12 deep

Result<Json> parseJson(std::string_view bytes, const std::string& fileName);

/// Where the bytes stop being UTF-8 (RFC 3629), or npos when they are sound.
std::size_t firstBadUtf8(std::string_view bytes);

}  // namespace tw
