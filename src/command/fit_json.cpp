// The published JSON of `tierwright fit --json`: docs/formats/fit-output.schema.json.
#include "command/fit.h"
#include "job/write_json.h"

namespace tw {

namespace {

constexpr Spec kMm = mm();
constexpr Spec kNumber = number(-1e9, 1e9);

OrderedJson placeJson(const Fit& fit, double headMm) {
  return {{"scale", jsonOf(fit.scale, kNumber)},
          {"move", jsonOf(Point{fit.move.x, fit.move.y}, kMm)},
          {"mirrored", fit.mirrored},
          {"head_mm", jsonOf(headMm, kNumber)}};
}

OrderedJson fitJson(const Fit& fit, double headMm) {
  OrderedJson out = placeJson(fit, headMm);
  out["exact"] = fit.within == 0;
  out["within"] = jsonOf(fit.within, kNumber);
  return out;
}

OrderedJson optionJson(const CutOption& option) {
  OrderedJson out = fitJson(option.fit, option.headMm);
  out["line"] = option.line;
  out["lost"] = jsonOf(option.lost, kNumber);
  out["hands_kept"] = option.handsIn;
  return out;
}

OrderedJson wholeJson(const WholeAnswer& whole, double headMmNow) {
  OrderedJson out = fitJson(whole.fit, whole.headMm);
  out["fills"] = jsonOf(whole.filled, kNumber);
  if (whole.alone) out["alone"] = fitJson(*whole.alone, whole.alone->scale * headMmNow);
  return out;
}

OrderedJson cutJson(const CutAnswer& cut) {
  OrderedJson options = OrderedJson::array();
  for (const CutOption& option : cut.options) options.push_back(optionJson(option));
  return {{"best", cut.best}, {"why", cut.why}, {"options", options}};
}

OrderedJson overJson(const OverAnswer& over) {
  OrderedJson out = placeJson(over.fit, over.headMm);
  out["largest_scale"] = jsonOf(over.largestScale, kNumber);
  out["bound_scale"] = jsonOf(over.boundScale, kNumber);
  out["grid_mm"] = jsonOf(kOverGridMm, kNumber);
  out["scale_step"] = jsonOf(kOverScaleStep, kNumber);
  out["own_share"] = jsonOf(over.ownShare, kNumber);
  out["hauled_share"] = jsonOf(over.hauledShare, kNumber);
  out["covered"] = OrderedJson::array();
  for (const CoveredPanel& c : over.covered)
    out["covered"].push_back({{"panel", c.panel},
                              {"share", jsonOf(c.share, kNumber)},
                              {"area_mm2", jsonOf(c.areaMm2, kNumber)},
                              {"faces_mm2", jsonOf(c.facesMm2, kNumber)},
                              {"copy_mm2", jsonOf(c.copyMm2, kNumber)}});
  out["why"] = over.why;
  return out;
}

}  // namespace

std::string fitJson(const FitAnswers& a) {
  OrderedJson out{{"page", a.page},
                  {"rough", a.rough},
                  {"panel", a.panel},
                  {"who", a.figure.who},
                  {"carries", a.figure.carries},
                  {"margin_mm", jsonOf(a.marginMm, kNumber)},
                  {"head_mm_now", jsonOf(a.figure.headMm, kNumber)},
                  {"head_mm_wanted", jsonOf(a.wantedHeadMm, kNumber)}};
  out["whole"] = a.whole ? wholeJson(*a.whole, a.figure.headMm) : OrderedJson(nullptr);
  out["cut"] = a.cut ? cutJson(*a.cut) : OrderedJson(nullptr);
  out["over"] = a.over ? overJson(*a.over) : OrderedJson(nullptr);
  out["sentences"] = fitSentences(a);
  return textOf(out);
}

}  // namespace tw
