// What a crowd of simulated readers did on a page, counted: looks, time, panels passed over and
// gone back to, where looks fell, and one path that stands for all. Same seed, same bytes, at any
// number of threads.
#pragma once

#include <cstdint>
#include <vector>

#include "read/eye_path.h"

namespace tw {

struct EyeOptions {
  int readers = 500;
  std::uint64_t seed = 1;
  unsigned threads = 0;  ///< 0: all cores
  int samples = 12;      ///< paths kept whole
  int heatColumns = 0;   ///< over the page's width; 0: no heat
};

/// Means over all readers unless said otherwise; times in ms.
struct PanelEyes {
  double looks = 0, copyLooks = 0, pictureLooks = 0;
  double dwellMs = 0, dwellDeviationMs = 0;
  double copyMs = 0, pictureMs = 0;
  double enteredFirst = 0;  ///< share of readers who begin the page here
  double passedOver = 0;    ///< share of readers who pass over it when its turn comes
  double neverSeen = 0;     ///< … and never come back
  double cameBack = 0;      ///< share of readers who look at it after having passed over or left it
  /// Of those who look at it: share whose first look falls on the picture.
  double firstOnPicture = 0;
  /// Returns to the picture or to copy after the eye was elsewhere, per reader.
  double returnsToPicture = 0, returnsToCopy = 0;
  /// Of those who look at it: share whose next look at a panel not seen before falls in the
  /// intended next one; for the last panel, share who see nothing new after it.
  double handedOn = 0;
};

struct EyeHeat {
  int columns = 0, rows = 0;
  std::vector<double> ms;  ///< per reader, row by row from the page's top left
};

struct EyeReading {
  int readers = 0;
  std::vector<PanelEyes> panels;  ///< in the intended order
  double looks = 0, ms = 0;       ///< of the page
  double deviationMs = 0;
  double quickMs = 0, slowMs = 0;  ///< one reader in ten is quicker, one in ten slower
  double handedOn = 0;             ///< mean of the panels that have a next one
  EyeHeat heat;
  EyePath typical;  ///< of a reader near the mean, in the commonest order and without going back
  std::vector<EyePath> samples;
};

EyeReading readEyes(const SeenPage& page, const EyePathModel& model,
                    const EyeOptions& options = {});

}  // namespace tw
