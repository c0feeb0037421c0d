// What a panel leaves free for copy: where outlines may stand, what they must not cover, and how
// much of the figures they would hide. Faces, keep-clear zones and insets are kept as strips, the
// bodies as a grid, so that thousands of places can be asked quickly.
#pragma once

#include <utility>
#include <vector>

#include "letter/lettering.h"

namespace tw {

class PanelRoom {
 public:
  PanelRoom(const LetterRequest& request, const LetterStyle& style);

  const Polygon& allowed() const { return allowed_; }
  const Rect& allowedBox() const { return box_; }
  double diagonal() const { return diagonal_; }
  double height() const { return panelBox_.height(); }
  double width() const { return panelBox_.width(); }
  const Rect& panelBox() const { return panelBox_; }

  /// How far left and right a box between these heights can reach; for convex panels exact.
  std::pair<double, double> reachBetween(double top, double bottom) const;

  /// Share of the strips' corners that stand outside the allowed outline.
  double outside(const std::vector<Rect>& strips, Point at) const;
  /// mm² of faces, keep-clear zones and insets under the strips.
  double forbidden(const std::vector<Rect>& strips, Point at) const;
  /// mm² of bodies under the strips, on a grid.
  double bodies(const std::vector<Rect>& strips, Point at) const;
  /// Does the segment cross a face, other than the one around `mouth`?
  bool crossesFace(Point a, Point b, Point mouth) const;
  /// Is the point within the border and under no inset?
  bool shows(Point p) const;
  /// Along the ray (unit direction) to where a tail must stop: just inside the border, or before
  /// an inset. 0 when it starts where no tail may be.
  double wayInside(const Ray& ray) const;
  /// The part of a tail's outline that stays inside the border; usually all of it.
  Polygon keptInside(const Polygon& tail) const;
  /// Along the ray (unit direction) to the face around `mouth`; far when there is none.
  double distanceToFace(const Ray& ray, Point mouth) const;
  /// The nearer of the panel's borders to the left and right of that point.
  Point nearerSide(Point from) const;

 private:
  struct Face {
    Rect box;
    std::vector<Rect> strips;
    Polygon outline;
  };
  void keepOff(const Rect& rect) { obstacles_.push_back(rect); }
  void rasterBodies(const std::vector<Region>& bodies);
  void rasterRow(const Region& body, int row, std::vector<char>& covered) const;
  void sumUp(const std::vector<char>& covered);

  Polygon panel_, allowed_, tailRoom_;
  std::vector<Polygon> insets_;  ///< with the gap around them
  Rect box_, panelBox_;
  double diagonal_ = 0;
  bool isBox_ = true;  ///< the allowed outline fills its box
  std::vector<Rect> obstacles_;
  std::vector<Face> faces_;
  // Summed-area table of cells under bodies; (columns + 1) × (rows + 1).
  int columns_ = 0, rows_ = 0;
  double cell_ = 1;
  std::vector<int> sums_;
};

bool segmentMeets(const Rect& rect, Point a, Point b);
bool segmentsCross(Point a, Point b, Point c, Point d);

}  // namespace tw
