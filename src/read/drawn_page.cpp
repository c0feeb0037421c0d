// Steps: 1. place the picture on a page of usual size; 2. attention of each panel with its marks,
// on all cores; 3. focus and lead; 4. squint test at the focus; 5. the whole page as one picture;
// 6. leads followed to where they arrive.
#include "read/drawn_page.h"

#include <algorithm>
#include <cmath>

#include "base/parallel.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

/// Room that a word of usual lettering takes in a balloon, its share of the rim too: type of 7.5
/// points is about 2 mm a letter by 3.2 mm a line, 5.5 letters a word, and half the balloon is
/// bare. Ours, for balloons whose words nobody has given.
constexpr double kWordMm2 = 75;
constexpr int kLettersAWord = 5;

std::vector<SeenElement> marksOf(const MarkedPanel& panel, const FileScale& scale) {
  std::vector<SeenElement> marks;
  for (const MarkedCopy& copy : panel.copy)
    marks.push_back({.kind = SeenKind::Copy,
                     .box = scale.onPage(copy.box),
                     .words = copy.count,
                     .characters = copy.count * kLettersAWord});
  const auto add = [&](const std::vector<Rect>& boxes, SeenKind kind) {
    for (const Rect& box : boxes) marks.push_back({.kind = kind, .box = scale.onPage(box)});
  };
  add(panel.faces, SeenKind::Face);
  add(panel.figures, SeenKind::Figure);
  add(panel.hands, SeenKind::Hand);
  add(panel.props, SeenKind::Prop);
  return marks;
}

/// Size of the page in the file's own unit.
Vector sizeInFile(const MarkedPage& marked, const GreyPicture& picture) {
  if (marked.width > 0 && marked.height > 0) return {marked.width, marked.height};
  return {static_cast<double>(picture.width), static_cast<double>(picture.height)};
}

void placePicture(DrawnPage& page, const MarkedPage& marked) {
  const Vector size = sizeInFile(marked, page.picture);
  const double longer = std::max(size.x, size.y);
  page.scale.mmPerUnit = (size.x > size.y ? kDrawnSpreadMm : kDrawnPageMm) / longer;
  page.page = page.scale.onPage(Rect{{0, 0}, {size.x, size.y}});
  page.picture.origin = {0, 0};
  page.picture.mmPerPx = page.page.width() / std::max(1, page.picture.width);
}

void measurePanel(const MarkedPanel& marked, const DrawnPage& page, const AttentionWeights& weights,
                  DrawnPanel& out) {
  out.outline = page.scale.onPage(marked.outline);
  out.attention = attentionOf(page.picture, out.outline, marksOf(marked, page.scale), weights);
  MarkedFocus focus{.lead = marked.lead};
  if (marked.focus) focus.focus = page.scale.onPage(*marked.focus);
  out.focus = focusOf(out.attention, out.outline, focus);
  out.lead = leadOf(out.attention, out.focus, focus);
  std::vector<Rect> copy;
  for (const auto* list : {&out.attention.marked, &out.attention.proposed})
    for (const SeenElement& e : *list)
      if (e.kind == SeenKind::Copy) copy.push_back(e.box);
  out.squint = squintAt(page.picture, out.outline, out.focus.box, copy);
}

/// 1 where a panel lies on another that is larger.
std::vector<int> layersOf(const std::vector<DrawnPanel>& panels) {
  constexpr double kLiesOn = 0.8;  // of its own area
  std::vector<int> layer(panels.size(), 0);
  for (std::size_t i = 0; i < panels.size(); ++i)
    for (std::size_t j = 0; j < panels.size(); ++j) {
      if (i == j || area(panels[j].outline) <= area(panels[i].outline)) continue;
      const double both = area(common({panels[i].outline}, {panels[j].outline}));
      if (both > kLiesOn * area(panels[i].outline)) layer[i] = 1;
    }
  return layer;
}

OnePictureAsk askOf(const DrawnPage& page) {
  OnePictureAsk ask{.layer = layersOf(page.panels), .page = page.page};
  for (const DrawnPanel& panel : page.panels) {
    ask.panels.push_back(panel.outline);
    ask.focuses.push_back(panel.focus.at);
  }
  return ask;
}

/// Proposed copy, with as many words as it has room for.
SeenElement withWords(SeenElement copy) {
  copy.words = std::max(1, static_cast<int>(std::lround(copy.box.area() / kWordMm2)));
  copy.characters = copy.words * kLettersAWord;
  return copy;
}

SeenPanel seenPanelOf(const DrawnPanel& panel, int layer) {
  SeenPanel seen{.outline = panel.outline,
                 .layer = layer,
                 .elements = panel.attention.marked,
                 .focus = panel.focus.at,
                 .lead = panel.lead.lead};
  for (const SeenElement& copy : panel.attention.proposed) seen.elements.push_back(withWords(copy));
  for (const Spot& spot : panel.attention.spots)
    if (spot.kind == SeenKind::Spot)
      seen.elements.push_back({.kind = SeenKind::Spot, .box = spot.box});
  std::stable_partition(seen.elements.begin(), seen.elements.end(),
                        [](const SeenElement& e) { return e.kind == SeenKind::Copy; });
  for (SeenElement& e : seen.elements)
    if (e.kind != SeenKind::Copy && e.box.contains(panel.focus.at)) {
      e.isFocus = true;
      break;
    }
  return seen;
}

}  // namespace

Polygon FileScale::onPage(const Polygon& polygon) const {
  Polygon out;
  for (const Point& p : polygon.points) out.points.push_back(onPage(p));
  return out;
}

SeenPage seenPageOf(const DrawnPage& page) {
  SeenPage seen{.page = page.page, .direction = page.direction};
  const std::vector<int> layer = layersOf(page.panels);
  for (const int i : page.order)
    seen.panels.push_back(
        seenPanelOf(page.panels[static_cast<std::size_t>(i)], layer[static_cast<std::size_t>(i)]));
  return seen;
}

DrawnPage measureDrawnPage(const MarkedPage& marked, GreyPicture picture,
                           const std::vector<int>& order, ReadingDirection direction,
                           const AttentionWeights& weights, unsigned threads) {
  DrawnPage page{.picture = std::move(picture), .order = order, .direction = direction};
  placePicture(page, marked);
  page.panels.resize(marked.panels.size());
  parallelFor(page.panels.size(), threads, [&](std::size_t i) {
    measurePanel(marked.panels[i], page, weights, page.panels[i]);
  });
  page.onePicture = onePictureOf(page.picture, askOf(page));
  page.complexity = complexityOf(page.picture);
  const PageHandedOn inOrder = handedOnOf(seenPageOf(page));
  page.handedOn = {std::vector<PanelHandedOn>(page.panels.size()), inOrder.mean};
  for (std::size_t i = 0; i < order.size(); ++i)
    page.handedOn.panels[static_cast<std::size_t>(order[i])] = inOrder.panels[i];
  return page;
}

}  // namespace tw
