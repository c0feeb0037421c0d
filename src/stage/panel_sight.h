// A panel's rendered picture with everything that measures ask of it: which pixels are the panel's,
// and what each figure and thing would show alone. Made once per look.
#pragma once

#include <vector>

#include "stage/own_mask.h"
#include "stage/panel_view.h"
#include "stage/staging.h"

namespace tw {

struct PanelSight {
  PanelSight(const std::vector<Solid>& solids, const Camera& camera, const Polygon& panel,
             int width, const Vec3& towardKey, LookFor what = LookFor::Everything);

  const std::vector<Solid>& solids;
  const Camera& camera;
  const Polygon& panel;
  Rect frame;  ///< mm on the page
  Picture picture;
  std::vector<std::uint8_t> inside;  ///< 1 where the pixel is the panel's
  double panelPixels = 0;
  std::vector<OwnMask> own;  ///< of every figure and prop; none when only shares are asked for
  std::vector<int> maskOf;   ///< per solid its index in `own`, or −1

  double mmPerPx() const { return frame.width() / picture.width; }
  Point onPage(double x, double y) const {
    return {frame.min.x + x * mmPerPx(), frame.min.y + y * mmPerPx()};
  }
  /// Middle of a pixel, frame units.
  Point place(int x, int y) const { return {(x + 0.5) / picture.width, (y + 0.5) / picture.width}; }
  const OwnMask* mask(int solid) const {
    const int i = solid < 0 ? -1 : maskOf[static_cast<std::size_t>(solid)];
    return i < 0 ? nullptr : &own[static_cast<std::size_t>(i)];
  }
};

}  // namespace tw
