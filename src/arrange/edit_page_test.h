// Pages to move borders on; for this folder's tests only.
#pragma once

#include "arrange/layout.h"
#include "arrange/page_edit.h"
#include "base/progress.h"
#include "base/random.h"
#include "geometry/polygon.h"

namespace tw {

/// Trim 160 × 240, live area 10 mm in, gutters 4 across and 5 down, least panel 20 × 18.
inline Sheet editSheet() {
  Sheet sheet;
  sheet.trimWidth = 160;
  sheet.trimHeight = 240;
  sheet.bleed = 3;
  sheet.live = {10, 10, 10, 10};
  sheet.gutterAcross = 4;
  sheet.gutterDown = 5;
  sheet.leastPanelWidth = 20;
  sheet.leastPanelHeight = 18;
  return sheet;
}

inline EditPanel box(double left, double top, double right, double bottom) {
  return {polygonOf(Rect{{left, top}, {right, bottom}})};
}

/// Two tiers of two: the gutters cross at (80, 120).
inline std::vector<EditPanel> fourPanels() {
  return {box(10, 10, 78, 117.5), box(82, 10, 150, 117.5), box(10, 122.5, 78, 230),
          box(82, 122.5, 150, 230)};
}

/// Two panels over one.
inline std::vector<EditPanel> threePanels() {
  return {box(10, 10, 78, 117.5), box(82, 10, 150, 117.5), box(10, 122.5, 150, 230)};
}

inline std::vector<EditPanel> groundPanels() {
  std::vector<EditPanel> out{box(-3, -3, 163, 243), box(10, 180, 70, 230), box(74, 180, 150, 230)};
  out[0].ground = true;
  return out;
}

/// A layout of two to six panels in any treatment, by seed.
inline std::vector<EditPanel> randomPanels(std::uint64_t seed) {
  Random random(seed);
  ArrangeRequest request;
  request.sheet = editSheet();
  request.wishes.resize(2 + random.next() % 5);
  for (PanelWish& wish : request.wishes) wish.weight = 0.5 + 2 * random.uniform();
  if (random.uniform() < 0.6) request.dominant = random.next() % request.wishes.size();
  const auto treatment = static_cast<Treatment>(random.next() % 4);
  const bool ground = treatment == Treatment::Ground && request.dominant;
  Progress progress;
  const auto treesOf = [&](std::size_t leaves) {
    return enumerateTrees(static_cast<int>(leaves), progress).trees;
  };
  const auto trees = treesOf(request.wishes.size() - (ground ? 1 : 0));
  const PackedTree& tree = trees[random.next() % trees.size()];
  auto layout = layOut(request, tree, ground ? Treatment::Ground : treatment);
  if (!layout) layout = layOut(request, tree, Treatment::Plain);
  std::vector<EditPanel> out;
  if (layout)
    for (const LayoutPanel& panel : layout->panels) out.push_back({panel.outline, panel.ground});
  return out;
}

/// The page after a move.
inline std::vector<EditPanel> after(const PageEdit& edit, const EditMove& move) {
  std::vector<EditPanel> out = edit.panels();
  for (const EditedPanel& changed : move.panels) out[changed.panel].outline = changed.outline;
  return out;
}

}  // namespace tw
