// How long the measures of pictures take: they are asked again after every edit of a staged page.
#include <benchmark/benchmark.h>

#include <cmath>

#include "geometry/polygon.h"
#include "read/attention.h"
#include "read/one_picture.h"
#include "read/squint.h"

namespace {

using namespace tw;

/// A page of 170 × 260 mm with grey panels and a dark blot in each.
struct Page {
  GreyPicture picture;
  OnePictureAsk ask;
};

Page pageOf(double pxPerMm) {
  Page page{{.width = static_cast<int>(170 * pxPerMm), .height = static_cast<int>(260 * pxPerMm)},
            {}};
  page.picture.mmPerPx = 1 / pxPerMm;
  page.ask.page = {{0, 0}, {170, 260}};
  for (int i = 0; i < 6; ++i) {
    const Point corner{(i % 2) * 87.0, (i / 2) * 88.0};
    page.ask.panels.push_back(polygonOf(Rect{corner, corner + Vector{83, 84}}));
    page.ask.focuses.push_back(corner + Vector{30, 40});
  }
  page.picture.light.resize(static_cast<std::size_t>(page.picture.width) * page.picture.height);
  for (int y = 0; y < page.picture.height; ++y)
    for (int x = 0; x < page.picture.width; ++x) {
      double light = 0.7 + 0.2 * std::sin(x * 12.0 / page.picture.width) *
                               std::cos(y * 17.0 / page.picture.height);
      for (const Point& f : page.ask.focuses)
        if ((page.picture.onPage(x, y) - f).length() < 12) light = 0.1;
      page.picture.light[static_cast<std::size_t>(y) * page.picture.width + x] =
          static_cast<float>(light);
    }
  return page;
}

void onePicture(benchmark::State& state) {
  const Page page = pageOf(static_cast<double>(state.range(0)) / 260);
  for (auto _ : state) benchmark::DoNotOptimize(onePictureOf(page.picture, page.ask));
}
BENCHMARK(onePicture)->Arg(200)->Arg(1400)->Unit(benchmark::kMillisecond);

void squintOnePanel(benchmark::State& state) {
  const Page page = pageOf(static_cast<double>(state.range(0)) / 260);
  const Rect focus{{20, 30}, {40, 50}};
  for (auto _ : state) benchmark::DoNotOptimize(squintAt(page.picture, page.ask.panels[0], focus));
}
BENCHMARK(squintOnePanel)->Arg(200)->Arg(1400)->Unit(benchmark::kMillisecond);

void attentionOfOnePanel(benchmark::State& state) {
  const Page page = pageOf(static_cast<double>(state.range(0)) / 260);
  for (auto _ : state)
    benchmark::DoNotOptimize(attentionOf(page.picture, page.ask.panels[0], {}, {}));
}
BENCHMARK(attentionOfOnePanel)->Arg(1400)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
