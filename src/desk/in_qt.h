// Between our texts and Qt's.
#pragma once

#include <QString>

#include <string>

#include "base/result.h"

namespace tw {

inline QString qt(const std::string& text) {
  return QString::fromStdString(text);
}
inline QString qt(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}
inline QString qt(const Problems& problems) {
  return qt(describe(problems)).trimmed();
}

}  // namespace tw
