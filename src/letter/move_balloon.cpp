// Balloons under a hand.
//
// Idea. A balloon on the page is outline, tail and lines; nothing says how its tail came about. So
// the tail tells it: one that ends where the program would end it is the program's, and is aimed
// anew whenever balloon or mouth moves; any other was dragged by the artist, and its tip stays
// where it is when the balloon moves and goes along when the mouth moves.
// Steps of takenAlong. 1. the balloon keeps its share of the play that it has in the panel's box,
// so that one at the border stays at the border; 2. the tip follows the mouth; 3. the tail is drawn
// to it.
// Cost: a panel's room and a tail, a tenth of a millisecond.
// Badly done: a tip dragged to within kSameTipMm of the program's own is taken for the program's.
// Source: none, ours.

#include "letter/move_balloon.h"

#include <algorithm>
#include <cmath>

#include "geometry/polygon.h"
#include "letter/aim_tail.h"
#include "letter/placed_copy.h"

namespace tw {
namespace {

constexpr double kSameTipMm = 0.7;
constexpr double kStillMm = 0.05;  // mouths that move less did not move

const CopyItem* itemOf(const PlacedBalloon& balloon, const LetterRequest& panel) {
  if (panel.items == nullptr) return nullptr;
  const auto found = std::ranges::find(*panel.items, balloon.item, &CopyItem::id);
  return found == panel.items->end() ? nullptr : &*found;
}

std::optional<Point> mouthOf(const CopyItem* item, const LetterRequest& panel) {
  if (item == nullptr || item->offPanel) return std::nullopt;
  const auto mouth = panel.mouths.find(item->speaker);
  return mouth == panel.mouths.end() ? std::nullopt : std::optional(mouth->second);
}

/// The balloon of the item before it when one voice speaks both.
const PlacedBalloon* sameVoiceBefore(const CopyItem& item, const LetterRequest& panel) {
  const std::size_t at = static_cast<std::size_t>(&item - panel.items->data());
  if (at == 0 || !sameVoice((*panel.items)[at - 1], item)) return nullptr;
  const auto found =
      std::ranges::find(panel.standing, (*panel.items)[at - 1].id, &PlacedBalloon::item);
  return found == panel.standing.end() || found->outline.points.size() < 3 ? nullptr : &*found;
}

double gapBetween(const Rect& a, const Rect& b) {
  const double x = std::max({0.0, a.min.x - b.max.x, b.min.x - a.max.x});
  const double y = std::max({0.0, a.min.y - b.max.y, b.min.y - a.max.y});
  return std::hypot(x, y);
}

std::size_t standingIndex(const PlacedBalloon& balloon, const LetterRequest& panel) {
  const auto found = std::ranges::find(panel.standing, balloon.item, &PlacedBalloon::item);
  return static_cast<std::size_t>(found - panel.standing.begin());
}

/// Bubbles stop short of the line that they are drawn to: turned and stretched about its start
/// until they end where it does.
Polygon stretchedTo(PlacedBalloon balloon, const TailLine& line, Point middle) {
  constexpr int kRounds = 6;  // another point may become the farthest
  const Vector want = line.to - line.from;
  for (int round = 0; round < kRounds; ++round) {
    const std::optional<Point> end = tipOf(balloon, middle);
    if (!end || (*end - line.to).length() < 1e-6) break;
    const Vector has = *end - line.from;
    const double square = std::max(1e-6, has.x * has.x + has.y * has.y);
    const double c = (has.x * want.x + has.y * want.y) / square, s = cross(has, want) / square;
    for (Point& p : balloon.tail.points) {
      const Vector v = p - line.from;
      p = line.from + Vector{v.x * c - v.y * s, v.x * s + v.y * c};
    }
  }
  return balloon.tail;
}

/// A tail that ends in `tip`.
Polygon tailTo(const PlacedBalloon& balloon, Point tip, const LetterRequest& panel,
               const Letterer& letterer) {
  const Setting setting = settingOf(balloon, letterer.style(), letterer.type());
  const Point middle = middleOf(balloon, letterer.type());
  const Vector way = tip - middle;
  const double edge = setting.shape.radiusToward(way);
  if (way.length() <= edge + setting.shape.reach) return {};
  const TailLine line{middle + way.unit() * edge, tip};
  const PanelRoom room(panel, letterer.style());
  PlacedBalloon out = balloon;
  out.tail = drawnTail(setting.shape, middle, line, standingIndex(balloon, panel), panel.standing,
                       panel.faces, room);
  if (balloon.kind == CopyKind::Thought) out.tail = stretchedTo(out, line, middle);
  return room.keptInside(out.tail);
}

bool hasMoved(const std::optional<Point>& a, const std::optional<Point>& b) {
  if (a.has_value() != b.has_value()) return true;
  return a && (*a - *b).length() > kStillMm;
}

/// So that the balloon keeps its share of the play along one axis.
double shiftWithin(double low, double high, double from, double to, double newFrom, double newTo) {
  const double play = (to - from) - (high - low), newPlay = (newTo - newFrom) - (high - low);
  if (play <= 0 || newPlay <= 0) return (newFrom + newTo - from - to) / 2;
  return newFrom + (low - from) / play * newPlay - low;
}

Vector shiftWith(const PlacedBalloon& balloon, const Polygon& before, const Polygon& after,
                 const Letterer& letterer) {
  if (before == after) return {};
  const Setting setting = settingOf(balloon, letterer.style(), letterer.type());
  const Point middle = middleOf(balloon, letterer.type());
  const double a = setting.shape.halfWidth(), b = setting.shape.halfHeight();
  const Rect was = bounds(before), is = bounds(after);
  return {shiftWithin(middle.x - a, middle.x + a, was.min.x, was.max.x, is.min.x, is.max.x),
          shiftWithin(middle.y - b, middle.y + b, was.min.y, was.max.y, is.min.y, is.max.y)};
}

PlacedBalloon byHand(PlacedBalloon balloon) {
  balloon.byHand = true;
  return balloon;
}

/// From the broadest to the narrowest, free copy from the largest to the smallest.
Settings shapesOf(const CopyItem& item, double sizePt, const LetterRequest& panel,
                  const Letterer& letterer) {
  const LetterStyle& style = letterer.style();
  const bool free = item.kind == CopyKind::Sfx || item.kind == CopyKind::Title;
  const double width = PanelRoom(panel, style).allowedBox().width();
  return settingsOf(lettered(item.text, style.upperCase), item.kind, free ? style.sizePt : sizePt,
                    width, style, letterer.type());
}

/// A new setting at the balloon's middle; the tail is aimed as the one before was.
PlacedBalloon setAnew(const PlacedBalloon& balloon, const CopyItem& item, const Setting& setting,
                      const LetterRequest& panel, const Letterer& letterer) {
  const Point middle = middleOf(balloon, letterer.type());
  const std::optional<Point> tip = tipOf(balloon, middle);
  const bool aimed = balloon.kind != item.kind || balloon.offPanel != item.offPanel ||
                     tailIsAimed(balloon, panel, letterer);
  PlacedBalloon out = byHand(balloonOf(item, setting, middle));
  if (aimed)
    out.tail = tailWhereItStands(out, panel, letterer);
  else if (tip)
    out.tail = tailTo(out, *tip, panel, letterer);
  return out;
}

}  // namespace

Polygon tailWhereItStands(const PlacedBalloon& balloon, const LetterRequest& panel,
                          const Letterer& letterer) {
  const CopyItem* item = itemOf(balloon, panel);
  if (item == nullptr || !wantsTail(item->kind)) return {};
  const PanelRoom room(panel, letterer.style());
  const Setting setting = settingOf(balloon, letterer.style(), letterer.type());
  const Point middle = middleOf(balloon, letterer.type());
  if (const PlacedBalloon* other = sameVoiceBefore(*item, panel);
      other != nullptr && gapBetween(bounds(other->outline), bounds(balloon.outline)) < kBridgeMm) {
    const Setting before = settingOf(*other, letterer.style(), letterer.type());
    return room.keptInside(
        bridge(before.shape, middleOf(*other, letterer.type()), setting.shape, middle));
  }
  const AimedTail aimed = aimedTail(setting.shape, middle, mouthOf(item, panel), room);
  return drawnTail(setting.shape, middle, aimed.line, standingIndex(balloon, panel), panel.standing,
                   panel.faces, room);
}

bool tailIsAimed(const PlacedBalloon& balloon, const LetterRequest& panel,
                 const Letterer& letterer) {
  const Point middle = middleOf(balloon, letterer.type());
  PlacedBalloon aimed = balloon;
  aimed.tail = tailWhereItStands(balloon, panel, letterer);
  const std::optional<Point> own = tipOf(balloon, middle), wanted = tipOf(aimed, middle);
  if (!own || !wanted) return own.has_value() == wanted.has_value();
  return (*own - *wanted).length() < kSameTipMm;
}

PlacedBalloon movedBalloon(const PlacedBalloon& balloon, Vector by, const LetterRequest& panel,
                           const Letterer& letterer) {
  const std::optional<Point> tip = tipOf(balloon, middleOf(balloon, letterer.type()));
  const bool aimed = tailIsAimed(balloon, panel, letterer);
  PlacedBalloon out = byHand(shifted(balloon, by));
  if (aimed)
    out.tail = tailWhereItStands(out, panel, letterer);
  else
    out.tail = tip ? tailTo(out, *tip, panel, letterer) : Polygon{};
  return out;
}

PlacedBalloon withTailTip(const PlacedBalloon& balloon, Point tip, const LetterRequest& panel,
                          const Letterer& letterer) {
  PlacedBalloon out = byHand(balloon);
  out.tail = tailTo(balloon, tip, panel, letterer);
  return out;
}

PlacedBalloon withAimedTail(const PlacedBalloon& balloon, const LetterRequest& panel,
                            const Letterer& letterer) {
  PlacedBalloon out = byHand(balloon);
  out.tail = tailWhereItStands(balloon, panel, letterer);
  return out;
}

std::optional<PlacedBalloon> reshapedBalloon(const PlacedBalloon& balloon, int step,
                                             const LetterRequest& panel, const Letterer& letterer) {
  const CopyItem* item = itemOf(balloon, panel);
  if (item == nullptr || step == 0) return std::nullopt;
  const Settings shapes = shapesOf(*item, balloon.sizePt, panel, letterer);
  // Larger: broader balloons have fewer lines, broader free copy has larger type.
  const auto rank = [](std::size_t lines, double sizePt, bool free) {
    return free ? -100 * sizePt + static_cast<double>(lines) : static_cast<double>(lines);
  };
  const bool free = item->kind == CopyKind::Sfx || item->kind == CopyKind::Title;
  const double now = rank(balloon.lines.size(), balloon.sizePt, free);
  const Setting* best = nullptr;
  double bestRank = 0;
  for (const Setting& setting : shapes) {
    const double own = rank(setting.lines.size(), setting.sizePt, free);
    const bool beyond = step < 0 ? own < now - 0.5 : own > now + 0.5;
    const bool nearer = best == nullptr || std::abs(own - now) < std::abs(bestRank - now);
    if (beyond && nearer) best = &setting, bestRank = own;
  }
  if (best == nullptr) return std::nullopt;
  return setAnew(balloon, *item, *best, panel, letterer);
}

PlacedBalloon retypedBalloon(const PlacedBalloon& balloon, const CopyItem& item,
                             const LetterRequest& panel, const Letterer& letterer) {
  const Settings shapes = shapesOf(item, balloon.sizePt, panel, letterer);
  const Setting was = settingOf(balloon, letterer.style(), letterer.type());
  const auto departure = [&](const Setting& s) {
    const double ratio = (s.shape.a / s.shape.b) / (was.shape.a / was.shape.b);
    return s.cost + std::abs(std::log(ratio)) + std::abs(std::log(s.sizePt / was.sizePt));
  };
  const Setting& best = *std::ranges::min_element(shapes, {}, departure);
  return setAnew(balloon, item, best, panel, letterer);
}

std::vector<PlacedBalloon> takenAlong(const LetterRequest& before, const LetterRequest& after,
                                      const Letterer& letterer) {
  std::vector<PlacedBalloon> out = before.standing;
  LetterRequest now = after;
  now.standing = out;
  for (std::size_t i = 0; i < out.size(); ++i) {
    if (!out[i].byHand) continue;
    const CopyItem* item = itemOf(out[i], before);
    const std::optional<Point> was = mouthOf(item, before), is = mouthOf(item, after);
    const Vector by = shiftWith(out[i], before.panel, after.panel, letterer);
    if (by == Vector{} && !hasMoved(was, is)) continue;
    const std::optional<Point> tip = tipOf(out[i], middleOf(out[i], letterer.type()));
    const bool aimed = tailIsAimed(out[i], before, letterer);
    out[i] = shifted(out[i], by);
    now.standing[i] = out[i];
    if (aimed)
      out[i].tail = tailWhereItStands(out[i], now, letterer);
    else if (tip)
      out[i].tail = tailTo(out[i], *tip + (was && is ? *is - *was : by), now, letterer);
    now.standing[i] = out[i];
  }
  return out;
}

}  // namespace tw
