// Whether each balloon's tail tells who speaks: its tip is nearer to the speaker's mouth than to
// any other, on nobody else's body, and runs into no other tail. Common practice, no source.
#pragma once

#include <vector>

#include "review/evidence.h"
#include "review/page_case.h"

namespace tw {

/// Voices from outside the panel and speakers who are not seen are left out.
std::vector<Finding> tailFindings(const Rough& rough, const PageCase& page,
                                  const EvidenceBook& book);

}  // namespace tw
