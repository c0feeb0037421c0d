// What stands behind the figures besides solids: horizon, ground marks, sky, water, darkness.
// Sparse, lighter than figures, the same for the same setting and camera; agrees with the camera.
#pragma once

#include <string>

#include "geometry/drawing.h"
#include "stage/panel_view.h"

namespace tw {

enum class Ground { None, Floor, Land, Water, Seabed };

/// What a beat's setting asks of the picture, read from its words.
struct Mood {
  Ground ground = Ground::Land;
  bool sky = true;  ///< there is an open sky, so a horizon may show
  bool underwater = false;
  bool rain = false;
  double skyDark = 0;      ///< flat tone above the horizon, 0 paper … 1 black
  double groundDark = 0;   ///< flat tone below it
  double setDark = 0;      ///< flat tone of set solids
  double setShade = 0.14;  ///< their shadow side
  double figureShade = 0.2;
  bool castShadows = true;
};
Mood moodOf(const std::string& setting);

struct SetDrawing {
  std::vector<Tone> tones;
  std::vector<Stroke> strokes;
};

SetDrawing setLines(const PanelView& view, const Mood& mood, double lineMm);

}  // namespace tw
