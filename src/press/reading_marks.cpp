#include "press/reading_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "geometry/polygon.h"
#include "press/finding_mark.h"
#include "press/finding_places.h"
#include "press/number_places.h"
#include "press/overlays.h"

namespace tw {

namespace {

constexpr double kCellMm = 2.2, kSpreadMm = 3.2;  // of the heat
constexpr double kLeastHeat = 0.06;
constexpr Ink kHeatInk{0.86, 0.62, 0.30};
constexpr double kMarkMm = kFindingMarkMm, kKeyPt = 6.5;
constexpr double kPathMm = 0.22, kInCopyMm = 0.09;
constexpr double kLongJumpMm = 20;  // from here on a jump wears an arrow head
constexpr double kTurnPt = 7;
constexpr double kBend = 0.12;  // of a bow, of its length

/// How long eyes rest around each cell of a grid over the page, the most 1.
class Heat {
 public:
  Heat(const Rect& page, const std::vector<EyeRest>& rests)
      : page_(page),
        width_(std::max(1, static_cast<int>(page.width() / kCellMm))),
        height_(std::max(1, static_cast<int>(page.height() / kCellMm))),
        value_(static_cast<std::size_t>(width_ * height_)) {
    for (const EyeRest& rest : rests) add(rest);
    const double most = *std::ranges::max_element(value_);
    if (most > 0)
      for (double& v : value_) v /= most;
  }

  template <class Visit>
  void each(Visit visit) const {
    for (int y = 0; y < height_; ++y)
      for (int x = 0; x < width_; ++x) visit(middle(x, y), value_[index(x, y)]);
  }

 private:
  std::size_t index(int x, int y) const { return static_cast<std::size_t>(y * width_ + x); }
  Point middle(int x, int y) const {
    return page_.min + Vector{(x + 0.5) * kCellMm, (y + 0.5) * kCellMm};
  }
  void add(const EyeRest& rest) {
    const int reach = static_cast<int>(3 * kSpreadMm / kCellMm);
    const int cx = static_cast<int>((rest.at.x - page_.min.x) / kCellMm);
    const int cy = static_cast<int>((rest.at.y - page_.min.y) / kCellMm);
    for (int y = std::max(0, cy - reach); y <= std::min(height_ - 1, cy + reach); ++y)
      for (int x = std::max(0, cx - reach); x <= std::min(width_ - 1, cx + reach); ++x) {
        const double d = (middle(x, y) - rest.at).length() / kSpreadMm;
        value_[index(x, y)] += rest.milliseconds * std::exp(-d * d / 2);
      }
  }

  Rect page_;
  int width_, height_;
  std::vector<double> value_;
};

Point centreOf(const RoughPicture& picture, int panel) {
  const Rect trim = picture.sheet.trimRect();
  if (panel <= 0 && picture.direction == ReadingDirection::RightToLeft)
    return {trim.max.x - 4, trim.min.y + 4};
  if (panel <= 0) return trim.min + Vector{4, 4};
  return bounds(picture.rough.panels[static_cast<std::size_t>(panel) - 1].outline).centre();
}

/// Middle of the bow from one place to the other.
Point middleOfBow(Point from, Point to) {
  const Vector way = to - from;
  return between(from, to, 0.5) + Vector{-way.y, way.x} * (0.75 * kBend);
}

/// A dashed bow with an arrow head.
void drawBow(Surface& surface, Point from, Point to) {
  const Vector along = (to - from).unit(), side{-along.y, along.x};
  const double bend = kBend * (to - from).length();
  Path bow;
  bow.moveTo(from);
  bow.curveTo(from + (to - from) * 0.33 + side * bend, from + (to - from) * 0.67 + side * bend, to);
  surface.line(bow, {.ink = kPaper, .width = 1.1, .round = true});
  surface.line(bow, {.ink = kLeadInk, .width = 0.45, .dashes = {1.8, 1.1}});
  const Vector in = (to - (from + (to - from) * 0.67 + side * bend)).unit(), across{-in.y, in.x};
  const Polygon head{{to, to - in * 3 + across, to - in * 3 - across}};
  surface.fill(Path(head), kLeadInk, FillRule::NonZero);
}

/// What the path lies on.
class PathGround {
 public:
  PathGround(const RoughPicture& picture, const Typesetter& typesetter) : picture_(picture) {
    for (const RoughPanel& panel : picture.rough.panels)
      for (Polygon& shape : copyShapes(panel, typesetter)) copy_.push_back(std::move(shape));
  }

  /// Index of the panel, insets before the one that they lie on; −1 for none.
  int panelAt(Point p) const {
    int found = -1;
    const auto& panels = picture_.rough.panels;
    for (std::size_t i = 0; i < panels.size(); ++i)
      if (contains(panels[i].outline, p) && (found < 0 || !panels[i].ground))
        found = static_cast<int>(i);
    return found;
  }

