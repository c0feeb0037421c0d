// One item of copy set in lines with the shape that holds them, in every number of lines worth
// considering; placing chooses among them.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "letter/balloon_shape.h"
#include "letter/lettering.h"
#include "letter/type_measure.h"

namespace tw {

struct Setting {
  std::vector<std::string> lines;
  std::vector<double> lineWidths;  ///< mm
  double sizePt = 0;
  double lineStep = 0;   ///< mm from baseline to baseline
  double capHeight = 0;  ///< mm
  BalloonShape shape;
  std::vector<Rect> strips;  ///< of the shape, about its middle
  double cost = 0;           ///< uneven lines and unpleasing proportions; 0 is best

  /// Baseline of that line below the shape's middle, mm, before any turn.
  double baselineAt(std::size_t line) const;
};

using Settings = std::vector<Setting>;

/// All settings of a text from one line upward, each as even as can be, none wider than
/// `mostWidth` unless a single character is. Free copy comes in falling sizes instead.
Settings settingsOf(const std::string& letteredText, CopyKind kind, double sizePt, double mostWidth,
                    const LetterStyle& style, const TypeMeasure& type);

/// The setting that a placed balloon shows, told from its lines and its outline.
Setting settingOf(const PlacedBalloon& placed, const LetterStyle& style, const TypeMeasure& type);

/// The number that fixes an outline's small irregularities; the same text always looks the same.
std::uint64_t seedOf(const std::string& text);

}  // namespace tw
