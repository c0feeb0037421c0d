// Whether the things that a panel's description names are in its picture. Common practice, no
// source; where a thing begins to be in sight is our choice.
#pragma once

#include <vector>

#include "review/evidence.h"
#include "review/page_case.h"
#include "stage/panel_glance.h"

namespace tw {

/// How much of itself the least seen of the beat's things shows, %; 100 when all are in sight.
double leastInSight(const std::vector<SeenThing>& things, const Beat& beat);

/// `things`: of each panel, as its picture shows them.
std::vector<Finding> thingFindings(const std::vector<std::vector<SeenThing>>& things,
                                   const PageCase& page, const EvidenceBook& book);

/// The rule's name, and the least share that is in sight, %.
inline constexpr std::string_view kThingsRule = "things in sight";
inline constexpr double kLeastInSight = 25;

}  // namespace tw
