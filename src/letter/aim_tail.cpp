#include "letter/aim_tail.h"

#include <algorithm>

#include "geometry/polygon.h"

namespace tw {
namespace {

constexpr double kTailToFaceMm = 0.8;
constexpr double kBubblesShare = 0.75;  ///< of the way to the mouth: bubbles may go nearer
constexpr double kLongestOffPanelTailMm = 9;

/// Does the tail keep off all faces and all balloons but its own?
bool isClear(const Polygon& tail, std::size_t own, const std::vector<PlacedBalloon>& balloons,
             const std::vector<Polygon>& faces) {
  const auto meets = [&](const Polygon& other) {
    return other.points.size() > 2 && area(common({tail}, {other})) > 1e-3;
  };
  for (std::size_t j = 0; j < balloons.size(); ++j) {
    if (j != own && meets(balloons[j].outline)) return false;
  }
  return std::none_of(faces.begin(), faces.end(), meets);
}

}  // namespace

bool wantsTail(CopyKind kind) {
  return kind == CopyKind::Speech || kind == CopyKind::Whisper || kind == CopyKind::Shout ||
         kind == CopyKind::Thought;
}

bool sameVoice(const CopyItem& p, const CopyItem& q) {
  return wantsTail(p.kind) && wantsTail(q.kind) && p.offPanel == q.offPanel && p.kind == q.kind &&
         !p.speaker.empty() && p.speaker == q.speaker;
}

AimedTail aimedTail(const BalloonShape& shape, Point middle, const std::optional<Point>& mouth,
                    const PanelRoom& room) {
  AimedTail out;
  out.aim = mouth ? *mouth : room.nearerSide({middle.x, middle.y + shape.b * 0.3});
  out.line = tailLine(shape, middle, out.aim, 1);
  const Vector way = out.line.to - out.line.from;
  out.gap = way.length();
  const Ray ray{out.line.from, way.unit()};
  double reach = room.wayInside(ray);
  if (mouth) reach = std::min(reach, room.distanceToFace(ray, out.aim) - kTailToFaceMm);
  out.wayFree = std::max(0.0, reach);
  out.seen = mouth && room.shows(out.aim);
  const double share = shape.kind == CopyKind::Thought ? kBubblesShare : kTailShare;
  reach = out.seen ? std::min({out.wayFree, out.gap * share, kLongestTailMm})
                   : std::min(out.wayFree, kLongestOffPanelTailMm);
  out.line.to = ray.from + ray.direction * reach;
  return out;
}

Polygon drawnTail(const BalloonShape& shape, Point middle, const TailLine& line, std::size_t own,
                  const std::vector<PlacedBalloon>& balloons, const std::vector<Polygon>& faces,
                  const PanelRoom& room) {
  for (const double bend : {1.0, 0.5}) {
    const Polygon tail = room.keptInside(tailOutline(shape, middle, line, bend));
    if (isClear(tail, own, balloons, faces)) return tail;
  }
  return room.keptInside(tailOutline(shape, middle, line, 0));
}

}  // namespace tw
