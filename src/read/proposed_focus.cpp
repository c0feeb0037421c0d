// Focus and lead of a drawn panel.
//
// Idea. The focus is the strongest place of the picture that is not copy: copy is read, the focus
// is what the panel is about. From there the eye goes on along what is drawn long, toward the next
// strong place. The lead is therefore the axis of the map's mass around the focus, taken toward
// the side of the next spot, as much as the mass is elongated, and straight at the next spot for
// the rest.
// Steps: 1. moments of the map within a third of the panel around the focus give the axis and the
// elongation e = (long − short) / (long + short) of its variances; 2. direction = e · axis +
// (1 − e) · toward the next spot, both of length 1; 3. sure of the focus: how far it stands above
// the next spot; sure of the lead: how far the two directions agree.
// Badly done: it does not know where anybody looks, points or runs, which is what an artist means
// by a lead; so it is called a proposal, is never surer than kSurestLead, and a mark replaces it.
// Source: ours; no study measures leads between panels (facts: craft heuristic, weak).
#include "read/proposed_focus.h"

#include <algorithm>
#include <cmath>

#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kAroundShare = 1.0 / 3;  // of the panel's longer side
constexpr double kLeastSure = 0.1;
/// A marked point without a box is looked at within this share of the panel's longer side.
constexpr double kMarkedBoxShare = 0.12;

/// The strongest spot other than the focus; copy comes last.
const Spot* nextAfter(const PanelAttention& a, const ProposedFocus& focus) {
  for (const auto* list : {&a.picture, &a.spots})
    for (const Spot& s : *list)
      if (!focus.box.contains(s.at)) return &s;
  return nullptr;
}

struct Axis {
  Vector along;           ///< unit, without a side
  double elongation = 0;  ///< 0 round … 1 a line
};

Axis axisAround(const PlaceMap& map, Point at, double radius) {
  double sum = 0, xx = 0, xy = 0, yy = 0;
  for (int y = 0; y < map.height; ++y)
    for (int x = 0; x < map.width; ++x) {
      const Vector d = map.onPage(x, y) - at;
      if (d.length() > radius) continue;
      const double w = map.at(x, y) * map.at(x, y);
      sum += w, xx += w * d.x * d.x, xy += w * d.x * d.y, yy += w * d.y * d.y;
    }
  if (sum <= 0) return {};
  const double spread = std::hypot(xx - yy, 2 * xy), angle = std::atan2(2 * xy, xx - yy) / 2;
  return {{std::cos(angle), std::sin(angle)}, xx + yy > 0 ? spread / (xx + yy) : 0};
}

}  // namespace

ProposedFocus focusOf(const PanelAttention& attention, const Polygon& outline,
                      const MarkedFocus& marked) {
  const Rect box = bounds(outline);
  const double longer = std::max(box.width(), box.height());
  if (marked.focus) {
    const Vector half = Vector{1, 1} * (kMarkedBoxShare * longer / 2);
    return {*marked.focus, {*marked.focus - half, *marked.focus + half}, 1, true, "marked"};
  }
  const bool picture = !attention.picture.empty();
  const std::vector<Spot>& spots = picture ? attention.picture : attention.spots;
  if (spots.empty()) return {box.centre(), box, 0, false, "nothing stands out: the panel's middle"};
  const Spot& first = spots.front();
  ProposedFocus focus{first.at, first.box, kSurestFocus, false, "strongest spot: " + first.what};
  if (spots.size() > 1)
    focus.sure = kSurestFocus * std::clamp(2 * (1 - spots[1].strength / first.strength), 0.0, 1.0);
  focus.sure = std::max(focus.sure, first.marked ? kSurestFocus : kLeastSure);
  return focus;
}

ProposedLead leadOf(const PanelAttention& attention, const ProposedFocus& focus,
                    const MarkedFocus& marked) {
  if (marked.lead) return {{focus.at, marked.lead->unit(), 1, "marked"}, true};
  ProposedLead proposed{{focus.at, {}, 0, "no second place to lead to"}, false};
  const Spot* next = nextAfter(attention, focus);
  if (!next) return proposed;
  const Vector toward = (next->at - focus.at).unit();
  const double longer = std::max(attention.map.covers.width(), attention.map.covers.height());
  Axis axis = axisAround(attention.map, focus.at, kAroundShare * longer);
  if (dot(axis.along, toward) < 0) axis.along = -axis.along;
  const double e = axis.elongation;
  proposed.lead.direction = (axis.along * e + toward * (1 - e)).unit();
  proposed.lead.strength = kSurestLead * std::max(kLeastSure, e * dot(axis.along, toward));
  proposed.lead.why = "proposed: from the strongest spot toward the next, " + next->what;
  return proposed;
}

}  // namespace tw
