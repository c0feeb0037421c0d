// Finding what can be dragged
//
// Idea. Two borders that look at each other across no more than kWidest gutters lie on one gutter.
// "Lies on the same gutter as" is carried on from panel to panel: the groups that come out are the
// smallest sets of borders that can move without opening or closing a gutter.
//
// Words. A border's part of a gutter ends where other gutters cross it; two parts in line across a
// crossing are joined into a line of their own, so that a tier's whole gutter can be taken in one
// hand, or only the piece between two panels.
//
// Steps. (1) All borders with their outward normals. (2) Pairs on the same layer whose normals are
// opposite (within kParallel), apart by −kTouch … kWidest gutters, that overlap along the line.
// Corners closer than a gutter count as overlapping: they could not pass each other. (3)
// Union-find. (4) The middle line and its ends; an end lies where the middle line meets the border
// that its outermost panel has there. (5) Joining of parts in line.
//
// Cost: the square of the number of borders, some thousand pairs. What it does badly: a gap wider
// than kWidest gutters is no gutter, its two borders move apart from each other.
#include "arrange/edit_lines.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <tuple>

namespace tw {

namespace {

constexpr double kWidest = 2.5;             // gutters
constexpr double kLeastReach = 2;           // mm, where a sheet has no gutters
constexpr double kTouch = 0.05;             // mm of overlap that is rounding
constexpr double kParallel = 0.9986;        // cosine of 3°
constexpr double kInLine = 0.3;             // mm off one line
constexpr double kSameDirection = 0.99996;  // cosine of 0.5°
constexpr double kOnStraight = 1e-6;
constexpr double kSlack = 0.01;       // mm
constexpr double kMeetSine = 0.0087;  // of half a degree

struct Border {
  PanelSide id;
  SideLine line;
  bool ground = false;
};

std::vector<Border> bordersOf(const std::vector<EditPanel>& panels) {
  std::vector<Border> out;
  for (std::size_t p = 0; p < panels.size(); ++p)
    for (std::size_t s = 0; s < panels[p].outline.points.size(); ++s)
      out.push_back({{p, s}, sideLine(panels[p].outline, s), panels[p].ground});
  return out;
}

/// From the lesser to the greater place along `along`.
struct Span {
  double from = 0, to = 0;
};

Span spanOf(const SideLine& line, Vector along) {
  const double a = dot(line.a - Point{}, along), b = dot(line.b - Point{}, along);
  return {std::min(a, b), std::max(a, b)};
}

double overlapOf(const Span& a, const Span& b) {
  return std::min(a.to, b.to) - std::max(a.from, b.from);
}

bool faces(const Border& a, const Border& b, const Sheet& sheet) {
  if (a.id.panel == b.id.panel || a.ground != b.ground) return false;
  if (dot(a.line.out, b.line.out) > -kParallel) return false;
  const double gap = dot(b.line.middle() - a.line.middle(), a.line.out);
  const double widest = std::max(kWidest * gutterFor(sheet, a.line.out), kLeastReach);
  if (gap < -kTouch || gap > widest) return false;
  const double passing = std::max(0.0, gutterFor(sheet, a.line.along) - kSlack);
  return overlapOf(spanOf(a.line, a.line.along), spanOf(b.line, a.line.along)) > -passing;
}

class Groups {
 public:
  explicit Groups(std::size_t count) : parent_(count) {
    std::iota(parent_.begin(), parent_.end(), std::size_t{0});
  }
  std::size_t rootOf(std::size_t i) const {
    while (parent_[i] != i) i = parent_[i];
    return i;
  }
  /// The least member stays the root, so groups come in the order of their first member.
  void unite(std::size_t a, std::size_t b) {
    a = rootOf(a), b = rootOf(b);
    parent_[std::max(a, b)] = std::min(a, b);
  }
  std::vector<std::vector<std::size_t>> all() const {
    std::map<std::size_t, std::vector<std::size_t>> byRoot;
    for (std::size_t i = 0; i < parent_.size(); ++i) byRoot[rootOf(i)].push_back(i);
    std::vector<std::vector<std::size_t>> out;
    for (auto& [root, members] : byRoot) out.push_back(std::move(members));
    return out;
  }

