// How long setting and placing copy take; compose places the copy of every staged panel.
#include <benchmark/benchmark.h>

#include "geometry/polygon.h"
#include "letter/lettering.h"

namespace {

using namespace tw;

CopyItem say(const char* id, const char* who, const char* text) {
  CopyItem item;
  item.id = id;
  item.speaker = who;
  item.text = text;
  return item;
}

const std::vector<CopyItem> kItems{
    say("c1", "mara", "I told you the bell would never ring again."),
    say("c2", "jonas", "Then who has been ringing it, every night since the flood?"),
    say("c3", "mara", "Listen.")};

LetterRequest request(double width, double height) {
  LetterRequest r;
  r.items = &kItems;
  r.panel = polygonOf(Rect{{0, 0}, {width, height}});
  r.live = {{-5, -5}, {200, 300}};
  for (const auto& [who, x] : {std::pair("mara", 0.3), {"jonas", 0.75}}) {
    const Point head{width * x, height * 0.6};
    r.faces.push_back(ellipse(head, 4, 5, 24));
    r.mouths[who] = {head.x, head.y + 2};
    r.bodies.push_back({polygonOf(Rect{{head.x - 8, head.y + 5}, {head.x + 8, height}})});
  }
  return r;
}

void placeThreeBalloons(benchmark::State& state) {
  const auto letterer = Letterer::make();
  const LetterRequest r = request(75, 60);
  for (auto _ : state) benchmark::DoNotOptimize(letterer->place(r));
}
BENCHMARK(placeThreeBalloons);

void placeThreeBalloonsWithoutRoom(benchmark::State& state) {
  const auto letterer = Letterer::make();
  const LetterRequest r = request(40, 35);
  for (auto _ : state) benchmark::DoNotOptimize(letterer->place(r));
}
BENCHMARK(placeThreeBalloonsWithoutRoom);

void setOnceMore(benchmark::State& state) {
  const auto letterer = Letterer::make();
  for (auto _ : state) benchmark::DoNotOptimize(letterer->set(kItems[1], 60));
}
BENCHMARK(setOnceMore);

void wantedByABeat(benchmark::State& state) {
  const auto letterer = Letterer::make();
  for (auto _ : state) benchmark::DoNotOptimize(letterer->wanted(kItems));
}
BENCHMARK(wantedByABeat);

}  // namespace

BENCHMARK_MAIN();
