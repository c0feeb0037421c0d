// What can be laid over a page in the window, one key each. Drawn with press's overlays where a
// printed sheet has them too.
#pragma once

#include <QString>

#include <array>

#include "desk/measurement.h"
#include "press/typesetter.h"

class QPainter;

namespace tw {

enum class Layer {
  Order,
  EyePath,
  Leads,
  LiveArea,
  Tiers,
  Values,
  Squint,
  Grid,
  Findings,
  Strokes,
  Underlays
};
inline constexpr int kLayers = 11;

struct LayerInfo {
  Layer layer;
  const char* action;  ///< object name of its action
  const char* title;   ///< to be translated
  const char* key;
};
const std::array<LayerInfo, kLayers>& layerInfos();

struct LayersShown {
  std::array<bool, kLayers> on{};
  double eyeShare = 1;  ///< of the eye's path that is drawn

  LayersShown() {
    for (const Layer own : {Layer::Strokes, Layer::Underlays}) set(own, true);
  }
  bool has(Layer layer) const { return on[static_cast<std::size_t>(layer)]; }
  void set(Layer layer, bool shown) { on[static_cast<std::size_t>(layer)] = shown; }
};

/// Those that are drawn over the page; the painter's user space is mm on the page.
void drawLayers(QPainter& painter, const Measurement& measurement, const LayersShown& shown,
                const Typesetter& typesetter);

/// Heights, mm, at which the page falls into tiers: between them every panel lies whole.
std::vector<double> tierLines(const Rough& rough);

/// The composed page as half-closed eyes see it.
QImage squinted(const QImage& page, double pixelsPerMm);
/// The composed page in four values.
QImage inFourValues(const QImage& page);

}  // namespace tw
