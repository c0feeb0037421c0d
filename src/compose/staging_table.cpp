#include "compose/staging_table.h"

#include <algorithm>
#include <cmath>

#include "base/parallel.h"
#include "compose/kept_staging.h"
#include "geometry/free_rect.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr std::size_t kVariants = 48;
// Panels whose aspects differ by less than a fifth are staged alike during the search; the rough
// is solved again for its exact shape.
const double kAspectStep = std::log(1.2);
constexpr int kGrid = 16;

/// What lies under the lowest corner of a slanted upper border, so that no slant cuts a crown.
std::optional<Rect> underSlant(const Polygon& outline, const Rect& box) {
  double top = box.min.y;
  for (const Point& corner : outline.points)
    if (corner.y < box.centre().y) top = std::max(top, corner.y);
  const double share = (top - box.min.y) / box.height();
  if (share < 0.01) return std::nullopt;
  return Rect{{0, share}, {1, 1}};
}

/// The part of the panel's box in which its figure must stand, in panel units.
std::optional<Rect> standingRoom(const Layout& layout, std::size_t panel, const Rect& live) {
  const LayoutPanel& me = layout.panels[panel];
  const Rect box = bounds(me.outline);
  if (!me.ground && !me.bleeds) return underSlant(me.outline, box);
  const Rect inside{{std::max(box.min.x, live.min.x), std::max(box.min.y, live.min.y)},
                    {std::min(box.max.x, live.max.x), std::min(box.max.y, live.max.y)}};
  std::vector<Rect> taken;
  if (me.ground)
    for (std::size_t i = 0; i < layout.panels.size(); ++i)
      if (i != panel) taken.push_back(bounds(layout.panels[i].outline));
  const Rect room = largestFreeRect(inside, taken);
  const auto unit = [&](Point p) {
    return Point{(p.x - box.min.x) / box.width(), (p.y - box.min.y) / box.height()};
  };
  return Rect{unit(room.min), unit(room.max)};
}

/// Copy sits in the upper part of a panel; this share of it should stay free of figures.
double airShareOf(const PanelCase& panel, double areaMm2) {
  return std::min(0.45, panel.copy.areaMm2 / std::max(areaMm2, 1.0));
}

StageRequest plainRequest(const PageCase& page, std::size_t panel) {
  StageRequest out;
  out.beat = &page.panels[panel].beat;
  out.cast = &page.job->cast;
  out.direction = page.brief.direction;
  out.focus = page.panels[panel].focus;
  out.wholeFigure = page.panels[panel].whole;
  return out;
}

}  // namespace

StageRequest stageRequest(const PageCase& page, std::size_t panel, const Layout& layout) {
  StageRequest out = plainRequest(page, panel);
  const Polygon& outline = layout.panels[panel].outline;
  const Rect box = frameOf(outline);
  out.aspect = box.width() / box.height();
  out.airShare = airShareOf(page.panels[panel], area(outline));
  out.keepInside = standingRoom(layout, panel, page.sheet.liveRect(page.rightHand));
  return out;
}

StagingTable::Key StagingTable::keyOf(std::size_t panel, const Layout& layout) const {
  const StageRequest request = stageRequest(page_, panel, layout);
  Key key{static_cast<int>(panel),
          static_cast<int>(std::lround(std::log(request.aspect) / kAspectStep)),
          -1,
          -1,
          -1,
          -1};
  if (!request.keepInside) return key;
  const Rect& room = *request.keepInside;
  // Rounded inward, so that a figure kept inside the rounded room is inside the true one.
  key[2] = static_cast<int>(std::ceil(room.min.x * kGrid - 0.25));
  key[3] = static_cast<int>(std::ceil(room.min.y * kGrid - 0.25));
  key[4] = static_cast<int>(std::floor(room.max.x * kGrid + 0.25));
  key[5] = static_cast<int>(std::floor(room.max.y * kGrid + 0.25));
  return key;
}

StageRequest StagingTable::requestOf(const Key& key) const {
  const std::size_t panel = static_cast<std::size_t>(key[0]);
  StageRequest out = plainRequest(page_, panel);
  out.aspect = std::exp(key[1] * kAspectStep);
  const double live = page_.sheet.liveRect(page_.rightHand).area();
  out.airShare = airShareOf(page_.panels[panel], page_.panels[panel].weightShare * live);
  if (key[2] >= 0 && key[4] > key[2] && key[5] > key[3])
    out.keepInside = Rect{{key[2] / double(kGrid), key[3] / double(kGrid)},
                          {key[4] / double(kGrid), key[5] / double(kGrid)}};
  return out;
}

std::vector<Variant> StagingTable::variantsOf(const Key& key) const {
  const StageRequest request = requestOf(key);
  const Staging* pinned = pins_.stagingOf(static_cast<std::size_t>(key[0]));
  if (pinned == nullptr) return stager_.variants(request, kVariants);
  return {quickVariant(stager_, request, fitted(stager_, request, *pinned))};
}

void StagingTable::prepare(const std::vector<const Layout*>& layouts, unsigned threads,
                           Progress& progress) {
  std::vector<Key> keys;
  for (const Layout* layout : layouts)
    for (std::size_t i = 0; i < layout->panels.size(); ++i) keys.push_back(keyOf(i, *layout));
  std::sort(keys.begin(), keys.end());
  keys.erase(std::unique(keys.begin(), keys.end()), keys.end());
  std::vector<std::vector<Variant>> solved(keys.size());
  parallelFor(keys.size(), threads, [&](std::size_t i) {
    if (!progress.isStopped()) solved[i] = variantsOf(keys[i]);
    progress.tell("staging", static_cast<double>(i + 1) / static_cast<double>(keys.size()));
  });
  for (std::size_t i = 0; i < keys.size(); ++i) variants_.emplace(keys[i], std::move(solved[i]));
}

const std::vector<Variant>& StagingTable::of(std::size_t panel, const Layout& layout) const {
  return variants_.at(keyOf(panel, layout));
}

}  // namespace tw
