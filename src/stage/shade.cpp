// Tracing a field by marching squares (W. Lorensen, H. Cline 1987, in the plane).
//
//  1 Each square of four pixel centres with both signs holds one or two pieces of the outline, its
//    ends interpolated on the square's sides; the inside lies to the left.
//  2 Every side is left by one piece at most, so a table "side → next side" links them to rings.
//  3 Rings smaller than asked are dropped, the others are averaged along themselves (1-2-1, both
//    neighbours) until detail under `smoothMm` is gone, then thinned by Douglas–Peucker.
// Cost: one look per pixel plus the outline's length. Does badly: two areas that meet in one pixel
// corner are kept apart, which for tones is right more often than not.
#include "stage/shade.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <tuple>

#include "geometry/polygon.h"

namespace tw {

namespace {

constexpr int kBeyond = 3;  // pixels by which tones run on past the picture's edge
constexpr double kThinMm = 0.02;

/// The field with its edges repeated `kBeyond` times and a ring of emptiness around.
struct Padded {
  const Field& field;
  float level;
  int width() const { return field.window.width + 2 * kBeyond + 2; }
  int height() const { return field.window.height + 2 * kBeyond + 2; }
  int row(int y) const { return std::clamp(y - 1 - kBeyond, 0, field.window.height - 1); }
  int column(int x) const { return std::clamp(x - 1 - kBeyond, 0, field.window.width - 1); }
  float at(int x, int y) const {
    if (x == 0 || y == 0 || x == width() - 1 || y == height() - 1) return -1;
    return field.at(column(x), row(y)) - level;
  }
  /// 1 where the row is above the level.
  void signs(int y, std::vector<std::uint8_t>& out) const {
    out.assign(static_cast<std::size_t>(width()), 0);
    if (y == 0 || y == height() - 1) return;
    const float* values = &field.value[field.index(0, row(y))];
    for (int x = 0; x < field.window.width; ++x)
      out[static_cast<std::size_t>(x + 1 + kBeyond)] = values[x] > level;
    for (std::size_t i = 1; i <= kBeyond; ++i) {
      out[i] = out[kBeyond + 1];
      out[out.size() - 1 - i] = out[out.size() - 2 - kBeyond];
    }
  }
};

/// Sides are numbered 2·(y·w + x) for (x,y)–(x+1,y) and one more for (x,y)–(x,y+1).
struct Sides {
  int width;
  int top(int x, int y) const { return 2 * (y * width + x); }
  int left(int x, int y) const { return top(x, y) + 1; }
  int bottom(int x, int y) const { return top(x, y + 1); }
  int right(int x, int y) const { return left(x + 1, y); }
};

struct Link {
  int from, to;
};

/// The pieces inside one square; corners in the order top left, top right, bottom right, bottom
/// left, inside on the left hand when walking (y down, so "left" is as seen on screen).
void addPieces(const Sides& s, int x, int y, const std::array<bool, 4>& in,
               std::vector<Link>& out) {
  const std::array<int, 4> side{s.top(x, y), s.right(x, y), s.bottom(x, y), s.left(x, y)};
  for (std::size_t i = 0; i < 4; ++i) {
    // A piece starts on a side where we leave the inside and ends on the next side back in.
    if (!in[i] || in[(i + 1) % 4]) continue;
    std::size_t j = (i + 1) % 4;
    while (!(!in[j] && in[(j + 1) % 4])) j = (j + 1) % 4;
    out.push_back({side[i], side[j]});
  }
}

constexpr std::size_t kAtOnce = sizeof(std::uint64_t);

/// No square between these eight pixels and the eight below them holds a piece of outline.
bool allAlike(const std::uint8_t* upper, const std::uint8_t* lower) {
  std::uint64_t a = 0, b = 0;
  std::memcpy(&a, upper, kAtOnce);
  std::memcpy(&b, lower, kAtOnce);
  return a == b && (a == 0 || a == 0x0101010101010101u);
}

std::vector<Link> piecesOf(const Padded& f) {
  const Sides sides{f.width()};
  std::vector<Link> links;
  std::vector<std::uint8_t> upper, lower;
  f.signs(0, upper);
  for (int y = 0; y + 1 < f.height(); ++y) {
    f.signs(y + 1, lower);
    for (int x = 0; x + 1 < f.width(); ++x) {
      const auto i = static_cast<std::size_t>(x);
      if (i + kAtOnce <= upper.size() && allAlike(&upper[i], &lower[i])) {
        x += static_cast<int>(kAtOnce) - 2;
        continue;
      }
      const int sum = upper[i] + upper[i + 1] + lower[i] + lower[i + 1];
      if (sum == 0 || sum == 4) continue;
      addPieces(sides, x, y, {upper[i] != 0, upper[i + 1] != 0, lower[i + 1] != 0, lower[i] != 0},
                links);
    }
    upper.swap(lower);
  }
  return links;
}

/// Where the side crosses the level, in pixels of the picture.
Point crossing(const Padded& f, int side) {
  const int cell = side / 2, x = cell % f.width(), y = cell / f.width();
  const bool down = side % 2 == 1;
  const double a = f.at(x, y), b = down ? f.at(x, y + 1) : f.at(x + 1, y);
  // At the outer ring the values are made up; the middle is as good as any.
  const double t = std::clamp(a / (a - b), 0.0, 1.0);
  return {f.field.window.x + x + (down ? 0 : t) - kBeyond - 0.5,
          f.field.window.y + y + (down ? t : 0) - kBeyond - 0.5};
}

std::vector<Polygon> rings(const Padded& f) {
  std::vector<Link> links = piecesOf(f);
  std::sort(links.begin(), links.end(),
            [](const Link& a, const Link& b) { return a.from < b.from; });
  const auto find = [&](int from) {
    return static_cast<std::size_t>(
        std::lower_bound(links.begin(), links.end(), from,
                         [](const Link& l, int key) { return l.from < key; }) -
        links.begin());
  };
  std::vector<Polygon> out;
  std::vector<bool> used(links.size(), false);
  for (std::size_t i = 0; i < links.size(); ++i) {
    if (used[i]) continue;
    Polygon ring;
    for (std::size_t at = i; at < links.size() && !used[at]; at = find(links[at].to)) {
      used[at] = true;
      ring.points.push_back(crossing(f, links[at].from));
    }
    out.push_back(std::move(ring));
  }
  return out;
}

Polygon softened(Polygon ring, int rounds) {
  std::vector<Point>& p = ring.points;
  std::vector<Point> next(p.size());
  for (int r = 0; r < rounds; ++r) {
    for (std::size_t i = 0; i < p.size(); ++i) {
      const Point &a = p[(i + p.size() - 1) % p.size()], &b = p[(i + 1) % p.size()];
      next[i] = {(a.x + 2 * p[i].x + b.x) / 4, (a.y + 2 * p[i].y + b.y) / 4};
    }
    p.swap(next);
  }
  return ring;
}

/// Mean along a row.
void meanAcross(const float* in, float* out, int count, int radius) {
  const auto at = [&](int i) { return in[std::clamp(i, 0, count - 1)]; };
  const float scale = 1.f / static_cast<float>(2 * radius + 1);
  if (radius == 1) {
    for (int i = 1; i + 1 < count; ++i) out[i] = (in[i - 1] + in[i] + in[i + 1]) * scale;
    for (const int i : {0, count - 1}) out[i] = (at(i - 1) + at(i) + at(i + 1)) * scale;
    return;
  }
  float sum = 0;
  for (int i = -radius; i <= radius; ++i) sum += at(i);
  int i = 0;
  for (; i < std::min(radius, count); ++i) {
    out[i] = sum * scale;
    sum += at(i + radius + 1) - at(i - radius);
  }
  for (; i + radius + 1 < count; ++i) {
    out[i] = sum * scale;
    sum += in[i + radius + 1] - in[i - radius];
  }
  for (; i < count; ++i) {
    out[i] = sum * scale;
    sum += at(i + radius + 1) - at(i - radius);
  }
}

/// Mean along all columns at once, row by row, so that memory is walked in order.
void meanDown(const Field& in, Field& out, int radius) {
  const auto w = static_cast<std::size_t>(in.window.width);
  const auto row = [&](int y) {
    return &in.value[in.index(0, std::clamp(y, 0, in.window.height - 1))];
  };
  std::vector<float> sum(w, 0.f);
  for (int y = -radius; y <= radius; ++y) {
    const float* from = row(y);
    for (std::size_t x = 0; x < w; ++x) sum[x] += from[x];
  }
  const float scale = 1.f / static_cast<float>(2 * radius + 1);
  for (int y = 0; y < in.window.height; ++y) {
    float* to = &out.value[out.index(0, y)];
    const float *enters = row(y + radius + 1), *leaves = row(y - radius);
    for (std::size_t x = 0; x < w; ++x) {
      to[x] = sum[x] * scale;
      sum[x] += enters[x] - leaves[x];
    }
  }
}

}  // namespace

Window wholeOf(const Picture& picture) {
  return {0, 0, picture.width, picture.height};
}

namespace {

/// Bounds of pixels, both inclusive, grown run by run.
struct PixelBox {
  int left = 1 << 30, top = 1 << 30, right = -1, bottom = -1;
  void add(int from, int to, int y) {
    *this = {std::min(left, from), std::min(top, y), std::max(right, to), y};
  }
  Window inside(const Picture& picture) const {
    constexpr int kMargin = 8;
    if (right < 0) return {};
    const int x = std::max(0, left - kMargin), y = std::max(0, top - kMargin);
    return {x, y, std::min(picture.width, right + 1 + kMargin) - x,
            std::min(picture.height, bottom + 1 + kMargin) - y};
  }
};

}  // namespace

std::vector<Window> windowsOf(const Picture& picture, std::size_t solids) {
  std::vector<PixelBox> boxes(solids);
  for (int y = 0; y < picture.height; ++y) {
    const std::int16_t* row = &picture.solid[static_cast<std::size_t>(y) * picture.width];
    for (int x = 0; x < picture.width;) {
      const int start = x;  // a run of one solid at a time
      while (x < picture.width && row[x] == row[start]) ++x;
      if (row[start] >= 0) boxes[static_cast<std::size_t>(row[start])].add(start, x - 1, y);
    }
  }
  std::vector<Window> out;
  for (const PixelBox& box : boxes) out.push_back(box.inside(picture));
  return out;
}

std::vector<PartWindows> partWindowsOf(const Picture& picture, const std::vector<Window>& windows) {
  std::vector<PartWindows> out(windows.size());
  for (std::size_t solid = 0; solid < windows.size(); ++solid) {
    const Window& w = windows[solid];
    std::array<PixelBox, std::tuple_size_v<PartWindows>> boxes;
    for (int y = w.y; y < w.y + w.height; ++y) {
      const std::size_t row = static_cast<std::size_t>(y) * picture.width;
      for (int x = w.x; x < w.x + w.width;) {
        const int start = x;  // a run of one part at a time
        const auto at = [&](int column) { return row + static_cast<std::size_t>(column); };
        while (x < w.x + w.width && picture.solid[at(x)] == picture.solid[at(start)] &&
               picture.part[at(x)] == picture.part[at(start)])
          ++x;
        if (picture.solid[at(start)] == static_cast<std::int16_t>(solid))
          boxes[picture.part[at(start)]].add(start, x - 1, y);
      }
    }
    for (std::size_t part = 0; part < boxes.size(); ++part)
      out[solid][part] = boxes[part].inside(picture);
  }
  return out;
}

Window around(const Window& a, const Window& b) {
  if (a.width == 0) return b;
  if (b.width == 0) return a;
  const int left = std::min(a.x, b.x), top = std::min(a.y, b.y);
  return {left, top, std::max(a.x + a.width, b.x + b.width) - left,
          std::max(a.y + a.height, b.y + b.height) - top};
}

Field fieldOver(const Window& window) {
  return {window, std::vector<float>(static_cast<std::size_t>(window.width) * window.height, 0.f)};
}

Field blurred(const Field& field, int radius) {
  if (radius <= 0 || field.value.empty()) return field;
  Field a = field, b = fieldOver(field.window);
  for (int pass = 0; pass < 2; ++pass) {
    for (int y = 0; y < field.window.height; ++y)
      meanAcross(&a.value[a.index(0, y)], &b.value[b.index(0, y)], field.window.width, radius);
    meanDown(b, a, radius);
  }
  return a;
}

Field blurredWithin(const Field& field, const Field& weight, int radius) {
  Field product = field;
  for (std::size_t i = 0; i < product.value.size(); ++i) product.value[i] *= weight.value[i];
  product = blurred(product, radius);
  const Field sum = blurred(weight, radius);
  for (std::size_t i = 0; i < product.value.size(); ++i)
    product.value[i] = sum.value[i] > 0 ? product.value[i] / sum.value[i] : field.value[i];
  return product;
}

Region traced(const Field& field, const PanelView& view, const TraceStyle& style) {
  const double pxSmooth = style.smoothMm / view.mmPerPx();
  const int rounds = std::clamp(static_cast<int>(2 * pxSmooth * pxSmooth), 1, 40);
  Region region;
  if (field.value.empty()) return region;
  for (Polygon ring : rings(Padded{field, style.level})) {
    ring = softened(std::move(ring), rounds);
    for (Point& p : ring.points) p = view.pageFromPx(p);
    if (ring.points.size() < 4 || area(ring) < style.leastMm2) continue;
    ring.points.push_back(ring.points.front());
    ring.points = simplified(ring.points, kThinMm);
    ring.points.pop_back();
    if (ring.points.size() >= 3) region.push_back(std::move(ring));
  }
  return region;
}

}  // namespace tw
