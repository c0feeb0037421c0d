// From a lit picture to steps of value.
//
//  1 A cell's own luminance comes from the costume's, hair's or set's value as drawings hold it.
//  2 Its light is key, other lamps and ambient together, lifted so that whatever is turned to the
//    key by more than about 60 degrees shows its own value: an inker leaves that paper.
//  3 Light is made calm within figures and within the set by blurring; own values stay sharp.
//  4 L* of the product, to the nearest of four equal steps.
//  5 Specks: connected areas of a step, found by union and find over runs of alike cells in a row;
//    the small ones take the step with which they share most border.
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

/// Neighbouring cells of one row that have one step and are all inside, or are all outside.
struct Run {
  int y = 0, from = 0, to = 0;  ///< columns, `to` excluded
  std::uint8_t kind = 0;        ///< the step, or kBeyond
  std::uint32_t area = 0;       ///< a run of the same connected area, the first one
};
constexpr std::uint8_t kBeyond = 0xff;

/// The cells as connected areas.
class Areas {
 public:
  explicit Areas(const Cells& cells) {
    for (int y = 0; y < cells.height; ++y) addRow(cells, y);
    rows_.push_back(runs_.size());
    eachContact([&](std::size_t a, std::size_t b, int) {
      if (runs_[a].kind == runs_[b].kind) join(a, b);
    });
    size_.assign(runs_.size(), 0);
    for (Run& run : runs_) {
      run.area = top(run.area);
      size_[run.area] += static_cast<std::uint32_t>(run.to - run.from);
    }
  }

  const std::vector<Run>& runs() const { return runs_; }
  std::uint32_t sizeOf(const Run& run) const { return size_[run.area]; }

  /// meet(a, b, cells) for every two runs that share a border, with its length.
  template <class Meet>
  void eachContact(const Meet& meet) const {
    for (std::size_t y = 0; y + 1 < rows_.size(); ++y) {
      for (std::size_t i = rows_[y]; i + 1 < rows_[y + 1]; ++i) meet(i, i + 1, 1);
      if (y == 0) continue;
      std::size_t above = rows_[y - 1], here = rows_[y];
      while (above < rows_[y] && here < rows_[y + 1]) {
        const Run &a = runs_[above], &b = runs_[here];
        const int shared = std::min(a.to, b.to) - std::max(a.from, b.from);
        if (shared > 0) meet(above, here, shared);
        if (a.to < b.to) {
          ++above;
        } else {
          ++here;
        }
      }
    }
  }

 private:
  void addRow(const Cells& cells, int y) {
    rows_.push_back(runs_.size());
    const std::size_t row = static_cast<std::size_t>(y) * static_cast<std::size_t>(cells.width);
    const auto kindAt = [&](int x) {
      const std::size_t i = row + static_cast<std::size_t>(x);
      return cells.isInside(i) ? cells.step[i] : kBeyond;
    };
    for (int x = 0; x < cells.width;) {
      const int from = x;
      const std::uint8_t kind = kindAt(x);
      while (x < cells.width && kindAt(x) == kind) ++x;
      runs_.push_back({y, from, x, kind, static_cast<std::uint32_t>(runs_.size())});
    }
  }
  std::uint32_t top(std::uint32_t at) {
    while (runs_[at].area != at) at = runs_[at].area = runs_[runs_[at].area].area;
    return at;
  }
  void join(std::size_t a, std::size_t b) {
    const std::uint32_t s = top(static_cast<std::uint32_t>(a)),
                        t = top(static_cast<std::uint32_t>(b));
    runs_[std::max(s, t)].area = std::min(s, t);
  }

  std::vector<Run> runs_;
  std::vector<std::size_t> rows_;  ///< where each row begins, and the end
  std::vector<std::uint32_t> size_;
};

/// One pass; true when something changed.
bool mergeSmall(Cells& cells, std::uint32_t least) {
  const Areas areas(cells);
  const std::vector<Run>& runs = areas.runs();
  // Borders of the small areas with each step, by area.
  std::vector<std::array<int, kValueSteps>> borders(runs.size());
  areas.eachContact([&](std::size_t a, std::size_t b, int length) {
    const Run &one = runs[a], &other = runs[b];
    if (one.kind == other.kind || one.kind == kBeyond || other.kind == kBeyond) return;
    if (areas.sizeOf(one) < least) borders[one.area][other.kind] += length;
    if (areas.sizeOf(other) < least) borders[other.area][one.kind] += length;
  });
  bool changed = false;
  for (const Run& run : runs) {
    const auto& border = borders[run.area];
    const auto most = std::max_element(border.begin(), border.end());
    if (*most == 0) continue;
    const std::ptrdiff_t row = static_cast<std::ptrdiff_t>(run.y) * cells.width;
    std::fill(cells.step.begin() + row + run.from, cells.step.begin() + row + run.to,
              static_cast<std::uint8_t>(most - border.begin()));
    changed = true;
  }
  return changed;
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
