// The rough itself, without any overlay: pictures of the panels, borders, copy. Pure greys.
#pragma once

#include "press/proof.h"
#include "press/surface.h"
#include "press/typesetter.h"

namespace tw {

class PageArt final : public Sketch {
 public:
  /// Both must outlive the art.
  PageArt(const RoughPicture& picture, const Typesetter& typesetter)
      : picture_(picture), typesetter_(typesetter) {}

  Rect bounds() const override { return picture_.sheet.bleedRect(); }
  void drawOn(Surface& surface, double smallestMm) const override;

 private:
  void drawPanel(Surface& surface, std::size_t index, double smallestMm) const;
  void drawCopy(Surface& surface, const RoughPanel& panel, std::size_t index) const;

  const RoughPicture& picture_;
  const Typesetter& typesetter_;
};

/// One panel's picture within its outline, with the paper that an inset keeps around it; no border.
void drawPanelPicture(Surface& surface, const Polygon& outline, bool onGround,
                      const Drawing& drawing, double smallestMm);
/// It is an inset: another panel is the ground that it lies on.
bool liesOnGround(const Rough& rough, std::size_t panel);
void drawPanelBorder(Surface& surface, const RoughPanel& panel, const Rect& trim);
void drawPanelCopy(Surface& surface, const RoughPanel& panel, const Typesetter& typesetter);

/// Panels in painting order: the ground first, then the others as they are read.
std::vector<std::size_t> paintingOrder(const Rough& rough);

}  // namespace tw
