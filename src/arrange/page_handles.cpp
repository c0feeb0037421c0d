// What of a page can be taken in the hand.
#include <algorithm>
#include <cmath>

#include "arrange/page_edit.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr double kAcrossPage = 6;   // mm short of the live area, for a gutter that parts tiers
constexpr double kTierGripOut = 4;  // mm from the panels to a tier's grip
constexpr double kNearer = 1e-9;

bool liesFlat(const EditLine& line) {
  return std::abs(line.across.y) > std::abs(line.across.x);
}

double distanceTo(const EditHandle& handle, Point at) {
  const Vector way = handle.to - handle.from;
  const double length = way.length();
  if (length <= 0) return (at - handle.from).length();
  const double share = std::clamp(dot(at - handle.from, way) / (length * length), 0.0, 1.0);
  return (at - between(handle.from, handle.to, share)).length();
}

bool isPlace(const EditHandle& handle) {
  return handle.from == handle.to;
}

std::vector<EditPanel> editPanels(const Rough& rough) {
  std::vector<EditPanel> out;
  for (const RoughPanel& panel : rough.panels) out.push_back({panel.outline, panel.ground});
  return out;
}

}  // namespace

PageEdit::PageEdit(std::vector<EditPanel> panels, const Sheet& sheet, bool rightHand)
    : panels_(std::move(panels)),
      sheet_(sheet),
      paper_{sheet.liveRect(rightHand), sheet.trimRect(), sheet.bleedRect()} {
  for (EditPanel& panel : panels_) panel.outline = cleaned(panel.outline);
  lines_ = editLines(panels_, sheet_);
  makeHandles();
}

PageEdit::PageEdit(const Rough& rough, const Sheet& sheet, bool rightHand)
    : PageEdit(editPanels(rough), sheet, rightHand) {}

void PageEdit::makeHandles() {
  for (std::size_t line = 0; line < lines_.size(); ++line) addLine(line);
  for (std::size_t panel = 0; panel < panels_.size(); ++panel) {
    addCorners(panel);
    if (!isInset(panel)) continue;
    EditHandle handle;
    handle.kind = HandleKind::Inset;
    handle.panel = panel;
    handle.from = handle.to = centroid(panels_[panel].outline);
    handles_.push_back(handle);
  }
  addTiers();
}

void PageEdit::addLine(std::size_t index) {
  const EditLine& line = lines_[index];
  EditHandle handle;
  handle.kind = line.gutter ? HandleKind::Gutter : HandleKind::Border;
  handle.line = handle.second = index;
  handle.from = line.from;
  handle.to = line.to;
  handle.runs = line.across;
  handle.panel = line.sides.front().panel;
  handle.usual = isUsual(index);
  handles_.push_back(handle);
  if (!line.gutter || !handle.usual) return;
  handle.kind = HandleKind::GutterEnd;
  for (const bool atFrom : {true, false}) {
    handle.atFrom = atFrom;
    handle.from = handle.to = atFrom ? line.from : line.to;
    handle.runs = atFrom ? line.fromRuns : line.toRuns;
    handles_.push_back(handle);
  }
}

void PageEdit::addCorners(std::size_t panel) {
  const std::size_t n = panels_[panel].outline.points.size();
  for (std::size_t i = 0; i < n; ++i) {
    EditHandle handle;
    handle.kind = HandleKind::Corner;
    handle.line = usualLineOf({panel, (i + n - 1) % n});
    handle.second = usualLineOf({panel, i});
    handle.panel = panel;
    handle.corner = i;
    handle.from = handle.to = panels_[panel].outline.points[i];
    handles_.push_back(handle);
  }
}

void PageEdit::addTiers() {
  const std::vector<std::size_t> gutters = gutterLinesAcrossPage();
  for (std::size_t i = 1; i < gutters.size(); ++i) {
    const EditLine &above = lines_[gutters[i - 1]], &below = lines_[gutters[i]];
    EditHandle handle;
    handle.kind = HandleKind::Tier;
    handle.line = gutters[i - 1];
    handle.second = gutters[i];
    const double x = std::min(above.from.x, below.from.x) - kTierGripOut;
    handle.from = {x, above.from.y};
    handle.to = {x, below.from.y};
    handle.runs = {0, 1};
    handles_.push_back(handle);
  }
}

std::vector<std::size_t> PageEdit::gutterLinesAcrossPage() const {
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < lines_.size(); ++i) {
    const EditLine& line = lines_[i];
    if (line.gutter && isUsual(i) && liesFlat(line) &&
        line.from.x < paper_.live.min.x + kAcrossPage &&
        line.to.x > paper_.live.max.x - kAcrossPage)
      out.push_back(i);
  }
  std::ranges::stable_sort(
      out, {}, [&](std::size_t i) { return between(lines_[i].from, lines_[i].to, 0.5).y; });
  return out;
}

/// Tiers run across the page, so a flat gutter is taken whole; one that stands, and an outer
/// border, is taken panel by panel.
bool PageEdit::isUsual(std::size_t index) const {
  const EditLine& line = lines_[index];
  const bool whole = line.gutter && liesFlat(line);
  if (line.joined) return whole;
  if (!whole) return true;
  return std::ranges::none_of(lines_, [&](const EditLine& other) {
    return other.joined && std::ranges::count(other.sides, line.sides.front()) > 0;
  });
}

std::size_t PageEdit::usualLineOf(PanelSide side) const {
  for (std::size_t i = 0; i < lines_.size(); ++i)
    if (isUsual(i) && std::ranges::count(lines_[i].sides, side) > 0) return i;
  ensure(false, "every border lies on a line");
  return 0;
}

bool PageEdit::isInset(std::size_t panel) const {
  return !panels_[panel].ground && std::ranges::any_of(panels_, &EditPanel::ground);
}

std::optional<std::size_t> PageEdit::handleAt(Point at, double reachMm, bool unusual) const {
  std::optional<std::size_t> best;
  int bestRank = 0;
  double bestDistance = 0;
  for (std::size_t i = 0; i < handles_.size(); ++i) {
    const EditHandle& handle = handles_[i];
    if (!handle.usual && !unusual) continue;
    const double distance = distanceTo(handle, at);
    if (distance > reachMm) continue;
    const int rank = (handle.usual == unusual ? 2 : 0) + (isPlace(handle) ? 0 : 1);
    if (best && (rank > bestRank || (rank == bestRank && distance > bestDistance - kNearer)))
      continue;
    best = i, bestRank = rank, bestDistance = distance;
  }
  return best;
}

std::optional<std::size_t> PageEdit::sameHandle(const EditHandle& before) const {
  const auto middle = [](const EditHandle& h) { return between(h.from, h.to, 0.5); };
  std::optional<std::size_t> best;
  for (std::size_t i = 0; i < handles_.size(); ++i) {
    if (handles_[i].kind != before.kind || handles_[i].usual != before.usual) continue;
    const double away = (middle(handles_[i]) - middle(before)).length();
    if (!best || away < (middle(handles_[*best]) - middle(before)).length() - kNearer) best = i;
  }
  return best;
}

}  // namespace tw
