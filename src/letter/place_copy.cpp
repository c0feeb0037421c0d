// Placing balloons.
//
// Idea. A placement is a problem with candidates: each item may take each of its settings at each
// place of a coarse lattice, the edges included. Rules that look at one balloon alone are summed
// first (cheap), rules between two balloons while the items are placed in reading order (dear).
// A beam of the best partial placements is kept, so that an early balloon does not take the room
// of a later one.
// Words. *Unary* cost: height on the panel, distance to the mouth, hidden bodies, the setting's
// own cost. *Pair* cost: distance between neighbours, doubtful order, tails that meet or touch.
// *Violation*: outside the allowed part, on a face or inset, on another balloon, out of order, or
// a tail across another's face.
// Steps. 1. candidates with unary cost per item, the best kMostSpots of them; 2. for each item
// extend each state of the beam by each candidate, keep the kBeam cheapest; 3. walk back.
// Cost: beam × candidates × items placed; about half a millisecond for three balloons.
// A balloon that the artist placed has one candidate, its own place, and no cost; the others keep
// off it. Out of order beside it is a cost and no violation.
// Badly done: lattice places are not refined; a long queue of items in a small panel can leave
// the beam without a way although one exists.
// Sources: the rules are trade custom (facts on lettering); the weights are ours, by eye.

#include "letter/place_copy.h"

#include <algorithm>
#include <array>
#include <tuple>

#include "geometry/polygon.h"
#include "letter/aim_tail.h"

namespace tw {
namespace {

constexpr std::size_t kBeam = 20, kMostSpots = 160, kMostSettings = 5;
constexpr double kLatticeMm = 4.5;  ///< wanted step
constexpr int kMostAcross = 9, kMostDown = 9;
/// Weights; one unit is about what makes an editor ask for a change.
constexpr double kLow = 0.75, kFarFromMouth = 0.6, kBodies = 1.3, kBelowMouth = 0.8;
constexpr double kShape = 2;  ///< of uneven lines and unpleasing proportions
constexpr double kShortTail = 0.5, kEarlySide = 0.25, kCaptionOffCorner = 0.5;
/// From this distance between balloon and mouth on, every further mm costs.
constexpr double kNearMouthMm = 12, kFarPerMm = 0.025;
/// A tail that, drawn on to its mouth, would run over somebody else's face.
constexpr double kPointsPastFace = 0.8;
/// A tip that is nearer to somebody else's mouth than to its own; tails that come so near that they
/// read as one.
constexpr double kTipAtOther = 2, kTailsTouch = 1.5, kTailsApartMm = 1.6;
constexpr double kApart = 0.35, kSameVoiceApart = 1.0, kBackward = 0.3;
constexpr double kViolation = 20;  ///< per full violation when not strict
/// The hand may have put a balloon where no other can stand in its turn: dear, but no reason to
/// shrink the type of all others.
constexpr double kOutOfTurn = 6;
constexpr double kLeastTailMm = 2.5;
constexpr double kHalfTailMm = 0.5;  ///< half the width of a tail, where it may meet others
constexpr double kOffPanelTailMm = 3.5, kOffPanelTail = 0.7;

struct Spot {
  const Setting* setting = nullptr;
  Point at;
  Rect box;
  TailLine tail;
  double cost = 0, violation = 0;
};

struct Node {
  int parent = -1;
  int spot = -1;
  double cost = 0, violation = 0;
};

bool overlap(const Rect& a, const Rect& b, double gap) {
  return a.min.x < b.max.x + gap && b.min.x < a.max.x + gap && a.min.y < b.max.y + gap &&
         b.min.y < a.max.y + gap;
}

double gapBetween(const Rect& a, const Rect& b) {
  const double x = std::max({0.0, a.min.x - b.max.x, b.min.x - a.max.x});
  const double y = std::max({0.0, a.min.y - b.max.y, b.min.y - a.max.y});
  return std::hypot(x, y);
}

Rect moved(const Rect& r, Point by) {
  return {{r.min.x + by.x, r.min.y + by.y}, {r.max.x + by.x, r.max.y + by.y}};
}

bool shapesOverlap(const Spot& a, const Spot& b, double gap) {
  if (!overlap(a.box, b.box, gap)) return false;
  const Vector by = b.at - a.at;
  for (const Rect& p : a.setting->strips) {
    for (const Rect& q : b.setting->strips) {  // both from the top down
      if (q.max.y + by.y + gap <= p.min.y) continue;
      if (q.min.y + by.y >= p.max.y + gap) break;
      if (q.min.x + by.x < p.max.x + gap && p.min.x < q.max.x + by.x + gap) return true;
    }
  }
  return false;
}

bool tailMeets(const Spot& tailed, const Spot& other) {
  if (!segmentMeets(other.box.outset(kHalfTailMm), tailed.tail.from, tailed.tail.to)) return false;
  return std::any_of(other.setting->strips.begin(), other.setting->strips.end(),
                     [&](const Rect& strip) {
                       return segmentMeets(moved(strip, other.at).outset(kHalfTailMm),
                                           tailed.tail.from, tailed.tail.to);
                     });
}

/// Of two lines that do not cross.
double gapBetweenTails(const TailLine& a, const TailLine& b) {
  return std::min({distanceToSegment(a.from, b.from, b.to), distanceToSegment(a.to, b.from, b.to),
                   distanceToSegment(b.from, a.from, a.to), distanceToSegment(b.to, a.from, a.to)});
}

class CopySearch {
 public:
  CopySearch(const std::vector<CopyToPlace>& items, const PanelRoom& room,
             ReadingDirection direction, const LetterStyle& style, bool strict)
      : items_(items), room_(room), direction_(direction), style_(style), strict_(strict) {}

