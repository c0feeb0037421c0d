// Where a reader's eye is likely to go in one panel of a picture: what is marked there (copy,
// faces, figures), what looks like copy or a closed shape, what stands out by its spectrum, and
// the middle. A mark always replaces what would be proposed for its kind.
#pragma once

#include <string>
#include <vector>

#include "geometry/grey_picture.h"
#include "read/attention_weights.h"
#include "read/place_map.h"
#include "read/seen_page.h"

namespace tw {

/// A place that draws the eye, the strongest first.
struct Spot {
  Point at;             ///< mm on the page
  Rect box;             ///< of what stands there, mm on the page
  double strength = 0;  ///< 0 … 1, share of the strongest possible
  SeenKind kind = SeenKind::Spot;
  bool marked = false;  ///< by the artist; else proposed
  std::string what;     ///< "balloon", "face", "figure", "closed shape" or "contrast"
};

struct PanelAttention {
  PlaceMap map;                     ///< 0 … 1, longer side 64 cells, over the panel's box
  std::vector<Spot> spots;          ///< at most kMostSpots
  std::vector<Spot> picture;        ///< the same of the picture alone, copy and its places left out
  std::vector<SeenElement> marked;  ///< those of the artist's that lie in the panel
  std::vector<SeenElement> proposed;  ///< areas that look like copy
};

inline constexpr int kAttentionSide = 64;  ///< cells of the longer side; our choice
inline constexpr std::size_t kMostSpots = 5;

/// `marked`: of the whole page, mm; a mark belongs to the panel that holds its middle. A panel
/// outside the picture has no spots.
PanelAttention attentionOf(const GreyPicture& page, const Polygon& outline,
                           const std::vector<SeenElement>& marked, const AttentionWeights& weights);

}  // namespace tw
