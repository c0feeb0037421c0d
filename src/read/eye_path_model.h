// The constants of the eye path, as data: presets/read/eye_path.json holds each with its meaning,
// its source and how surely it is known. Which are published and which are ours is told there and
// in docs/reading-model.md.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"

namespace tw {

struct EyePathModel {
  // Reading copy.
  double readingFixationMs = 0;
  double fixationsPerWord = 0;
  double lettersPerWord = 0;
  double readingRegressions = 0;
  double saccadeMs = 0;
  // Looking at pictures.
  double pictureFixationMs = 0;
  double pictureFixationByCopyMs = 0;
  double landingFixationMs = 0;
  double landingOnPicture = 0;
  // How much fixations and readers differ, logarithms.
  double spreadOfFixations = 0;
  double spreadOfReaders = 0;
  // How many looks a picture gets after the first.
  double picturesWithoutCopy = 0;
  double picturesAfterCopy = 0;
  double picturesPerDoubling = 0;
  double picturesPerPart = 0;
  // What draws the eye in a picture.
  double weightOfFace = 0;
  double weightOfFigure = 0;
  double weightOfHand = 0;
  double weightOfProp = 0;
  double weightOfSpot = 0;
  double weightOfGround = 0;
  double focusBonus = 0;
  double gazeEffectG = 0;
  // Places just looked at.
  double returnInhibitedFromMs = 0;
  double returnInhibitedFullyMs = 0;
  double returnInhibitedUntilMs = 0;
  double returnInhibition = 0;
  // Panels passed over: a chance, then log odds added to it.
  double skipBase = 0;
  double skipWithoutCopy = 0;
  double skipGoingOn = 0;
  double skipBeforeDense = 0;
  double skipLowInStack = 0;
  double skipUpToShare = 0;
  // Pull of what is ahead.
  double denseFromWords = 0;
  double denseWords = 0;
  double previewSecond = 0;
  double pullReach = 0;
  // Going back.
  double backWithoutCopy = 0;
  double backWithCopy = 0;
  double glanceBack = 0;
  double glanceOnPicture = 0;
  // Copy at an open fork of the panels.
  double forkClosedAt = 0;
  double forkCopy = 0;

  /// Added log odds of the gaze effect: Hedges' g times pi over the root of 3.
  double gazeLogOdds() const;
};

/// Reads the text of a constants file. Gathers what is wrong: missing or unknown constants, values
/// out of range, constants without meaning, source or certainty.
Result<EyePathModel> readEyePathText(std::string_view bytes, const std::string& fileName);

/// Reads the file that ships with the program.
Result<EyePathModel> loadEyePathModel();

}  // namespace tw