  Placement run();

 private:
  std::vector<Spot> spotsFor(std::size_t item) const;
  void addSpots(std::size_t item, const Setting& setting, std::vector<Spot>& spots) const;
  std::vector<double> placesAcross(std::size_t item, double first, double play,
                                   double halfWidth) const;
  void judge(std::size_t item, Spot& spot) const;
  void judgeTail(std::size_t item, Spot& spot) const;
  bool endsAtAnother(std::size_t item, Point tip) const;
  double sideways(double x) const;
  bool oneVoice(std::size_t a, std::size_t b) const;
  bool tailed(std::size_t item) const;
  Spot heldSpot(const HeldCopy& held) const;
  bool bridged(std::size_t earlier, const Spot& a, std::size_t later, const Spot& b) const;
  void judgePair(std::size_t i, const Spot& a, std::size_t j, const Spot& b, Node& node) const;
  void extend(std::size_t item);
  Placement walkBack() const;

  const std::vector<CopyToPlace>& items_;
  const PanelRoom& room_;
  ReadingDirection direction_;
  const LetterStyle& style_;
  bool strict_;
  std::vector<std::vector<Spot>> spots_;
  std::vector<std::vector<Node>> layers_;
};

/// 0 at the side where reading begins, 1 at the other.
double CopySearch::sideways(double x) const {
  const Rect& box = room_.allowedBox();
  const double share = std::clamp((x - box.min.x) / std::max(box.width(), 1e-9), 0.0, 1.0);
  return direction_ == ReadingDirection::RightToLeft ? 1 - share : share;
}

bool CopySearch::oneVoice(std::size_t a, std::size_t b) const {
  return b == a + 1 && sameVoice(*items_[a].item, *items_[b].item);
}

/// Has the copy a tail of its own, as far as is known before its neighbour stands?
bool CopySearch::tailed(std::size_t item) const {
  const CopyToPlace& copy = items_[item];
  return copy.held ? copy.held->hasTail : copy.hasTail;
}

bool CopySearch::bridged(std::size_t earlier, const Spot& a, std::size_t later,
                         const Spot& b) const {
  if (items_[later].held) return items_[later].held->isJoined && oneVoice(earlier, later);
  return oneVoice(earlier, later) && gapBetween(a.box, b.box) < kBridgeMm;
}

/// Somebody else who speaks here has the mouth that is nearest to the tip.
bool CopySearch::endsAtAnother(std::size_t item, Point tip) const {
  const CopyToPlace& own = items_[item];
  const double reach = (own.mouth - tip).length();
  return std::ranges::any_of(items_, [&](const CopyToPlace& other) {
    return other.hasMouth && other.item->speaker != own.item->speaker &&
           (other.mouth - tip).length() < reach;
  });
}

/// What the way of the tail costs. A voice from outside, or a mouth that the frame cuts off, has it
/// run to the border on that side.
void CopySearch::judgeTail(std::size_t item, Spot& spot) const {
  const CopyToPlace& copy = items_[item];
  const BalloonShape& shape = spot.setting->shape;
  const std::optional<Point> mouth = copy.hasMouth ? std::optional(copy.mouth) : std::nullopt;
  const AimedTail tail = aimedTail(shape, spot.at, mouth, room_);
  spot.tail = tail.line;
  const double reach = tail.line.length(), gap = tail.gap;
  if (!tail.seen) {
    const double off = std::abs(tail.wayFree - kOffPanelTailMm) / kOffPanelTailMm;
    spot.cost += kOffPanelTail * std::min(off, 3.0) + kFarPerMm * std::max(0.0, tail.wayFree - 12);
  } else {
    const bool bubbles = copy.item->kind == CopyKind::Thought;
    spot.cost += kFarFromMouth * gap / room_.diagonal();
    spot.cost += kFarPerMm * std::max(0.0, gap - kNearMouthMm);
    spot.cost += kFarFromMouth * std::abs(spot.at.x - tail.aim.x) / room_.width() * 0.6;
    // What stands out of a cloud's bumps or a burst's spikes.
    const double shown = std::max(0.0, reach - shape.reach);
    const double wanted = (bubbles ? 3 : 2) * kLeastTailMm;
    if (shown < wanted) spot.cost += kShortTail * (1 - shown / wanted);
    if (spot.at.y > tail.aim.y) spot.cost += kBelowMouth;
  }
  if (tail.seen && reach < kLeastTailMm / 2) spot.violation += 0.3;
  if (!copy.hasMouth) return;
  if (room_.crossesFace(spot.tail.from, spot.tail.to, tail.aim)) spot.violation += 0.3;
  if (tail.seen && room_.crossesFace(spot.tail.to, tail.aim, tail.aim))
    spot.cost += kPointsPastFace;
  if (tail.seen && endsAtAnother(item, spot.tail.to)) spot.cost += kTipAtOther;
}

void CopySearch::judge(std::size_t item, Spot& spot) const {
  const std::vector<Rect>& strips = spot.setting->strips;
  spot.violation = room_.outside(strips, spot.at);
  if (strict_ && spot.violation > 0) return;
  const double covered = room_.forbidden(strips, spot.at);
  if (covered > 0) spot.violation += 0.2 + covered / spot.box.area();
  if (strict_ && spot.violation > 0) return;
  const CopyKind kind = items_[item].item->kind;
  const bool free = spot.setting->shape.isFree();
  const Rect& room = room_.allowedBox();
  const double low = (spot.box.min.y - room.min.y) / std::max(room.height(), 1e-9);
  const double place =
      items_.size() > 1 ? static_cast<double>(item) / (static_cast<double>(items_.size()) - 1) : 0;
  const double side = sideways(spot.at.x);
  spot.cost += (free ? 1 : kShape) * spot.setting->cost;
  spot.cost += kBodies * (free ? 0.4 : 1) * room_.bodies(strips, spot.at) / spot.box.area();
  if (kind == CopyKind::Caption) {
    const bool closing = item > 0 && item + 1 == items_.size();
    const double down =
        closing ? std::min(low, 1 - (spot.box.max.y - room.min.y) / room.height()) : low;
    const double across = closing ? std::min(side, 1 - side) : side;
    spot.cost += kCaptionOffCorner * (down + 0.5 * across);
  } else if (free) {
    spot.cost += 0.2 * low + kEarlySide * std::abs(side - place);
  } else {
    spot.cost += kLow * low + kEarlySide * std::abs(side - place);
  }
  if (items_[item].hasTail) judgeTail(item, spot);
}

/// How many lattice places along that much play.
int latticeSteps(double play, int most) {
  return play <= 0 ? 1 : std::clamp(static_cast<int>(play / kLatticeMm) + 2, 2, most);
}

/// Lattice places between `first` and `first + play`, and some about the speaker's mouth.
std::vector<double> CopySearch::placesAcross(std::size_t item, double first, double play,
                                             double halfWidth) const {
  const int across = latticeSteps(play, kMostAcross);
  std::vector<double> places;
  for (int i = 0; i < across; ++i) {
    places.push_back(across > 1 ? first + play * i / (across - 1) : first + play / 2);
  }
  if (!items_[item].hasMouth || play <= kLatticeMm) return places;
  for (const double beside : {-1.0, -0.4, 0.4, 1.0}) {
    const double x = items_[item].mouth.x + beside * (halfWidth + kLeastTailMm);
    if (x > first && x < first + play) places.push_back(x);
  }
  return places;
}

void CopySearch::addSpots(std::size_t item, const Setting& setting,
                          std::vector<Spot>& spots) const {
  const Rect& box = room_.allowedBox();
  const double hw = setting.shape.halfWidth(), hh = setting.shape.halfHeight();
  const double playY = box.height() - 2 * hh;
  if (strict_ && (box.width() < 2 * hw || playY < 0)) return;
  const int down = latticeSteps(playY, kMostDown);
  for (int iy = 0; iy < down; ++iy) {
    const double y = down > 1 ? box.min.y + hh + playY * iy / (down - 1) : box.centre().y;
    auto [left, right] = room_.reachBetween(y - hh, y + hh);
    if (right - left < 2 * hw) std::tie(left, right) = std::pair(box.min.x, box.max.x);
    const double playX = right - left - 2 * hw;
    for (const double x : placesAcross(item, left + hw, playX, hw)) {
      Spot spot{&setting, {x, y}, {{x - hw, y - hh}, {x + hw, y + hh}}, {{x, y}, {x, y}}, 0, 0};
      judge(item, spot);
      if (strict_ && spot.violation > 0) continue;
      spots.push_back(spot);
    }
  }
}

Spot CopySearch::heldSpot(const HeldCopy& held) const {
  const double hw = held.setting.shape.halfWidth(), hh = held.setting.shape.halfHeight();
  const Point at = held.middle;
  return {&held.setting, at, {{at.x - hw, at.y - hh}, {at.x + hw, at.y + hh}}, held.tail, 0, 0};
}

std::vector<Spot> CopySearch::spotsFor(std::size_t item) const {
  if (items_[item].held) return {heldSpot(*items_[item].held)};
  std::vector<const Setting*> settings;
  for (const Setting& s : *items_[item].settings) settings.push_back(&s);
  std::stable_sort(settings.begin(), settings.end(),
                   [](const Setting* a, const Setting* b) { return a->cost < b->cost; });
  std::vector<Spot> spots;
  std::size_t used = 0;
  for (const Setting* setting : settings) {
    const std::size_t before = spots.size();
    addSpots(item, *setting, spots);
    if (spots.size() > before && ++used == kMostSettings) break;
  }
  std::stable_sort(spots.begin(), spots.end(), [](const Spot& a, const Spot& b) {
    return a.cost + kViolation * a.violation < b.cost + kViolation * b.violation;
  });
  if (spots.size() > kMostSpots) spots.resize(kMostSpots);
  return spots;
}

/// Adds what the later balloon b costs beside the earlier a; when strict, stops at the first
/// violation. Cheap rules come first.
void CopySearch::judgePair(std::size_t i, const Spot& a, std::size_t j, const Spot& b,
                           Node& node) const {
  const bool free = a.setting->shape.isFree() || b.setting->shape.isFree();
  const auto core = [](const Spot& s) { return s.box.inset(s.setting->shape.reach); };
  if (!free &&
      !(readsAfter(a.box, b.box, direction_) && readsAfter(core(a), core(b), direction_))) {
    if (items_[i].held || items_[j].held)
      node.cost += kOutOfTurn;
    else
      node.violation += 0.4;
    if (strict_ && node.violation > 0) return;
  }
  if (shapesOverlap(a, b, style_.gapMm)) {
    node.violation += 1;
    if (strict_) return;
  }
  const bool aTailed = tailed(i);
  const bool bTailed = tailed(j) && !bridged(i, a, j, b);
  if (aTailed && tailMeets(a, b)) node.violation += 0.4;
  if (bTailed && tailMeets(b, a)) node.violation += 0.4;
  if (aTailed && bTailed && segmentsCross(a.tail.from, a.tail.to, b.tail.from, b.tail.to)) {
    node.violation += 0.4;
  } else if (aTailed && bTailed && gapBetweenTails(a.tail, b.tail) < kTailsApartMm) {
    node.cost += kTailsTouch;
  }
  if (j != i + 1 || free || (strict_ && node.violation > 0)) return;
  const double apart = gapBetween(a.box, b.box) / room_.diagonal();
  node.cost += (oneVoice(i, j) ? kSameVoiceApart : kApart) * apart;
  if (sideways(b.at.x) < sideways(a.at.x) - 0.15) node.cost += kBackward;
}

void CopySearch::extend(std::size_t item) {
  const std::vector<Node>& last = layers_.back();
  std::vector<Node> next;
  const auto total = [](const Node& n) { return n.cost + kViolation * n.violation; };
  double bar = 1e300;
  for (std::size_t p = 0; p < last.size(); ++p) {
    // The chain of spots behind this state, latest first.
    std::array<const Spot*, 64> chain{};
    int at = static_cast<int>(p);
    for (std::size_t k = item; k-- > 0; at = layers_[k + 1][at].parent) {
      if (item - 1 - k < chain.size()) chain[item - 1 - k] = &spots_[k][layers_[k + 1][at].spot];
    }
    for (std::size_t s = 0; s < spots_[item].size(); ++s) {
      const Spot& spot = spots_[item][s];
      Node node{static_cast<int>(p), static_cast<int>(s), last[p].cost + spot.cost,
                last[p].violation + spot.violation};
      if (total(node) >= bar) break;  // spots come cheapest first
      for (std::size_t k = item; k-- > 0 && item - 1 - k < chain.size();) {
        if (items_[k].held && items_[item].held) continue;  // nothing here can part them
        judgePair(k, *chain[item - 1 - k], item, spot, node);
        if (strict_ && node.violation > 0) break;
      }
      if ((strict_ && node.violation > 0) || total(node) >= bar) continue;
      next.push_back(node);
      if (next.size() >= 4 * kBeam) {
        std::nth_element(next.begin(), next.begin() + kBeam - 1, next.end(),
                         [&](const Node& a, const Node& b) { return total(a) < total(b); });
        next.resize(kBeam);
        bar = total(next[kBeam - 1]);
      }
    }
  }
  std::sort(next.begin(), next.end(), [&](const Node& a, const Node& b) {
    return std::tuple(total(a), a.parent, a.spot) < std::tuple(total(b), b.parent, b.spot);
  });
  if (next.size() > kBeam) next.resize(kBeam);
  layers_.push_back(std::move(next));
}

Placement CopySearch::run() {
  layers_.push_back({Node{}});
  for (std::size_t item = 0; item < items_.size(); ++item) {
    spots_.push_back(spotsFor(item));
    extend(item);
    if (layers_.back().empty()) return {};
  }
  return walkBack();
}

Placement CopySearch::walkBack() const {
  Placement placement;
  placement.cost = layers_.back().front().cost;
  std::vector<const Spot*> chain(items_.size());
  int at = 0;
  for (std::size_t k = items_.size(); k-- > 0; at = layers_[k + 1][at].parent) {
    chain[k] = &spots_[k][layers_[k + 1][at].spot];
  }
  for (std::size_t k = 0; k < chain.size(); ++k) {
    PlacedCopy copy{chain[k]->setting, chain[k]->at, tailed(k),
                    chain[k]->tail,    -1,           chain[k]->violation};
    if (k > 0 && bridged(k - 1, *chain[k - 1], k, *chain[k])) {
      copy.hasTail = false;
      copy.bridgedTo = static_cast<int>(k) - 1;
    }
    for (std::size_t i = 0; i < k; ++i) {
      Node pair;
      judgePair(i, *chain[i], k, *chain[k], pair);
      copy.violation += pair.violation;
    }
    placement.copy.push_back(copy);
  }
  return placement;
}

}  // namespace

bool readsAfter(const Rect& earlier, const Rect& later, ReadingDirection direction) {
  constexpr double kForgiven = 0.3, kHigherForgiven = 0.12;
  const bool leftward = direction == ReadingDirection::RightToLeft;
  const double step = leftward ? earlier.min.x - later.max.x : later.min.x - earlier.max.x;
  const double narrower = std::min(earlier.width(), later.width());
  if (step >= -kForgiven * narrower) {  // stands to the reading side
    return later.min.y >= earlier.min.y - kHigherForgiven * earlier.height();
  }
  const double lower = std::min(earlier.height(), later.height());
  return later.min.y >= earlier.max.y - kForgiven * lower;
}

Placement placeCopy(const std::vector<CopyToPlace>& items, const PanelRoom& room,
                    ReadingDirection direction, const LetterStyle& style, bool strict) {
  if (items.empty()) return {};
  return CopySearch(items, room, direction, style, strict).run();
}

}  // namespace tw
