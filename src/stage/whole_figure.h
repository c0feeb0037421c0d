// One figure of a staged panel with what it carries, whole: as the panel's camera sees it, beyond
// the frame too, at the panel's print size. For asking how large it could be drawn elsewhere.
// All places in mm on the page.
#pragma once

#include <string>
#include <vector>

#include "geometry/drawing.h"
#include "stage/light.h"
#include "stage/staging.h"

namespace tw {

/// A landmark of the body from the top down at which a border may cut it (shot_size.h).
struct CutPlace {
  std::string name;
  bool joint = false;
  Point at;
};

/// Head height for which `WholeFigure::drawing` has its widths.
inline constexpr double kDrawnHeadMm = 20;

struct WholeFigure {
  std::string who;
  std::vector<std::string> carries;  ///< ids of props held or hauled
  std::vector<Polygon> shapes;       ///< its silhouette with all that it carries, holes filled
  std::vector<Polygon> ownShapes;    ///< the same without what it hauls
  std::vector<Polygon> hauled;       ///< what it hauls, alone: nothing before it
  Region silhouette;                 ///< with its holes
  Drawing drawing;       ///< as inked, on no ground; widths as for a head of kDrawnHeadMm
  Polygon face;          ///< around the head
  double headMm = 0;     ///< chin to crown
  double statureMm = 0;  ///< of the upright body at the head's distance
  Point head, pelvis;
  std::vector<CutPlace> cuts;
  std::vector<Point> joints;  ///< neck, wrists, knees, ankles: no border should fall on one
  std::vector<Point> hands;   ///< fingertips
  double steppedBackM = 0;    ///< the camera was taken back by so much to have all before it
};

/// Figure `index` of the staging, inked in the panel's own light. `body` must be the one that the
/// stager knows under its name.
WholeFigure wholeFigure(const Stager& stager, const RoughPanel& panel, const Beat& beat,
                        const Body& body, std::size_t index, const Lighting& light);

}  // namespace tw
