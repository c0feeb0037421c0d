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

/// A place on the face's surface: x in half head breadths to the head's right, y in head heights
/// above the chin.
Vec3 facePlace(const HeadMarks& head, double x, double y);

/// Nothing when the head is smaller than 5 mm or turned away.
FaceDrawing faceLines(const Solid& solid, int index, const PanelView& view, double lineMm);

}  // namespace tw
