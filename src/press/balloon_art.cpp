#include "press/balloon_art.h"

#include <algorithm>
#include <cmath>

#include "geometry/polygon.h"
#include "job/emphasis.h"

namespace tw {

namespace {

// Line weights in mm at print; common practice, no source: lighter than the panel border.
constexpr double kBalloonLine = 0.35, kShoutLine = 0.6, kCaptionLine = 0.3;
constexpr double kTitleHalo = 1.2;

/// Lettering has moved the middle of each baseline already; the line turns about that middle,
/// clockwise for positive angles.
TypeLine typeOf(const PlacedBalloon& balloon, const CopyLine& line) {
  return {.text = withoutStress(line.text),
          .face = Face::Bold,
          .sizePt = balloon.sizePt,
          .at = line.baselineMiddle,
          .align = Align::Centre,
          .turnDeg = -balloon.turnDeg,
          .turnAbout = line.baselineMiddle};
}

Path letters(const PlacedBalloon& balloon, const Typesetter& typesetter) {
  Path all;
  for (const CopyLine& line : balloon.lines) all.add(typesetter.outlines(typeOf(balloon, line)));
  return all;
}

/// Each contour filled by itself, so that the holes of letters show paper and not the art behind.
void fillHoles(Surface& surface, const Path& path) {
  Path contour;
  const Point* p = path.points().data();
  for (const Path::Step step : path.steps()) {
    if (step == Path::Step::Move) {
      surface.fill(contour, kPaper, FillRule::NonZero);
      contour = Path();
      contour.moveTo(*p++);
    }
    if (step == Path::Step::Line) contour.lineTo(*p++);
    if (step == Path::Step::Curve) {
      contour.curveTo(p[0], p[1], p[2]);
      p += 3;
    }
    if (step == Path::Step::Close) contour.close();
  }
  surface.fill(contour, kPaper, FillRule::NonZero);
}

/// Large and open: paper inside, a black line outside, heavier as the letters grow.
void drawOpenLetters(Surface& surface, const PlacedBalloon& balloon, const Typesetter& typesetter) {
  const Path path = letters(balloon, typesetter);
  const double line = std::clamp(balloon.sizePt * 0.02, 0.25, 0.8);
  fillHoles(surface, path);
  surface.line(path, {.ink = kPaper, .width = line * 4, .round = true});
  surface.line(path, {.ink = kBlack, .width = line * 2, .round = true});
  surface.fill(path, kPaper, FillRule::NonZero);
}

Point farthestFrom(Point centre, const Polygon& tail) {
  return *std::max_element(tail.points.begin(), tail.points.end(), [&](Point a, Point b) {
    return (a - centre).length() < (b - centre).length();
  });
}

/// Two to four bubbles with even gaps, each smaller than the one before (common practice).
std::vector<Polygon> bubblesAlong(Point start, Vector direction, double length) {
  constexpr double kSmaller = 0.7, kFilled = 0.72, kLargest = 1.5, kSmallest = 0.2, kFlat = 0.88;
  const int count = length < 3.5 ? 2 : length < 9 ? 3 : 4;
  double sum = 0;
  for (int i = 0; i < count; ++i) sum += std::pow(kSmaller, i);
  double radius = std::min(kLargest, kFilled * length / (2 * sum));
  const double gap = (length - 2 * radius * sum) / count;
  std::vector<Polygon> bubbles;
  double at = 0;
  for (int i = 0; i < count && radius > kSmallest; ++i, radius *= kSmaller) {
    const Point middle = start + direction * (at + gap + radius);
    bubbles.push_back(ellipse(middle, radius, radius * kFlat, 32));
    at += gap + 2 * radius;
  }
  return bubbles;
}

/// Bubbles that shrink from the cloud toward the thinker's head.
std::vector<Polygon> thoughtBubbles(const PlacedBalloon& balloon) {
  if (balloon.tail.points.empty()) return {};
  const Point centre = centroid(balloon.outline);
  const Point tip = farthestFrom(centre, balloon.tail);
  const auto leave = firstHit({centre, tip - centre}, balloon.outline);
  const double whole = (tip - centre).length();
  if (!leave || *leave >= whole) return {};
  const Point start = between(centre, tip, *leave / whole);
  return bubblesAlong(start, (tip - centre).unit(), whole - *leave);
}

void drawShape(Surface& surface, const Region& shape, const Pen& pen) {
  const Path path(shape);
  surface.fill(path, kPaper, FillRule::NonZero);
  surface.line(path, pen);
}

Pen penFor(const PlacedBalloon& balloon) {
  Pen pen{.ink = kBlack, .width = kBalloonLine, .round = true};
  if (balloon.kind == CopyKind::Shout) pen = {.ink = kBlack, .width = kShoutLine};
  if (balloon.kind == CopyKind::Caption || balloon.kind == CopyKind::Title)
    pen = {.ink = kBlack, .width = kCaptionLine};
  if (balloon.kind == CopyKind::Whisper) {
    pen.round = false;
    pen.dashes = {1.3, 0.8};
  }
  return pen;
}

void drawThought(Surface& surface, const PlacedBalloon& balloon) {
  const Pen pen = penFor(balloon);
  const bool plain = isConvex(balloon.outline);
  drawShape(surface, plain ? cloudAround(balloon.outline) : Region{balloon.outline}, pen);
  for (const Polygon& bubble : thoughtBubbles(balloon)) drawShape(surface, {bubble}, pen);
}

/// What stands without a tail that joins its outline.
void drawAlone(Surface& surface, const PlacedBalloon& balloon, const Typesetter& typesetter) {
  if (balloon.kind == CopyKind::Sfx) return drawOpenLetters(surface, balloon, typesetter);
  if (balloon.kind == CopyKind::Thought && !balloon.outline.points.empty())
    return drawThought(surface, balloon);
  if (!balloon.outline.points.empty())
    return drawShape(surface, {balloon.outline}, penFor(balloon));
  surface.line(letters(balloon, typesetter), {.ink = kPaper, .width = kTitleHalo, .round = true});
}

bool isJoinable(const PlacedBalloon& balloon) {
  return !balloon.outline.points.empty() &&
         (balloon.kind == CopyKind::Speech || balloon.kind == CopyKind::Whisper ||
          balloon.kind == CopyKind::Shout);
}

/// The tail of one ends within the other: a bridge between balloons of one speaker.
bool areBridged(const PlacedBalloon& a, const PlacedBalloon& b) {
  const auto ends = [](const PlacedBalloon& from, const PlacedBalloon& in) {
    return std::any_of(from.tail.points.begin(), from.tail.points.end(),
                       [&](Point p) { return contains(in.outline, p); });
  };
  return a.kind == b.kind && isJoinable(b) && (ends(a, b) || ends(b, a));
}

/// That balloon and all that hang together with it by bridges.
std::vector<std::size_t> joinedWith(const std::vector<PlacedBalloon>& balloons, std::size_t first) {
  std::vector<std::size_t> group{first};
  for (std::size_t k = 0; k < group.size(); ++k)
    for (std::size_t j = 0; j < balloons.size(); ++j)
      if (std::find(group.begin(), group.end(), j) == group.end() &&
          areBridged(balloons[group[k]], balloons[j]))
        group.push_back(j);
  return group;
}

/// The point `along` mm further on the closed outline, for growing values of `along`.
class Walk {
 public:
  explicit Walk(const Polygon& outline) : p_(outline.points) {}
  double length() const {
    double sum = 0;
    for (std::size_t i = 0; i < p_.size(); ++i) sum += side(i).length();
    return sum;
  }
  Point at(double along) {
    while (at_ < p_.size() && along - passed_ > side(at_).length()) passed_ += side(at_++).length();
    if (at_ == p_.size()) return p_.front();
    return p_[at_] + side(at_).unit() * (along - passed_);
  }

