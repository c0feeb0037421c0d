// Cells are the mean of the picture's pixels below them, on white where the picture is transparent,
// kept to sixteen steps of each colour; runs of one colour in a row become one rectangle.
#include "press/picture_mosaic.h"

#include <cairo.h>

#include <algorithm>
#include <cmath>
#include <cstring>
#include <memory>

namespace tw {

namespace {

constexpr double kSteps = 15;
constexpr int kLargestSide = 12000;  // px that are decoded for a thumbnail

struct Bytes {
  const std::string* all;
  std::size_t at = 0;
};

cairo_status_t readBytes(void* from, unsigned char* to, unsigned int count) {
  auto* bytes = static_cast<Bytes*>(from);
  if (bytes->at + count > bytes->all->size()) return CAIRO_STATUS_READ_ERROR;
  std::memcpy(to, bytes->all->data() + bytes->at, count);
  bytes->at += count;
  return CAIRO_STATUS_SUCCESS;
}

/// Width and height stand at a fixed place behind the signature; checked before anything is
/// decoded.
bool isTooLarge(const std::string& png) {
  if (png.size() < 24) return true;
  const auto side = [&](std::size_t at) {
    long value = 0;
    for (std::size_t i = 0; i < 4; ++i)
      value = value << 8 | static_cast<unsigned char>(png[at + i]);
    return value;
  };
  return side(16) < 1 || side(20) < 1 || side(16) > kLargestSide || side(20) > kLargestSide;
}

double stepped(double value) {
  return std::round(std::clamp(value, 0.0, 1.0) * kSteps) / kSteps;
}

Ink meanOf(const unsigned char* data, int stride, int x0, int x1, int y0, int y1, bool alpha) {
  double sum[3] = {0, 0, 0};
  for (int y = y0; y < y1; ++y)
    for (int x = x0; x < x1; ++x) {
      std::uint32_t pixel = 0;
      std::memcpy(&pixel, data + static_cast<std::ptrdiff_t>(y) * stride + 4 * x, 4);
      const double white = alpha ? 255.0 - (pixel >> 24) : 0;
      sum[0] += (pixel >> 16 & 0xFF) + white;
      sum[1] += (pixel >> 8 & 0xFF) + white;
      sum[2] += (pixel & 0xFF) + white;
    }
  const double count = 255.0 * (x1 - x0) * (y1 - y0);
  return {stepped(sum[0] / count), stepped(sum[1] / count), stepped(sum[2] / count)};
}

}  // namespace

std::optional<Mosaic> mosaicOf(const std::string& png, int mostCells) {
  if (isTooLarge(png)) return {};
  Bytes bytes{&png};
  const std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)> surface(
      cairo_image_surface_create_from_png_stream(readBytes, &bytes), cairo_surface_destroy);
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS) return {};
  const cairo_format_t format = cairo_image_surface_get_format(surface.get());
  if (format != CAIRO_FORMAT_ARGB32 && format != CAIRO_FORMAT_RGB24) return {};
  const int width = cairo_image_surface_get_width(surface.get());
  const int height = cairo_image_surface_get_height(surface.get());
  const int cell = std::max(1, (std::max(width, height) + mostCells - 1) / mostCells);
  Mosaic out{(width + cell - 1) / cell, (height + cell - 1) / cell, {}};
  const unsigned char* data = cairo_image_surface_get_data(surface.get());
  for (int r = 0; r < out.rows; ++r)
    for (int c = 0; c < out.columns; ++c)
      out.cells.push_back(meanOf(data, cairo_image_surface_get_stride(surface.get()), c * cell,
                                 std::min(width, (c + 1) * cell), r * cell,
                                 std::min(height, (r + 1) * cell), format == CAIRO_FORMAT_ARGB32));
  return out;
}

void drawMosaic(Surface& surface, const Mosaic& mosaic, const Rect& in) {
  constexpr double kOverlap = 0.01;  // mm; no hair of paper between cells
  const double wide = in.width() / mosaic.columns, high = in.height() / mosaic.rows;
  for (int r = 0; r < mosaic.rows; ++r)
    for (int c = 0; c < mosaic.columns;) {
      const Ink ink = mosaic.cells[static_cast<std::size_t>(r * mosaic.columns + c)];
      int end = c + 1;
      while (end < mosaic.columns &&
             mosaic.cells[static_cast<std::size_t>(r * mosaic.columns + end)] == ink)
        ++end;
      if (ink != kPaper)
        surface.fill(
            Path(Rect{{in.min.x + c * wide, in.min.y + r * high},
                      {in.min.x + end * wide + kOverlap, in.min.y + (r + 1) * high + kOverlap}}),
            ink, FillRule::NonZero);
      c = end;
    }
}

}  // namespace tw
