// Where a tail goes: from a balloon's edge toward its speaker's mouth, short of the face and inside
// the border, or to the panel's side for a voice from outside; and what is drawn for it.
#pragma once

#include <optional>
#include <vector>

#include "letter/lettering.h"
#include "letter/panel_room.h"
#include "letter/tail.h"

namespace tw {

/// Nearer balloons of one speaker are joined, mm.
inline constexpr double kBridgeMm = 4;
/// A longer tail is a rope across the picture: the balloon has to come nearer instead, mm.
inline constexpr double kLongestTailMm = 16;

bool wantsTail(CopyKind kind);
/// Do two items, one right after the other, come from one mouth in one tone?
bool sameVoice(const CopyItem& earlier, const CopyItem& later);

struct AimedTail {
  TailLine line;       ///< from the balloon's edge to the tip
  bool seen = false;   ///< the mouth shows in the panel; else the tail goes to the border
  Point aim;           ///< the mouth, or the place on the panel's side
  double gap = 0;      ///< from the balloon's edge to the aim, mm
  double wayFree = 0;  ///< how far a tail that goes to the border could run, mm
};

/// Without a mouth the tail goes to the nearer of the panel's sides.
AimedTail aimedTail(const BalloonShape& shape, Point middle, const std::optional<Point>& mouth,
                    const PanelRoom& room);

/// The tail's outline, bent as far as the faces and the other balloons (all but the one at index
/// `own`) allow; never outside the panel.
Polygon drawnTail(const BalloonShape& shape, Point middle, const TailLine& line, std::size_t own,
                  const std::vector<PlacedBalloon>& balloons, const std::vector<Polygon>& faces,
                  const PanelRoom& room);

}  // namespace tw
