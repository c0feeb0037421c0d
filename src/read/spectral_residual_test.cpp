// The published steps (Hou & Zhang 2007; constants from re-publications of the reference code) are
// computed a second time here with plain sums and loops, no library: what the program gives must
// be the same.
#include "read/spectral_residual.h"

#include <doctest/doctest.h>

#include <complex>
#include <numbers>

#include "base/random.h"

namespace tw {

namespace {

using Complex = std::complex<double>;
using Grid = std::vector<double>;

constexpr int kWide = kSpectralWidth;

GreyPicture blank(int width, int height, float light = 1) {
  GreyPicture picture{.width = width, .height = height};
  picture.light.assign(static_cast<std::size_t>(width) * height, light);
  return picture;
}

void darken(GreyPicture& picture, int x, int y, int width, int height, float light = 0) {
  for (int v = y; v < y + height; ++v)
    for (int u = x; u < x + width; ++u) picture.light[v * picture.width + u] = light;
}

/// Discrete Fourier transform along one row or column, by its defining sum.
void transform(std::vector<Complex>& grid, std::size_t from, std::size_t step, int count,
               double sign) {
  std::vector<Complex> in(count);
  for (int i = 0; i < count; ++i) in[i] = grid[from + i * step];
  for (int k = 0; k < count; ++k) {
    Complex sum = 0;
    for (int i = 0; i < count; ++i)
      sum += in[i] * std::polar(1.0, sign * 2 * std::numbers::pi * (k * i % count) / count);
    grid[from + k * step] = sum;
  }
}

void transform(std::vector<Complex>& grid, int width, int height, double sign) {
  for (int y = 0; y < height; ++y) transform(grid, std::size_t(y) * width, 1, width, sign);
  for (int x = 0; x < width; ++x) transform(grid, x, width, height, sign);
}

double replicated(const Grid& grid, int width, int height, int x, int y) {
  return grid[std::clamp(y, 0, height - 1) * width + std::clamp(x, 0, width - 1)];
}

Grid meanOfNine(const Grid& grid, int width, int height) {
  Grid out(grid.size());
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x)
      for (int v = -1; v <= 1; ++v)
        for (int u = -1; u <= 1; ++u)
          out[y * width + x] += replicated(grid, width, height, x + u, y + v) / 9;
  return out;
}

Grid gaussian(const Grid& grid, int width, int height) {
  double weight[10], sum = 0;
  for (int i = 0; i < 10; ++i) sum += weight[i] = std::exp(-std::pow((i - 4.5) / 2.5, 2) / 2);
  Grid out(grid.size());
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x)
      for (int v = 0; v < 10; ++v)
        for (int u = 0; u < 10; ++u)
          out[y * width + x] += weight[u] * weight[v] / (sum * sum) *
                                replicated(grid, width, height, x + u - 4, y + v - 4);
  return out;
}

Grid publishedSteps(const GreyPicture& picture) {
  const int width = picture.width, height = picture.height;
  std::vector<Complex> f(picture.light.begin(), picture.light.end());
  transform(f, width, height, -1);
  Grid logged;
  for (const Complex& c : f) logged.push_back(std::log(std::abs(c) + 1e-6));
  const Grid mean = meanOfNine(logged, width, height);
  for (std::size_t i = 0; i < f.size(); ++i)
    f[i] = std::exp(Complex(logged[i] - mean[i], std::arg(f[i])));
  transform(f, width, height, +1);
  Grid power;
  for (const Complex& c : f) power.push_back(std::norm(c / double(width * height)));
  Grid map = gaussian(power, width, height);
  const auto [least, most] = std::minmax_element(map.begin(), map.end());
  const double low = *least, span = *most - *least;
  for (double& v : map) v = (v - low) / span;
  return map;
}

/// Where the map is highest, in cells.
std::pair<int, int> highest(const PlaceMap& map) {
  const auto at = std::max_element(map.value.begin(), map.value.end()) - map.value.begin();
  return {static_cast<int>(at) % map.width, static_cast<int>(at) / map.width};
}

GreyPicture noise(int width, int height, std::uint64_t seed) {
  Random random(seed);
  GreyPicture picture = blank(width, height);
  for (float& light : picture.light) light = static_cast<float>(random.uniform());
  return picture;
}

}  // namespace

