// Aiming a panel's lead: the staging whose lead runs nearest to where the artist wants it, found
// among turns of the head and the body, the mirror image, tilts and walks of the camera. Small
// changes come before large ones; faces stay seen and the focus in the frame.
#pragma once

#include <string>

#include "compose/measured_page.h"

namespace tw {

struct ReAimed {
  Staging staging;
  double offDeg = 0;   ///< between the lead it gives and the wanted one, 0…180
  std::string change;  ///< "mirror the picture, turn the body 15°"; "nothing" when it is best now
};

/// `wanted`: a direction on the page. Bad input when the panel has nobody who could lead, or no
/// staging of those tried leads anywhere.
Result<ReAimed> reAimed(const MeasuredPage& page, std::size_t panel, Vector wanted);
/// From the panel's focus to a place on the page.
Result<ReAimed> reAimedAt(const MeasuredPage& page, std::size_t panel, Point target);

}  // namespace tw
