// Who stands beside, below or on top of whom on a page. Panels are taken as boxes (slanted sides
// at their middle), mirrored for right-to-left, and their relations kept as bit sets, so that the
// reader can ask them many times.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "geometry/shapes.h"
#include "job/words.h"
#include "read/preferences.h"

namespace tw {

using PanelSet = std::uint64_t;  ///< bit i = panel i
inline constexpr std::size_t kMostPanels = 64;

inline PanelSet only(int panel) {
  return PanelSet{1} << panel;
}

/// The first `count` panels.
inline PanelSet allOf(int count) {
  return count >= static_cast<int>(kMostPanels) ? ~PanelSet{0} : (PanelSet{1} << count) - 1;
}

struct PanelRelations {
  const ReaderPreferences& likes;  ///< must outlive this
  int count = 0;
  double aligned = 0;           ///< mm; edges nearer than this are one line
  std::vector<Rect> boxes;      ///< reading to the right, whatever the page's direction
  std::vector<Rect> free;       ///< of a base panel: its largest part not covered
  std::vector<PanelSet> right;  ///< panels to the reading side, side by side
  std::vector<PanelSet> below;
  std::vector<PanelSet> left, above;
  std::vector<PanelSet> onTop;  ///< panels that lie on this one
  std::vector<int> base;        ///< the panel that this one lies on, or −1

  PanelRelations(const std::vector<Polygon>& panels, ReadingDirection direction,
                 const std::vector<int>& layer,
                 const ReaderPreferences& preferences = shippedPreferences());

 private:
  void findBases(const std::vector<int>& layer);
  void findFreeParts();
  void relate(int a, int b);
};

/// The box of a panel, its slanted sides at their middle; mirrored at x = 0 for right-to-left.
Rect readingBox(const Polygon& panel, ReadingDirection direction);

/// Share of the smaller box that both cover.
double overlapShare(const Rect& a, const Rect& b);

}  // namespace tw