  /// Both on the same piece of copy.
  bool isInCopy(Point a, Point b) const {
    return std::ranges::any_of(
        copy_, [&](const Polygon& shape) { return contains(shape, a) && contains(shape, b); });
  }

  bool isOnCopy(Point p, double radius) const {
    return std::ranges::any_of(copy_, [&](const Polygon& shape) {
      return contains(shape, p) || distanceToOutline(shape, p) < radius;
    });
  }

 private:
  const RoughPicture& picture_;
  std::vector<Polygon> copy_;
};

Path lineBetween(Point a, Point b) {
  Path path;
  path.add({a, b}, false);
  return path;
}

double dotRadius(const EyeRest& rest) {
  return std::clamp(0.045 * std::sqrt(rest.milliseconds), 0.35, 1.5);
}

void drawDot(Surface& surface, const EyeRest& rest) {
  const double r = dotRadius(rest);
  const Path dot(ellipse(rest.at, r, r, 24));
  // A bare ring on copy, so that letters show through.
  if (!rest.onCopy) surface.fill(dot, kEyeInk, FillRule::NonZero);
  surface.line(dot, {.ink = kEyeInk, .width = kPathMm});
}

void drawHead(Surface& surface, Point tip, Vector along) {
  const Vector side{-along.y, along.x};
  const Polygon head{
      {tip, tip - along * 3.4 + side * 1.1, tip - along * 2.7, tip - along * 3.4 - side * 1.1}};
  surface.line(Path(head), {.ink = kPaper, .width = 0.5});
  surface.fill(Path(head), kEyeInk, FillRule::NonZero);
}

/// Part of the way along a jump, so that it points where no dot and no copy hides it.
void drawJumpHead(Surface& surface, Point from, Point to, const PathGround& ground) {
  constexpr double kPlaces[] = {0.62, 0.5, 0.74, 0.4, 0.84};
  const auto isFree = [&](double share) {
    const Point tip = between(from, to, share);
    return !ground.isOnCopy(tip - (to - from).unit() * 1.7, 2);
  };
  const auto* free = std::ranges::find_if(kPlaces, isFree);
  drawHead(surface, between(from, to, free == std::end(kPlaces) ? kPlaces[0] : *free),
           (to - from).unit());
}

/// With a rim of paper, but not where it would rub out letters.
void drawJump(Surface& surface, const EyeRest& from, const EyeRest& to) {
  const Path line = lineBetween(from.at, to.at);
  if (!from.onCopy && !to.onCopy) surface.line(line, {.ink = kPaper, .width = 0.7, .round = true});
  surface.line(line, {.ink = kEyeInk, .width = kPathMm, .round = true});
}

/// Beside the dot, on a scrap of paper; the how-manieth panel of the path this is.
void drawTurnNumber(Surface& surface, const EyeRest& rest, std::size_t number,
                    const Typesetter& typesetter) {
  const std::string text = fmt::format("{}", number);
  const double half = typesetter.widthOf(text, Face::Bold, kTurnPt) / 2 + 0.5;
  const Point at = rest.at + Vector{dotRadius(rest) + half + 0.5, -dotRadius(rest) - 0.8};
  surface.fill(Path(ellipse(at, half + 0.4, 1.55, 24)), kPaper, FillRule::NonZero);
  surface.type({.text = text,
                .face = Face::Bold,
                .sizePt = kTurnPt,
                .at = at + Vector{0, 0.35 * kTurnPt * kMmPerPt},
                .align = Align::Centre,
                .ink = kEyeInk});
}

/// One line of keys in the slug, from left to right.
class Key {
 public:
  Key(Surface& surface, const RoughPicture& picture, const Typesetter& typesetter)
      : surface_(surface),
        typesetter_(typesetter),
        at_{picture.sheet.trimRect().min.x + 3, picture.sheet.bleedRect().min.y - kSlugMm / 2} {}

  Surface& surface() { return surface_; }
  Point at(double ahead = 0) const { return at_ + Vector{ahead, 0}; }

  /// What was drawn is that wide; then what it means.
  void word(double wide, const std::string& text, Ink ink) {
    at_.x += wide + 1;
    surface_.type({.text = text, .sizePt = kKeyPt, .at = at_ + Vector{0, 0.8}, .ink = ink});
    at_.x += typesetter_.widthOf(text, Face::Regular, kKeyPt) + 3.6;
  }

