// From a lit picture to steps of value.
//
//  1 A cell's own luminance comes from the costume's, hair's or set's value as drawings hold it.
//  2 Its light is key, other lamps and ambient together, lifted so that whatever is turned to the
//    key by more than about 60 degrees shows its own value: an inker leaves that paper.
//  3 Light is made calm within figures and within the set by blurring; own values stay sharp.
//  4 L* of the product, to the nearest of four equal steps.
//  5 Specks: connected areas of a step are labelled by union and find; the small ones, smallest
//    first, take the step with which they share most border.
// Cost: a few passes over a quarter of the picture's pixels. Does badly: a thing thinner than two
// cells vanishes with the specks, which at planning size is what a brush would do too.
#include "stage/value_cells.h"

#include <algorithm>
#include <array>

#include "geometry/polygon.h"
#include "stage/rasterise.h"

namespace tw {

namespace {

constexpr float kExposure = 1.6f;   // a surface lit at 55 degrees still shows its own value
constexpr double kLeastOwn = 0.02;  // luminance of the blackest cloth: ink is blacker
constexpr double kMostOwn = 0.92;   // of skin and white cloth
constexpr double kPropDarkness =
    0.3;  // things are neither paper nor black unless something says so
constexpr double kCalmMm = 0.7;

float ownLuminance(double darkness) {
  return static_cast<float>(std::clamp(linearOf(1 - darkness), kLeastOwn, kMostOwn));
}

/// Own luminance of every part of every solid.
std::vector<std::array<float, std::tuple_size_v<PartValues>>> luminances(const LitScene& scene) {
  std::vector<std::array<float, std::tuple_size_v<PartValues>>> out(scene.solids.size());
  for (std::size_t i = 0; i < out.size(); ++i) {
    const Solid& solid = scene.solids[i];
    const PartValues values = solid.figure >= 0 ? valuesOf(solid.look) : PartValues{};
    for (std::size_t part = 0; part < values.size(); ++part)
      out[i][part] = ownLuminance(solid.figure >= 0 ? values[part]
                                  : solid.isSet     ? scene.mood.setDark
                                                    : kPropDarkness);
  }
  return out;
}

/// Light in calm shapes: figures and props together, the set for itself.
void calmLight(Cells& cells, const std::vector<Solid>& solids) {
  const int radius = std::max(1, static_cast<int>(kCalmMm / cells.mmPerCell));
  const Window whole{0, 0, cells.width, cells.height};
  for (const bool set : {false, true}) {
    Field weight = fieldOver(whole), light{whole, cells.lit};
    bool any = false;
    for (std::size_t i = 0; i < cells.count(); ++i)
      if (cells.who[i] >= 0 && solids[static_cast<std::size_t>(cells.who[i])].isSet == set) {
        weight.value[i] = 1;
        any = true;
      }
    if (!any) continue;
    light = blurredWithin(light, weight, radius);
    for (std::size_t i = 0; i < cells.count(); ++i)
      if (weight.value[i] > 0) cells.lit[i] = light.value[i];
  }
}

std::uint8_t stepOfLuminance(float luminance) {
  // The limits between steps of L*, once and for all as luminances.
  static const std::array<double, 3> kLimits{luminanceOf(500.0 / 6), luminanceOf(50),
                                             luminanceOf(100.0 / 6)};
  std::uint8_t step = 0;
  for (const double limit : kLimits) step = static_cast<std::uint8_t>(step + (luminance < limit));
  return step;
}

/// Connected cells of one step: the label of every cell's area and the areas' sizes by label.
struct Areas {
  std::vector<std::uint32_t> label, size;
};

Areas areasOf(const Cells& cells) {
  std::vector<std::uint32_t> above(cells.count());
  const auto alike = [&](std::size_t a, std::size_t b) {
    return cells.step[a] == cells.step[b] && cells.isInside(a) == cells.isInside(b);
  };
  const auto top = [&](std::size_t i) {
    auto at = static_cast<std::uint32_t>(i);
    while (above[at] != at) at = above[at] = above[above[at]];
    return at;
  };
  const auto w = static_cast<std::size_t>(cells.width);
  for (std::size_t i = 0; i < cells.count(); ++i) {
    const bool left = i % w != 0 && alike(i, i - 1);
    const bool up = i >= w && alike(i, i - w);
    above[i] = left ? above[i - 1] : static_cast<std::uint32_t>(i);
    if (!up || above[i] == above[i - w]) continue;
    const std::uint32_t s = top(above[i]), t = top(i - w);
    above[std::max(s, t)] = std::min(s, t);
    above[i] = std::min(s, t);
  }
  Areas out{std::vector<std::uint32_t>(cells.count()), std::vector<std::uint32_t>(cells.count())};
  for (std::size_t i = 0; i < cells.count(); ++i) {
    // What a cell hangs on comes before it, so its label is known.
    out.label[i] = above[i] == i ? static_cast<std::uint32_t>(i) : out.label[above[i]];
    ++out.size[out.label[i]];
  }
  return out;
}

/// Borders of the small areas with each step; areas without a place of their own have none.
using Borders = std::vector<std::array<std::uint32_t, kValueSteps>>;

/// One pass; true when something changed.
bool mergeSmall(Cells& cells, std::uint32_t least) {
  const Areas areas = areasOf(cells);
  std::vector<std::int32_t> place(cells.count(), -1);
  Borders borders;
  const auto meet = [&](std::size_t a, std::size_t b) {
    if (!cells.isInside(a) || !cells.isInside(b) || cells.step[a] == cells.step[b]) return;
    for (const auto& [own, other] : {std::pair{a, b}, {b, a}}) {
      const std::uint32_t area = areas.label[own];
      if (areas.size[area] >= least) continue;
      if (place[area] < 0) {
        place[area] = static_cast<std::int32_t>(borders.size());
        borders.emplace_back();
      }
      ++borders[static_cast<std::size_t>(place[area])][cells.step[other]];
    }
  };
  const auto w = static_cast<std::size_t>(cells.width);
  for (std::size_t i = 0; i < cells.count(); ++i) {
    if (i % w != 0) meet(i, i - 1);
    if (i >= w) meet(i, i - w);
  }
  if (borders.empty()) return false;
  for (std::size_t i = 0; i < cells.count(); ++i) {
    const std::int32_t at = place[areas.label[i]];
    if (at < 0) continue;
    const auto& border = borders[static_cast<std::size_t>(at)];
    cells.step[i] =
        static_cast<std::uint8_t>(std::max_element(border.begin(), border.end()) - border.begin());
  }
  return true;
}

}  // namespace

Cells cellsOf(const LitScene& scene, const Polygon& panel) {
  const Picture& picture = scene.view.picture;
  const Viewport half = frameViewport(scene.view.camera, std::max(1, picture.width / 2));
  Cells cells;
  cells.width = half.width;
  cells.height = half.height;
  cells.mmPerCell = scene.view.frame.width() / half.width;
  const std::size_t n =
      static_cast<std::size_t>(half.width) * static_cast<std::size_t>(half.height);
  cells.who.resize(n);
  cells.local.resize(n);
  cells.lit.resize(n);
  cells.step.resize(n);
  const auto own = luminances(scene);
  const float sky = ownLuminance(scene.mood.skyDark), ground = ownLuminance(scene.mood.groundDark);
  const Vec3 horizon = scene.view.camera.horizon();
  const bool box = panel.points.size() == 4 && area(panel) > 0.999 * scene.view.frame.area();
  const auto key = static_cast<float>(scene.light.key.strength),
             ambient = static_cast<float>(scene.light.ambient);
  const float shaded =
      std::min(1.f, kExposure * (ambient + static_cast<float>(scene.light.fill.strength) * 0.7f));
  for (int y = 0; y < half.height; ++y)
    for (int x = 0; x < half.width; ++x) {
      const std::size_t i = static_cast<std::size_t>(y) * half.width + static_cast<std::size_t>(x);
      const Point at{(x + 0.5) / half.width, (y + 0.5) / half.width};
      const std::size_t px = scene.view.pixelAt({2 * x + 1.0, 2 * y + 1.0});
      const std::int16_t who = picture.solid[px];
      const bool below = horizon.x() * at.x + horizon.y() * at.y + horizon.z() < 0;
      const bool isGround = below && scene.mood.sky && !scene.mood.underwater;
      cells.who[i] = who >= 0 ? who : isGround ? Cells::kGround : Cells::kSky;
      cells.local[i] = who >= 0 ? own[static_cast<std::size_t>(who)][picture.part[px]]
                                : (isGround ? ground : sky);
      cells.lit[i] =
          who >= 0
              ? std::min(1.f, kExposure * (ambient + key * picture.light[px] + scene.others[px]))
              : 1.f;
      if (!box && !contains(panel, scene.view.pageFromFrame(at))) cells.who[i] = Cells::kOutside;
    }
  const Window& s = scene.groundShadow.window;
  for (int y = 0; y < s.height; ++y)
    for (int x = 0; x < s.width; ++x)
      if (scene.groundShadow.at(x, y) > 0) {
        const std::size_t i =
            static_cast<std::size_t>(s.y + y) * half.width + static_cast<std::size_t>(s.x + x);
        if (cells.isInside(i)) cells.lit[i] = std::min(cells.lit[i], shaded);
      }
  calmLight(cells, scene.solids);
  for (std::size_t i = 0; i < n; ++i)
    cells.step[i] = stepOfLuminance(cells.local[i] * cells.lit[i]);
  return cells;
}

void cleanSpecks(Cells& cells, double leastMm2) {
  const auto least = static_cast<std::uint32_t>(leastMm2 / (cells.mmPerCell * cells.mmPerCell)) + 1;
  for (int pass = 0; pass < 3 && mergeSmall(cells, least); ++pass) {
  }
}

}  // namespace tw
