// What can be laid over a rough to talk about it: order numbers, leads and the path of the eye,
// trim, live area and keep-clear zones. Thin, told apart by shape as well as by colour, each with
// its own key in the slug, so that a layer explains itself wherever it is switched on.
#pragma once

#include "press/proof.h"
#include "press/surface.h"
#include "press/typesetter.h"

namespace tw {

// Our own few colours. They differ in lightness as well as in hue, so they survive a grey printer
// and the common kinds of colour blindness.
inline constexpr Ink kOrderInk{0.05, 0.30, 0.42};
inline constexpr Ink kLeadInk{0.80, 0.32, 0.08};
inline constexpr Ink kEyeInk{0.42, 0.12, 0.45};
inline constexpr Ink kSheetInk{0.16, 0.50, 0.66};

/// Width of the strip outside the bleed for marks and keys: a quarter inch.
inline constexpr double kSlugMm = 6.35;

/// Panel numbers near the entry corners, off copy and heads. `magnify` 1 is for a rough at print
/// size.
class OrderNumbers final : public Sketch {
 public:
  OrderNumbers(const RoughPicture& picture, const Typesetter& typesetter, double magnify)
      : picture_(picture), typesetter_(typesetter), magnify_(magnify) {}
  Rect bounds() const override { return picture_.sheet.bleedRect(); }
  void drawOn(Surface& surface, double smallestMm) const override;

 private:
  const RoughPicture& picture_;
  const Typesetter& typesetter_;
  double magnify_;
};

void drawOrderKey(Surface& surface, const RoughPicture& picture);
/// Arrows and dots run beneath balloons and letters.
void drawLeads(Surface& surface, const RoughPicture& picture, const Typesetter& typesetter);
void drawSheetLines(Surface& surface, const RoughPicture& picture, const Typesetter& typesetter);

/// A short word on a clean patch, its middle at that place.
void drawOnPatch(Surface& surface, Point at, const std::string& text, Ink ink,
                 const Typesetter& typesetter);

/// Marks outside the bleed where the trim will fall, and what page this is.
void drawTrimMarks(Surface& surface, const RoughPicture& picture, const Typesetter& typesetter);

/// Panels in the order in which the eye is expected to visit them.
std::vector<std::size_t> expectedOrder(const Rough& rough);

}  // namespace tw
