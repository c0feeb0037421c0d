// Letterer: puts together measuring, setting and placing. One order of attempts: the wanted type
// size, then smaller sizes down to the smallest, each without any violation; then, at the
// smallest, the least bad placement, whose violations become findings. Settings are kept per
// text, kind, size and width, since compose asks for the same copy thousands of times.
// Balloons that the artist placed are held: one candidate each, handed back as they were.

#include "letter/lettering.h"

#include <algorithm>
#include <map>
#include <mutex>
#include <shared_mutex>
#include <tuple>

#include "geometry/polygon.h"
#include "letter/aim_tail.h"
#include "letter/copy_limits.h"
#include "letter/held_copy.h"
#include "letter/place_copy.h"
#include "letter/placed_copy.h"
#include "letter/setting.h"

namespace tw {
namespace {

constexpr double kSizeStepPt = 0.5;
/// No attempt at a size whose balloons would fill more than this of the room; by experience.
constexpr double kMostFill = 0.85;
/// Room that the shapes between balloons and border waste, when sizing; our choice.
constexpr double kWastedRoom = 1.35;

const Setting& cheapest(const Settings& settings) {
  return *std::min_element(settings.begin(), settings.end(),
                           [](const Setting& a, const Setting& b) { return a.cost < b.cost; });
}

double boxArea(const Setting& s) {
  return 4 * s.shape.halfWidth() * s.shape.halfHeight();
}

Polygon tailOf(const Placement& placement, std::size_t i, const LetterRequest& request,
               const std::vector<PlacedBalloon>& balloons, const PanelRoom& room) {
  const PlacedCopy& copy = placement.copy[i];
  const BalloonShape& shape = copy.setting->shape;
  if (copy.bridgedTo >= 0) {
    const PlacedCopy& other = placement.copy[copy.bridgedTo];
    return room.keptInside(bridge(other.setting->shape, other.middle, shape, copy.middle));
  }
  if (!copy.hasTail) return {};
  return drawnTail(shape, copy.middle, copy.tail, i, balloons, request.faces, room);
}

std::string percent(double share) {
  return std::to_string(static_cast<int>(std::lround(share * 100))) + " %";
}

}  // namespace

struct Letterer::Impl {
  Impl(LetterStyle s, TypeMeasure t) : style(std::move(s)), type(std::move(t)) {}

  using Key = std::tuple<std::string, CopyKind, int, int>;

  LetterStyle style;
  TypeMeasure type;
  mutable std::shared_mutex mutex;
  mutable std::map<Key, std::shared_ptr<const Settings>> cache;

