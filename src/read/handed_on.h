// Where a panel's lead arrives: a cone of rays from the focus, and what each ray first meets
// after leaving its own panel. A craft measure; no study shows its strength (facts: weak).
#pragma once

#include <vector>

#include "geometry/shapes.h"
#include "job/rough.h"

namespace tw {

struct Arrival {
  double next = 0;   ///< share of the cone that first meets the next panel
  double other = 0;  ///< … some other panel
  double off = 0;    ///< … the sheet's edge
  /// 1 when the lead points straight at the next panel's entry corner, −1 straight away.
  double towardEntry = 0;
};

/// Remembers the panels of one layout so that many leads can be asked fast. `page` is the trim.
/// For the last panel "next" means the page turn: the lower right corner (lower left when read
/// right-to-left) counts as the next panel's place. A lead of zero direction arrives nowhere: all
/// shares 0.
class ArrivalField {
 public:
  ArrivalField(std::vector<Polygon> panels, Rect page, ReadingDirection direction,
               std::vector<bool> ground = {});
  Arrival of(const Lead& lead, std::size_t panel) const;
  /// Where the next panel is entered; for the last panel the corner of the page turn.
  Point goalOf(std::size_t panel) const;
  /// Share of the cone that first meets each panel; 0 for its own and for grounds.
  std::vector<double> sharesOf(const Lead& lead, std::size_t panel) const;

 private:
  /// The first panel other than `own` and the grounds on the ray, or −1.
  int firstMet(const Ray& ray, std::size_t own) const;

  std::vector<Polygon> panels_;
  std::vector<Rect> boxes_;
  std::vector<bool> exact_;  ///< the panel fills its box
  Rect page_;
  ReadingDirection direction_;
  std::vector<bool> ground_;
};

}  // namespace tw
