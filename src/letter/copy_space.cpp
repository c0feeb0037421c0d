#include "letter/copy_space.h"

#include <algorithm>

#include "geometry/polygon.h"
#include "letter/copy_limits.h"
#include "letter/panel_room.h"

namespace tw {

namespace {

double freeIn(const LetterRequest& panel, const Letterer& letterer) {
  Region room{PanelRoom(panel, letterer.style()).allowed()};
  std::vector<Polygon> taken = panel.faces;
  for (const Rect& zone : panel.keepClear) taken.push_back(polygonOf(zone));
  taken.insert(taken.end(), panel.covered.begin(), panel.covered.end());
  std::erase_if(taken, [](const Polygon& p) { return p.points.size() < 3; });
  if (taken.empty()) return area(room);
  return area(room) - area(common(room, united(taken)));
}

}  // namespace

CopySpace copySpace(const LetterRequest& panel, const Letterer& letterer) {
  CopySpace out;
  out.mostWords = mostWordsPerPanel(std::max(1, panel.panelsOnPage));
  out.mostInBalloon = kMostWordsPerBalloon;
  out.panelMm2 = area(panel.panel);
  if (panel.panel.points.size() < 3) return out;
  out.freeMm2 = freeIn(panel, letterer);
  if (panel.items == nullptr || panel.items->empty()) return out;
  out.wantedMm2 = letterer.wanted(*panel.items).areaMm2;
  for (const CopyItem& item : *panel.items) {
    out.words += wordsIn(item);
    out.longest = std::max(out.longest, wordsIn(item));
  }
  std::vector<Polygon> balloons;
  for (const PlacedBalloon& balloon : panel.standing)
    if (balloon.outline.points.size() > 2) balloons.push_back(balloon.outline);
  if (!balloons.empty()) out.balloonMm2 = area(united(balloons));
  return out;
}

}  // namespace tw
