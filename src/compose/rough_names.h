// Names of roughs: A to Z, then AA, AB and so on. A name that is taken is never given again.
#pragma once

#include <string>
#include <vector>

#include "job/rough.h"

namespace tw {

/// 0 = A, 25 = Z, 26 = AA.
std::string roughNameAt(std::size_t index);

/// The first name that none of the roughs has.
std::string freeRoughName(const std::vector<Rough>& taken);

/// Shorter names first, then by letter: the order in which they are given.
bool comesBefore(const std::string& a, const std::string& b);

}  // namespace tw
