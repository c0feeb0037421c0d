// 1. Luminance of a pixel = own value of what it shows times the light it gets (key by Lambert's
//    law, fill and ambient), as value_cells.cpp takes it; cast shadows are left out, they fall on
//    figures and grounds alike. The backdrop has the mood's values above and below the horizon.
// 2. L* of that: CIE 1976 (lightness.h).
// 3. Difference of the means over the figure's pixels and over the ring around them: the figure's
//    mask grown by 3 mm, less the mask.
// Cost: two running sums per figure. Does badly: lamps are infinitely far away, and sets are
// invented masses in one value; the value plan (value_plan.h) is the finished judgement.
#include "stage/ground_contrast.h"

#include <algorithm>
#include <cmath>

#include "stage/garment_lines.h"
#include "stage/lightness.h"

namespace tw {
namespace {

constexpr double kRingMm = 3;
constexpr double kExposure = 1.6;  // as in value_cells.cpp
constexpr double kPropDarkness = 0.3;
constexpr double kFillReaches = 0.7;  // of the fill, over all directions
constexpr int kSteps = 512;

double ownLuminance(double darkness) {
  return std::clamp(linearOf(1 - darkness), 0.02, 0.92);
}

/// L* by luminance, in steps finer than an eye tells apart.
const std::array<float, kSteps + 1>& lightnessTable() {
  static const std::array<float, kSteps + 1> kTable = [] {
    std::array<float, kSteps + 1> table;
    for (int i = 0; i <= kSteps; ++i)
      table[static_cast<std::size_t>(i)] =
          static_cast<float>(lightnessOf(static_cast<double>(i) / kSteps));
    return table;
  }();
  return kTable;
}

float lightnessAt(double luminance) {
  return lightnessTable()[static_cast<std::size_t>(
      std::lround(std::clamp(luminance, 0.0, 1.0) * kSteps))];
}

/// Where a window of ± radius pixels around a pixel holds a set one: first along rows, then down.
std::vector<std::uint8_t> grown(const std::vector<std::uint8_t>& mask, int width, int height,
                                int radius) {
  std::vector<std::uint8_t> rows(mask.size(), 0), out(mask.size(), 0);
  const auto spread = [&](const std::vector<std::uint8_t>& from, std::vector<std::uint8_t>& to,
                          int lines, int length, int step, int stride) {
    for (int line = 0; line < lines; ++line) {
      const auto at = [&](int i) { return static_cast<std::size_t>(line * stride + i * step); };
      int inWindow = 0;
      for (int i = 0; i < std::min(radius, length); ++i) inWindow += from[at(i)];
      for (int i = 0; i < length; ++i) {
        if (i + radius < length) inWindow += from[at(i + radius)];
        if (i - radius > 0) inWindow -= from[at(i - radius - 1)];
        to[at(i)] = inWindow > 0;
      }
    }
  };
  spread(mask, rows, height, width, 1, width);
  spread(rows, out, width, height, width, 1);
  return out;
}

}  // namespace

std::vector<float> lightnessPicture(const PanelSight& sight, const Mood& mood,
                                    const Lighting& light) {
  const Picture& picture = sight.picture;
  std::vector<PartValues> own;
  for (const Solid& solid : sight.solids) {
    PartValues values{};
    values.fill(solid.isSet ? mood.setDark : kPropDarkness);
    if (solid.figure >= 0) values = valuesOf(solid.look);
    for (double& value : values) value = ownLuminance(value);
    own.push_back(values);
  }
  const double dim = light.ambient + kFillReaches * light.fill.strength;
  const Vec3 horizon = sight.camera.horizon();
  const float sky = lightnessAt(ownLuminance(mood.skyDark));
  const float ground = lightnessAt(ownLuminance(mood.groundDark));
  std::vector<float> out(picture.solid.size());
  for (std::size_t i = 0; i < out.size(); ++i) {
    if (picture.solid[i] >= 0) {
      const double lit = std::min(1.0, kExposure * (dim + light.key.strength * picture.light[i]));
      out[i] = lightnessAt(own[static_cast<std::size_t>(picture.solid[i])][picture.part[i]] * lit);
      continue;
    }
    const auto w = static_cast<std::size_t>(picture.width);
    const Point at = sight.place(static_cast<int>(i % w), static_cast<int>(i / w));
    const bool below = horizon.x() * at.x + horizon.y() * at.y + horizon.z() < 0;
    out[i] = below && mood.sky && !mood.underwater ? ground : sky;
  }
  return out;
}

double groundContrast(const PanelSight& sight, const std::vector<float>& lightness, int index) {
  const Picture& picture = sight.picture;
  std::vector<std::uint8_t> mask(picture.solid.size());
  for (std::size_t i = 0; i < mask.size(); ++i)
    mask[i] = sight.inside[i] && picture.solid[i] == index;
  const int radius = std::max(1, static_cast<int>(std::lround(kRingMm / sight.mmPerPx())));
  const std::vector<std::uint8_t> around = grown(mask, picture.width, picture.height, radius);
  double figure = 0, ring = 0, figurePixels = 0, ringPixels = 0;
  for (std::size_t i = 0; i < mask.size(); ++i) {
    if (!around[i] || !sight.inside[i]) continue;
    (mask[i] ? figure : ring) += lightness[i];
    (mask[i] ? figurePixels : ringPixels) += 1;
  }
  if (figurePixels <= 0 || ringPixels <= 0) return 0;
  return figure / figurePixels - ring / ringPixels;
}

}  // namespace tw
