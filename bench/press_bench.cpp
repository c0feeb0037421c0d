// How long paper takes: the proof of an eight-page story with six roughs a page, every panel
// drawn with 300 pen lines of 40 points.
#include <benchmark/benchmark.h>

#include <filesystem>

#include "press/example_rough.h"

namespace {

constexpr int kLinesPerPanel = 300;

std::vector<std::vector<tw::RoughPicture>> story(int pages, int roughs) {
  std::vector<std::vector<tw::RoughPicture>> all(static_cast<std::size_t>(pages));
  for (auto& page : all)
    for (int i = 0; i < roughs; ++i)
      page.push_back(
          tw::example::rough(i % 3, std::string(1, static_cast<char>('A' + i)), kLinesPerPanel));
  return all;
}

std::filesystem::path scratch(const char* name) {
  return std::filesystem::temp_directory_path() / name;
}

void proofOfAStory(benchmark::State& state) {
  const auto pages = story(static_cast<int>(state.range(0)), 6);
  const auto file = scratch("tierwright-bench-proof.pdf");
  for (auto _ : state)
    if (!tw::writeProof(file, pages)) state.SkipWithError("the proof was not written");
  state.counters["bytes"] = static_cast<double>(std::filesystem::file_size(file));
  std::filesystem::remove(file);
}
BENCHMARK(proofOfAStory)->Arg(1)->Arg(8)->Unit(benchmark::kMillisecond);

void oneRoughAsPng(benchmark::State& state) {
  const auto rough = tw::example::rough(1, "A", kLinesPerPanel);
  const auto file = scratch("tierwright-bench-rough.png");
  const tw::Overlays all{true, true, true, true};
  for (auto _ : state)
    if (!tw::writePng(file, rough, all)) state.SkipWithError("the picture was not written");
  std::filesystem::remove(file);
}
BENCHMARK(oneRoughAsPng)->Unit(benchmark::kMillisecond);

void oneRoughAsSvg(benchmark::State& state) {
  const auto rough = tw::example::rough(1, "A", kLinesPerPanel);
  const auto file = scratch("tierwright-bench-rough.svg");
  for (auto _ : state)
    if (!tw::writeSvg(file, rough, {})) state.SkipWithError("the picture was not written");
  state.counters["bytes"] = static_cast<double>(std::filesystem::file_size(file));
  std::filesystem::remove(file);
}
BENCHMARK(oneRoughAsSvg)->Unit(benchmark::kMillisecond);

}  // namespace
