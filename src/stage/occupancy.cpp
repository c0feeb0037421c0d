#include "stage/occupancy.h"

#include <algorithm>
#include <bit>
#include <cmath>

namespace tw {

Discs discsOf(const Actor& actor, const Camera& camera) {
  Discs discs;
  const double f = camera.intrinsics()(0, 0);
  for (const Capsule& c : actor.volumes) {
    const double length = (c.b - c.a).norm();
    const double mean = (c.radiusA + c.radiusB) / 2;
    const int steps = std::clamp(static_cast<int>(length / std::max(1.6 * mean, 0.02)), 1, 5);
    const Vec3 pa = camera.rotation() * (c.a - camera.eye());
    const Vec3 pb = camera.rotation() * (c.b - camera.eye());
    for (int i = 0; i <= steps; ++i) {
      const double t = static_cast<double>(i) / steps;
      const Vec3 p = pa + (pb - pa) * t;
      if (p.z() < 0.05) continue;
      const double r = (c.radiusA + (c.radiusB - c.radiusA) * t) * f / p.z();
      discs.all[discs.count++] =
          Disc{f * p.x() / p.z() + camera.intrinsics()(0, 2),
               (f * p.y() / p.z() + camera.intrinsics()(1, 2)) * camera.aspect(), r,
               r * camera.aspect()};
    }
  }
  return discs;
}

namespace {

std::uint64_t run(double from, double to) {
  const int a = std::clamp(static_cast<int>(std::ceil(from)), 0, kColumns);
  const int b = std::clamp(static_cast<int>(std::floor(to)) + 1, 0, kColumns);
  if (b <= a) return 0;
  return ((b == 64 ? 0 : (std::uint64_t{1} << b)) - 1) & ~((std::uint64_t{1} << a) - 1);
}

void fill(Bits& bits, const Disc& d) {
  const int top = std::max(0, static_cast<int>(std::ceil((d.y - d.ry) * kRows - 0.5)));
  const int bottom = std::min(kRows - 1, static_cast<int>(std::floor((d.y + d.ry) * kRows - 0.5)));
  for (int row = top; row <= bottom; ++row) {
    const double v = ((row + 0.5) / kRows - d.y) / d.ry;
    const double half = d.rx * (v * v < 1 ? std::sqrt(1 - v * v) : 0);
    bits[static_cast<std::size_t>(row)] |=
        run((d.x - half) * kColumns - 0.5, (d.x + half) * kColumns - 0.5);
  }
}

bool isSet(const Bits& bits, double x, double y) {
  if (x < 0 || y < 0 || x >= 1 || y >= 1) return false;
  return bits[static_cast<std::size_t>(y * kRows)] >> static_cast<int>(x * kColumns) & 1;
}

}  // namespace

double freeShare(const Bits& bits, int rows) {
  int taken = 0;
  for (int i = 0; i < rows; ++i) taken += std::popcount(bits[static_cast<std::size_t>(i)]);
  return 1 - static_cast<double>(taken) / (rows * kColumns);
}

double shareInside(double a, double b) {
  return b <= a ? 1 : std::max(std::min(b, 1.0) - std::max(a, 0.0), 0.0) / (b - a);
}

double visibleShare(const Discs& discs, const Bits& nearer) {
  if (discs.count == 0) return 0;
  Rect box{{1e9, 1e9}, {-1e9, -1e9}};
  for (const Disc& d : discs) {
    box.min = {std::min(box.min.x, d.x - d.rx), std::min(box.min.y, d.y - d.ry)};
    box.max = {std::max(box.max.x, d.x + d.rx), std::max(box.max.y, d.y + d.ry)};
  }
  Bits own{};
  const double w = box.width(), h = box.height();
  for (const Disc& d : discs) {
    fill(own, {(d.x - box.min.x) / w, (d.y - box.min.y) / h, d.rx / w, d.ry / h});
  }
  int all = 0, seen = 0;
  for (int row = 0; row < kRows; ++row) {
    const double y = box.min.y + (row + 0.5) / kRows * h;
    std::uint64_t bits = own[static_cast<std::size_t>(row)];
    all += std::popcount(bits);
    if (y < 0 || y >= 1) continue;
    for (; bits != 0; bits &= bits - 1) {
      const double x = box.min.x + (std::countr_zero(bits) + 0.5) / kColumns * w;
      if (x >= 0 && x < 1 && !isSet(nearer, x, y)) ++seen;
    }
  }
  return all > 0 ? static_cast<double>(seen) / all : 0;
}

Crowd crowdOf(const Scene& scene, const Camera& camera) {
  Crowd crowd;
  const double focusDepth =
      scene.focus < 0
          ? 0
          : camera.depth(
                scene.actors[static_cast<std::size_t>(scene.focus)].skeleton[Joint::Chest]);
  for (std::size_t i = 0; i < scene.actors.size(); ++i) {
    Bits own{};
    crowd.discs.push_back(discsOf(scene.actors[i], camera));
    for (const Disc& d : crowd.discs.back()) fill(own, d);
    const bool nearer = static_cast<int>(i) != scene.focus &&
                        camera.depth(scene.actors[i].skeleton[Joint::Chest]) < focusDepth;
    crowd.each.push_back(own);
    for (std::size_t row = 0; row < own.size(); ++row) {
      crowd.all[row] |= own[row];
      if (nearer) crowd.before[row] |= own[row];
    }
  }
  return crowd;
}

}  // namespace tw
