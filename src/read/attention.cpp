// Attention of one panel.
//
// Idea. Text, faces and figures draw the eye most, in comics as in photographs; what is left is
// closed shapes, whatever stands out by its spectrum, and the middle. Each is a map of its own,
// 0 … 1; their weighted sum is the answer.
// Steps: 1. cut the panel out and look for text areas, closed shapes and the spectral residual;
// 2. where the artist marked copy, faces or figures, put the marks in the place of what was
// proposed for that kind; 3. add the maps by their weights, blur by a sixteenth of the panel, for
// the eye does not land to a hair; 4. take the highest place, then the highest of what is farther
// off than a sixth of the panel, and so on; 5. name each by the strongest cue at its place.
// Cost: some 6 ms a panel, most of it in the search for text areas.
// Badly done: it does not know what a face is unless one is marked; a lit window beats a dark
// figure. On painted pages see docs/reading-model.md for how often it is right.
// Source: the cues' order is published (presets/read/attention.json says where), all numbers ours.
#include "read/attention.h"

#include <algorithm>
#include <cmath>
#include <opencv2/imgproc.hpp>

#include "geometry/polygon.h"
#include "read/closed_shapes.h"
#include "read/panel_picture.h"
#include "read/spectral_residual.h"
#include "read/text_areas.h"
#include "read/with_opencv.h"

namespace tw {

namespace {

constexpr double kBlurShare = 1.0 / 40, kApartShare = 1.0 / 6;  // of the longer side
constexpr double kWorthSpot = 0.3;                              // of the strongest spot
constexpr double kMarkRim = 0.6;        // a mark draws this much at its rim, 1 in its middle
constexpr double kCentreSpread = 0.28;  // of each side
/// A closed shape that nobody marked is a figure so often; our guess.
constexpr double kClosedIsFigure = 1.0 / 3;
constexpr double kLeastBox = 1.0 / 24;  // of the longer side, to each side of a spot
constexpr double kBoxLevel = 0.7;       // a spot reaches as far as the map stays above this share

/// One cue on the answer's grid.
using Layer = cv::Mat;  // CV_64F

struct Ground {
  Rect covers;
  cv::Size cells;
  cv::Mat inside;  ///< CV_64F, 0 or 1

