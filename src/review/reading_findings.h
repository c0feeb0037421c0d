// Findings from how a page is read as a whole: what eyes pass over, what the squint test and the
// page at arm's length show. No score card pays for these; they need pictures that a search does
// not make.
#pragma once

#include <vector>

#include "read/eye_reading.h"
#include "read/one_picture.h"
#include "read/page_reading.h"
#include "read/squint.h"
#include "review/evidence.h"
#include "review/page_case.h"

namespace tw {

/// All that readers do on a page and all that is seen of it from afar. Panels in reading order.
struct PageReadings {
  PageReading order;
  EyeReading eyes;
  std::vector<Squint> squints;  ///< of each panel's focus
  OnePicture picture;
};

/// In the order of the rules, then of the panels.
std::vector<Finding> readingFindings(const PageReadings& readings, const PageCase& page,
                                     const EvidenceBook& book);

/// Says in findings about leads how far to turn them; leaves out those of panels from which no lead
/// can arrive at the next panel, as at the end of a row.
void aimLeads(std::vector<Finding>& findings, const SeenPage& page);

}  // namespace tw
