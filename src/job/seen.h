// What is seen of a staged figure, limb by limb, and where contours only just touch. Measured from
// a rendered picture by stage; kept with the rough so that cards and tables need no picture.
#pragma once

#include <string>
#include <vector>

#include "geometry/shapes.h"

namespace tw {

/// One of a body's limbs; left and right are the figure's own.
struct SeenLimb {
  std::string limb;          ///< "head", "trunk", "left upper arm", … as in limb_names.h
  double visible = 0;        ///< share of its own picture that the panel shows, 0…1
  double foreshortened = 1;  ///< length on the picture over its true length at its middle's depth
  bool operator==(const SeenLimb&) const = default;
};

/// Who or what takes how much of a figure out of sight.
struct HiddenBy {
  std::string what;  ///< character id, prop id, "set" or "frame"
  double share = 0;  ///< of the figure's own picture, 0…1
  bool operator==(const HiddenBy&) const = default;
};

/// The frame's edge falls on a joint.
struct JointCut {
  std::string joint;  ///< "left wrist"
  Point at;           ///< mm on the page
  bool operator==(const JointCut&) const = default;
};

/// Two contours that only just touch, or run along each other: which is nearer is unclear.
struct SeenTangent {
  std::string kind;  ///< "touch" or "run along"
  std::string a, b;  ///< character id, prop id, "set" or "border"
  Point at;          ///< middle of the stretch, mm on the page
  double lengthMm = 0;
  bool operator==(const SeenTangent&) const = default;
};

}  // namespace tw
