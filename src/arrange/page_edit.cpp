// Moving borders
//
// Idea. A panel is the meeting of its borders' lines. An edit moves the lines of one group of
// borders (edit_lines.h) by one rigid movement, so whatever lies on both sides of a gutter keeps
// its distance, and finds the corners again where lines meet: neighbours' other borders stay on
// their lines, slanted ones too.
//
// Steps. (1) The offset of the hand is cut down to the way in which the handle can go and drawn to
// a resting place. (2) Each group is moved all the way; if that breaks a limit (edit_limits.h), the
// farthest possible share of the way is found by halving. A corner moves its two groups one after
// the other, so that one may go on when the other stops. (3) Panels that changed are given back.
//
// Turning. A gutter's end slides along the border that it ends on; the whole gutter turns about
// its other end. Sliding back turns it back exactly, since both ends lie on lines that did not
// move.
//
// Cost: some 30 looks at all pairs of panels when something is in the way, else one: far below a
// millisecond. What it does badly: a limit that is broken only in the middle of the way is not
// seen, so an inset can jump over another one (which is what a hand wants).
#include "arrange/page_edit.h"

#include <algorithm>
#include <cmath>

namespace tw {

namespace {

constexpr int kHalvings = 34;
constexpr double kLanded = 1 - 1e-9;  // of the way
constexpr double kUpright = 1e-6;

/// Angle from one way to another, radians.
double angleBetween(Vector from, Vector to) {
  return std::atan2(cross(from, to), dot(from, to));
}

}  // namespace

std::vector<PanelSide> PageEdit::allSides(std::size_t panel) const {
  std::vector<PanelSide> out;
  for (std::size_t s = 0; s < panels_[panel].outline.points.size(); ++s) out.push_back({panel, s});
  return out;
}

std::vector<PanelSide> PageEdit::movingWith(const EditHandle& handle) const {
  if (handle.kind == HandleKind::Inset) return allSides(handle.panel);
  std::vector<PanelSide> out = lines_[handle.line].sides;
  if (handle.second != handle.line)
    out.insert(out.end(), lines_[handle.second].sides.begin(), lines_[handle.second].sides.end());
  return out;
}

PageEdit::Step PageEdit::turnStep(const EditHandle& handle, Vector offset) const {
  const EditLine& line = lines_[handle.line];
  const Point pivot = handle.atFrom ? line.to : line.from;
  const Point end = handle.from, moved = end + handle.runs * dot(handle.runs, offset);
  return {line.sides, {{}, pivot, angleBetween(end - pivot, moved - pivot)}};
}

std::vector<PageEdit::Step> PageEdit::stepsFor(const EditHandle& handle, Vector offset) const {
  const auto shifted = [&](std::size_t index) {
    const EditLine& line = lines_[index];
    return Step{line.sides, {line.across * dot(line.across, offset), {}, 0}};
  };
  switch (handle.kind) {
    case HandleKind::Gutter:
    case HandleKind::Border:
      return {shifted(handle.line)};
    case HandleKind::GutterEnd:
      return {turnStep(handle, offset)};
    case HandleKind::Corner:
      if (handle.line == handle.second) return {shifted(handle.line)};
      return {shifted(handle.line), shifted(handle.second)};
    case HandleKind::Tier:
      return {{movingWith(handle), {{0, offset.y}, {}, 0}}};
    case HandleKind::Inset:
      return {{movingWith(handle), {offset, {}, 0}}};
  }
  return {};
}

/// A gutter that is nearly straight rests straight.
Snapped PageEdit::snappedTurn(const EditHandle& handle, Vector offset, double snapMm) const {
  const EditLine& line = lines_[handle.line];
  const Point pivot = handle.atFrom ? line.to : line.from;
  const double way = dot(handle.runs, offset);
  const bool flat = std::abs(line.across.y) > std::abs(line.across.x);
  const double slope = flat ? handle.runs.y : handle.runs.x;
  if (snapMm <= 0 || std::abs(slope) < kUpright) return {handle.runs * way, {}};
  const Vector gap = pivot - handle.from;
  const double straight = (flat ? gap.y : gap.x) / slope;
  if (std::abs(straight - way) > snapMm) return {handle.runs * way, {}};
  return {handle.runs * straight,
          {{SnapTo::Straight, pivot, handle.from + handle.runs * straight}}};
}

Snapped PageEdit::snappedFor(const EditHandle& handle, Vector offset, double snapMm) const {
  if (handle.kind == HandleKind::GutterEnd) return snappedTurn(handle, offset, snapMm);
  const bool every = handle.runs == Vector{};
  const Vector way = every ? offset : handle.runs * dot(handle.runs, offset);
  return snapped(panels_, movingWith(handle), way, every ? Vector{1, 1} : handle.runs, paper_,
                 snapMm);
}

PageEdit::Made PageEdit::made(const std::vector<Step>& steps) const {
  Made out{panels_, {}, {}};
  for (const Step& step : steps) {
    const std::vector<EditPanel> before = out.panels;
    const auto attempt = [&](double share) {
      auto moved = withMoved(before, step.sides, step.move.part(share));
      auto words = moved ? complaint(panels_, *moved, sheet_)
                         : std::optional<std::string>("Two borders would no longer meet.");
      if (!words) out.panels = std::move(*moved);
      return words;
    };
    double low = 0, high = 1;
    auto words = attempt(1);
    if (!words) {
      out.shares.push_back(1);
      continue;
    }
    for (int i = 0; i < kHalvings; ++i) {
      const double middle = (low + high) / 2;
      if (auto no = attempt(middle)) {
        high = middle;
        words = std::move(no);
      } else {
        low = middle;
      }
    }
    out.shares.push_back(low);
    out.stopped = *words;
  }
  return out;
}

EditMove PageEdit::answer(const Made& made) const {
  EditMove out;
  out.stopped = made.stopped;
  for (std::size_t i = 0; i < panels_.size(); ++i) {
    const Polygon& outline = made.panels[i].outline;
    if (outline != panels_[i].outline)
      out.panels.push_back({i, outline, runsToBleed(outline, sheet_)});
  }
  return out;
}

EditMove PageEdit::moved(std::size_t index, Vector offset, double snapMm) const {
  const EditHandle& handle = handles_[index];
  const Snapped wanted = snappedFor(handle, offset, snapMm);
  const Made done = made(stepsFor(handle, wanted.offset));
  EditMove out = answer(done);
  const double least = *std::ranges::min_element(done.shares);
  if (handle.kind == HandleKind::Corner)
    out.offset = done.panels[handle.panel].outline.points[handle.corner] - handle.from;
  else
    out.offset = wanted.offset * least;
  if (least >= kLanded) out.snaps = wanted.lines;
  return out;
}

}  // namespace tw
