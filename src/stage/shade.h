// From pixels to clean flat shapes: a field over the picture is traced at a level into smooth
// outlines on the page. Used for shadow sides, cast shadows, hair and silhouettes.
#pragma once

#include <array>
#include <vector>

#include "stage/panel_view.h"

namespace tw {

/// A rectangle of pixels of the picture.
struct Window {
  int x = 0, y = 0, width = 0, height = 0;
};
Window wholeOf(const Picture& picture);
/// For each solid the window around its pixels with a margin; empty where it is not seen.
std::vector<Window> windowsOf(const Picture& picture, std::size_t solids);
/// The same for every part of every solid; `windows` are the solids' own.
using PartWindows = std::array<Window, static_cast<std::size_t>(BodyPart::Count)>;
std::vector<PartWindows> partWindowsOf(const Picture& picture, const std::vector<Window>& windows);
Window around(const Window& a, const Window& b);

/// One number per pixel of a window; work outside of what is of interest is saved.
struct Field {
  Window window;
  std::vector<float> value;

  std::size_t index(int x, int y) const {
    return static_cast<std::size_t>(y) * window.width + static_cast<std::size_t>(x);
  }
  float at(int x, int y) const { return value[index(x, y)]; }  ///< within the window
};
Field fieldOver(const Window& window);

/// Mean over a square of 2·radius + 1 pixels, twice: nearly a bell. Edges repeat.
Field blurred(const Field& field, int radius);
/// The same, but only pixels with `weight` 1 count and are changed; for tones inside a figure.
Field blurredWithin(const Field& field, const Field& weight, int radius);

struct TraceStyle {
  float level = 0.5f;
  double leastMm2 = 0;    ///< smaller shapes are dropped
  double smoothMm = 0.3;  ///< how far corners are rounded
};
/// Where the field is above the level, mm on the page; runs on beyond the picture's edges a little
/// so that tones reach the panel's border.
Region traced(const Field& field, const PanelView& view, const TraceStyle& style);

/// Fills the field from the picture: value = of(index of the pixel in the picture).
template <class Of>
Field fieldOf(const Picture& picture, const Window& window, const Of& of) {
  Field field = fieldOver(window);
  for (int y = 0; y < window.height; ++y) {
    const std::size_t row = static_cast<std::size_t>(window.y + y) * picture.width + window.x;
    for (int x = 0; x < window.width; ++x)
      field.value[field.index(x, y)] = of(row + static_cast<std::size_t>(x));
  }
  return field;
}

}  // namespace tw
