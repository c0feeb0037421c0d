// The light of a staged panel: key, fill and rim as they stand to the camera. Kept with a rough so
// that the panel is drawn in the same light again, whatever becomes of the script's words.
#pragma once

#include <string>

namespace tw {

/// A place in the panel's space, metres, y up, z away from the default camera.
struct Place3 {
  double x = 0, y = 0, z = 0;
  bool operator==(const Place3&) const = default;
};

struct SetLamp {
  Place3 from;          ///< toward the lamp: x to the camera's right, y up, z toward the camera
  double strength = 0;  ///< 1 = a surface turned to it has its own value
  bool operator==(const SetLamp&) const = default;
};

struct SetLight {
  std::string name, title;
  SetLamp key, fill, rim;
  double ambient = 0;  ///< from everywhere
  bool operator==(const SetLight&) const = default;
};

}  // namespace tw
