// What would mend it: changes to one panel's staging, each really made and measured. A remedy that
// a finding names has been tried; what it would harm is said beside it.
#pragma once

#include <string>
#include <vector>

#include "base/progress.h"
#include "compose/measured_page.h"

namespace tw {

/// A panel staged otherwise.
struct Trial {
  std::string change;  ///< "mirror the picture"
  Staging staging;
};

/// The changes worth trying on a panel: mirror, tilt, walk round, step in or back, raise or lower
/// the camera, turn the focus's head, let the figures change places, aim the lead at the next
/// panel.
std::vector<Trial> trialsFor(const MeasuredPage& page, std::size_t panel);

/// Fills `tried` of every finding that a staging can mend with up to three changes that help, the
/// best first; says in the remedy when none does. Stopped when `progress` says so.
Result<void> tryRemedies(const MeasuredPage& page, std::vector<Finding>& findings, unsigned threads,
                         Progress& progress);

/// The same for one finding, with the staging of each change that is told in `finding.tried`, in
/// the same order.
Result<std::vector<Staging>> tryRemedies(const MeasuredPage& page, Finding& finding,
                                         unsigned threads, Progress& progress);

}  // namespace tw
