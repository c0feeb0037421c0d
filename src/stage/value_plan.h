// The panel in four flat values (paper, light, dark, black), as an inker plans it before the first
// line: the lit picture times the values of costume, hair and set, put on equal steps of CIE L*,
// cleaned of specks. Some areas are proposed as solid blacks. The plan tells whether the focus
// stands out from its ground and which neighbours run together.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "geometry/drawing.h"
#include "stage/light.h"
#include "stage/lightness.h"

namespace tw {

/// What a proposed black fills.
enum class BlackOf : std::uint8_t { Costume, ShadowSide, CastShadow, Set, SetShadow, Sky };

struct SpottedBlack {
  BlackOf what = BlackOf::Costume;
  int solid = -1;        ///< whose, or −1
  double share = 0;      ///< of the panel
  double apartGain = 0;  ///< by how much more of the focus's outline stands clear, −1 … 1
};

/// Two neighbours of one value along most of their common border.
struct RunTogether {
  int a = -1, b = -1;  ///< solids; b −1 = the backdrop
  double share = 0;    ///< of the common border
};

struct ValuePlan {
  std::array<double, kValueSteps> shares{};  ///< of the panel's area, by ValueStep
  /// Where it is at least light, at least dark, black: each lies within the one before. mm.
  std::array<Region, kValueSteps - 1> regions;
  std::vector<SpottedBlack> blacks;
  std::vector<RunTogether> runTogether;
  bool hasFocus = false;
  double focusLightness = 0, groundLightness = 0;  ///< mean L*; the ground within 3 mm around
  double apart = 0;                                ///< share of its outline with a step across it

  double contrast() const { return focusLightness - groundLightness; }
  /// Enough of the outline stands clear. Common practice, no source for the amount.
  bool separates() const { return !hasFocus || apart >= 0.6; }
  /// The plan as flat tones, nothing else.
  std::vector<Tone> tones() const;
};

/// The panel's drawing and its plan from one picture.
struct PlannedPanel {
  Drawing drawing;
  ValuePlan plan;
  std::size_t marks = 0;  ///< the drawing's tones from this one on are eyes and mouths
};

/// The plan as a drawing: four tones, the marks of faces, thin lines; within blacks the lines are
/// left as paper.
Drawing drawnInValues(PlannedPanel planned);

PlannedPanel drawWithValues(const std::vector<Solid>& solids, const Camera& camera,
                            const Rect& frame, const Polygon& panel, const DrawOptions& options,
                            const Lighting& light);

}  // namespace tw
