// Measuring a page that is there already.
//
// 1. The layout is taken from the rough's own outlines; the dominant share and the order are those
//    of the shapes as they are.
// 2. Each panel is looked at, its copy set again, its greys rendered: the dear part, in parallel
//    over panels and only for panels that changed.
// 3. Leads arrive anew whenever any outline changed, else only the panel's own.
// 4. The card is written again from all of it: cheap.
// 5. Copy is placed afresh with every look, around the balloons that the artist placed. Those go
//    along with their panel when it changes shape, their tails with the mouths that move.
// Cost of one restaged panel: a look with every limb, a small render, its copy, the card.
#include "compose/measured_page.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "arrange/edit_limits.h"
#include "arrange/measure_layout.h"
#include "base/parallel.h"
#include "compose/finish.h"
#include "compose/kept_staging.h"
#include "compose/staging_table.h"
#include "geometry/polygon.h"
#include "letter/move_balloon.h"
#include "stage/panel_glance.h"
#include "stage/quick_measures.h"

namespace tw {

namespace {

constexpr int kLookWidth = 240;

Treatment treatmentNamed(const std::string& name) {
  for (const Treatment t : {Treatment::Bled, Treatment::Ground, Treatment::Slanted})
    if (nameOf(t) == name) return t;
  return Treatment::Plain;
}

bool shows(const Rough& rough, const PageCase& page) {
  return std::ranges::equal(rough.panels, page.panels, {}, &RoughPanel::beat,
                            [](const PanelCase& panel) { return panel.beat.id; });
}

// Files keep six decimals; what differs less is the same.
constexpr double kSameM = 1e-3, kSameDeg = 1e-2, kSameMm = 1e-2;

bool isNear(const Place3& a, const Place3& b) {
  return std::abs(a.x - b.x) < kSameM && std::abs(a.y - b.y) < kSameM &&
         std::abs(a.z - b.z) < kSameM;
}

bool standsAlike(const CameraPlace& a, const CameraPlace& b) {
  return isNear(a.eye, b.eye) && std::abs(a.panDeg - b.panDeg) < kSameDeg &&
         std::abs(a.pitchDeg - b.pitchDeg) < kSameDeg &&
         std::abs(a.rollDeg - b.rollDeg) < kSameDeg && std::abs(a.focalMm - b.focalMm) < kSameMm &&
         std::abs(a.offsetX - b.offsetX) < kSameM && std::abs(a.offsetY - b.offsetY) < kSameM;
}

/// The lines keep their place in the panel's box.
void moveStrokes(std::vector<PenStroke>& strokes, const Rect& from, const Rect& to) {
  const double x = to.width() / from.width(), y = to.height() / from.height();
  for (PenStroke& stroke : strokes)
    for (Point& p : stroke.points)
      p = to.min + Vector{(p.x - from.min.x) * x, (p.y - from.min.y) * y};
}

}  // namespace

MeasuredPage::MeasuredPage(const PageCase& page, const Workshop& workshop, const LightWords& lights)
    : page_(&page), workshop_(&workshop), lights_(&lights) {}

Result<MeasuredPage> MeasuredPage::of(const PageCase& page, const Workshop& workshop,
                                      const LightWords& lights, Rough rough, unsigned threads) {
  if (!shows(rough, page))
    return badInput(
        fmt::format("Rough {} was made for another state of the script: its panels are not the "
                    "page's.",
                    rough.name),
        {.page = page.page->number}, "Make the page's roughs again.");
  MeasuredPage out(page, workshop, lights);
  out.measured_.rough = std::move(rough);
  const std::size_t n = page.panels.size();
  out.greys_.resize(n);
  out.things_.resize(n);
  out.measured_.variants.resize(n);
  out.measured_.copy.resize(n);
  out.measured_.covered.resize(n);
  out.takeLayout();
  out.readOrderAgain();
  parallelFor(n, threads, [&](std::size_t i) { out.look(i); });
  out.arriveAgain();
  return out;
}

void MeasuredPage::takeLayout() {
  Layout& layout = measured_.layout;
  layout.treatment = treatmentNamed(measured_.rough.treatment);
  layout.tree = measured_.rough.arrangement;
  layout.panels.clear();
  for (const RoughPanel& panel : measured_.rough.panels)
    layout.panels.push_back({panel.outline, panel.bleeds, panel.ground});
  measureShapes(page_->arrangeRequest(), layout);
}

void MeasuredPage::readOrderAgain() {
  std::vector<Polygon> outlines;
  std::vector<int> layer;
  const bool grounded = std::ranges::any_of(measured_.rough.panels, &RoughPanel::ground);
  for (const RoughPanel& panel : measured_.rough.panels) {
    outlines.push_back(panel.outline);
    layer.push_back(grounded && !panel.ground ? 1 : 0);
  }
  measured_.order = readOrder(outlines, page_->brief.direction, layer);
}

void MeasuredPage::look(std::size_t i) {
  look(i, letterRequestOf(i));
}

void MeasuredPage::look(std::size_t i, const LetterRequest& before) {
  // The two renders know nothing of each other: one per core.
  RoughPanel bare;
  bare.outline = measured_.rough.panels[i].outline;
  bare.staging = measured_.rough.panels[i].staging;
  parallelFor(2, 0, [&](std::size_t part) {
    if (part == 0) {
      lookClosely(i, before);
      return;
    }
    PanelGlance glance = glanceAt(workshop_->stager, bare, page_->panels[i].beat, *lights_);
    greys_[i] = std::move(glance.grey);
    things_[i] = std::move(glance.things);
  });
}

void MeasuredPage::lookClosely(std::size_t i, const LetterRequest& before) {
  const PanelCase& wish = page_->panels[i];
  RoughPanel& panel = measured_.rough.panels[i];
  workshop_->stager.look(panel, wish.beat, wish.focus, kLookWidth, LookFor::Everything);
  measured_.variants[i] = quickly(i, panel.staging);
  if (std::ranges::any_of(panel.balloons, &PlacedBalloon::byHand))
    panel.balloons = takenAlong(before, letterRequestOf(i), workshop_->letterer);
  letterAgain(i);
}

void MeasuredPage::letterAgain(std::size_t i) {
  RoughPanel& panel = measured_.rough.panels[i];
  const std::vector<Polygon> insets = insetsOn(measured_.layout, i);
  measured_.copy[i] = letteredPanel(*page_, *workshop_, i, panel, insets);
  panel.balloons = measured_.copy[i].balloons;
  measured_.covered[i] = coveredShare(page_->panels[i], panel, insets);
}

LetterRequest MeasuredPage::letterRequestOf(std::size_t i) const {
  return letterRequest(*page_, i, measured_.rough.panels[i], insetsOn(measured_.layout, i));
}

void MeasuredPage::arriveAgain() {
  measured_.arrivals = arrivalsOf(measured_.rough, *page_);
  judge(measured_, *page_, workshop_->rules);
}

void MeasuredPage::restage(std::size_t panel, Staging staging) {
  const LetterRequest before = letterRequestOf(panel);
  measured_.rough.panels[panel].staging = std::move(staging);
  look(panel, before);
  arriveAgain();
}

void MeasuredPage::reletter(std::size_t panel, std::vector<PlacedBalloon> balloons) {
  measured_.rough.panels[panel].balloons = std::move(balloons);
  letterAgain(panel);
  judge(measured_, *page_, workshop_->rules);
}

void MeasuredPage::reshape(const std::vector<std::pair<std::size_t, Polygon>>& outlines,
                           unsigned threads) {
  const std::size_t n = outlines.size();
  std::vector<LetterRequest> before;
  std::vector<char> byHand(n);
  for (const auto& [panel, outline] : outlines) before.push_back(letterRequestOf(panel));
  parallelFor(n, threads, [&](std::size_t k) { byHand[k] = isSetByHand(outlines[k].first); });
  for (const auto& [index, outline] : outlines) {
    RoughPanel& panel = measured_.rough.panels[index];
    moveStrokes(panel.strokes, bounds(panel.outline), bounds(outline));
    panel.outline = outline;
    panel.bleeds = runsToBleed(outline, page_->sheet);
  }
  takeLayout();
  readOrderAgain();
  parallelFor(n, threads, [&](std::size_t k) {
    const std::size_t panel = outlines[k].first;
    if (!byHand[k]) {
      Staging& staging = measured_.rough.panels[panel].staging;
      staging = withHandOf(solved(panel, staging.choice), staging);
    }
    look(panel, before[k]);
  });
  arriveAgain();
}

/// Camera or figures stand otherwise than their choice would put them.
bool MeasuredPage::isSetByHand(std::size_t panel) const {
  const Staging& now = measured_.rough.panels[panel].staging;
  const Staging as = solved(panel, now.choice);
  if (!standsAlike(as.camera, now.camera) || as.figures.size() != now.figures.size()) return true;
  for (std::size_t i = 0; i < as.figures.size(); ++i)
    if (!isNear(as.figures[i].at, now.figures[i].at) ||
        std::abs(as.figures[i].headingDeg - now.figures[i].headingDeg) > kSameDeg)
      return true;
  return false;
}

void MeasuredPage::replace(std::size_t i, RoughPanel changed) {
  RoughPanel& now = measured_.rough.panels[i];
  const bool sameShape = changed.outline == now.outline && changed.bleeds == now.bleeds &&
                         changed.ground == now.ground;
  const bool samePicture = sameShape && changed.staging == now.staging;
  if (samePicture) {  // only what lies over it: the dear look is still right
    now.strokes = std::move(changed.strokes);
    reletter(i, std::move(changed.balloons));
    return;
  }
  now = std::move(changed);
  takeLayout();
  readOrderAgain();
  look(i);
  arriveAgain();
}

std::vector<std::string> MeasuredPage::fromTheLeft(std::size_t panel,
                                                   const Staging& staging) const {
  const PanelCase& wish = page_->panels[panel];
  const Scene scene = workshop_->stager.sceneOf(staging, wish.beat, wish.focus);
  const Rect frame = frameOf(measured_.rough.panels[panel].outline);
  const Camera camera(staging.camera, frame.width() / frame.height());
  std::vector<std::pair<double, std::string>> heads;
  for (const Actor& actor : scene.actors)
    heads.emplace_back(headBox(actor, camera).centre().x, actor.set.who);
  std::ranges::stable_sort(heads, {}, [](const auto& head) { return head.first; });
  std::vector<std::string> out;
  for (auto& [x, who] : heads) out.push_back(std::move(who));
  return out;
}

Staging MeasuredPage::solved(std::size_t panel, const StagingChoice& choice) const {
  return workshop_->stager.solved(stageRequest(*page_, panel, measured_.layout), choice);
}

Variant MeasuredPage::quickly(std::size_t panel, const Staging& staging) const {
  return quickVariant(workshop_->stager, stageRequest(*page_, panel, measured_.layout), staging);
}

}  // namespace tw