 private:
  std::vector<std::size_t> parent_;
};

/// The border of its panel that meets side `line` at its end toward `toward`.
Vector runsAtEnd(const std::vector<EditPanel>& panels, const Border& border, bool atB) {
  const std::size_t n = panels[border.id.panel].outline.points.size();
  const std::size_t next = atB ? (border.id.side + 1) % n : (border.id.side + n - 1) % n;
  return sideLine(panels[border.id.panel].outline, next).along;
}

/// Step (4).
class MiddleLine {
 public:
  MiddleLine(const std::vector<EditPanel>& panels, const std::vector<const Border*>& borders)
      : panels_(panels), borders_(borders) {
    const SideLine& first = borders.front()->line;
    for (const Border* border : borders)
      along_ = along_ + border->line.along * (dot(border->line.along, first.along) < 0 ? -1 : 1);
    along_ = along_.unit();
    // From left to right, or from top to bottom.
    const bool flat = std::abs(along_.x) > std::abs(along_.y);
    if ((flat ? along_.x : along_.y) < 0) along_ = -along_;
    across_ = {-along_.y, along_.x};
    offset_ = meanOffset();
  }

  EditLine line() const {
    EditLine out;
    out.across = across_;
    for (const Border* border : borders_) out.sides.push_back(border->id);
    std::tie(out.from, out.fromRuns) = end(false);
    std::tie(out.to, out.toRuns) = end(true);
    return out;
  }

 private:
  double meanOffset() const {
    double sum[2] = {0, 0};
    int count[2] = {0, 0};
    for (const Border* border : borders_) {
      const int k = dot(border->line.out, across_) > 0 ? 1 : 0;
      sum[k] += dot(border->line.middle() - Point{}, across_);
      ++count[k];
    }
    double mean = 0, sides = 0;
    for (int k = 0; k < 2; ++k)
      if (count[k] > 0) mean += sum[k] / count[k], ++sides;
    return mean / sides;
  }

  std::pair<Point, Vector> end(bool last) const {
    const double sign = last ? 1 : -1;
    double farthest = -1e9;
    Point corner;
    Vector runs;
    for (const Border* border : borders_)
      for (const bool atB : {false, true}) {
        const Point at = atB ? border->line.b : border->line.a;
        const double far = sign * dot(at - Point{}, along_);
        if (far <= farthest + kOnStraight) continue;
        farthest = far, corner = at, runs = runsAtEnd(panels_, *border, atB);
      }
    const Point on = Point{} + across_ * offset_;
    const auto met = meeting(on, along_, corner, runs);
    const Point foot = on + along_ * dot(corner - on, along_);
    return {met.value_or(foot), met ? runs : across_};
  }

