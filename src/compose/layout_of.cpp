#include "compose/layout_of.h"

#include <algorithm>

#include "arrange/measure_layout.h"

namespace tw {

Treatment treatmentNamed(const std::string& name) {
  for (const Treatment t : {Treatment::Bled, Treatment::Ground, Treatment::Slanted})
    if (nameOf(t) == name) return t;
  return Treatment::Plain;
}

Layout layoutOf(const Rough& rough, const PageCase& page) {
  Layout out;
  out.treatment = treatmentNamed(rough.treatment);
  out.tree = rough.arrangement;
  for (const RoughPanel& panel : rough.panels)
    out.panels.push_back({panel.outline, panel.bleeds, panel.ground});
  measureShapes(page.arrangeRequest(), out);
  return out;
}

bool showsBeatsOf(const Rough& rough, const PageCase& page) {
  return std::ranges::equal(rough.panels, page.panels, {}, &RoughPanel::beat,
                            [](const PanelCase& panel) { return panel.beat.id; });
}

}  // namespace tw