  Point onPage(int x, int y) const {
    return {covers.min.x + (x + 0.5) * covers.width() / cells.width,
            covers.min.y + (y + 0.5) * covers.height() / cells.height};
  }
};

Ground groundOf(const PanelPicture& panel) {
  const GreyPicture& p = panel.picture;
  const double shrink = static_cast<double>(kAttentionSide) / std::max(p.width, p.height);
  Ground g{.covers = coveredBy(p),
           .cells = {std::max(4, static_cast<int>(std::lround(p.width * shrink))),
                     std::max(4, static_cast<int>(std::lround(p.height * shrink)))}};
  const cv::Mat mask(p.height, p.width, CV_8U, const_cast<std::uint8_t*>(panel.inside.data()));
  cv::Mat share = resizedByArea(mask, g.cells.width, g.cells.height, CV_64F);
  cv::threshold(share, g.inside, 127, 1, cv::THRESH_BINARY);
  return g;
}

Layer layerOf(const PlaceMap& map, const Ground& g) {
  Layer layer;
  const cv::Mat given(map.height, map.width, CV_64F, const_cast<double*>(map.value.data()));
  cv::resize(given, layer, g.cells, 0, 0, cv::INTER_LINEAR);
  return layer.mul(g.inside);
}

/// 1 in the middle of the box, kMarkRim at its rim, 0 outside.
void addBox(Layer& layer, const Ground& g, const Rect& box, double strength) {
  for (int y = 0; y < layer.rows; ++y)
    for (int x = 0; x < layer.cols; ++x) {
      const Point p = g.onPage(x, y);
      if (!box.contains(p)) continue;
      const Point c = box.centre();
      const double away = std::max(std::abs(p.x - c.x) / std::max(1e-9, box.width() / 2),
                                   std::abs(p.y - c.y) / std::max(1e-9, box.height() / 2));
      double& v = layer.at<double>(y, x);
      v = std::max(v, strength * (1 - (1 - kMarkRim) * away));
    }
}

Layer centreLayer(const Ground& g) {
  Layer layer(g.cells, CV_64F);
  for (int y = 0; y < layer.rows; ++y)
    for (int x = 0; x < layer.cols; ++x) {
      const double u = ((x + 0.5) / layer.cols - 0.5) / kCentreSpread;
      const double v = ((y + 0.5) / layer.rows - 0.5) / kCentreSpread;
      layer.at<double>(y, x) = std::exp(-(u * u + v * v) / 2);
    }
  return layer.mul(g.inside);
}

struct Cues {
  Layer text, faces, figures, spectral, centre;
};

bool anyOf(const std::vector<SeenElement>& all, SeenKind kind) {
  return std::any_of(all.begin(), all.end(), [&](const SeenElement& e) { return e.kind == kind; });
}

void addMarks(Cues& cues, const Ground& g, const std::vector<SeenElement>& marked) {
  for (const SeenElement& e : marked) {
    if (e.kind == SeenKind::Copy) addBox(cues.text, g, e.box, 1);
    if (e.kind == SeenKind::Face) addBox(cues.faces, g, e.box, 1);
    if (e.kind == SeenKind::Figure || e.kind == SeenKind::Hand || e.kind == SeenKind::Prop)
      addBox(cues.figures, g, e.box, 1);
  }
}

Layer blurred(const Layer& layer, const Ground& g) {
  Layer out;
  const double sigma = kBlurShare * std::max(g.cells.width, g.cells.height);
  cv::GaussianBlur(layer, out, {0, 0}, sigma, sigma, cv::BORDER_REPLICATE);
  return out.mul(g.inside);
}

struct Named {
  SeenKind kind;
  const char* what;
};

/// By the strongest cue of a thing at that place.
Named nameAt(const Cues& c, const AttentionWeights& w, int x, int y) {
  const double text = w.text * c.text.at<double>(y, x), face = w.faces * c.faces.at<double>(y, x);
  const double figure = w.figures * c.figures.at<double>(y, x);
  const double spectral = w.spectral * c.spectral.at<double>(y, x);
  if (text > 0 && text >= std::max({face, figure, spectral})) return {SeenKind::Copy, "balloon"};
  if (face > 0 && face >= std::max(figure, spectral)) return {SeenKind::Face, "face"};
  if (figure > 0 && figure >= spectral) return {SeenKind::Figure, "figure"};
  return {SeenKind::Spot, "contrast"};
}

/// As far as the map stays high around a place, along the row and the column, and not farther
/// than spots stand apart.
Rect reachAround(const Layer& map, const Ground& g, int x, int y) {
  const double level = kBoxLevel * map.at<double>(y, x);
  const auto walk = [&](int dx, int dy) {
    int u = x, v = y;
    int left = static_cast<int>(kApartShare * std::max(map.cols, map.rows));
    while (left-- > 0 && u + dx >= 0 && u + dx < map.cols && v + dy >= 0 && v + dy < map.rows &&
           map.at<double>(v + dy, u + dx) >= level)
      u += dx, v += dy;
    return g.onPage(u, v);
  };
  const Rect box{{walk(-1, 0).x, walk(0, -1).y}, {walk(1, 0).x, walk(0, 1).y}};
  const Point at = g.onPage(x, y);
  const double least = kLeastBox * std::max(g.covers.width(), g.covers.height());
  return {{std::min(box.min.x, at.x - least), std::min(box.min.y, at.y - least)},
          {std::max(box.max.x, at.x + least), std::max(box.max.y, at.y + least)}};
}

/// The smallest box of that kind that holds the place.
const SeenElement* elementAt(const std::vector<SeenElement>& all, Point at, SeenKind kind) {
  const SeenElement* best = nullptr;
  for (const SeenElement& e : all)
    if (e.kind == kind && e.box.contains(at) && (!best || e.box.area() < best->box.area()))
      best = &e;
  return best;
}

/// The cues of one panel; what is proposed goes in only where nothing of its kind is marked.
Cues cuesOf(const PanelPicture& panel, const Ground& g, const std::vector<SeenElement>& marked,
            std::vector<SeenElement>& proposed) {
  const Layer none = Layer::zeros(g.cells, CV_64F);
  Cues cues{none.clone(), none.clone(), none.clone(), layerOf(spectralResidual(panel.picture), g),
            centreLayer(g)};
  if (!anyOf(marked, SeenKind::Figure) && !anyOf(marked, SeenKind::Face))
    cues.figures = kClosedIsFigure * layerOf(closedShapes(panel), g);
  if (!anyOf(marked, SeenKind::Copy))
    for (const TextArea& area : textAreas(panel)) {
      addBox(cues.text, g, area.box, area.sure);
      proposed.push_back({.kind = SeenKind::Copy, .box = area.box});
    }
  addMarks(cues, g, marked);
  return cues;
}

double sumOf(const AttentionWeights& w) {
  return w.text + w.faces + w.figures + w.spectral + w.centre;
}

Layer summed(const Cues& c, const AttentionWeights& w, const Ground& g) {
  return blurred(w.text * c.text + w.faces * c.faces + w.figures * c.figures +
                     w.spectral * c.spectral + w.centre * c.centre,
                 g);
}

/// What stands at a place of the map.
Spot spotAt(const Cues& cues, const AttentionWeights& weights, const Layer& map, const Ground& g,
            cv::Point at, const PanelAttention& known) {
  const Named named = nameAt(cues, weights, at.x, at.y);
  Spot spot{.at = g.onPage(at.x, at.y),
            .strength = map.at<double>(at) / sumOf(weights),
            .kind = named.kind,
            .what = named.what};
  const SeenElement* marked = elementAt(known.marked, spot.at, spot.kind);
  const SeenElement* found = marked ? marked : elementAt(known.proposed, spot.at, spot.kind);
  spot.marked = marked != nullptr;
  spot.box = found ? found->box : reachAround(map, g, at.x, at.y);
  if (found) spot.at = found->box.centre();
  if (spot.kind == SeenKind::Figure && !marked) {
    spot.kind = SeenKind::Spot;
    spot.what = "closed shape";
  }
  return spot;
}

template <class Where>
void blankWhere(Layer& map, const Ground& g, Where where) {
  for (int y = 0; y < map.rows; ++y)
    for (int x = 0; x < map.cols; ++x)
      if (where(g.onPage(x, y))) map.at<double>(y, x) = 0;
}

/// Takes a spot and what is near it, or in its box, off the map.
void strike(Layer& left, const Ground& g, const Spot& spot) {
  const double apart = kApartShare * std::max(g.covers.width(), g.covers.height());
  blankWhere(left, g,
             [&](Point p) { return (p - spot.at).length() < apart || spot.box.contains(p); });
}

std::vector<Spot> spotsOn(const Cues& cues, const AttentionWeights& weights, const Layer& map,
                          const Ground& g, const PanelAttention& known) {
  Layer left = map.clone();
  std::vector<Spot> spots;
  while (spots.size() < kMostSpots) {
    double most = 0;
    cv::Point at;
    cv::minMaxLoc(left, nullptr, &most, nullptr, &at);
    const double first = spots.empty() ? 0 : spots.front().strength;
    if (most <= 0 || most / sumOf(weights) < kWorthSpot * first) break;
    spots.push_back(spotAt(cues, weights, map, g, at, known));
    strike(left, g, spots.back());
  }
  return spots;
}

/// What the panel shows besides copy: a balloon's own edge stands out too, and is no picture.
std::vector<Spot> pictureSpots(Cues cues, AttentionWeights weights, const Ground& g,
                               const PanelAttention& known) {
  weights.text = 0;
  cues.text.setTo(0);
  Layer map = summed(cues, weights, g);
  const double rim = 2 * kBlurShare * std::max(g.covers.width(), g.covers.height());
  for (const auto* list : {&known.marked, &known.proposed})
    for (const SeenElement& e : *list)
      if (e.kind == SeenKind::Copy)
        blankWhere(map, g, [&](Point p) { return e.box.outset(rim).contains(p); });
  return spotsOn(cues, weights, map, g, known);
}

}  // namespace

PanelAttention attentionOf(const GreyPicture& page, const Polygon& outline,
                           const std::vector<SeenElement>& marked,
                           const AttentionWeights& weights) {
  const OneThread quiet;
  const PanelPicture panel = panelPictureOf(page, outline);
  PanelAttention answer;
  if (panel.empty()) return answer;
  const Ground g = groundOf(panel);
  for (const SeenElement& e : marked)
    if (contains(outline, e.box.centre())) answer.marked.push_back(e);
  const Cues cues = cuesOf(panel, g, answer.marked, answer.proposed);
  const Layer map = summed(cues, weights, g);
  answer.spots = spotsOn(cues, weights, map, g, answer);
  answer.picture = pictureSpots(cues, weights, g, answer);
  answer.map = scaledMap(map, panel.picture);
  return answer;
}

}  // namespace tw