  const std::vector<EditPanel>& panels_;
  const std::vector<const Border*>& borders_;
  Vector along_, across_;
  double offset_ = 0;
};

/// Two parts that one straight line runs through, parted by no more than a crossing gutter.
bool inLine(const EditLine& a, const EditLine& b, const Sheet& sheet) {
  if (a.gutter != b.gutter || std::abs(dot(a.across, b.across)) < kSameDirection) return false;
  const Vector along = (a.to - a.from).unit();
  if (std::abs(dot(b.from - a.from, a.across)) > kInLine ||
      std::abs(dot(b.to - a.from, a.across)) > kInLine)
    return false;
  const Span sa{0, (a.to - a.from).length()};
  const double b0 = dot(b.from - a.from, along), b1 = dot(b.to - a.from, along);
  const Span sb{std::min(b0, b1), std::max(b0, b1)};
  return overlapOf(sa, sb) > -std::max(kWidest * gutterFor(sheet, along), kLeastReach);
}

bool looksTheSameWay(const EditLine& a, const EditLine& b, const std::vector<EditPanel>& panels) {
  const auto out = [&](const EditLine& line) {
    const PanelSide id = line.sides.front();
    return sideLine(panels[id.panel].outline, id.side).out;
  };
  return a.gutter || dot(out(a), out(b)) > 0;
}

}  // namespace

double turning(const Polygon& outline) {
  double sum = 0;
  const auto& p = outline.points;
  for (std::size_t i = 0; i < p.size(); ++i)
    sum += cross(p[i] - Point{}, p[(i + 1) % p.size()] - Point{});
  return sum;
}

SideLine sideLine(const Polygon& outline, std::size_t side) {
  SideLine out;
  out.a = outline.points[side];
  out.b = outline.points[(side + 1) % outline.points.size()];
  out.along = (out.b - out.a).unit();
  out.out =
      turning(outline) > 0 ? Vector{out.along.y, -out.along.x} : Vector{-out.along.y, out.along.x};
  return out;
}

std::optional<Point> meeting(Point a, Vector alongA, Point b, Vector alongB) {
  const double sine = cross(alongA, alongB);
  if (std::abs(sine) < kMeetSine) return std::nullopt;
  return a + alongA * (cross(b - a, alongB) / sine);
}

Polygon cleaned(const Polygon& outline) {
  std::vector<Point> p;
  for (const Point at : outline.points)
    if (p.empty() || (at - p.back()).length() > kOnStraight) p.push_back(at);
  while (p.size() > 1 && (p.front() - p.back()).length() <= kOnStraight) p.pop_back();
  Polygon out;
  for (std::size_t i = 0; i < p.size(); ++i) {
    const Vector in = p[i] - p[(i + p.size() - 1) % p.size()];
    const Vector on = p[(i + 1) % p.size()] - p[i];
    if (std::abs(cross(in.unit(), on.unit())) > kOnStraight) out.points.push_back(p[i]);
  }
  return out.points.size() >= 3 ? out : outline;
}

double gutterFor(const Sheet& sheet, Vector out) {
  return std::abs(out.x) > std::abs(out.y) ? sheet.gutterAcross : sheet.gutterDown;
}

std::vector<EditLine> editLines(const std::vector<EditPanel>& panels, const Sheet& sheet) {
  const std::vector<Border> borders = bordersOf(panels);
  Groups groups(borders.size());
  for (std::size_t a = 0; a < borders.size(); ++a)
    for (std::size_t b = a + 1; b < borders.size(); ++b)
      if (faces(borders[a], borders[b], sheet)) groups.unite(a, b);
  std::vector<EditLine> out;
  const auto add = [&](const std::vector<std::size_t>& members, bool gutter, bool joined) {
    std::vector<const Border*> own;
    for (const std::size_t i : members) own.push_back(&borders[i]);
    EditLine line = MiddleLine(panels, own).line();
    line.gutter = gutter;
    line.joined = joined;
    out.push_back(std::move(line));
  };
  const auto parts = groups.all();
  for (const auto& members : parts) add(members, members.size() > 1, false);
  Groups lines(parts.size());
  for (std::size_t a = 0; a < parts.size(); ++a)
    for (std::size_t b = a + 1; b < parts.size(); ++b)
      if (inLine(out[a], out[b], sheet) && looksTheSameWay(out[a], out[b], panels))
        lines.unite(a, b);
  for (const auto& together : lines.all()) {
    if (together.size() < 2) continue;
    std::vector<std::size_t> members;
    for (const std::size_t part : together)
      members.insert(members.end(), parts[part].begin(), parts[part].end());
    std::sort(members.begin(), members.end());
    add(members, out[together.front()].gutter, true);
  }
  return out;
}

}  // namespace tw
