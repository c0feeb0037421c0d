#include "compose/finish.h"

#include <algorithm>

#include "compose/kept_staging.h"
#include "compose/staging_table.h"
#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr int kLookWidth = 240;

RoughPanel stagedPanel(const PageCase& page, const Workshop& workshop, const Layout& layout,
                       std::size_t i, const StagingChoice& choice, const Staging* pinned) {
  RoughPanel out;
  out.beat = page.panels[i].beat.id;
  out.outline = layout.panels[i].outline;
  out.dominant = page.panels[i].dominant;
  out.ground = layout.panels[i].ground;
  out.bleeds = layout.panels[i].bleeds;
  const StageRequest request = stageRequest(page, i, layout);
  out.staging = pinned != nullptr ? fitted(workshop.stager, request, *pinned)
                                  : workshop.stager.solved(request, choice);
  workshop.stager.look(out, page.panels[i].beat, page.panels[i].focus, kLookWidth, LookFor::Shares);
  return out;
}

}  // namespace

std::vector<Polygon> insetsOn(const Layout& layout, std::size_t i) {
  std::vector<Polygon> out;
  if (layout.panels[i].ground)
    for (std::size_t k = 0; k < layout.panels.size(); ++k)
      if (k != i) out.push_back(layout.panels[k].outline);
  return out;
}

double coveredShare(const PanelCase& wish, const RoughPanel& panel, std::vector<Polygon> over) {
  const SeenFigure* focus = focusFigure(panel, wish.focus);
  if (!wish.liftable || focus == nullptr || focus->body.empty()) return 0;
  for (const PlacedBalloon& balloon : panel.balloons)
    for (const Polygon* shape : {&balloon.outline, &balloon.tail})
      if (shape->points.size() > 2) over.push_back(*shape);
  if (over.empty()) return 0;
  return area(common(focus->body, united(over))) / std::max(1e-6, area(focus->body));
}

std::vector<Arrival> arrivalsOf(const Rough& rough, const PageCase& page) {
  std::vector<Polygon> outlines;
  std::vector<bool> ground;
  for (const RoughPanel& panel : rough.panels) {
    outlines.push_back(panel.outline);
    ground.push_back(panel.ground);
  }
  const ArrivalField field(outlines, page.sheet.trimRect(), page.brief.direction, ground);
  std::vector<Arrival> out;
  for (std::size_t i = 0; i < rough.panels.size(); ++i) {
    const Lead& lead = rough.panels[i].lead;
    out.push_back(lead.strength > 0 ? field.of(lead, i) : Arrival{});
  }
  return out;
}

LetterRequest letterRequest(const PageCase& page, std::size_t i, const RoughPanel& panel,
                            const std::vector<Polygon>& insets) {
  LetterRequest request;
  request.items = &page.panels[i].beat.copy;
  request.panel = panel.outline;
  request.live = page.sheet.liveRect(page.rightHand);
  for (const SeenFigure& figure : panel.figures) {
    if (!figure.face.points.empty()) {
      request.faces.push_back(figure.face);
      request.mouths[figure.who] = figure.mouth;
    }
    request.bodies.push_back(figure.body);
  }
  for (const KeepClear& zone : page.brief.keepClear) request.keepClear.push_back(zone.rect);
  request.covered = insets;
  request.direction = page.brief.direction;
  request.panelsOnPage = static_cast<int>(page.panels.size());
  request.standing = panel.balloons;
  return request;
}

LetterResult letteredPanel(const PageCase& page, const Workshop& workshop, std::size_t i,
                           const RoughPanel& panel, const std::vector<Polygon>& insets) {
  return workshop.letterer.place(letterRequest(page, i, panel, insets));
}

Measured finishRough(const PageCase& page, const Workshop& workshop, const Layout& layout,
                     const OrderReading& order, const std::vector<StagingChoice>& choices,
                     const PinsMet& pins) {
  Measured m;
  m.layout = layout;
  m.order = order;
  m.rough.arrangement = layout.tree;
  m.rough.treatment = nameOf(layout.treatment);
  for (std::size_t i = 0; i < layout.panels.size(); ++i) {
    const StageRequest request = stageRequest(page, i, layout);
    const Staging* pinned = pins.stagingOf(i);
    RoughPanel panel = stagedPanel(page, workshop, layout, i, choices[i], pinned);
    m.variants.push_back(pinned != nullptr ? quickVariant(workshop.stager, request, panel.staging)
                                           : workshop.stager.measured(request, choices[i]));
    m.copy.push_back(letteredPanel(page, workshop, i, panel, insetsOn(layout, i)));
    panel.balloons = m.copy.back().balloons;
    m.covered.push_back(coveredShare(page.panels[i], panel, insetsOn(layout, i)));
    m.rough.panels.push_back(std::move(panel));
  }
  m.arrivals = arrivalsOf(m.rough, page);
  judge(m, page, workshop.rules);
  return m;
}

void measureFully(Measured& m, const PageCase& page, const Workshop& workshop) {
  for (std::size_t i = 0; i < m.rough.panels.size(); ++i)
    workshop.stager.look(m.rough.panels[i], page.panels[i].beat, page.panels[i].focus, kLookWidth,
                         LookFor::Everything);
  judge(m, page, workshop.rules);
}

}  // namespace tw
