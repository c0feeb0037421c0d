// Times of the largest fit: a silhouette of 200 corners in regions of 12. Target: under 10 ms.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <numbers>

#include "base/result.h"
#include "geometry/fit_largest.h"
#include "geometry/polygon.h"

using namespace tw;

namespace {

/// A limb as an outline: two round ends.
Polygon limb(Point a, Point b, double radius) {
  Polygon one = ellipse(a, radius, radius, 40), other = ellipse(b, radius, radius, 40);
  one.points.insert(one.points.end(), other.points.begin(), other.points.end());
  return hull(one.points);
}

/// Somebody striding with both arms out, metres; holes filled.
const Polygon& silhouette() {
  static const Polygon figure = [] {
    Region parts =
        united({ellipse({0, 0.15}, 0.1, 0.13, 40), limb({0, 0.35}, {0.02, 0.9}, 0.16),
                limb({0.1, 0.35}, {0.4, 0.1}, 0.06), limb({0.4, 0.1}, {0.62, -0.15}, 0.05),
                limb({-0.1, 0.38}, {-0.35, 0.5}, 0.06), limb({-0.35, 0.5}, {-0.55, 0.35}, 0.05),
                limb({0, 0.9}, {0.3, 1.25}, 0.09), limb({0.3, 1.25}, {0.35, 1.7}, 0.07),
                limb({0, 0.9}, {-0.25, 1.3}, 0.09), limb({-0.25, 1.3}, {-0.6, 1.6}, 0.07)});
    Polygon outer =
        *std::max_element(parts.begin(), parts.end(),
                          [](const Polygon& a, const Polygon& b) { return area(a) < area(b); });
    // To just 200 corners: the longest edges are halved, or the shortest dropped.
    while (outer.points.size() != 200) {
      const bool more = outer.points.size() < 200;
      std::size_t best = 0;
      const auto length = [&](std::size_t i) {
        return (outer.points[(i + 1) % outer.points.size()] - outer.points[i]).length();
      };
      for (std::size_t i = 1; i < outer.points.size(); ++i)
        if (more ? length(i) > length(best) : length(i) < length(best)) best = i;
      const auto at = outer.points.begin() + static_cast<std::ptrdiff_t>(best);
      if (more)
        outer.points.insert(at + 1, between(outer.points[best],
                                            outer.points[(best + 1) % outer.points.size()], 0.5));
      else
        outer.points.erase(at);
    }
    return outer;
  }();
  return figure;
}

Polygon convexRegion() {
  Polygon out;
  for (int i = 0; i < 12; ++i) {
    const double a = 2 * std::numbers::pi * i / 12;
    out.points.push_back({60 + 60 * std::cos(a), 80 + 80 * std::sin(a)});
  }
  return out;
}

/// A panel with an inset in each corner.
const Polygon kFourInsets{{{30, 0},
                           {90, 0},
                           {90, 40},
                           {120, 40},
                           {120, 110},
                           {100, 110},
                           {100, 160},
                           {45, 160},
                           {45, 120},
                           {0, 120},
                           {0, 35},
                           {30, 35}}};
/// Insets that cut in from both sides, half-way down.
const Polygon kTwoNotches{{{0, 0},
                           {120, 0},
                           {120, 60},
                           {80, 65},
                           {80, 95},
                           {120, 100},
                           {120, 160},
                           {0, 160},
                           {0, 130},
                           {40, 125},
                           {40, 85},
                           {0, 80}}};

void fit(benchmark::State& state, const Polygon& region, double margin) {
  const FitQuestion question{
      .figure = {silhouette()}, .region = {region}, .margin = margin, .mayMirror = false};
  const Fit found = largestFit(question);
  ensure(found.scale > 0, "the silhouette fits");
  for (auto _ : state) benchmark::DoNotOptimize(largestFit(question));
  state.counters["scale"] = found.scale;
  state.counters["within"] = found.within;
}

BENCHMARK_CAPTURE(fit, convex, convexRegion(), 0)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(fit, four_insets, kFourInsets, 0)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(fit, two_notches, kTwoNotches, 0)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(fit, two_notches_with_margin, kTwoNotches, 2)->Unit(benchmark::kMillisecond);

}  // namespace
