// A pose, or two figures of a pose for two, drawn alone on level ground: for pose sheets. Uses the
// very drawing of the roughs, with a long lens and without a set.
#pragma once

#include <vector>

#include "geometry/drawing.h"
#include "stage/figure.h"

namespace tw {

struct PosedFigure {
  Body body;
  Pose pose;
  SetFigure set;
};

struct PosePicture {
  Drawing drawing;                          ///< mm
  std::vector<std::vector<Point>> actions;  ///< the line of action of each figure, mm
};

/// The ground lies `groundMm` above the frame's lower edge; every figure is drawn at the same
/// scale, in the middle.
PosePicture posePicture(std::vector<PosedFigure> figures, const Rect& frame, double mmPerMetre,
                        double groundMm);

}  // namespace tw
