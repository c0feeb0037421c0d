// A panel's box and bleeds by number, made by the same moves as a drag.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "arrange/page_edit.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kLooksThere = 0.7;  // cosine
constexpr double kOnBleed = 1e-3;    // mm
constexpr double kExact = 1e-9;      // mm
constexpr int kTries = 12;

Vector toward(PageSide side) {
  switch (side) {
    case PageSide::Left:
      return {-1, 0};
    case PageSide::Right:
      return {1, 0};
    case PageSide::Top:
      return {0, -1};
    case PageSide::Bottom:
      return {0, 1};
  }
  return {};
}

bool isAcross(PageSide side) {
  return side == PageSide::Left || side == PageSide::Right;
}

double edgeOfBox(const Rect& box, PageSide side) {
  const Point corner = side == PageSide::Left || side == PageSide::Top ? box.min : box.max;
  return isAcross(side) ? corner.x : corner.y;
}

std::string_view wordOf(PageSide side) {
  switch (side) {
    case PageSide::Left:
      return "on its left";
    case PageSide::Right:
      return "on its right";
    case PageSide::Top:
      return "above it";
    case PageSide::Bottom:
      return "below it";
  }
  return "";
}

/// The panel that stands between a border and the paper's edge, or nothing.
std::optional<std::size_t> between(const std::vector<EditPanel>& panels, std::size_t panel,
                                   PageSide side) {
  const Rect own = bounds(panels[panel].outline);
  const Vector out = toward(side);
  for (std::size_t i = 0; i < panels.size(); ++i) {
    if (i == panel || panels[i].ground != panels[panel].ground) continue;
    const Rect box = bounds(panels[i].outline);
    const bool beside = isAcross(side) ? box.min.y < own.max.y && box.max.y > own.min.y
                                       : box.min.x < own.max.x && box.max.x > own.min.x;
    if (beside && dot(box.centre() - own.centre(), out) > 0) return i;
  }
  return std::nullopt;
}

}  // namespace

double PageEdit::edgeOf(const Polygon& outline, PageSide side) const {
  return edgeOfBox(bounds(outline), side);
}

std::optional<std::size_t> PageEdit::sideToward(std::size_t panel, PageSide side) const {
  std::optional<std::size_t> best;
  double most = kLooksThere;
  for (std::size_t s = 0; s < panels_[panel].outline.points.size(); ++s) {
    const double looks = dot(sideLine(panels_[panel].outline, s).out, toward(side));
    if (looks > most) most = looks, best = s;
  }
  return best;
}

bool PageEdit::onGutter(std::size_t panel, PageSide side) const {
  const auto own = sideToward(panel, side);
  return own && lines_[usualLineOf({panel, *own})].gutter;
}

/// Moves borders along the axis until the panel's box has its edge there, as far as limits allow.
EditMove PageEdit::edgeTo(std::size_t panel, PageSide side, double mm,
                          const std::vector<PanelSide>& moving) const {
  const Vector axis = isAcross(side) ? Vector{1, 0} : Vector{0, 1};
  const double start = edgeOf(panels_[panel].outline, side);
  double by = mm - start;
  for (int i = 0; i < kTries; ++i) {  // a slanted border's corner does not go as far as its line
    const auto there = withMoved(panels_, moving, {axis * by, {}, 0});
    if (!there) break;
    const double missing = mm - edgeOf((*there)[panel].outline, side);
    if (std::abs(missing) < kExact) break;
    by += missing;
  }
  const Made done = made({{moving, {axis * by, {}, 0}}});
  EditMove out = answer(done);
  out.offset = axis * (edgeOf(done.panels[panel].outline, side) - start);
  return out;
}

EditMove PageEdit::borderTo(std::size_t panel, PageSide side, double mm) const {
  const auto own = sideToward(panel, side);
  if (!own) {
    EditMove none;
    none.stopped =
        fmt::format("Panel {} has no border {} that could be moved.", panel + 1, wordOf(side));
    return none;
  }
  return edgeTo(panel, side, mm, lines_[usualLineOf({panel, *own})].sides);
}

EditMove PageEdit::lengthTo(std::size_t panel, PageSide first, PageSide second, double mm) const {
  const double start = edgeOf(panels_[panel].outline, first);
  const double end = edgeOf(panels_[panel].outline, second);
  if (onGutter(panel, first) && !onGutter(panel, second)) return borderTo(panel, first, end - mm);
  return borderTo(panel, second, start + mm);
}

EditMove PageEdit::withLeft(std::size_t panel, double mm) const {
  if (isInset(panel)) return edgeTo(panel, PageSide::Left, mm, allSides(panel));
  return borderTo(panel, PageSide::Left, mm);
}

EditMove PageEdit::withTop(std::size_t panel, double mm) const {
  if (isInset(panel)) return edgeTo(panel, PageSide::Top, mm, allSides(panel));
  return borderTo(panel, PageSide::Top, mm);
}

EditMove PageEdit::withWidth(std::size_t panel, double mm) const {
  return lengthTo(panel, PageSide::Left, PageSide::Right, mm);
}

EditMove PageEdit::withHeight(std::size_t panel, double mm) const {
  return lengthTo(panel, PageSide::Top, PageSide::Bottom, mm);
}

bool PageEdit::canBleed(std::size_t panel, PageSide side) const {
  return sideToward(panel, side) && !between(panels_, panel, side);
}

bool PageEdit::bleeds(std::size_t panel, PageSide side) const {
  const double sign = side == PageSide::Left || side == PageSide::Top ? -1 : 1;
  const double at = sign * edgeOf(panels_[panel].outline, side);
  return at > sign * edgeOfBox(paper_.trim, side) + kOnBleed ||
         at > sign * edgeOfBox(paper_.bleed, side) - kOnBleed;
}

Result<EditMove> PageEdit::withBleed(std::size_t panel, PageSide side, bool on) const {
  if (const auto other = between(panels_, panel, side))
    return badInput(fmt::format("Panel {} cannot bleed there: panel {} stands {}.", panel + 1,
                                *other + 1, wordOf(side)),
                    {.panel = static_cast<int>(panel) + 1});
  const auto own = sideToward(panel, side);
  if (!own)
    return badInput(fmt::format("Panel {} has no border {}.", panel + 1, wordOf(side)),
                    {.panel = static_cast<int>(panel) + 1});
  return edgeTo(panel, side, edgeOfBox(on ? paper_.bleed : paper_.live, side), {{panel, *own}});
}

}  // namespace tw
