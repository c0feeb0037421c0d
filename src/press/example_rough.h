// A rough drawn by hand in code, for this folder's tests and timings only: invented figures made
// of ellipses and pen lines, every kind of copy, a ground panel or a plain page.
#pragma once

#include <cmath>
#include <string>
#include <vector>

#include "base/random.h"
#include "geometry/polygon.h"
#include "press/proof.h"

namespace tw::example {

inline Sheet usSheet() {
  Sheet sheet;
  sheet.name = "example";
  sheet.title = "US comic book, 6⅝ × 10¼ in";
  sheet.trimWidth = 168.275;
  sheet.trimHeight = 260.35;
  sheet.bleed = 3.175;
  sheet.live = {6.35, 6.35, 6.35, 6.35};
  return sheet;
}

inline Stroke penLine(std::vector<Point> points, double width, double darkness = 1) {
  Stroke stroke{std::move(points), {}, darkness};
  const double n = static_cast<double>(stroke.points.size() - 1);
  for (std::size_t i = 0; i < stroke.points.size(); ++i) {
    const double t = n > 0 ? static_cast<double>(i) / n : 0.5;
    stroke.widths.push_back(width * (0.35 + 0.65 * std::sin(t * 3.14159265)));
  }
  return stroke;
}

inline Stroke arc(Point c, double rx, double ry, double from, double to, double width,
                  double darkness = 1) {
  std::vector<Point> points;
  for (int i = 0; i <= 40; ++i) {
    const double a = from + (to - from) * i / 40;
    points.push_back({c.x + rx * std::cos(a), c.y + ry * std::sin(a)});
  }
  return penLine(std::move(points), width, darkness);
}

/// A standing figure of that height with its feet at `feet`.
inline void addFigure(Drawing& d, Point feet, double height, double dark) {
  const double u = height / 8;
  const auto blob = [&](Point c, double rx, double ry) {
    d.tones.push_back({{ellipse(c, rx, ry)}, dark});
    d.strokes.push_back(arc(c, rx, ry, 0, 6.2831853, u * 0.09));
  };
  d.tones.push_back({{ellipse(feet, u * 1.6, u * 0.22)}, 0.45});
  blob(feet + Vector{-u * 0.5, -u * 2}, u * 0.42, u * 2.1);
  blob(feet + Vector{u * 0.5, -u * 2}, u * 0.42, u * 2.1);
  blob(feet + Vector{0, -u * 5.2}, u * 1.0, u * 1.7);
  blob(feet + Vector{-u * 1.3, -u * 5}, u * 0.3, u * 1.6);
  blob(feet + Vector{u * 1.3, -u * 5.1}, u * 0.3, u * 1.6);
  d.tones.push_back({{ellipse(feet + Vector{0, -u * 7.5}, u * 0.42, u * 0.55)}, 0.02});
  d.strokes.push_back(arc(feet + Vector{0, -u * 7.5}, u * 0.42, u * 0.55, 0, 6.2831853, u * 0.1));
}

/// A horizon, a figure, and `lines` strokes of 40 points for ground and rain.
inline Drawing picture(const Polygon& outline, int lines, std::uint64_t seed, double figure = 0.7) {
  Drawing d;
  d.clip = {outline};
  const Rect box = bounds(outline);
  Random random(seed);
  const double horizon = box.min.y + box.height() * 0.55;
  d.tones.push_back({{polygonOf(box)}, 0.06});
  d.tones.push_back({{polygonOf({{box.min.x, horizon}, box.max})}, 0.2});
  d.strokes.push_back(penLine({{box.min.x, horizon}, {box.max.x, horizon}}, 0.25, 0.6));
  for (int i = 0; i < lines; ++i) {
    const Point at{box.min.x + random.uniform() * box.width(),
                   box.min.y + random.uniform() * box.height()};
    const double r = 2 + 12 * random.uniform(), a = 6 * random.uniform();
    d.strokes.push_back(arc(at, r, r * 0.5, a, a + 1 + random.uniform(),
                            0.12 + 0.2 * random.uniform(), i < lines / 2 ? 0.5 : 1));
  }
  addFigure(d, {box.centre().x, box.max.y - box.height() * 0.1}, box.height() * figure, 0.35);
  return d;
}

inline PlacedBalloon balloon(CopyKind kind, Point centre, std::vector<std::string> lines,
                             Point mouth) {
  PlacedBalloon b;
  b.kind = kind;
  b.sizePt = kind == CopyKind::Sfx ? 30 : kind == CopyKind::Title ? 22 : 7.5;
  const double leading = b.sizePt * 25.4 / 72 * 1.12;
  double longest = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const double y =
        centre.y + (static_cast<double>(i) - static_cast<double>(lines.size()) / 2 + 0.8) * leading;
    b.lines.push_back({lines[i], {centre.x, y}});
    longest = std::max(longest, static_cast<double>(lines[i].size()));
  }
  const double w = longest * 1.75 + 4, h = static_cast<double>(lines.size()) * leading + 3;
  if (kind == CopyKind::Sfx || kind == CopyKind::Title) {
    b.turnDeg = kind == CopyKind::Sfx ? -12 : 0;
    return b;
  }
  if (kind == CopyKind::Caption) {
    b.outline =
        polygonOf({{centre.x - w / 2, centre.y - h / 2}, {centre.x + w / 2, centre.y + h / 2}});
    return b;
  }
  b.outline = ellipse(centre, w * 0.66, h * 0.78, 64);
  const Vector d = (mouth - centre).unit(), side{-d.y, d.x};
  const Point tip = between(centre, mouth, 0.8);
  b.tail = {{centre + side * 1.5, tip, centre - side * 1.5}};
  return b;
}

