// The page as one picture.
//
// Idea. Before a page is read it is seen: as a pattern of light and dark. That pattern should have
// one centre, in the panel that matters most; its blacks should not all sit on one side; and no two
// focuses should stand so near each other across a gutter that one glance cannot choose.
// Steps: 1. shrink the page to 1.3 mm a pixel and leave paper out; 2. contrast at the page's scale
// (arms_length.h), its peaks are the centres; 3. per panel, less what lies on it: highest contrast,
// share of black, mean light; 4. black per quarter, and the middle of all darkness; 5. for each
// pair of panels, how far their focuses are apart and how strong each is at the squint's scale.
// Cost: four blurs of some 130 × 200 px; under 3 ms.
// Badly done: it knows no colour; a white page with one word in it has its centre there.
// Source: common practice (one centre, spotted blacks); scales and limits are ours.
#include "read/one_picture.h"

#include <algorithm>
#include <cmath>
#include <opencv2/imgproc.hpp>

#include "geometry/polygon.h"
#include "read/arms_length.h"
#include "read/filled_mask.h"
#include "read/panel_picture.h"
#include "read/with_opencv.h"

namespace tw {

namespace {

/// Contrasts below this are the unevenness of paper, not a centre.
constexpr double kLeastStrength = 0.01;

GreyPicture shrunken(const GreyPicture& page) {
  const Rect box = coveredBy(page);
  const int longer = std::max(page.width, page.height);
  const double shrink =
      std::min(1.0, squintSide(std::max(box.width(), box.height())) / static_cast<double>(longer));
  GreyPicture small{.width = std::max(1, static_cast<int>(page.width * shrink + 0.5)),
                    .height = std::max(1, static_cast<int>(page.height * shrink + 0.5)),
                    .origin = page.origin};
  small.mmPerPx = page.mmPerPx * longer / std::max(small.width, small.height);
  const cv::Mat light = resizedByArea(matOf(page), small.width, small.height, CV_32F);
  small.light.assign(light.begin<float>(), light.end<float>());
  return small;
}

/// Which panel is on top at each pixel, −1 none.
std::vector<int> topPanels(const GreyPicture& grid, const OnePictureAsk& ask) {
  std::vector<int> top(grid.light.size(), -1);
  const auto layerOf = [&](std::size_t i) { return i < ask.layer.size() ? ask.layer[i] : 0; };
  std::vector<std::size_t> order(ask.panels.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return layerOf(a) < layerOf(b); });
  for (const std::size_t i : order) {
    const std::vector<std::uint8_t> mask = filledMask({ask.panels[i]}, grid);
    for (std::size_t p = 0; p < mask.size(); ++p)
      if (mask[p]) top[p] = static_cast<int>(i);
  }
  return top;
}

/// The panels alone: paper between and around them continues what they show, for a dark panel's
/// corner on white paper is no centre of anything.
GreyPicture withoutPaper(const GreyPicture& small, const OnePictureAsk& ask) {
  GreyPicture panels = small;
  std::vector<std::uint8_t> inside(small.light.size(), 0);
  for (const Polygon& outline : ask.panels) {
    const std::vector<std::uint8_t> mask =
        filledMask(offset({outline}, -kSquintPxMm), small);  // less the border line
    for (std::size_t p = 0; p < mask.size(); ++p) inside[p] |= mask[p];
  }
  continueOutward(panels, inside);
  return panels;
}

std::vector<PanelInPicture> measured(const GreyPicture& small, const PlaceMap& map,
                                     const OnePictureAsk& ask, const std::vector<int>& top) {
  std::vector<PanelInPicture> panels(ask.panels.size());
  std::vector<int> pixels(ask.panels.size()), dark(ask.panels.size());
  std::vector<double> light(ask.panels.size());
  for (std::size_t p = 0; p < top.size(); ++p) {
    if (top[p] < 0) continue;
    const auto i = static_cast<std::size_t>(top[p]);
    ++pixels[i];
    light[i] += small.light[p];
    dark[i] += small.light[p] < kBlackLight;
    panels[i].strength = std::max(panels[i].strength, std::abs(map.value[p]));
  }
  for (std::size_t i = 0; i < panels.size(); ++i) {
    if (pixels[i] == 0) continue;
    panels[i].light = light[i] / pixels[i];
    panels[i].black = dark[i] / static_cast<double>(pixels[i]);
  }
  return panels;
}

/// Places that compete, in panels where there are any.
std::vector<Peak> centresOf(PlaceMap map, const std::vector<int>& top, bool anyPanels) {
  for (std::size_t p = 0; p < top.size() && anyPanels; ++p)
    if (top[p] < 0) map.value[p] = 0;
  std::vector<Peak> centres = peaksOf(map, kCompetes, kPageSurroundMm);
  std::erase_if(centres, [](const Peak& p) { return p.strength < kLeastStrength; });
  return centres;
}

void findStrongest(const OnePictureAsk& ask, OnePicture& picture) {
  double most = 0, own = 0, others = 0;
  for (std::size_t i = 0; i < picture.panels.size(); ++i) {
    const double strength = picture.panels[i].strength;
    if (picture.strongest < 0 || strength > most) {
      most = strength;
      picture.strongest = static_cast<int>(i);
    }
    double& side = ask.dominant && *ask.dominant == static_cast<int>(i) ? own : others;
    side = std::max(side, strength);
  }
  if (ask.dominant && own + others > 0) picture.dominantHolds = own / (own + others);
}

/// Of what lies within the trim.
void spreadBlack(const GreyPicture& small, const Rect& trim, OnePicture& picture) {
  const Point middle = trim.centre();
  std::array<int, 4> pixels{}, dark{};
  double weight = 0;
  Vector moment;
  for (int y = 0; y < small.height; ++y)
    for (int x = 0; x < small.width; ++x) {
      const Point p = small.onPage(x, y);
      if (!trim.contains(p)) continue;
      const std::size_t quarter = (p.y > middle.y ? 2u : 0u) + (p.x > middle.x ? 1u : 0u);
      ++pixels[quarter];
      dark[quarter] += small.at(x, y) < kBlackLight;
      const double w = 1 - small.at(x, y);
      weight += w;
      moment = moment + (p - middle) * w;
    }
  for (std::size_t q = 0; q < 4; ++q)
    picture.black[q] = pixels[q] ? dark[q] / static_cast<double>(pixels[q]) : 0;
  if (weight > 0)
    picture.balance = {moment.x / weight / (trim.width() / 2),
                       moment.y / weight / (trim.height() / 2)};
}

double strengthNear(const PlaceMap& map, Point at) {
  const double reach = kSquintSurroundMm / 2, cell = map.covers.width() / map.width;
  const auto column = [&](double x) { return static_cast<int>((x - map.covers.min.x) / cell); };
  const auto row = [&](double y) { return static_cast<int>((y - map.covers.min.y) / cell); };
  double most = 0;
  for (int y = std::max(0, row(at.y - reach)); y < std::min(map.height, row(at.y + reach) + 1); ++y)
    for (int x = std::max(0, column(at.x - reach));
         x < std::min(map.width, column(at.x + reach) + 1); ++x)
      if ((map.onPage(x, y) - at).length() <= reach) most = std::max(most, std::abs(map.at(x, y)));
  return most;
}

void findFights(const GreyPicture& panels, const OnePictureAsk& ask, OnePicture& picture) {
  if (ask.focuses.size() != ask.panels.size()) return;
  const PlaceMap map = contrastMap(panels, kSquintCentreMm, kSquintSurroundMm);
  double best = 0;
  for (const double v : map.value) best = std::max(best, std::abs(v));
  std::vector<double> strength;
  for (const Point& focus : ask.focuses) strength.push_back(strengthNear(map, focus));
  for (std::size_t a = 0; a < strength.size(); ++a)
    for (std::size_t b = a + 1; b < strength.size(); ++b) {
      const double apart = (ask.focuses[a] - ask.focuses[b]).length();
      if (apart < kOneGlanceMm && std::min(strength[a], strength[b]) >= kFights * best && best > 0)
        picture.fights.push_back({static_cast<int>(a), static_cast<int>(b), apart});
    }
}

}  // namespace

OnePicture onePictureOf(const GreyPicture& page, const OnePictureAsk& ask) {
  OnePicture picture;
  picture.panels.resize(ask.panels.size());
  if (page.empty()) return picture;
  const OneThread quiet;
  const GreyPicture small = shrunken(page);
  const GreyPicture panels = withoutPaper(small, ask);
  const PlaceMap map = contrastMap(panels, kPageCentreMm, kPageSurroundMm);
  const std::vector<int> top = topPanels(small, ask);
  picture.panels = measured(small, map, ask, top);
  findStrongest(ask, picture);
  picture.centres = centresOf(map, top, !ask.panels.empty());
  spreadBlack(small, ask.page, picture);
  findFights(panels, ask, picture);
  return picture;
}

}  // namespace tw
