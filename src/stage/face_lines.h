// The marks of a face: lids, pupils, brows, the nose's underside, mouth. Drawn on the head in
// space, so that turn, tilt and gaze read; fewer of them the smaller the head is.
#pragma once

#include "geometry/drawing.h"
#include "stage/panel_view.h"

namespace tw {

struct FaceDrawing {
  std::vector<Tone> tones;
  std::vector<Stroke> strokes;
};

/// Nothing when the head is smaller than 5 mm or turned away.
FaceDrawing faceLines(const Solid& solid, int index, const PanelView& view, double lineMm);

}  // namespace tw
