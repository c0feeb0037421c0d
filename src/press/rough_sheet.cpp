#include "press/rough_sheet.h"

#include <fmt/format.h>

#include "press/grid_art.h"
#include "press/in_words.h"
#include "press/overlays.h"
#include "press/score_card.h"

namespace tw {

namespace {

constexpr double kCardGapMm = 2, kCardMarginMm = 8;

struct GroupName {
  const char* id;
  const char* title;
};
constexpr GroupName kGroups[] = {{"rough", "Rough"},
                                 {"perspective-grid", "Perspective grid"},
                                 {"leads", "Leads"},
                                 {"trim-and-live-area", "Trim and live area"},
                                 {"panel-order", "Panel order"},
                                 {"score-card", "Score card"}};

}  // namespace

RoughSheet::RoughSheet(const RoughPicture& picture, const Typesetter& typesetter)
    : picture_(picture), typesetter_(typesetter), art_(picture, typesetter) {}

Rect RoughSheet::paper(const Overlays& overlays) const {
  Rect paper = picture_.sheet.bleedRect().outset(kSlugMm);
  if (overlays.card) paper.max.x += kCardGapMm + kCardWidthMm + kCardMarginMm;
  return paper;
}

std::string RoughSheet::title() const {
  return fmt::format("{}, {}, rough {}", picture_.jobTitle, pageInWords(picture_),
                     picture_.rough.name);
}

std::vector<PdfLayer> RoughSheet::layers(const Overlays& overlays) const {
  const auto number = [this](Surface& surface) {
    OrderNumbers(picture_, typesetter_, 1).drawOn(surface, kFinestMm);
    drawOrderKey(surface, picture_);
  };
  std::vector<PdfLayer> out{
      {"", true,
       [this](Surface& surface) {
         surface.place(art_, 1, {0, 0});
         drawTrimMarks(surface, picture_, typesetter_);
       }},
      {kGroups[1].title, overlays.grid,
       [this](Surface& surface) { drawGrids(surface, picture_, typesetter_); }},
      {kGroups[2].title, overlays.leads,
       [this](Surface& surface) { drawLeads(surface, picture_, typesetter_); }},
      {kGroups[3].title, overlays.live,
       [this](Surface& surface) { drawSheetLines(surface, picture_, typesetter_); }},
      {kGroups[4].title, overlays.order, number}};
  if (!overlays.card) return out;
  const Rect page = picture_.sheet.trimRect();
  const double left = picture_.sheet.bleedRect().max.x + kSlugMm + kCardGapMm;
  const Rect column{{left, page.min.y}, {left + kCardWidthMm, page.max.y}};
  out.push_back({kGroups[5].title, true, [this, column](Surface& surface) {
                   drawScoreCard(surface, picture_, column, typesetter_);
                 }});
  return out;
}

PdfPage RoughSheet::pdfPage(const Overlays& overlays) const {
  PdfPage page;
  page.media = paper(overlays);
  page.bleed = picture_.sheet.bleedRect();
  page.trim = picture_.sheet.trimRect();
  page.layers = layers(overlays);
  return page;
}

void RoughSheet::drawGroups(Surface& surface, const Overlays& overlays) const {
  const std::vector<PdfLayer> all = layers(overlays);
  for (std::size_t i = 0; i < all.size(); ++i) {
    surface.openGroup(kGroups[i].id, kGroups[i].title, all[i].shown);
    all[i].draw(surface);
    surface.closeGroup();
  }
}

void RoughSheet::drawShown(Surface& surface, const Overlays& overlays) const {
  for (const PdfLayer& layer : layers(overlays))
    if (layer.shown) layer.draw(surface);
}

}  // namespace tw