TEST_CASE("the spectral residual equals the published steps computed with plain sums") {
  for (const int height : {40, 64, 91}) {
    CAPTURE(height);
    GreyPicture picture = noise(kWide, height, 5);
    darken(picture, 20, 12, 9, 17, 0.1f);
    const PlaceMap map = spectralResidual(picture);
    const Grid wanted = publishedSteps(picture);
    REQUIRE(map.value.size() == wanted.size());
    double worst = 0;
    for (std::size_t i = 0; i < wanted.size(); ++i)
      worst = std::max(worst, std::abs(map.value[i] - wanted[i]));
    CHECK(worst < 1e-8);
  }
}

TEST_CASE("a larger picture is averaged down to 64 across before") {
  const GreyPicture large = noise(2 * kWide, 100, 9);
  GreyPicture small = blank(kWide, 50);
  for (int y = 0; y < 50; ++y)
    for (int x = 0; x < kWide; ++x)
      small.light[y * kWide + x] = (large.at(2 * x, 2 * y) + large.at(2 * x + 1, 2 * y) +
                                    large.at(2 * x, 2 * y + 1) + large.at(2 * x + 1, 2 * y + 1)) /
                                   4;
  const PlaceMap a = spectralResidual(large), b = spectralResidual(small);
  REQUIRE(a.value.size() == b.value.size());
  for (std::size_t i = 0; i < a.value.size(); ++i)
    CHECK(a.value[i] == doctest::Approx(b.value[i]).epsilon(1e-4).scale(1));
}

TEST_CASE("in a blank picture nothing stands out") {
  for (const float light : {0.f, 0.4f, 1.f})
    for (const double v : spectralResidual(blank(200, 130, light)).value) REQUIRE(v == 0);
}

TEST_CASE("one dot on white is where the map is highest") {
  for (const int size : {1, 3, 5})
    for (const auto& [x, y] : {std::pair{30, 20}, {12, 40}, {50, 44}}) {
      CAPTURE(size);
      CAPTURE(x);
      GreyPicture picture = blank(kWide, 64);
      darken(picture, x - size / 2, y - size / 2, size, size);
      const auto [u, v] = highest(spectralResidual(picture));
      CHECK(std::abs(u - x) <= 1 + size / 2);
      CHECK(std::abs(v - y) <= 1 + size / 2);
    }
}

// Not with a pitch of 8, which divides 64, nor with bars of even sides at even pitches: both leave
// lone peaks or exact zeros in the spectrum (spectral_residual.cpp says so).
TEST_CASE("in a regular field of bars the one that lies stands out wherever it is") {
  for (const auto& [pitch, thick] : {std::pair{6, 3}, {7, 2}, {7, 3}, {9, 2}, {9, 3}, {11, 3}}) {
    CAPTURE(pitch);
    CAPTURE(thick);
    const int count = kWide / pitch, length = pitch - 2;
    const double middle = 1 + length / 2.0;
    for (int odd = 0; odd < count * count; ++odd) {
      const int column = odd % count, row = odd / count;
      if (std::min(column, row) == 0 || std::max(column, row) == count - 1) continue;
      GreyPicture picture = blank(kWide, kWide);
      for (int i = 0; i < count * count; ++i)
        darken(picture, 1 + pitch * (i % count), 1 + pitch * (i / count), i == odd ? length : thick,
               i == odd ? thick : length);
      const auto [u, v] = highest(spectralResidual(picture));
      CHECK(std::abs(u - middle - pitch * column) <= pitch / 2.0 + 1);
      CHECK(std::abs(v - middle - pitch * row) <= pitch / 2.0 + 1);
    }
  }
}

TEST_CASE("a picture shifted round shifts its map away from the border") {
  const GreyPicture picture = noise(kWide, 48, 3);
  GreyPicture shifted = blank(kWide, 48);
  const int right = 9, down = 6;
  for (int y = 0; y < 48; ++y)
    for (int x = 0; x < kWide; ++x)
      shifted.light[(y + down) % 48 * kWide + (x + right) % kWide] = picture.at(x, y);
  const PlaceMap a = spectralResidual(picture), b = spectralResidual(shifted);
  // The scales differ a little, for each has its least and most at another border: compare slopes.
  double sumA = 0, sumB = 0, aa = 0, ab = 0, bb = 0;
  int count = 0;
  for (int y = 6; y < 36; ++y)
    for (int x = 6; x < 48; ++x, ++count) {
      const double u = a.at(x, y), v = b.at(x + right, y + down);
      sumA += u, sumB += v, aa += u * u, ab += u * v, bb += v * v;
    }
  const double cov = ab - sumA * sumB / count;
  const double agreement = cov / std::sqrt((aa - sumA * sumA / count) * (bb - sumB * sumB / count));
  CHECK(agreement > 1 - 1e-9);
}

}  // namespace tw