  std::shared_ptr<const Settings> settings(const CopyItem& item, double sizePt,
                                           double mostWidth) const;
  using Held = std::vector<std::optional<HeldBalloon>>;
  std::vector<CopyToPlace> prepare(const LetterRequest& request, const Held& held, double sizePt,
                                   const PanelRoom& room,
                                   std::vector<std::shared_ptr<const Settings>>& keep) const;
  Placement attempt(const LetterRequest& request, const Held& held, const PanelRoom& room,
                    double& sizePt, std::vector<std::shared_ptr<const Settings>>& keep) const;
  int unknownGlyphs(const Setting& setting) const;
  void judge(const LetterRequest& request, const Placement& placement, const PanelRoom& room,
             double sizePt, LetterResult& result) const;
  void judgeItem(const LetterRequest& request, const CopyItem& item, const PlacedCopy& copy,
                 const PlacedBalloon& balloon, LetterResult& result) const;
};

/// Widths are taken in whole millimetres, so that nearly equal panels share their settings.
std::shared_ptr<const Settings> Letterer::Impl::settings(const CopyItem& item, double sizePt,
                                                         double mostWidth) const {
  const int width = std::max(1, static_cast<int>(std::ceil(mostWidth)));
  const Key key{item.text, item.kind, static_cast<int>(std::lround(sizePt * 100)), width};
  {
    std::shared_lock lock(mutex);
    if (const auto it = cache.find(key); it != cache.end()) return it->second;
  }
  auto made = std::make_shared<const Settings>(
      settingsOf(lettered(item.text, style.upperCase), item.kind, sizePt, width, style, type));
  std::unique_lock lock(mutex);
  return cache.emplace(key, std::move(made)).first->second;
}

std::vector<CopyToPlace> Letterer::Impl::prepare(
    const LetterRequest& request, const Held& held, double sizePt, const PanelRoom& room,
    std::vector<std::shared_ptr<const Settings>>& keep) const {
  keep.clear();
  std::vector<CopyToPlace> result;
  for (std::size_t i = 0; i < held.size(); ++i) {
    const CopyItem& item = (*request.items)[i];
    keep.push_back(held[i] ? std::make_shared<const Settings>(1, held[i]->copy.setting)
                           : settings(item, sizePt, room.allowedBox().width()));
    CopyToPlace copy{&item, keep.back().get(), wantsTail(item.kind), false, {}, nullptr};
    if (held[i]) copy.held = &held[i]->copy;
    const auto mouth = request.mouths.find(item.speaker);
    if (!item.offPanel && mouth != request.mouths.end()) {
      copy.hasMouth = true;
      copy.mouth = mouth->second;
    }
    result.push_back(copy);
  }
  return result;
}

Placement Letterer::Impl::attempt(const LetterRequest& request, const Held& held,
                                  const PanelRoom& room, double& sizePt,
                                  std::vector<std::shared_ptr<const Settings>>& keep) const {
  const double roomArea = area(room.allowed());
  for (sizePt = style.sizePt;;) {
    const std::vector<CopyToPlace> items = prepare(request, held, sizePt, room, keep);
    double wanted = 0;
    for (const auto& settings : keep) wanted += boxArea(cheapest(*settings));
    if (items.size() == 1 || wanted < kMostFill * roomArea) {
      Placement placement = placeCopy(items, room, request.direction, style, /*strict=*/true);
      if (!placement.copy.empty()) return placement;
    }
    if (sizePt <= style.smallestPt) {
      return placeCopy(items, room, request.direction, style, /*strict=*/false);
    }
    sizePt = std::max(style.smallestPt, sizePt - kSizeStepPt);
  }
}

void Letterer::Impl::judgeItem(const LetterRequest& request, const CopyItem& item,
                               const PlacedCopy& copy, const PlacedBalloon& balloon,
                               LetterResult& result) const {
  if (copy.violation <= 0) return;
  const double face = faceUnder(balloon, request.faces);
  result.coveredFace += face;
  if (face > 0.5) {
    result.findings.push_back({item.id, "covers a face", "The balloon stands on a face.",
                               "Give the panel more room, or stage it with air for the copy.",
                               face / std::max(1.0, area(balloon.outline))});
  }
  ++result.unplaced;
  result.findings.push_back(
      {item.id, "no room",
       "No clear place was found for this copy; it stands where it hurts least.",
       "Cut the copy, enlarge the panel, or move the figures.", copy.violation});
}

int Letterer::Impl::unknownGlyphs(const Setting& setting) const {
  int count = 0;
  for (const std::string& line : setting.lines) count += type.unknownGlyphs(line);
  return count;
}

void Letterer::Impl::judge(const LetterRequest& request, const Placement& placement,
                           const PanelRoom& room, double sizePt, LetterResult& result) const {
  double balloons = 0;
  for (std::size_t i = 0; i < placement.copy.size(); ++i) {
    const PlacedCopy& copy = placement.copy[i];
    const PlacedBalloon& placed = result.balloons[i];
    if (!placed.outline.points.empty()) balloons += area(placed.outline);
    if (const int unknown = unknownGlyphs(*copy.setting); unknown > 0) {
      result.findings.push_back(
          {placed.item, "missing glyph",
           "The font has no letter for " + std::to_string(unknown) + " of the characters.",
           "Write it in other characters, or letter it by hand.", 1});
    }
    result.coveredBody += room.bodies(copy.setting->strips, copy.middle);
    if (placed.byHand)
      result.coveredFace += faceUnder(placed, request.faces);
    else
      judgeItem(request, (*request.items)[i], copy, placed, result);
  }
  const double panel = std::max(area(request.panel), 1e-9);
  result.areaShare = balloons / panel;
  if (result.areaShare > kMostAreaShare) {
    result.findings.push_back(
        {"", "balloon area", "Balloons fill " + percent(result.areaShare) + " of the panel.",
         "Cut copy or enlarge the panel.", result.areaShare / kMostAreaShare - 1});
  }
  if (sizePt < style.sizePt) {
    result.findings.push_back({"", "type shrunk", "The type had to shrink to fit the panel.",
                               "Cut copy or enlarge the panel.", 1 - sizePt / style.sizePt});
  }
}

Letterer::Letterer(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
Letterer::Letterer(Letterer&&) noexcept = default;
Letterer::~Letterer() = default;

Result<Letterer> Letterer::make(LetterStyle style) {
  if (!(style.sizePt > 0 && style.smallestPt > 0 && style.leadingPt > 0)) {
    return badInput("Type sizes and leading must be above zero.");
  }
  style.smallestPt = std::min(style.smallestPt, style.sizePt);
  Result<TypeMeasure> type = TypeMeasure::make(style.family, style.weight);
  if (!type) return tl::unexpected(type.error());
  return Letterer(std::make_unique<Impl>(std::move(style), std::move(*type)));
}

const LetterStyle& Letterer::style() const {
  return impl_->style;
}

const TypeMeasure& Letterer::type() const {
  return impl_->type;
}

SetCopy Letterer::set(const CopyItem& item, double mostWidthMm) const {
  const auto settings = impl_->settings(item, impl_->style.sizePt, mostWidthMm);
  const Setting& best = cheapest(*settings);
  std::vector<std::string> lines;
  for (const std::string& line : best.lines) lines.push_back(starred(line));
  return {item.id,
          item.kind,
          std::move(lines),
          best.lineWidths,
          2 * best.shape.halfWidth(),
          2 * best.shape.halfHeight()};
}

Letterer::Wanted Letterer::wanted(const std::vector<CopyItem>& items) const {
  constexpr double kWidest = 300;  // mm; wider than any panel
  Wanted wanted;
  for (const CopyItem& item : items) {
    const auto settings = impl_->settings(item, impl_->style.sizePt, kWidest);
    const Setting& best = cheapest(*settings);
    const double border = 2 * impl_->style.gapMm;
    wanted.areaMm2 += boxArea(best) * kWastedRoom;
    wanted.leastWidthMm = std::max(wanted.leastWidthMm, 2 * best.shape.halfWidth() + border);
    wanted.leastHeightMm = std::max(wanted.leastHeightMm, 2 * best.shape.halfHeight() + border);
  }
  return wanted;
}

LetterResult Letterer::place(const LetterRequest& request) const {
  LetterResult result;
  if (!request.items || request.items->empty() || request.panel.points.size() < 3) return result;
  const PanelRoom room(request, impl_->style);
  double sizePt = impl_->style.sizePt;
  std::vector<std::shared_ptr<const Settings>> keep;
  const Impl::Held held = heldIn(request, *this);
  const Placement placement = impl_->attempt(request, held, room, sizePt, keep);
  for (std::size_t i = 0; i < placement.copy.size(); ++i) {
    const PlacedCopy& copy = placement.copy[i];
    result.balloons.push_back(held[i] ? held[i]->balloon
                                      : balloonOf((*request.items)[i], *copy.setting, copy.middle));
  }
  for (std::size_t i = 0; i < placement.copy.size(); ++i) {
    result.balloons[i].tail = held[i] ? tailBeside(*held[i], request, result.balloons, *this)
                                      : tailOf(placement, i, request, result.balloons, room);
  }
  result.findings = wordFindings(*request.items, request.panelsOnPage);
  impl_->judge(request, placement, room, sizePt, result);
  for (std::size_t i = 0; i < result.balloons.size(); ++i)
    if (held[i])
      std::ranges::copy(heldFindings(result.balloons, i, request, *this),
                        std::back_inserter(result.findings));
  return result;
}

}  // namespace tw
