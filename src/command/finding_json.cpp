#include "command/finding_json.h"

#include "job/field.h"

namespace tw {

namespace {

OrderedJson outlineJson(const Polygon& polygon) {
  OrderedJson out = OrderedJson::array();
  for (const Point& p : polygon.points)
    out.push_back(OrderedJson::array({rounded(p.x, 2), rounded(p.y, 2)}));
  return out;
}

OrderedJson triedJson(const TriedRemedy& tried) {
  OrderedJson out{{"change", tried.change},
                  {"before", rounded(tried.before, 2)},
                  {"after", rounded(tried.after, 2)},
                  {"helps", tried.helps}};
  if (!tried.aside.empty()) out["harms"] = tried.aside;
  return out;
}

}  // namespace

OrderedJson findingJson(const Finding& f) {
  OrderedJson out{{"rule", f.rule},
                  {"level", std::string(nameOf(f.severity))},
                  {"page", f.page},
                  {"panel", f.panel},
                  {"beat", f.beat},
                  {"measure", f.measure},
                  {"value", rounded(f.value, 3)},
                  {"limit", rounded(f.limit, 3)},
                  {"unit", f.unit},
                  {"place", outlineJson(f.place)},
                  {"reason", f.reason},
                  {"remedy", f.remedy}};
  OrderedJson tried = OrderedJson::array();
  for (const TriedRemedy& t : f.tried) tried.push_back(triedJson(t));
  out["tried"] = std::move(tried);
  out["evidence"] = std::string(nameOf(f.evidence));
  if (!f.source.empty()) out["source"] = f.source;
  if (!f.silencedWhy.empty()) out["silenced"] = f.silencedWhy;
  return out;
}

OrderedJson findingsJson(const std::vector<Finding>& findings) {
  OrderedJson out = OrderedJson::array();
  for (const Finding& f : findings) out.push_back(findingJson(f));
  return out;
}

}  // namespace tw
