// The published JSON of `tierwright values --json`: docs/formats/values-output.schema.json.
#include "command/values.h"
#include "job/field.h"
#include "job/write_json.h"

namespace tw {

namespace {

OrderedJson jsonOf(const PanelValues& v) {
  const ValuePlan& plan = v.plan;
  OrderedJson json = {{"panel", v.panel},
                      {"beat", v.beat},
                      {"light", v.light},
                      {"shares",
                       {{"paper", rounded(plan.shares[0], 4)},
                        {"light", rounded(plan.shares[1], 4)},
                        {"dark", rounded(plan.shares[2], 4)},
                        {"black", rounded(plan.shares[3], 4)}}},
                      {"separates", plan.separates()},
                      {"blacks", v.blacks},
                      {"findings", v.findings}};
  if (plan.hasFocus)
    json["focus"] = {{"who", v.focus},
                     {"lightness", rounded(plan.focusLightness, 1)},
                     {"ground_lightness", rounded(plan.groundLightness, 1)},
                     {"contrast", rounded(plan.contrast(), 1)},
                     {"apart", rounded(plan.apart, 4)}};
  return json;
}

}  // namespace

std::string valuesJson(const ValuesRequest& request, const std::vector<PanelValues>& values) {
  OrderedJson panels = OrderedJson::array();
  for (const PanelValues& v : values) panels.push_back(jsonOf(v));
  return textOf({{"page", request.page}, {"rough", request.rough}, {"panels", panels}});
}

}  // namespace tw
