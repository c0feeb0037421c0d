// Whether the panels of a page hand the eye on: for each panel where its lead arrives, and how far
// the lead is turned from where the next panel is entered. And what would become of that if the
// lead were changed, by geometry alone: trying it on the staged panel is the caller's.
#pragma once

#include <vector>

#include "read/handed_on.h"
#include "read/seen_page.h"

namespace tw {

struct PanelHandedOn {
  bool hasLead = false;
  bool hasNext = false;  ///< the last panel has the page turn instead
  Arrival arrival;
  /// By how much to turn the lead so that it points at the next entry, in degrees from −180 to
  /// 180, clockwise on the page over 0. 0 without a lead.
  double turnDeg = 0;
};

struct PageHandedOn {
  std::vector<PanelHandedOn> panels;
  /// Mean share of the cones that arrive, over all panels that have a next one. No lead counts 0.
  double mean = 0;
};

ArrivalField arrivalFieldOf(const SeenPage& page);

PageHandedOn handedOnOf(const SeenPage& page);

enum class LeadChange {
  Mirror,        ///< the panel's picture left for right
  Tilt,          ///< … turned about its focus
  AimAtEntry,    ///< the lead aimed at where the next panel is entered
  AimBest,       ///< … where most of its cone arrives, of directions 5° apart
  SwapWithNext,  ///< the pictures of two panels exchanged
  SwapWithPrevious
};

struct ChangedLead {
  LeadChange change = LeadChange::Mirror;
  double tiltDeg = 0;  ///< of Tilt: clockwise on the page over 0
  Lead lead;           ///< after the change
  int panel = 0;       ///< index of the panel in which it then stands
  Arrival arrival;     ///< of that lead
  double mean = 0;     ///< of the page with the change
};

/// Every change that can be tried on this panel, in the order of LeadChange, tilts from −15 to 15
/// degrees. A panel without a lead can only be given one. Where AimBest arrives by little or
/// nothing, as at the end of a row, no lead can hand on from there.
std::vector<ChangedLead> changedLeads(const SeenPage& page, std::size_t panel);

}  // namespace tw
