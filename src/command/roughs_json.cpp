// The published JSON of `tierwright roughs --json`: docs/formats/roughs-output.schema.json.
#include <cmath>

#include "command/measures.h"
#include "command/roughs.h"
#include "job/rough_fields.h"
#include "job/write_json.h"

namespace tw {

namespace {

constexpr Spec kMm = mm();
constexpr Spec kNumber = number(-1e9, 1e9);

OrderedJson cardJson(const Rough& rough) {
  OrderedJson out = OrderedJson::array();
  for (const CardLine& line : rough.card)
    out.push_back({{"rule", line.rule},
                   {"cost", jsonOf(line.cost, kNumber)},
                   {"reason", line.reason},
                   {"remedy", line.remedy},
                   {"panel", line.panel}});
  return out;
}

OrderedJson leadJson(const Lead& lead) {
  return {{"from", jsonOf(lead.from, kMm)},
          {"direction", jsonOf(Point{lead.direction.x, lead.direction.y}, kNumber)},
          {"strength", jsonOf(lead.strength, kNumber)},
          {"why", lead.why}};
}

OrderedJson figureJson(const SeenFigure& figure) {
  OrderedJson out{{"who", figure.who},
                  {"visible", jsonOf(figure.visible, kNumber)},
                  {"head_mm", jsonOf(figure.headMm, kNumber)},
                  {"cut", figure.cut}};
  out.update(measuresJson(figure));
  return out;
}

OrderedJson balloonJson(const PlacedBalloon& balloon) {
  return {{"item", balloon.item}, {"outline", jsonOf(balloon.outline, kMm)}};
}

template <class T, class Make>
OrderedJson listOf(const std::vector<T>& items, Make make) {
  OrderedJson out = OrderedJson::array();
  for (const T& item : items) out.push_back(make(item));
  return out;
}

OrderedJson panelJson(const RoughPanel& panel) {
  OrderedJson out{{"beat", panel.beat},
                  {"outline", jsonOf(panel.outline, kMm)},
                  {"dominant", panel.dominant},
                  {"bleeds", panel.bleeds},
                  {"ground", panel.ground},
                  {"shot", std::string(nameOf(panel.staging.choice.shot))},
                  {"eye", std::string(nameOf(panel.staging.choice.eye))},
                  {"tilt_deg", jsonOf(panel.staging.choice.tiltDeg, kNumber)},
                  {"mirrored", panel.staging.choice.mirrored},
                  {"camera", cameraJson(panel.staging)},
                  {"focus", jsonOf(panel.focus, kMm)},
                  {"lead", leadJson(panel.lead)},
                  {"figures", listOf(panel.figures, figureJson)},
                  {"tangents", tangentsJson(panel.tangents)},
                  {"balloons", listOf(panel.balloons, balloonJson)}};
  if (panel.staging.light) out["light"] = objectOf(*panel.staging.light, true);
  return out;
}

OrderedJson roughJson(const Rough& rough) {
  return {{"name", rough.name},
          {"score", jsonOf(rough.score, kNumber)},
          {"arrangement", rough.arrangement},
          {"treatment", rough.treatment},
          {"card", cardJson(rough)},
          {"panels", listOf(rough.panels, panelJson)},
          {"reading",
           {{"order", rough.reading.order},
            {"followed", jsonOf(rough.reading.followed, kNumber)},
            {"handed_on", jsonOf(rough.reading.handedOn, kNumber)}}}};
}

OrderedJson pageJson(const PageRoughs& page) {
  const Composed& c = page.composed;
  return {{"page", c.page},
          {"arrangements",
           {{"counted", c.counted},
            {"sized", c.sized},
            {"staged", c.staged},
            {"exhaustive", c.exhaustive}}},
          {"seconds", jsonOf(page.seconds, number(0, 1e6))},
          {"unmet", c.unmet},
          {"unkept", c.unkept},
          {"not_drawn", page.notDrawn},
          {"roughs", listOf(c.roughs, roughJson)}};
}

}  // namespace

std::string roughsJson(const std::vector<PageRoughs>& pages) {
  if (pages.size() == 1) return textOf(pageJson(pages.front()));
  return textOf({{"pages", listOf(pages, pageJson)}});
}

}  // namespace tw