 private:
  Surface& surface_;
  const Typesetter& typesetter_;
  Point at_;
};

void keyOfHeat(Key& key) {
  for (int i = 0; i < 3; ++i) {
    const double r = 0.35 + 0.3 * i;
    key.surface().fill(Path(ellipse(key.at(0.4 + 2.1 * i), r, r, 16)), kHeatInk, FillRule::NonZero);
  }
  key.word(5.6, "where eyes rest off copy", kEyeInk);
}

void keyOfPath(Key& key) {
  const EyeRest first{key.at(1), 250, false}, second{key.at(11), 230, true};
  drawJump(key.surface(), first, second);
  drawHead(key.surface(), key.at(7.5), {1, 0});
  drawDot(key.surface(), first);
  drawDot(key.surface(), second);
  key.word(11.5, "one reader's path, open on copy, panels in turn", kEyeInk);
}

void keyOfFindings(Key& key, const std::vector<Finding>& findings) {
  const auto mark = [&](Severity severity, bool silenced, const std::string& name) {
    drawFindingMark(key.surface(), key.at(kMarkMm), severity, 0, silenced);
    key.word(2 * kMarkMm + 0.6, name, silenced ? greyOf(0.6) : kBlack);
  };
  for (const Severity severity : {Severity::Must, Severity::Should, Severity::Look})
    if (std::ranges::any_of(findings, [&](const Finding& f) { return f.severity == severity; }))
      mark(severity, false, std::string(nameOf(severity)));
  const auto silenced =
      std::ranges::find_if(findings, [](const Finding& f) { return !f.silencedWhy.empty(); });
  if (silenced != findings.end()) mark(silenced->severity, true, "silenced");
}

}  // namespace

void drawRests(Surface& surface, const RoughPicture& picture, const std::vector<EyeRest>& rests,
               const Typesetter& typesetter) {
  if (rests.empty()) return;
  const PathGround ground(picture, typesetter);
  std::vector<EyeRest> seen;
  for (const EyeRest& rest : rests)
    if (!ground.isOnCopy(rest.at, 0)) seen.push_back(rest);
  if (seen.empty()) return;
  Heat(picture.sheet.trimRect(), seen).each([&](Point at, double heat) {
    const double r = 0.42 * kCellMm * std::sqrt(heat);
    if (heat < kLeastHeat || ground.panelAt(at) < 0 || ground.isOnCopy(at, r)) return;
    surface.fill(Path(ellipse(at, r, r, 12)), kHeatInk, FillRule::NonZero);
  });
}

void drawPath(Surface& surface, const RoughPicture& picture, const std::vector<EyeRest>& path,
              const Typesetter& typesetter) {
  const PathGround ground(picture, typesetter);
  for (std::size_t i = 1; i < path.size(); ++i) {
    const EyeRest &from = path[i - 1], &to = path[i];
    if (ground.isInCopy(from.at, to.at)) {
      surface.line(lineBetween(from.at, to.at), {.ink = kEyeInk, .width = kInCopyMm});
      continue;
    }
    drawJump(surface, from, to);
    if ((to.at - from.at).length() > kLongJumpMm) drawJumpHead(surface, from.at, to.at, ground);
  }
  for (const EyeRest& rest : path) drawDot(surface, rest);
  std::vector<int> visited;
  for (const EyeRest& rest : path) {
    const int panel = ground.panelAt(rest.at);
    if (panel < 0 || std::ranges::find(visited, panel) != visited.end()) continue;
    visited.push_back(panel);
    drawTurnNumber(surface, rest, visited.size(), typesetter);
  }
}

void drawPartings(Surface& surface, const RoughPicture& picture,
                  const std::vector<PanelMove>& partings, const Typesetter& typesetter) {
  for (const PanelMove& move : partings) {
    const Point from = centreOf(picture, move.from), to = centreOf(picture, move.to);
    if ((to - from).length() < 8) continue;
    drawBow(surface, from, to);
    drawOnPatch(surface, middleOfBow(from, to), fmt::format("{:.0f} %", 100 * move.share), kLeadInk,
                typesetter);
  }
}

void drawFindingMarks(Surface& surface, const RoughPicture& picture,
                      const std::vector<Finding>& findings, const Typesetter& typesetter) {
  for (const PlacedMark& mark : findingPlaces(picture, findings, typesetter)) {
    const Finding& finding = findings[mark.finding];
    drawFindingMark(surface, mark.at, finding.severity, mark.finding + 1,
                    !finding.silencedWhy.empty());
  }
}

void drawReadingKey(Surface& surface, const RoughPicture& picture, const ReadingSheet& sheet,
                    const Typesetter& typesetter) {
  Key key(surface, picture, typesetter);
  if (!sheet.rests.empty()) keyOfHeat(key);
  if (!sheet.path.empty()) keyOfPath(key);
  if (!sheet.partings.empty()) {
    drawBow(surface, key.at(), key.at(8));
    key.word(8, "readers part", kLeadInk);
  }
  keyOfFindings(key, sheet.findings);
}

}  // namespace tw