inline RoughPanel panel(Rect rect, const Rect& trim, double bleed) {
  RoughPanel p;
  if (rect.min.x <= trim.min.x) rect.min.x = trim.min.x - bleed;
  if (rect.min.y <= trim.min.y) rect.min.y = trim.min.y - bleed;
  if (rect.max.x >= trim.max.x) rect.max.x = trim.max.x + bleed;
  if (rect.max.y >= trim.max.y) rect.max.y = trim.max.y + bleed;
  p.outline = polygonOf(rect);
  p.focus = {rect.centre().x, rect.min.y + rect.height() * 0.35};
  p.lead = {p.focus, Vector{1, 0.25}.unit(), 0.7, "looks"};
  return p;
}

inline std::vector<CardLine> card() {
  return {
      {"head size", 0.62, "Mara's head is 7.1 mm high in panel 3, 9 mm are asked for.",
       "Take panel 3 closer, a medium shot gives 11 mm.", 3},
      {"handed on", 0.41, "The lead of panel 2 leaks off the right edge of the sheet.",
       "Mirror panel 2, or aim its camera from the other side.", 2},
      {"rhythm", 0.22, "Three medium shots follow each other.", "Open panel 4 to a long shot.", 4},
      {"copy", 0.12, "The caption covers part of the lantern.", "", 1},
      {"cuts", 0, "", "", 0},
      {"order", 0, "", "", 0}};
}

/// kind 0: four tiers; 1: a ground panel with insets; 2: bled, slanted gutter.
inline RoughPicture rough(int kind, const std::string& name, int lines = 24) {
  RoughPicture page;
  page.sheet = usSheet();
  page.page = 3;
  page.jobTitle = "The Bell Below";
  page.rough.name = name;
  page.rough.score = 1.37 + 0.21 * (name[0] - 'A');
  page.rough.treatment = kind == 1 ? "ground" : kind == 2 ? "slanted" : "plain";
  page.rough.arrangement = kind == 1 ? "[(1 2) 3 (4 5)]" : "[(1 2) 3 (4 5 6)]";
  page.rough.card = card();
  page.rough.reading = {{1, 2, 3, 4, 5, 6}, 0.92, 0.71};
  const Rect trim = page.sheet.trimRect();
  auto& panels = page.rough.panels;
  const auto add = [&](Rect rect) { panels.push_back(panel(rect, trim, page.sheet.bleed)); };
  if (kind == 1) {
    add({{6.35, 6.35}, {64, 70}});
    add({{68, 6.35}, {161.9, 60}});
    add({{0, 0}, {168.275, 260.35}});
    panels.back().ground = panels.back().dominant = true;
    add({{6.35, 200}, {55, 254}});
    add({{110, 196}, {161.9, 254}});
  } else {
    add({{6.35, 6.35}, {80, 84}});
    add({{84, 6.35}, {161.9, 84}});
    add({{6.35, 88}, {161.9, 170}});
    add({{6.35, 174}, {60, 254}});
    add({{64, 174}, {110, 254}});
    add(kind == 2 ? Rect{{114, 174}, {168.275, 260.35}} : Rect{{114, 174}, {161.9, 254}});
    if (kind == 2) {
      panels[3].outline.points[1].x += 6;
      panels[3].outline.points[2].x -= 6;
      panels[4].outline.points[0].x += 6;
      panels[4].outline.points[3].x -= 6;
    }
  }
  for (std::size_t i = 0; i < panels.size(); ++i)
    page.panels.push_back(picture(panels[i].outline, lines,
                                  7 * i + static_cast<std::uint64_t>(kind),
                                  panels[i].ground ? 0.5 : 0.7));
  const auto say = [&](std::size_t at, CopyKind k, Vector from, std::vector<std::string> words) {
    panels[at].balloons.push_back(
        balloon(k, bounds(panels[at].outline).min + from, std::move(words), panels[at].focus));
  };
  say(0, CopyKind::Caption, {28, 10}, {"THE TIDE KEEPS ITS", "OWN HOURS."});
  say(0, CopyKind::Speech, {22, 34}, {"YOU HEAR", "THAT?"});
  say(1, CopyKind::Whisper, {24, 14}, {"NOT SO LOUD.", "IT LISTENS."});
  say(2, CopyKind::Sfx, {kind == 1 ? 100.0 : 120.0, kind == 1 ? 120.0 : 30.0}, {"DOOM"});
  say(2, CopyKind::Thought, {kind == 1 ? 45.0 : 32.0, kind == 1 ? 110.0 : 22.0},
      {"ONE STROKE FOR", "EVERY BOAT THAT", "NEVER CAME HOME."});
  say(3, CopyKind::Shout, {25, 16}, {"PULL!", "NOW!"});
  page.keepClear = {{"logo", {{110, 4}, {164, 30}}}};
  return page;
}

}  // namespace tw::example
