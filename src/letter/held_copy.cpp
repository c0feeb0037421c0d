#include "letter/held_copy.h"

#include <fmt/format.h>

#include <algorithm>

#include "geometry/polygon.h"
#include "letter/aim_tail.h"
#include "letter/move_balloon.h"
#include "letter/placed_copy.h"

namespace tw {
namespace {

constexpr double kFaceMm2 = 0.5, kOtherMm2 = 0.5, kBorderShare = 0.02;
constexpr const char* kMoveIt = "Move the balloon, or let the program place it.";

double commonArea(const Polygon& a, const Polygon& b) {
  return a.points.size() < 3 || b.points.size() < 3 ? 0 : area(common({a}, {b}));
}

const PlacedBalloon* standing(const LetterRequest& request, const std::string& item) {
  const auto found = std::ranges::find(request.standing, item, &PlacedBalloon::item);
  return found == request.standing.end() ? nullptr : &*found;
}

/// The standing balloon of the same voice before, when this one's tail runs into it.
const PlacedBalloon* joinedTo(const PlacedBalloon& balloon, std::size_t index,
                              const LetterRequest& request) {
  if (index == 0 || !sameVoice((*request.items)[index - 1], (*request.items)[index]))
    return nullptr;
  const PlacedBalloon* before = standing(request, (*request.items)[index - 1].id);
  return before && commonArea(before->outline, balloon.tail) > 0.01 ? before : nullptr;
}

HeldBalloon held(PlacedBalloon balloon, std::size_t index, const LetterRequest& request,
                 const Letterer& letterer) {
  HeldCopy copy;
  copy.setting = settingOf(balloon, letterer.style(), letterer.type());
  copy.middle = middleOf(balloon, letterer.type());
  copy.tail = {copy.middle, copy.middle};
  copy.isJoined = joinedTo(balloon, index, request) != nullptr;
  if (const std::optional<Point> tip = tipOf(balloon, copy.middle); tip && !copy.isJoined) {
    const Vector way = *tip - copy.middle;
    copy.hasTail = true;
    copy.tail = {copy.middle + way.unit() * copy.setting.shape.radiusToward(way), *tip};
  }
  return {std::move(copy), std::move(balloon)};
}

/// The box of the type alone, half a cap height of air around it left to the outline.
Rect typeBox(const PlacedBalloon& balloon, const Letterer& letterer) {
  const Setting s = settingOf(balloon, letterer.style(), letterer.type());
  const Point middle = middleOf(balloon, letterer.type());
  double half = 0;
  for (const double width : s.lineWidths) half = std::max(half, width / 2);
  const double lines = static_cast<double>(std::max<std::size_t>(1, s.lines.size()));
  const double high = (lines - 1) / 2 * s.lineStep + s.capHeight / 2;
  return {{middle.x - half, middle.y - high}, {middle.x + half, middle.y + high}};
}

bool inside(const Rect& inner, const Rect& outer) {
  return outer.contains(inner.min) && outer.contains(inner.max);
}

/// Of those that stand in boxes or balloons: an earlier item that is read after it.
const PlacedBalloon* readBeforeItsTurn(const std::vector<PlacedBalloon>& placed, std::size_t index,
                                       ReadingDirection direction) {
  const auto boxed = [](const PlacedBalloon& b) { return b.outline.points.size() > 2; };
  if (!boxed(placed[index])) return nullptr;
  for (std::size_t i = 0; i < placed.size(); ++i) {
    if (i == index || !boxed(placed[i])) continue;
    const PlacedBalloon& first = placed[std::min(i, index)];
    const PlacedBalloon& second = placed[std::max(i, index)];
    if (!readsAfter(bounds(first.outline), bounds(second.outline), direction)) return &placed[i];
  }
  return nullptr;
}

/// How far its tail ends from the mouth that shows in the panel, mm; 0 without such a mouth and for
/// a bridge to the balloon before.
double tipToMouth(const PlacedBalloon& balloon, const LetterRequest& request,
                  const Letterer& letterer) {
  const auto item = std::ranges::find(*request.items, balloon.item, &CopyItem::id);
  if (item == request.items->end() || item->offPanel) return 0;
  const auto mouth = request.mouths.find(item->speaker);
  const std::optional<Point> tip = tipOf(balloon, middleOf(balloon, letterer.type()));
  if (mouth == request.mouths.end() || !tip) return 0;
  const auto index = static_cast<std::size_t>(item - request.items->begin());
  if (joinedTo(balloon, index, request)) return 0;
  return PanelRoom(request, letterer.style()).shows(mouth->second) ? (mouth->second - *tip).length()
                                                                   : 0;
}

/// Tails have a greatest length, and bubbles end before it: what is left must not be longer.
std::optional<CopyFinding> tooFarFromMouth(const PlacedBalloon& balloon,
                                           const LetterRequest& request, const Letterer& letterer) {
  const double left = tipToMouth(balloon, request, letterer);
  if (left <= kLongestTailMm) return std::nullopt;
  const bool thought = balloon.kind == CopyKind::Thought;
  return CopyFinding{
      balloon.item, "far from the mouth",
      fmt::format("The balloon stands too far from who {} it: its {} {:.0f} mm from the mouth.",
                  thought ? "thinks" : "says", thought ? "bubbles end" : "tail ends", left),
      kMoveIt, left / kLongestTailMm - 1};
}

}  // namespace

std::vector<std::optional<HeldBalloon>> heldIn(const LetterRequest& request,
                                               const Letterer& letterer) {
  std::vector<std::optional<HeldBalloon>> out(request.items->size());
  for (std::size_t i = 0; i < out.size(); ++i) {
    const CopyItem& item = (*request.items)[i];
    const PlacedBalloon* stands = standing(request, item.id);
    if (stands == nullptr || !stands->byHand) continue;
    out[i] = held(holdsWords(*stands, item, letterer.style())
                      ? *stands
                      : retypedBalloon(*stands, item, request, letterer),
                  i, request, letterer);
  }
  return out;
}

Polygon tailBeside(const HeldBalloon& own, const LetterRequest& request,
                   const std::vector<PlacedBalloon>& placed, const Letterer& letterer) {
  if (!own.copy.isJoined) return own.balloon.tail;
  const auto at = std::ranges::find(placed, own.balloon.item, &PlacedBalloon::item);
  const PlacedBalloon& before = *std::prev(at);
  const PlacedBalloon* stood = standing(request, before.item);
  if (stood != nullptr && stood->outline == before.outline) return own.balloon.tail;
  LetterRequest now = request;
  now.standing = placed;
  return tailWhereItStands(own.balloon, now, letterer);
}

double faceUnder(const PlacedBalloon& balloon, const std::vector<Polygon>& faces) {
  double sum = 0;
  for (const Polygon& face : faces) sum += commonArea(balloon.outline, face);
  return sum;
}

std::vector<CopyFinding> heldFindings(const std::vector<PlacedBalloon>& placed, std::size_t index,
                                      const LetterRequest& request, const Letterer& letterer) {
  const PlacedBalloon& balloon = placed[index];
  const double whole = std::max(1.0, area(balloon.outline));
  std::vector<CopyFinding> out;
  if (const double face = faceUnder(balloon, request.faces); face > kFaceMm2)
    out.push_back(
        {balloon.item, "covers a face", "The balloon stands on a face.", kMoveIt, face / whole});
  if (!inside(typeBox(balloon, letterer), request.live))
    out.push_back({balloon.item, "outside live",
                   "Words of the balloon stand outside the live area, where the trim may cut.",
                   kMoveIt, 0.5});
  if (auto far = tooFarFromMouth(balloon, request, letterer)) out.push_back(std::move(*far));
  const double over = 1 - commonArea(balloon.outline, request.panel) / whole;
  if (balloon.outline.points.size() > 2 && over > kBorderShare)
    out.push_back({balloon.item, "over the border", "The balloon stands over its panel's border.",
                   kMoveIt, over});
  for (std::size_t i = 0; i < placed.size(); ++i)
    if (const double both = commonArea(balloon.outline, placed[i].outline);
        i != index && both > kOtherMm2)
      out.push_back({balloon.item, "on a balloon", "The balloon lies over another one.", kMoveIt,
                     both / whole});
  if (readBeforeItsTurn(placed, index, request.direction) != nullptr)
    out.push_back({balloon.item, "out of turn",
                   "The balloon is read before its turn, or another before its own.", kMoveIt,
                   0.4});
  return out;
}

}  // namespace tw
