// How much room the copy of a panel wants and how much there is: the numbers of a space meter. And
// its words against the trade's limits.
#pragma once

#include "letter/lettering.h"

namespace tw {

struct CopySpace {
  double wantedMm2 = 0;   ///< what the balloons take up, with the room wasted between them
  double freeMm2 = 0;     ///< of the panel inside border and live area, without faces, insets and
                          ///< zones to keep clear
  double balloonMm2 = 0;  ///< under the balloons as they stand
  double panelMm2 = 0;
  int words = 0, mostWords = 0;        ///< of the panel and what the trade allows it
  int longest = 0, mostInBalloon = 0;  ///< words of its wordiest item
  /// Of the free room that the copy wants; over 1 it cannot all stand.
  double share() const { return freeMm2 > 0 ? wantedMm2 / freeMm2 : wantedMm2 > 0 ? 9.99 : 0; }
  bool tooManyWords() const { return words > mostWords || longest > mostInBalloon; }
};

/// `panel.standing` is what the balloons take up now.
CopySpace copySpace(const LetterRequest& panel, const Letterer& letterer);

}  // namespace tw
