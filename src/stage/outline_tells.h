// What a figure's outline alone tells, as if it were filled with ink.
#pragma once

#include "stage/own_mask.h"

namespace tw {

struct OutlineTells {
  double solidity = 0;  ///< area over its hull's, 0…1; 1 − it is the air inside the gesture
  int tipsSeen = 0;     ///< of head, hands and feet: how many stand clear of the body, 0…5
};

OutlineTells outlineTells(const OwnMask& figure);

}  // namespace tw
