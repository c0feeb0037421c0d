// What readers do on a measured page and what is seen of it from afar: everything about a page that
// is not on its score card. Beside measured_page.h the other half of what follows an edit.
#pragma once

#include "compose/measured_page.h"
#include "review/reading_findings.h"

namespace tw {

/// The page as readers' eyes meet it.
SeenPage seenPageOf(const MeasuredPage& page);

PageReadings readingsOf(const MeasuredPage& page, const EyePathModel& model,
                        const EyeOptions& options);

/// The squint test of one panel's focus figure, or of its focus point where there is none.
Squint squintOf(const MeasuredPage& page, std::size_t panel);

}  // namespace tw
