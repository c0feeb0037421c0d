// The strengths of the reading preferences, as data: presets/read/preferences.json holds each with
// its meaning, its source and how surely it is known. Published shares stand apart from the few
// that are fitted to them (fit_preferences.h) and from those that are our own choice.
#pragma once

#include <cmath>
#include <string>
#include <string_view>

#include "base/result.h"

namespace tw {

/// A logistic that runs from exactly 0 at `from` to exactly 1 at `to`, flat outside.
class RisingCurve {
 public:
  RisingCurve() = default;
  RisingCurve(double from, double to, double middle, double slope);
  double at(double x) const;

 private:
  double raw(double x) const { return 1 / (1 + std::exp(-slope_ * (x - middle_))); }
  double from_ = 0, to_ = 1, middle_ = 0.5, slope_ = 1, low_ = 0, span_ = 1;
};

/// A share of readers that was measured, and the range in which a model must stay.
struct PublishedShare {
  double value = 0, least = 0, most = 1;
};

/// Shares are of the readers who stand at the choice; see the preset for meaning and source.
struct ReaderPreferences {
  // Published; nothing reads with them, the fit and the tests aim at them.
  PublishedShare gridAcross, blockageAcross, blockageDown;

  // Fitted.
  double acrossAtGrid = 0, acrossAtBlockage = 0, downOfRest = 0;

  // Ours, or known too loosely to be fitted.
  double acrossAtWideGap = 0, acrossAtOverlap = 0;
  double staggerMiddle = 0, staggerSlope = 0;
  double gapMiddle = 0, gapSlope = 0, gapEnd = 0;
  double overlapMiddle = 0, overlapSlope = 0;
  double acrossAtStaggeredRows = 0, acrossAboveTier = 0;
  double rowHabit = 0, finishStack = 0, plain = 0, stray = 0;
  double entryAtCorner = 0, entryHighest = 0, entryLeftmost = 0;
  double entryHigherTier = 0, entryLowerTier = 0, outOfCorner = 0;
  double baseFirst = 0, baseFirstCornerHidden = 0, acrossFold = 0;
  double sharedExtent = 0, aligned = 0, noticedGap = 0, noticedOverlap = 0, worthTelling = 0;

  RisingCurve stagger, gap, overlap;  ///< made of the above by prepare()

  /// Makes the curves; call it after changing one of their numbers.
  void prepare();
};

/// Reads the text of a preferences file. Gathers what is wrong: missing or unknown entries, values
/// out of range, entries without meaning, source or certainty.
Result<ReaderPreferences> readPreferencesText(std::string_view bytes, const std::string& fileName);

/// Reads the file that ships with the program.
Result<ReaderPreferences> loadPreferences();

/// The shipped preferences, read once. Commands check loadPreferences() first, so that a missing
/// file ends in a sentence; here it would end the program.
const ReaderPreferences& shippedPreferences();

}  // namespace tw
