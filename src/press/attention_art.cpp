#include "press/attention_art.h"

#include <algorithm>
#include <cmath>

#include "base/files.h"
#include "geometry/polygon.h"
#include "press/png_surface.h"
#include "press/surface.h"
#include "press/typesetter.h"

namespace tw {

namespace {

constexpr double kDpi = 130;
constexpr double kMargin = 8, kHead = 10, kLineMm = 4.4, kLegendMm = 6;
constexpr double kTitlePt = 14, kTextPt = 9, kNumberPt = 10;
constexpr double kDim = 0.45;       // of the page's own contrast is kept
constexpr double kMostHeat = 0.85;  // of the heat's colour at its hottest
constexpr double kHeatPower = 1.6;  // keeps the page readable where little draws
constexpr double kArrowMm = 18, kTipMm = 3;
constexpr Ink kHeat{0.93, 0.25, 0.05}, kFocus{0.75, 0.0, 0.35}, kCopy{0.0, 0.40, 0.70};
constexpr Ink kOtherSpot = {0.45, 0.45, 0.45};
constexpr Ink kLead{0.10, 0.45, 0.10}, kCentre{0.45, 0.15, 0.65};

/// Between the four cells around the place.
double heatAt(const HeatPanel& panel, Point p) {
  const double u = (p.x - panel.covers.min.x) / panel.covers.width() * panel.width - 0.5;
  const double v = (p.y - panel.covers.min.y) / panel.covers.height() * panel.height - 0.5;
  const auto cell = [&](int x, int y) {
    x = std::clamp(x, 0, panel.width - 1);
    y = std::clamp(y, 0, panel.height - 1);
    return panel.heat[static_cast<std::size_t>(y) * static_cast<std::size_t>(panel.width) +
                      static_cast<std::size_t>(x)];
  };
  const int x = static_cast<int>(std::floor(u)), y = static_cast<int>(std::floor(v));
  const double a = u - x, b = v - y;
  return (1 - b) * ((1 - a) * cell(x, y) + a * cell(x + 1, y)) +
         b * ((1 - a) * cell(x, y + 1) + a * cell(x + 1, y + 1));
}

std::uint32_t blended(double grey, double heat) {
  const auto channel = [&](double ink) {
    const double v = grey * (1 - heat) + ink * heat;
    return static_cast<std::uint32_t>(std::lround(255 * std::clamp(v, 0.0, 1.0)));
  };
  return channel(kHeat.red) << 16 | channel(kHeat.green) << 8 | channel(kHeat.blue);
}

PixelPicture heated(const AttentionPicture& picture) {
  PixelPicture out{picture.page.width, picture.page.height, {}};
  std::vector<Rect> boxes;
  for (const HeatPanel& panel : picture.panels) boxes.push_back(bounds(panel.outline));
  for (int y = 0; y < out.height; ++y)
    for (int x = 0; x < out.width; ++x) {
      const Point p = picture.page.onPage(x, y);
      double heat = 0;
      for (std::size_t i = 0; i < boxes.size(); ++i)
        if (!picture.panels[i].heat.empty() && boxes[i].contains(p) &&
            contains(picture.panels[i].outline, p))
          heat = heatAt(picture.panels[i], p);
      const double grey = 1 - kDim * (1 - picture.page.at(x, y));
      out.colour.push_back(
          blended(grey, kMostHeat * std::pow(std::clamp(heat, 0.0, 1.0), kHeatPower)));
    }
  return out;
}

Path circle(Point at, double radius) {
  return Path(ellipse(at, radius, radius));
}

void drawArrow(Surface& surface, Point from, Vector along, const Pen& pen) {
  const Point tip = from + along * kArrowMm;
  const Vector side{-along.y, along.x};
  Path shaft;
  shaft.moveTo(from);
  shaft.lineTo(tip - along * kTipMm);
  surface.line(shaft, {.ink = kPaper, .width = pen.width + 0.8});
  surface.line(shaft, pen);
  Path head;
  head.moveTo(tip);
  head.lineTo(tip - along * kTipMm + side * (kTipMm / 2));
  head.lineTo(tip - along * kTipMm - side * (kTipMm / 2));
  head.close();
  surface.fill(head, pen.ink, FillRule::NonZero);
}

/// A line on a paler one, so that it shows on any ground.
void drawOutline(Surface& surface, const Path& path, const Pen& pen) {
  surface.line(path, {.ink = kPaper, .width = pen.width + 0.7});
  surface.line(path, pen);
}

void drawPanel(Surface& surface, const HeatPanel& panel) {
  surface.line(Path(panel.outline), {.ink = greyOf(0.75), .width = 0.4});
  for (const Rect& copy : panel.copy)
    drawOutline(surface, Path(copy), {.ink = kCopy, .width = 0.45});
  Pen focus{.ink = kFocus, .width = 0.7};
  if (!panel.focusMarked) focus.dashes = {2.2, 1.4};
  drawOutline(surface, Path(panel.focus), focus);
  if (panel.lead.length() > 0) {
    Pen lead{.ink = kLead, .width = 0.9};
    if (!panel.leadMarked) lead.dashes = {2.2, 1.2};
    drawArrow(surface, panel.leadFrom, panel.lead, lead);
  }
  for (std::size_t i = 0; i < panel.spots.size(); ++i) {
    const double radius = i == 0 ? 1.8 : 1.1;
    surface.fill(circle(panel.spots[i], radius + 0.5), kPaper, FillRule::NonZero);
    surface.fill(circle(panel.spots[i], radius), i == 0 ? kBlack : kOtherSpot, FillRule::NonZero);
  }
}

void drawNumber(Surface& surface, const HeatPanel& panel) {
  const auto& corners = panel.outline.points;
  const Point first = *std::min_element(corners.begin(), corners.end(),
                                        [](Point a, Point b) { return a.x + a.y < b.x + b.y; });
  const Point at = first + (centroid(panel.outline) - first).unit() * 1.5;
  surface.fill(circle(at, 3), kPaper, FillRule::NonZero);
  surface.line(circle(at, 3), {.ink = greyOf(0.75), .width = 0.4});
  surface.type({.text = std::to_string(panel.number),
                .face = Face::Bold,
                .sizePt = kNumberPt,
                .at = at + Vector{0, 1.25},
                .align = Align::Centre});
}

void drawCentre(Surface& surface, Point at, bool best) {
  drawOutline(surface, circle(at, 7), {.ink = kCentre, .width = best ? 1.1 : 0.6});
}

enum class Swatch { Line, Dashes, Dot, Ring };

struct LegendEntry {
  Swatch swatch;
  Ink ink;
  const char* text;
};

constexpr LegendEntry kLegend[] = {{Swatch::Line, kHeat, "draws the eye"},
                                   {Swatch::Dot, kBlack, "a panel's strongest place"},
                                   {Swatch::Dot, kOtherSpot, "its next ones"},
                                   {Swatch::Dashes, kFocus, "focus"},
                                   {Swatch::Dashes, kLead, "lead"},
                                   {Swatch::Line, kCopy, "copy"},
                                   {Swatch::Ring, kCentre, "centre of the page"}};
constexpr double kSwatch = 6;

void drawSwatch(Surface& surface, const LegendEntry& entry, Point at) {
  const Point middle = at + Vector{kSwatch / 2, -1.1};
  if (entry.swatch == Swatch::Dot)
    return surface.fill(circle(middle, 1.2), entry.ink, FillRule::NonZero);
  if (entry.swatch == Swatch::Ring)
    return surface.line(circle(middle, 1.5), {.ink = entry.ink, .width = 0.6});
  Path line;
  line.moveTo(at - Vector{0, 1.1});
  line.lineTo(at + Vector{kSwatch, -1.1});
  Pen pen{.ink = entry.ink, .width = 1.2};
  if (entry.swatch == Swatch::Dashes) pen.dashes = {2.2, 1.4};
  surface.line(line, pen);
}

/// As many lines as the width asks for; how many they were.
int drawLegend(Surface* surface, const Typesetter& typesetter, Point at, double wide) {
  const double left = at.x;
  int lines = 1;
  for (const LegendEntry& entry : kLegend) {
    const double own = kSwatch + 1.5 + typesetter.widthOf(entry.text, Face::Regular, kTextPt);
    if (at.x > left && at.x + own > left + wide) {
      at = {left, at.y + kLineMm};
      ++lines;
    }
    if (surface != nullptr) {
      drawSwatch(*surface, entry, at);
      surface->type({.text = entry.text, .sizePt = kTextPt, .at = at + Vector{kSwatch + 1.5, 0}});
    }
    at.x += own + 4.5;
  }
  return lines;
}

}  // namespace

Result<std::string> attentionPng(const AttentionPicture& picture) {
  const Typesetter typesetter;
  const Rect page = picture.pageBox;
  std::vector<std::string> lines;
  for (const std::string& sentence : picture.sentences)
    for (std::string& line : typesetter.broken(sentence, Face::Regular, kTextPt, page.width()))
      lines.push_back(std::move(line));
  const double legend = kLineMm * (drawLegend(nullptr, typesetter, page.min, page.width()) - 1);
  const double below = legend + kLegendMm + kLineMm * static_cast<double>(lines.size()) + 2;
  const Rect view{page.min - Vector{kMargin, kMargin + kHead},
                  page.max + Vector{kMargin, kMargin + below}};
  PngSurface surface(typesetter, view, kDpi);
  surface.type({.text = typesetter.shortened(picture.title, Face::Bold, kTitlePt, page.width()),
                .face = Face::Bold,
                .sizePt = kTitlePt,
                .at = page.min - Vector{0, kHead / 2}});
  if (!picture.page.empty()) surface.paint(heated(picture), page);
  surface.line(Path(page), {.ink = greyOf(0.5), .width = 0.3});
  for (const HeatPanel& panel : picture.panels) drawPanel(surface, panel);
  for (std::size_t i = picture.centres.size(); i-- > 0;)
    drawCentre(surface, picture.centres[i], i == 0);
  for (const HeatPanel& panel : picture.panels) drawNumber(surface, panel);
  Point at{page.min.x, page.max.y + kLegendMm};
  drawLegend(&surface, typesetter, at, page.width());
  at.y += legend;
  for (const std::string& line : lines) {
    at.y += kLineMm;
    surface.type({.text = line, .sizePt = kTextPt, .at = at + Vector{0, 1}});
  }
  return surface.finished();
}

Result<void> writeAttentionPng(const std::filesystem::path& file, const AttentionPicture& picture) {
  const auto png = attentionPng(picture);
  if (!png) return tl::unexpected(png.error());
  return writeFileAtomically(file, *png);
}

}  // namespace tw
