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

/// Heights of a panel's upper and lower edge near the side that is read first, and the other.
struct Edges {
  double topBefore = 0, topAfter = 0, bottomBefore = 0, bottomAfter = 0;
};

struct PanelRelations {
  const ReaderPreferences& likes;  ///< must outlive this
  int count = 0;
  double aligned = 0;  ///< mm; edges nearer than this are one line
  double noticedGap = 0, noticedOverlap = 0;
  double usualGapDown = 0;  ///< between a panel and what is under it
  std::vector<Rect> boxes;  ///< reading to the right, whatever the page's direction
  std::vector<Edges> edges;
  std::vector<Rect> free;       ///< of a base panel: its largest part not covered
  std::vector<PanelSet> right;  ///< panels to the reading side, side by side
  std::vector<PanelSet> below;
  std::vector<PanelSet> left, above;
  std::vector<PanelSet> onTop;  ///< panels that lie on this one
  std::vector<int> base;        ///< the panel that this one lies on, or −1

  PanelRelations(const std::vector<Polygon>& panels, ReadingDirection direction,
                 const std::vector<int>& layer,
                 const ReaderPreferences& preferences = shippedPreferences());

  PanelSet beforeFold = 0;  ///< panels of the first of two pages side by side; none on one page

  /// The paper between two panels side by side (`lower` false) or one under the other, where they
  /// face each other; negative where they overlap.
  double gapBetween(int panel, int next, bool lower) const;

 private:
  void findFold();
  void findUsualGap();
  void findBases(const std::vector<int>& layer);
  void findFreeParts();
  void relate(int a, int b);

  std::vector<Polygon> panels_;  ///< empty when all are boxes
  Rect page_;                    ///< around all panels
  double sign_ = 1;              ///< −1 where the page is read to the left
  std::vector<bool> isBox_;
};

/// The box of a panel, its sides where they usually are (slanted ones at their middle); mirrored
/// at x = 0 for right-to-left.
Rect readingBox(const Polygon& panel, ReadingDirection direction);

/// Share of the smaller box that both cover.
double overlapShare(const Rect& a, const Rect& b);

}  // namespace tw
