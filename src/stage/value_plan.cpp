// A value plan from a rendered panel.
//
//  1 Cells with their steps (value_cells), specks cleaned away.
//  2 Grounds are set lighter or darker by a step where figures then stand out (value_blacks).
//  3 Blacks proposed and filled (value_blacks); what they leave small is cleaned again.
//  4 Each step with all darker ones is traced into smooth outlines; painted light to black they
//    leave no gap of paper between two steps.
//  5 Shares are counted on the cells.
// Cost: see the parts; about a fifth of a panel's drawing. Does badly: it is made without the
// copy, so a balloon may lie on the one black that mattered.
#include "stage/value_plan.h"

#include <cmath>

#include "stage/value_blacks.h"

namespace tw {

namespace {

constexpr double kSpeckMm2 = 3;
constexpr double kSmoothMm = 0.45;

Region tracedFrom(const Cells& cells, int step, const LitScene& scene) {
  Picture size;
  size.width = cells.width;
  size.height = cells.height;
  const PanelView view{size, scene.view.camera, scene.view.frame};
  Field mask = fieldOver({0, 0, cells.width, cells.height});
  for (std::size_t i = 0; i < cells.count(); ++i) mask.value[i] = cells.step[i] >= step ? 1.f : 0.f;
  return traced(blurred(mask, 1), view, {0.5f, kSpeckMm2 / 2, kSmoothMm});
}

std::array<double, kValueSteps> sharesOf(const Cells& cells) {
  std::array<double, kValueSteps> shares{};
  double all = 0;
  for (std::size_t i = 0; i < cells.count(); ++i) {
    if (!cells.isInside(i)) continue;
    shares[cells.step[i]] += 1;
    all += 1;
  }
  for (double& share : shares) share = all > 0 ? share / all : 0;
  return shares;
}

/// Cells beyond the panel continue what is inside, so that tones run on under the border.
void fillOutside(Cells& cells) {
  const auto w = static_cast<std::size_t>(cells.width);
  for (std::size_t i = 1; i < cells.count(); ++i)
    if (!cells.isInside(i) && i % w != 0) cells.step[i] = cells.step[i - 1];
}

}  // namespace

ValuePlan valuePlanOf(const LitScene& scene, const Polygon& panel) {
  Cells cells = cellsOf(scene, panel);
  cleanSpecks(cells, kSpeckMm2);
  chooseGrounds(cells, scene.solids);
  const FocusBorder border(cells, scene.solids);
  ValuePlan plan;
  plan.blacks = spotBlacks(cells, scene, border);
  if (!plan.blacks.empty()) cleanSpecks(cells, kSpeckMm2);
  plan.shares = sharesOf(cells);
  plan.runTogether = runningTogether(cells, scene.solids);
  plan.hasFocus = border.hasFocus();
  if (plan.hasFocus) {
    const Standing standing = border.standing(cells, {});
    plan.focusLightness = standing.focusLightness;
    plan.groundLightness = standing.groundLightness;
    plan.apart = standing.apart;
  }
  fillOutside(cells);
  for (int step = 1; step < static_cast<int>(kValueSteps); ++step)
    plan.regions[static_cast<std::size_t>(step - 1)] = tracedFrom(cells, step, scene);
  return plan;
}

std::vector<Tone> ValuePlan::tones() const {
  std::vector<Tone> out;
  for (std::size_t i = 0; i < regions.size(); ++i)
    if (!regions[i].empty()) out.push_back({regions[i], darknessOf(static_cast<ValueStep>(i + 1))});
  return out;
}

}  // namespace tw