 private:
  Vector side(std::size_t i) const { return p_[(i + 1) % p_.size()] - p_[i]; }
  const std::vector<Point>& p_;
  std::size_t at_ = 0;
  double passed_ = 0;
};

/// Plain and stressed words side by side, together about the baseline's middle.
void drawStressedLine(Surface& surface, const PlacedBalloon& balloon, const CopyLine& line,
                      const Typesetter& typesetter) {
  const std::vector<EmphasisRun> runs = emphasisRuns(line.text);
  const bool plain =
      std::none_of(runs.begin(), runs.end(), [](const EmphasisRun& run) { return run.strong; });
  if (plain || balloon.kind == CopyKind::Title) return surface.type(typeOf(balloon, line));
  std::vector<double> widths;
  double whole = 0;
  for (const EmphasisRun& run : runs) {
    const Face face = run.strong ? Face::BoldItalic : Face::Bold;
    widths.push_back(typesetter.widthOf(run.text, face, balloon.sizePt));
    whole += widths.back();
  }
  double at = -whole / 2;
  for (std::size_t i = 0; i < runs.size(); at += widths[i++]) {
    TypeLine type = typeOf(balloon, line);
    type.text = runs[i].text;
    type.face = runs[i].strong ? Face::BoldItalic : Face::Bold;
    type.align = Align::Left;
    type.at = line.baselineMiddle + Vector{at, 0};
    surface.type(type);
  }
}

}  // namespace

Region cloudAround(const Polygon& outline) {
  const double radius = std::clamp(std::sqrt(area(outline)) * 0.13, 1.1, 2.6);
  const Region core = offset({outline}, -radius * 0.35);
  if (core.empty()) return {outline};
  std::vector<Polygon> shapes{core.begin(), core.end()};
  Walk walk(core.front());
  const double length = walk.length();
  const int bumps = std::max(6, static_cast<int>(length / (radius * 1.55)));
  // Unlike neighbours look drawn, like ones look stamped.
  constexpr double breath[] = {1.0, 0.86, 1.08, 0.92, 1.12};
  for (int i = 0; i < bumps; ++i) {
    const double r = radius * breath[i % 5];
    shapes.push_back(ellipse(walk.at(length * i / bumps), r, r, 32));
  }
  const Region all = united(shapes);
  // Gaps between bumps and core would be holes; the cloud is its outer outline alone.
  return {*std::max_element(all.begin(), all.end(),
                            [](const Polygon& a, const Polygon& b) { return area(a) < area(b); })};
}

void drawBalloonShapes(Surface& surface, const std::vector<PlacedBalloon>& balloons,
                       const Typesetter& typesetter) {
  std::vector<bool> done(balloons.size(), false);
  for (std::size_t i = 0; i < balloons.size(); ++i) {
    if (done[i] || balloons[i].lines.empty()) continue;
    if (!isJoinable(balloons[i])) {
      drawAlone(surface, balloons[i], typesetter);
      continue;
    }
    std::vector<Polygon> parts;
    for (const std::size_t each : joinedWith(balloons, i)) {
      done[each] = true;
      parts.push_back(balloons[each].outline);
      if (!balloons[each].tail.points.empty()) parts.push_back(balloons[each].tail);
    }
    drawShape(surface, united(parts), penFor(balloons[i]));
  }
}

void drawBalloonType(Surface& surface, const PlacedBalloon& balloon, const Typesetter& typesetter) {
  if (balloon.kind == CopyKind::Sfx) return;
  for (const CopyLine& line : balloon.lines) drawStressedLine(surface, balloon, line, typesetter);
}

}  // namespace tw
