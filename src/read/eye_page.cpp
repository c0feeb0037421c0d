// Chances to be passed over are odds: the base, times one factor for each thing that was seen to
// raise them (eye_path.json), less in proportion as the panel takes up the page. Copy that is ahead
// pulls by how many words it has and how near it stands to the panel that might be passed over,
// two panels ahead at most (facts: readers use at least two).

#include "read/eye_page.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "geometry/polygon.h"
#include "read/page_handed_on.h"
#include "read/reading_time.h"

namespace tw {
namespace {

/// A figure's looks fall on its upper part; our choice.
constexpr double kFigureAim = 0.35;
/// A panel beside a stack is tall when it is so many times as high as one of it; our choice.
constexpr double kTallBeside = 1.5;

SeenPage firstPanels(SeenPage page) {
  if (page.panels.size() > kMostPanels) page.panels.resize(kMostPanels);
  return page;
}

std::vector<Polygon> outlinesOf(const SeenPage& page) {
  std::vector<Polygon> outlines;
  for (const SeenPanel& panel : page.panels) outlines.push_back(panel.outline);
  return outlines;
}

std::vector<int> layersOf(const SeenPage& page) {
  std::vector<int> layers;
  for (const SeenPanel& panel : page.panels) layers.push_back(panel.layer);
  return layers;
}

double gapBetween(const Rect& a, const Rect& b) {
  const double x = std::max({0.0, b.min.x - a.max.x, a.min.x - b.max.x});
  const double y = std::max({0.0, b.min.y - a.max.y, a.min.y - b.max.y});
  return std::hypot(x, y);
}

double weightOf(SeenKind kind, const EyePathModel& m) {
  switch (kind) {
    case SeenKind::Face:
      return m.weightOfFace;
    case SeenKind::Figure:
      return m.weightOfFigure;
    case SeenKind::Hand:
      return m.weightOfHand;
    case SeenKind::Prop:
      return m.weightOfProp;
    case SeenKind::Spot:
      return m.weightOfSpot;
    case SeenKind::Copy:
      break;
  }
  return 0;
}

/// From the panel to its nearest copy, or nothing's distance when it has none.
double nearestCopy(const Rect& from, const EyePanel& to) {
  double nearest = 1e300;
  for (const EyePart& copy : to.copy) nearest = std::min(nearest, gapBetween(from, copy.box));
  return nearest;
}

/// The lower panel of a stack: a tall one stands beside it and beside the one above it.
bool isLowInStack(int panel, const PanelRelations& page) {
  const auto tallBeside = [&](PanelSet beside, double height) {
    for (int t = 0; t < page.count; ++t) {
      const bool tall = page.boxes[static_cast<std::size_t>(t)].height() > kTallBeside * height;
      if ((beside & only(t)) && tall) return true;
    }
    return false;
  };
  const auto i = static_cast<std::size_t>(panel);
  for (int above = 0; above < page.count; ++above) {
    if (!(page.above[i] & only(above))) continue;
    const auto a = static_cast<std::size_t>(above);
    const PanelSet beside = (page.right[i] & page.right[a]) | (page.left[i] & page.left[a]);
    const double height = std::max(page.boxes[i].height(), page.boxes[a].height());
    if (tallBeside(beside, height)) return true;
  }
  return false;
}

}  // namespace

EyePage::EyePage(const SeenPage& whole, const EyePathModel& model, const ReaderPreferences& likes)
    : model_(model),
      relations_(outlinesOf(firstPanels(whole)), whole.direction, layersOf(firstPanels(whole)),
                 likes),
      mirrored_(whole.direction == ReadingDirection::RightToLeft) {
  const SeenPage page = firstPanels(whole);
  origin_ = {mirrored_ ? -page.page.max.x : page.page.min.x, page.page.min.y};
  unit_ = page.page.height() > 0 ? page.page.height() : 1;
  for (const SeenPanel& panel : page.panels)
    panels_.push_back(readyPanel(panel, relations_.onTop[panels_.size()] != 0));
  countLooks();
  findSkips(page);
  findPulls(page);
}

std::size_t EyePage::at(int from, int to) const {
  return static_cast<std::size_t>(from) * panels_.size() + static_cast<std::size_t>(to);
}

Point EyePage::ready(Point p) const {
  return {((mirrored_ ? -p.x : p.x) - origin_.x) / unit_, (p.y - origin_.y) / unit_};
}

Rect EyePage::ready(const Rect& box) const {
  const Point a = ready(box.min), b = ready(box.max);
  return {{std::min(a.x, b.x), a.y}, {std::max(a.x, b.x), b.y}};
}

Point EyePage::onPage(Point p) const {
  const double x = origin_.x + p.x * unit_;
  return {mirrored_ ? -x : x, origin_.y + p.y * unit_};
}

/// A drawn gaze or pointing arm makes what it aims at a little likelier: a weak effect.
double EyePage::gazeFactor(const SeenPanel& panel, const SeenElement& element) const {
  if (panel.lead.strength <= 0 || element.isFocus) return 1;
  const Vector toward = (element.box.centre() - panel.lead.from).unit();
  const double aimed = std::max(0.0, dot(panel.lead.direction.unit(), toward));
  return std::exp(model_.gazeLogOdds() * panel.lead.strength * aimed);
}

std::vector<EyePart> EyePage::readyCopy(const SeenPanel& panel) const {
  const double perLetter =
      model_.fixationsPerWord * (1 - model_.readingRegressions) / model_.lettersPerWord;
  std::vector<EyePart> copy;
  for (std::size_t i = 0; i < panel.elements.size(); ++i) {
    const SeenElement& e = panel.elements[i];
    if (e.kind != SeenKind::Copy) continue;
    const Rect box = ready(e.box);
    const double looks = std::max(1.0, lettersToRead(e.words, e.characters) * perLetter);
    copy.push_back({e.kind, static_cast<int>(i), box, box.centre(), 0, looks});
  }
  return copy;
}

std::vector<EyePart> EyePage::readyPicture(const SeenPanel& panel, bool underInsets) const {
  std::vector<EyePart> parts;
  const Point focus = ready(panel.focus);
  for (std::size_t i = 0; i < panel.elements.size(); ++i) {
    const SeenElement& e = panel.elements[i];
    if (e.kind == SeenKind::Copy) continue;
    const Rect box = ready(e.box);
    Point aim = box.centre();
    if (e.kind == SeenKind::Figure) aim.y = box.min.y + kFigureAim * box.height();
    if (e.isFocus && box.contains(focus)) aim = focus;
    const double weight =
        weightOf(e.kind, model_) * (e.isFocus ? model_.focusBonus : 1) * gazeFactor(panel, e);
    parts.push_back({e.kind, static_cast<int>(i), box, aim, weight, 0});
  }
  const Rect box = ready(bounds(panel.outline));
  const bool atFocus = (parts.empty() || underInsets) && box.contains(focus);
  const Point aim = atFocus ? focus : box.centre();
  parts.push_back({SeenKind::Spot, -1, box, aim, model_.weightOfGround, 0});
  return parts;
}

EyePanel EyePage::readyPanel(const SeenPanel& panel, bool underInsets) const {
  EyePanel ready;
  ready.box = this->ready(bounds(panel.outline));
  ready.copy = readyCopy(panel);
  ready.picture = readyPicture(panel, underInsets);
  ready.cameBack = ready.copy.empty() ? model_.backWithoutCopy : model_.backWithCopy;
  return ready;
}

void EyePage::countLooks() {
  double sum = 0;
  for (const EyePanel& panel : panels_) sum += panel.box.area();
  const double mean = sum / std::max<double>(1, static_cast<double>(panels_.size()));
  for (EyePanel& panel : panels_) {
    const double size = std::log2(std::max(panel.box.area(), 1e-9) / std::max(mean, 1e-9));
    const double things = static_cast<double>(panel.picture.size()) - 1;  // without the ground
    const double base = panel.copy.empty() ? model_.picturesWithoutCopy : model_.picturesAfterCopy;
    panel.looks = std::max(0.0, base + model_.picturesPerDoubling * size +
                                    model_.picturesPerPart * std::max(0.0, things - 1));
  }
}

/// 0…1: how strongly copy of the next two panels draws the eye past this one.
double EyePage::densePull(std::size_t panel, const SeenPage& page) const {
  double most = 0, ahead = 1;
  for (std::size_t j = panel + 1; j <= panel + 2 && j < panels_.size(); ++j) {
    const double range = model_.denseWords - model_.denseFromWords;
    const double dense = (page.panels[j].words() - model_.denseFromWords) / range;
    const double near = std::exp(-nearestCopy(panels_[panel].box, panels_[j]) / model_.pullReach);
    most = std::max(most, ahead * std::clamp(dense, 0.0, 1.0) * near);
    ahead = model_.previewSecond;
  }
  return most;
}

void EyePage::findSkips(const SeenPage& page) {
  const double base = std::clamp(model_.skipBase, 1e-6, 1 - 1e-6);
  const double pageArea = page.page.area() / (unit_ * unit_);
  for (std::size_t i = 0; i < panels_.size(); ++i) {
    double logOdds = std::log(base / (1 - base));
    if (panels_[i].copy.empty()) logOdds += model_.skipWithoutCopy;
    if (page.panels[i].continues) logOdds += model_.skipGoingOn;
    if (isLowInStack(static_cast<int>(i), relations_)) logOdds += model_.skipLowInStack;
    logOdds += model_.skipBeforeDense * densePull(i, page);
    const double share = panels_[i].box.area() / std::max(pageArea, 1e-9);
    const double small = 1 - share / std::max(model_.skipUpToShare, 1e-9);
    panels_[i].passedOver = std::clamp(small, 0.0, 1.0) / (1 + std::exp(-logOdds));
  }
}

void EyePage::findPulls(const SeenPage& page) {
  copyPull_.assign(panels_.size() * panels_.size(), 0);
  leadPull_ = copyPull_;
  const ArrivalField field = arrivalFieldOf(page);
  for (int from = 0; from < count(); ++from) {
    const auto f = static_cast<std::size_t>(from);
    const Lead& lead = page.panels[f].lead;
    const std::vector<double> met =
        lead.strength > 0 ? field.sharesOf(lead, f) : std::vector<double>(panels_.size(), 0);
    for (int to = 0; to < count(); ++to) {
      const auto t = static_cast<std::size_t>(to);
      const double gap = nearestCopy(panels_[f].box, panels_[t]);
      copyPull_[at(from, to)] = model_.forkCopy * std::exp(-gap / model_.pullReach);
      leadPull_[at(from, to)] = model_.gazeLogOdds() * lead.strength * met[t];
    }
  }
}

}  // namespace tw
