#include "desk/page_layers.h"

#include <QPainter>

#include <algorithm>

#include "desk/enlarged_surface.h"
#include "desk/painter_surface.h"
#include "geometry/polygon.h"
#include "press/grid_art.h"
#include "press/overlays.h"
#include "press/reading_marks.h"

namespace tw {

namespace {

// At arm's length half-closed eyes lose what is finer than about this on the page; ours, no source.
constexpr double kSquintMm = 4;
constexpr Ink kTierInk{0.10, 0.42, 0.28};
constexpr double kTierMm = 0.35;
// Marks are made for a page at print size: at fewer pixels per mm they are drawn larger.
constexpr double kLegiblePxPerMm = 4.2, kMostEnlarged = 2.6;
constexpr double kMostCrowded = 1.6;  // of marks that may stand side by side

std::vector<EyeRest> restsOf(const EyePath& path, double share) {
  std::vector<EyeRest> out;
  const auto count =
      static_cast<std::size_t>(std::lround(share * static_cast<double>(path.fixations.size())));
  for (std::size_t i = 0; i < count && i < path.fixations.size(); ++i) {
    const EyeFixation& f = path.fixations[i];
    out.push_back({f.at, f.ms, f.on == SeenKind::Copy});
  }
  return out;
}

void drawTiers(Surface& surface, const Measurement& m, const Typesetter& typesetter) {
  const Rect trim = m.picture.sheet.trimRect();
  int number = 1;
  for (const double y : tierLines(m.roughNow())) {
    Path line;
    line.add({{trim.min.x - 4, y}, {trim.max.x + 4, y}}, false);
    surface.line(line, {.ink = kTierInk, .width = kTierMm, .dashes = {3, 1.2}});
    drawOnPatch(surface, {trim.max.x - 9, y}, "tier " + std::to_string(++number), kTierInk,
                typesetter);
  }
}

}  // namespace

const std::array<LayerInfo, kLayers>& layerInfos() {
  static const std::array<LayerInfo, kLayers> infos{
      {{Layer::Order, "layerOrder", QT_TRANSLATE_NOOP("Layers", "Order"), "O"},
       {Layer::EyePath, "layerEyePath", QT_TRANSLATE_NOOP("Layers", "Eye path"), "E"},
       {Layer::Leads, "layerLeads", QT_TRANSLATE_NOOP("Layers", "Leads"), "L"},
       {Layer::LiveArea, "layerLiveArea", QT_TRANSLATE_NOOP("Layers", "Live area"), "A"},
       {Layer::Tiers, "layerTiers", QT_TRANSLATE_NOOP("Layers", "Tiers"), "T"},
       {Layer::Values, "layerValues", QT_TRANSLATE_NOOP("Layers", "Values"), "V"},
       {Layer::Squint, "layerSquint", QT_TRANSLATE_NOOP("Layers", "Squint"), "S"},
       {Layer::Grid, "layerGrid", QT_TRANSLATE_NOOP("Layers", "Perspective"), "H"},
       {Layer::Findings, "layerFindings", QT_TRANSLATE_NOOP("Layers", "Findings"), "F"},
       {Layer::Strokes, "layerStrokes", QT_TRANSLATE_NOOP("Layers", "Own lines"), "J"},
       {Layer::Underlays, "layerUnderlays", QT_TRANSLATE_NOOP("Layers", "Pictures"), "G"}}};
  return infos;
}

std::vector<double> tierLines(const Rough& rough) {
  std::vector<std::pair<double, double>> heights;
  for (const RoughPanel& panel : rough.panels) {
    if (panel.ground) continue;
    const Rect box = bounds(panel.outline);
    heights.emplace_back(box.min.y, box.max.y);
  }
  std::ranges::sort(heights);
  std::vector<double> out;
  double bottom = heights.empty() ? 0 : heights.front().second;
  for (const auto& [top, end] : heights) {
    if (top > bottom) out.push_back((top + bottom) / 2);
    bottom = std::max(bottom, end);
  }
  return out;
}

void drawLayers(QPainter& painter, const Measurement& m, const LayersShown& shown,
                const Typesetter& typesetter) {
  if (!m.measured) return;
  PainterSurface paper(painter, typesetter);
  const double enlarged =
      std::clamp(kLegiblePxPerMm / painter.transform().m11(), 1.0, kMostEnlarged);
  EnlargedSurface surface(paper, enlarged);
  surface.clip(Path(m.picture.sheet.bleedRect()), FillRule::NonZero);  // no keys beside the paper
  if (shown.has(Layer::Grid) && m.picture.grids.size() == m.picture.rough.panels.size())
    drawGrids(paper, m.picture, typesetter);  // its words have no more room
  if (shown.has(Layer::LiveArea)) drawSheetLines(surface, m.picture, typesetter);
  if (shown.has(Layer::Tiers)) drawTiers(surface, m, typesetter);
  if (shown.has(Layer::Leads)) drawLeads(surface, m.picture, typesetter);
  if (shown.has(Layer::EyePath))
    drawPath(surface, m.picture, restsOf(m.readings.eyes.typical, shown.eyeShare), typesetter);
  EnlargedSurface marks(paper, std::min(enlarged, kMostCrowded));
  if (shown.has(Layer::Findings)) drawFindingMarks(marks, m.picture, m.findings, typesetter);
  surface.unclip();
  if (shown.has(Layer::Order))  // they find room for their size themselves
    OrderNumbers(m.picture, typesetter, enlarged).drawOn(paper, kFinestMm);
}

QImage squinted(const QImage& page, double pixelsPerMm) {
  const double cell = std::max(1.0, kSquintMm * pixelsPerMm / 2);
  const QSize small(std::max(1, static_cast<int>(page.width() / cell)),
                    std::max(1, static_cast<int>(page.height() / cell)));
  return page.scaled(small, Qt::IgnoreAspectRatio, Qt::SmoothTransformation)
      .scaled(page.size(), Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
}

QImage inFourValues(const QImage& page) {
  QImage grey = page.convertToFormat(QImage::Format_Grayscale8);
  for (int y = 0; y < grey.height(); ++y) {
    uchar* row = grey.scanLine(y);
    for (int x = 0; x < grey.width(); ++x) row[x] = static_cast<uchar>(85 * ((row[x] + 42) / 85));
  }
  return grey;
}

}  // namespace tw
