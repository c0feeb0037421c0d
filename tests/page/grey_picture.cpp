// Comparing: both pictures are blurred by a box of three pixels, so that a line's edge does not
// count, then their difference is averaged over the picture and over squares of it.
#include "grey_picture.h"

#include <cairo.h>
#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>
#include <memory>

namespace tw::tests {

namespace {

using Surface = std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)>;

std::size_t at(const GreyPicture& p, int x, int y) {
  return static_cast<std::size_t>(std::clamp(y, 0, p.height - 1)) *
             static_cast<std::size_t>(p.width) +
         static_cast<std::size_t>(std::clamp(x, 0, p.width - 1));
}

GreyPicture blank(int width, int height) {
  return {width, height,
          std::vector<std::uint8_t>(static_cast<std::size_t>(width) *
                                    static_cast<std::size_t>(height))};
}

GreyPicture blurred(const GreyPicture& p) {
  GreyPicture out = blank(p.width, p.height);
  for (int y = 0; y < p.height; ++y)
    for (int x = 0; x < p.width; ++x) {
      int sum = 0;
      for (int dy = -1; dy <= 1; ++dy)
        for (int dx = -1; dx <= 1; ++dx) sum += p.value[at(p, x + dx, y + dy)];
      out.value[at(p, x, y)] = static_cast<std::uint8_t>(sum / 9);
    }
  return out;
}

}  // namespace

GreyPicture readGreyPng(const std::filesystem::path& file) {
  const Surface png(cairo_image_surface_create_from_png(file.c_str()), cairo_surface_destroy);
  REQUIRE_MESSAGE(cairo_surface_status(png.get()) == CAIRO_STATUS_SUCCESS, "cannot read ",
                  file.string());
  GreyPicture out =
      blank(cairo_image_surface_get_width(png.get()), cairo_image_surface_get_height(png.get()));
  // On white paper, as a picture of four bytes.
  const Surface page(cairo_image_surface_create(CAIRO_FORMAT_RGB24, out.width, out.height),
                     cairo_surface_destroy);
  cairo_t* pen = cairo_create(page.get());
  cairo_set_source_rgb(pen, 1, 1, 1);
  cairo_paint(pen);
  cairo_set_source_surface(pen, png.get(), 0, 0);
  cairo_paint(pen);
  cairo_destroy(pen);
  cairo_surface_flush(page.get());
  const unsigned char* bytes = cairo_image_surface_get_data(page.get());
  const int stride = cairo_image_surface_get_stride(page.get());
  for (int y = 0; y < out.height; ++y)
    for (int x = 0; x < out.width; ++x) {
      const unsigned char* px = bytes + y * stride + 4 * x;
      out.value[at(out, x, y)] = static_cast<std::uint8_t>((px[0] + px[1] + px[2]) / 3);
    }
  return out;
}

void writeGreyPng(const std::filesystem::path& file, const GreyPicture& picture) {
  const Surface page(cairo_image_surface_create(CAIRO_FORMAT_A8, picture.width, picture.height),
                     cairo_surface_destroy);
  unsigned char* bytes = cairo_image_surface_get_data(page.get());
  const int stride = cairo_image_surface_get_stride(page.get());
  for (int y = 0; y < picture.height; ++y)
    std::copy_n(picture.value.begin() + static_cast<std::ptrdiff_t>(at(picture, 0, y)),
                picture.width, bytes + y * stride);
  cairo_surface_mark_dirty(page.get());
  CHECK(cairo_surface_write_to_png(page.get(), file.c_str()) == CAIRO_STATUS_SUCCESS);
}

GreyPicture thumbnail(const GreyPicture& p, int width) {
  GreyPicture out = blank(width, std::max(1, p.height * width / p.width));
  for (int y = 0; y < out.height; ++y)
    for (int x = 0; x < out.width; ++x) {
      const int top = y * p.height / out.height, left = x * p.width / out.width;
      const int bottom = std::max(top + 1, (y + 1) * p.height / out.height),
                right = std::max(left + 1, (x + 1) * p.width / out.width);
      long sum = 0;
      for (int v = top; v < bottom; ++v)
        for (int u = left; u < right; ++u) sum += p.value[at(p, u, v)];
      out.value[at(out, x, y)] = static_cast<std::uint8_t>(sum / ((bottom - top) * (right - left)));
    }
  return out;
}

GreyPicture mirrored(const GreyPicture& p) {
  GreyPicture out = p;
  for (int y = 0; y < p.height; ++y)
    for (int x = 0; x < p.width; ++x) out.value[at(p, x, y)] = p.value[at(p, p.width - 1 - x, y)];
  return out;
}

Difference difference(const GreyPicture& one, const GreyPicture& other) {
  if (one.width != other.width || one.height != other.height) return {1, 1, other};
  const GreyPicture a = blurred(one), b = blurred(other);
  Difference out{0, 0, blank(a.width, a.height)};
  for (int top = 0; top < a.height; top += kSquarePx)
    for (int left = 0; left < a.width; left += kSquarePx) {
      double sum = 0, count = 0;
      for (int y = top; y < std::min(top + kSquarePx, a.height); ++y)
        for (int x = left; x < std::min(left + kSquarePx, a.width); ++x) {
          const int by = std::abs(a.value[at(a, x, y)] - b.value[at(b, x, y)]);
          out.map.value[at(a, x, y)] = static_cast<std::uint8_t>(255 - by);
          sum += by / 255.0;
          count += 1;
        }
      out.mean += sum / (static_cast<double>(a.width) * a.height);
      out.worst = std::max(out.worst, sum / count);
    }
  return out;
}

}  // namespace tw::tests
