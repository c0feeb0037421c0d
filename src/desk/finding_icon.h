// The mark of a finding as an icon of a list: the shape and number that reading sheets print.
#pragma once

#include <QIcon>

#include "job/finding.h"

namespace tw {

QIcon findingIcon(const Finding& finding, std::size_t number);

inline constexpr int kFindingIconPx = 30;

}  // namespace tw
