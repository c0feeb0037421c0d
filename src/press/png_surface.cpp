#include "press/png_surface.h"

#include <cairo.h>

#include <array>
#include <cmath>
#include <cstdint>
#include <cstring>

namespace tw {

namespace {

constexpr double kMmPerInch = 25.4;
constexpr std::size_t kAfterHeader = 8 + 25;  // signature, then IHDR whole: 4 + 4 + 13 + 4

void trace(cairo_t* cairo, const Path& path) {
  cairo_new_path(cairo);
  const Point* p = path.points().data();
  for (const Path::Step step : path.steps()) switch (step) {
      case Path::Step::Move:
        cairo_move_to(cairo, p->x, p->y);
        ++p;
        break;
      case Path::Step::Line:
        cairo_line_to(cairo, p->x, p->y);
        ++p;
        break;
      case Path::Step::Curve:
        cairo_curve_to(cairo, p[0].x, p[0].y, p[1].x, p[1].y, p[2].x, p[2].y);
        p += 3;
        break;
      case Path::Step::Close:
        cairo_close_path(cairo);
        break;
    }
}

cairo_fill_rule_t ruleFor(FillRule rule) {
  return rule == FillRule::EvenOdd ? CAIRO_FILL_RULE_EVEN_ODD : CAIRO_FILL_RULE_WINDING;
}

cairo_status_t append(void* out, const unsigned char* bytes, unsigned int count) {
  static_cast<std::string*>(out)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

/// CRC-32 as in the PNG specification, annex D: polynomial EDB88320, bit by bit.
std::uint32_t crc(const std::string& bytes) {
  std::uint32_t c = 0xFFFFFFFFu;
  for (const char byte : bytes) {
    c ^= static_cast<unsigned char>(byte);
    for (int bit = 0; bit < 8; ++bit) c = (c >> 1) ^ ((c & 1u) ? 0xEDB88320u : 0u);
  }
  return ~c;
}

void appendBigEndian(std::string& out, std::uint32_t value) {
  for (int shift = 24; shift >= 0; shift -= 8) out += static_cast<char>((value >> shift) & 0xFF);
}

}  // namespace

std::string withResolution(const std::string& png, double dpi) {
  ensure(png.size() > kAfterHeader, "a PNG starts with its signature and header");
  const auto perMetre = static_cast<std::uint32_t>(std::lround(dpi * 1000 / kMmPerInch));
  std::string body = "pHYs";
  appendBigEndian(body, perMetre);
  appendBigEndian(body, perMetre);
  body += '\x01';  // the unit is the metre
  std::string chunk;
  appendBigEndian(chunk, 9);
  chunk += body;
  appendBigEndian(chunk, crc(body));
  return png.substr(0, kAfterHeader) + chunk + png.substr(kAfterHeader);
}

struct PngSurface::Impl {
  const Typesetter& typesetter;
  double dpi;
  cairo_surface_t* surface;
  cairo_t* cairo;
};

PngSurface::PngSurface(const Typesetter& typesetter, const Rect& view, double dpi) {
  const double perMm = dpi / kMmPerInch;
  // A hair is taken off first, so that 100.0000001 pixels are 100.
  const auto pixels = [&](double mm) { return static_cast<int>(std::ceil(mm * perMm - 1e-6)); };
  cairo_surface_t* surface =
      cairo_image_surface_create(CAIRO_FORMAT_RGB24, pixels(view.width()), pixels(view.height()));
  cairo_t* cairo = cairo_create(surface);
  cairo_set_source_rgb(cairo, 1, 1, 1);
  cairo_paint(cairo);
  cairo_scale(cairo, perMm, perMm);
  cairo_translate(cairo, -view.min.x, -view.min.y);
  impl_ = std::make_unique<Impl>(Impl{typesetter, dpi, surface, cairo});
}

PngSurface::~PngSurface() {
  cairo_destroy(impl_->cairo);
  cairo_surface_destroy(impl_->surface);
}

void PngSurface::fill(const Path& path, Ink ink, FillRule rule) {
  cairo_set_source_rgb(impl_->cairo, ink.red, ink.green, ink.blue);
  cairo_set_fill_rule(impl_->cairo, ruleFor(rule));
  trace(impl_->cairo, path);
  cairo_fill(impl_->cairo);
}

void PngSurface::line(const Path& path, const Pen& pen) {
  cairo_t* cairo = impl_->cairo;
  cairo_set_source_rgb(cairo, pen.ink.red, pen.ink.green, pen.ink.blue);
  cairo_set_line_width(cairo, pen.width);
  cairo_set_line_cap(cairo, pen.round ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join(cairo, pen.round ? CAIRO_LINE_JOIN_ROUND : CAIRO_LINE_JOIN_MITER);
  cairo_set_dash(cairo, pen.dashes.data(), static_cast<int>(pen.dashes.size()), 0);
  trace(cairo, path);
  cairo_stroke(cairo);
}

void PngSurface::clip(const Path& path, FillRule rule) {
  cairo_save(impl_->cairo);
  cairo_set_fill_rule(impl_->cairo, ruleFor(rule));
  trace(impl_->cairo, path);
  cairo_clip(impl_->cairo);
}

void PngSurface::unclip() {
  cairo_restore(impl_->cairo);
}

void PngSurface::type(const TypeLine& line) {
  impl_->typesetter.draw(impl_->cairo, line);
}

void PngSurface::place(const Sketch& sketch, double scale, Point at) {
  cairo_save(impl_->cairo);
  cairo_translate(impl_->cairo, at.x, at.y);
  cairo_scale(impl_->cairo, scale, scale);
  clip(Path(sketch.bounds()), FillRule::NonZero);
  sketch.drawOn(*this, kFinestMm / scale);
  unclip();
  cairo_restore(impl_->cairo);
}

void PngSurface::openGroup(const std::string&, const std::string&, bool) {}
void PngSurface::closeGroup() {}

void PngSurface::paint(const PixelPicture& picture, const Rect& at) {
  ensure(picture.colour.size() == static_cast<std::size_t>(picture.width) * picture.height,
         "a picture has as many colours as pixels");
  cairo_surface_t* image =
      cairo_image_surface_create(CAIRO_FORMAT_RGB24, picture.width, picture.height);
  unsigned char* rows = cairo_image_surface_get_data(image);
  if (rows) {
    const auto stride = static_cast<std::size_t>(cairo_image_surface_get_stride(image));
    for (std::size_t y = 0; y < static_cast<std::size_t>(picture.height); ++y)
      std::memcpy(rows + y * stride, picture.colour.data() + y * picture.width,
                  sizeof(std::uint32_t) * picture.width);
    cairo_surface_mark_dirty(image);
    cairo_save(impl_->cairo);
    cairo_translate(impl_->cairo, at.min.x, at.min.y);
    cairo_scale(impl_->cairo, at.width() / picture.width, at.height() / picture.height);
    cairo_set_source_surface(impl_->cairo, image, 0, 0);
    cairo_pattern_set_extend(cairo_get_source(impl_->cairo), CAIRO_EXTEND_PAD);
    cairo_rectangle(impl_->cairo, 0, 0, picture.width, picture.height);
    cairo_fill(impl_->cairo);
    cairo_restore(impl_->cairo);
  }
  cairo_surface_destroy(image);
}

Result<std::string> PngSurface::finished() {
  cairo_surface_flush(impl_->surface);
  std::string png;
  const cairo_status_t status = cairo_surface_write_to_png_stream(impl_->surface, append, &png);
  if (status != CAIRO_STATUS_SUCCESS)
    return ourFault(std::string("The picture could not be made: ") +
                    cairo_status_to_string(status) + ".");
  return withResolution(png, impl_->dpi);
}

}  // namespace tw
