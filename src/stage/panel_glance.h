// A staged panel in small: as greys, costume, hair and set in their own values, in the panel's
// light, which squint tests look at; and how much of each thing is seen.
#pragma once

#include <string>
#include <vector>

#include "geometry/grey_picture.h"
#include "stage/light.h"
#include "stage/staging.h"

namespace tw {

struct SeenThing {
  std::string prop;        ///< its id
  double visible = 0;      ///< share of what it would show alone, 0…1
  double share = 0;        ///< of the panel's area, 0…1
  bool isTooFine = false;  ///< for so small a picture: nothing is known of it
};

struct PanelGlance {
  GreyPicture grey;
  std::vector<SeenThing> things;  ///< the staging's props in its order
};

/// `width` px over the panel's bounding box; pixels outside the panel's outline are paper.
PanelGlance glanceAt(const Stager& stager, const RoughPanel& panel, const Beat& beat,
                     const LightWords& lights, int width = 120);

}  // namespace tw
