#include "press/overlays.h"

#include <fmt/format.h>

#include <algorithm>

#include "geometry/polygon.h"
#include "press/in_words.h"
#include "press/number_places.h"

namespace tw {

namespace {

constexpr double kNumberRadius = 2.0, kNumberPt = 7.5;
constexpr double kMarkGap = 1.2, kMarkLength = 4.4, kHairline = 0.1;
constexpr double kKeyPt = 6.5;
constexpr double kLeadLine = 0.32, kArrowLength = 2.8, kArrowHalfWidth = 0.75;
constexpr double kLongestLead = 42, kLeadPastBorder = 2.6;
constexpr double kHatchStep = 2.2;

Path lineBetween(Point a, Point b) {
  Path path;
  path.add({a, b}, false);
  return path;
}

void drawNumber(Surface& surface, Point at, const std::string& text, double magnify) {
  const double r = kNumberRadius * magnify;
  surface.fill(Path(ellipse(at, r * 1.16, r * 1.16, 40)), kPaper, FillRule::NonZero);
  surface.fill(Path(ellipse(at, r, r, 40)), kOrderInk, FillRule::NonZero);
  const double size = kNumberPt * magnify;
  surface.type({.text = text,
                .face = Face::Bold,
                .sizePt = size,
                .at = at + Vector{0, size * kMmPerPt * 0.34},
                .align = Align::Centre,
                .ink = kPaper});
}

void drawArrow(Surface& surface, Point from, Vector direction, double length, Ink ink) {
  const Vector d = direction.unit(), side{-d.y, d.x};
  const Point tip = from + d * length, neck = tip - d * (kArrowLength * 0.8);
  Path shaft;
  shaft.add({from, neck}, false);
  const Polygon head{{tip, tip - d * kArrowLength + side * kArrowHalfWidth, neck,
                      tip - d * kArrowLength - side * kArrowHalfWidth}};
  surface.line(shaft, {.ink = kPaper, .width = kLeadLine + 0.6, .round = true});
  surface.line(Path(head), {.ink = kPaper, .width = 0.6, .round = true});
  surface.line(shaft, {.ink = ink, .width = kLeadLine});
  surface.fill(Path(head), ink, FillRule::NonZero);
}

void drawRing(Surface& surface, Point at, double radius, Ink ink) {
  const Path ring(ellipse(at, radius, radius, 32));
  surface.fill(ring, kPaper, FillRule::NonZero);
  surface.line(ring, {.ink = ink, .width = kLeadLine, .round = true});
}

void drawLead(Surface& surface, const RoughPanel& panel) {
  const Vector d = panel.lead.direction.unit();
  if (d.length() == 0) return;
  const double toBorder = firstHit({panel.lead.from, d}, panel.outline).value_or(kLongestLead / 2);
  const double length = std::clamp(toBorder + kLeadPastBorder, 2 * kArrowLength, kLongestLead);
  drawArrow(surface, panel.lead.from, d, length, kLeadInk);
  drawRing(surface, panel.lead.from, 0.75, kLeadInk);
}

/// A smooth line through the points: Catmull and Rom's, as Bézier pieces.
Path curveThrough(const std::vector<Point>& p) {
  Path path;
  path.moveTo(p.front());
  for (std::size_t i = 0; i + 1 < p.size(); ++i) {
    const Point before = p[i > 0 ? i - 1 : i], after = p[std::min(i + 2, p.size() - 1)];
    path.curveTo(p[i] + (p[i + 1] - before) * (1.0 / 6), p[i + 1] - (after - p[i]) * (1.0 / 6),
                 p[i + 1]);
  }
  return path;
}

void drawDots(Surface& surface, const Path& path) {
  surface.line(path, {.ink = kPaper, .width = 1.05, .dashes = {0.01, 1.5}, .round = true});
  surface.line(path, {.ink = kEyeInk, .width = 0.6, .dashes = {0.01, 1.5}, .round = true});
}

void drawHatch(Surface& surface, const Rect& rect) {
  surface.clip(Path(rect), FillRule::NonZero);
  Path lines;
  const double reach = rect.height();
  for (double x = rect.min.x - reach; x < rect.max.x; x += kHatchStep)
    lines.add({{x, rect.max.y}, {x + reach, rect.min.y}}, false);
  surface.line(lines, {.ink = kSheetInk, .width = 0.18});
  surface.unclip();
  surface.line(Path(rect), {.ink = kSheetInk, .width = 0.25});
}

/// Hatched, with its name on a clean patch.
void drawZone(Surface& surface, const KeepClear& zone, const Typesetter& typesetter) {
  drawHatch(surface, zone.rect);
  drawOnPatch(surface, zone.rect.centre(), "keep clear: " + zone.name, kSheetInk, typesetter);
}

/// The fold itself, and the strip on both sides of it that the binding swallows.
void drawFold(Surface& surface, const Sheet& sheet) {
  const Rect strip = sheet.foldRect();
  const double fold = strip.centre().x;
  surface.line(lineBetween({fold, 0}, {fold, sheet.trimHeight}),
               {.ink = kSheetInk, .width = 0.2, .dashes = {4, 1, 0.6, 1}});
  for (const double x : {strip.min.x, strip.max.x})
    surface.line(lineBetween({x, 0}, {x, sheet.trimHeight}),
                 {.ink = kSheetInk, .width = 0.2, .dashes = {0.6, 1.6}});
}

TypeLine keyWord(const std::string& text, Point at, Ink ink) {
  return {.text = text, .sizePt = kKeyPt, .at = at, .ink = ink};
}

double keyLineAbove(const RoughPicture& picture) {
  return picture.sheet.bleedRect().min.y - kSlugMm / 2;
}
double keyLineBelow(const RoughPicture& picture) {
  return picture.sheet.bleedRect().max.y + kSlugMm / 2;
}

/// Everything but the copy: what is drawn now runs beneath the balloons.
void clipToArt(Surface& surface, const RoughPicture& picture, const Typesetter& typesetter) {
  std::vector<Polygon> copy;
  for (const RoughPanel& panel : picture.rough.panels)
    for (const Polygon& shape : copyShapes(panel, typesetter)) copy.push_back(shape);
  Path art(picture.sheet.bleedRect().outset(kSlugMm));
  if (!copy.empty()) art.add(Path(united(copy)));
  surface.clip(art, FillRule::EvenOdd);
}

}  // namespace

void drawOnPatch(Surface& surface, Point at, const std::string& text, Ink ink,
                 const Typesetter& typesetter) {
  const double half = typesetter.widthOf(text, Face::Bold, kKeyPt) / 2 + 0.8;
  surface.fill(Path(Rect{at - Vector{half, 1.6}, at + Vector{half, 1.6}}), kPaper,
               FillRule::NonZero);
  surface.type({.text = text,
                .face = Face::Bold,
                .sizePt = kKeyPt,
                .at = at + Vector{0, 0.8},
                .align = Align::Centre,
                .ink = ink});
}

std::vector<std::size_t> expectedOrder(const Rough& rough) {
  const std::size_t n = rough.panels.size();
  std::vector<std::size_t> order;
  std::vector<bool> seen(n, false);
  for (const int panel : rough.reading.order) {
    const std::size_t i = static_cast<std::size_t>(panel) - 1;
    if (panel < 1 || i >= n || seen[i]) continue;
    seen[i] = true;
    order.push_back(i);
  }
  for (std::size_t i = 0; i < n; ++i)
    if (!seen[i]) order.push_back(i);
  return order;
}

void OrderNumbers::drawOn(Surface& surface, double) const {
  const std::vector<Point> places = numberPlaces(picture_, typesetter_, kNumberRadius * magnify_);
  for (std::size_t i = 0; i < places.size(); ++i)
    drawNumber(surface, places[i], fmt::format("{}", i + 1), magnify_);
}

void drawOrderKey(Surface& surface, const RoughPicture& picture) {
  const Point at{picture.sheet.trimRect().min.x + 4, keyLineAbove(picture)};
  drawNumber(surface, at, "1", 0.75);
  surface.type(keyWord("panel order", at + Vector{2.6, 0.8}, kOrderInk));
}

void drawLeads(Surface& surface, const RoughPicture& picture, const Typesetter& typesetter) {
  const Rough& rough = picture.rough;
  clipToArt(surface, picture, typesetter);
  std::vector<Point> foci;
  for (const std::size_t i : expectedOrder(rough)) foci.push_back(rough.panels[i].focus);
  if (foci.size() > 1) drawDots(surface, curveThrough(foci));
  for (const RoughPanel& panel : rough.panels) drawLead(surface, panel);
  surface.unclip();
  const Point lead{picture.sheet.trimRect().min.x + 24, keyLineAbove(picture)};
  drawArrow(surface, lead, {1, 0}, 7, kLeadInk);
  drawRing(surface, lead, 0.75, kLeadInk);
  surface.type(keyWord("lead", lead + Vector{8.2, 0.8}, kLeadInk));
  const Point eye = lead + Vector{18, 0};
  drawDots(surface, lineBetween(eye, eye + Vector{7.6, 0}));
  surface.type(keyWord("path of the eye", eye + Vector{9, 0.8}, kEyeInk));
}

void drawSheetLines(Surface& surface, const RoughPicture& picture, const Typesetter& typesetter) {
  const Sheet& sheet = picture.sheet;
  const Pen live{.ink = kSheetInk, .width = 0.3, .dashes = {2.4, 1.4}};
  const Pen trim{.ink = kSheetInk, .width = kHairline};
  for (const KeepClear& zone : picture.keepClear) drawZone(surface, zone, typesetter);
  surface.line(Path(sheet.liveRect(picture.rightHand)), live);
  surface.line(Path(sheet.trimRect()), trim);
  if (sheet.spread) drawFold(surface, sheet);
  const Point key{sheet.trimWidth - 3, keyLineBelow(picture)};
  surface.line(lineBetween(key - Vector{38, 0}, key - Vector{31, 0}), live);
  surface.type(keyWord("live area", key + Vector{-29.6, 0.8}, kSheetInk));
  surface.line(lineBetween(key - Vector{15, 0}, key - Vector{8, 0}), trim);
  surface.type(keyWord("trim", key + Vector{-6.6, 0.8}, kSheetInk));
}

void drawTrimMarks(Surface& surface, const RoughPicture& picture, const Typesetter& typesetter) {
  const Rect trim = picture.sheet.trimRect(), bleed = picture.sheet.bleedRect();
  Path marks;
  for (const double x : {trim.min.x, trim.max.x}) {
    marks.add({{x, bleed.min.y - kMarkGap}, {x, bleed.min.y - kMarkGap - kMarkLength}}, false);
    marks.add({{x, bleed.max.y + kMarkGap}, {x, bleed.max.y + kMarkGap + kMarkLength}}, false);
  }
  for (const double y : {trim.min.y, trim.max.y}) {
    marks.add({{bleed.min.x - kMarkGap, y}, {bleed.min.x - kMarkGap - kMarkLength, y}}, false);
    marks.add({{bleed.max.x + kMarkGap, y}, {bleed.max.x + kMarkGap + kMarkLength, y}}, false);
  }
  surface.line(marks, {.ink = kBlack, .width = kHairline});
  const std::string name =
      fmt::format("{} · {} · rough {}", picture.jobTitle, pageInWords(picture), picture.rough.name);
  const double room = picture.sheet.trimWidth - 56;
  surface.type(keyWord(typesetter.shortened(name, Face::Regular, kKeyPt, room),
                       {trim.min.x + 3, keyLineBelow(picture) + 0.8}, greyOf(0.7)));
}

}  // namespace tw
