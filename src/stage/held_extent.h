// How much of the frame the things take that a shot has to hold: measured through a camera as it
// stands, in units of the target (the part of the panel in which the focus must stand).
#pragma once

#include <vector>

#include "stage/blocking.h"
#include "stage/camera.h"

namespace tw {

/// Box in target units: 0…1 across and down the target rectangle.
struct Extent {
  static constexpr double kFarAway = 1e6;
  double left = kFarAway, top = kFarAway, right = -kFarAway, bottom = -kFarAway;

  void add(double x, double y, double rx, double ry);
  void add(const Extent& other);
  bool empty() const { return right < left; }
  double width() const { return empty() ? 0 : right - left; }
  double height() const { return empty() ? 0 : bottom - top; }
};

struct HeldExtents {
  Extent head;      ///< of the focus; of both who are in one pose for two
  Extent must;      ///< what the shot keeps in the frame
  Extent people;    ///< the same of everybody
  Extent nice;      ///< people and things, when the shot's band allows more distance
  Extent speakers;  ///< heads of all who speak
};

struct HoldWish {
  ShotSize shot = ShotSize::Medium;
  Rect target{{0, 0}, {1, 1}};  ///< panel units
  bool handOnly = false;        ///< a hand's close-up: `aim` is the palm
  Vec3 aim = Vec3::Zero();
};

HeldExtents heldExtents(const Scene& scene, const HoldWish& wish, const Camera& camera);

/// The focus, and who is in one pose for two with it.
std::vector<const Actor*> focusActors(const Scene& scene);

}  // namespace tw
