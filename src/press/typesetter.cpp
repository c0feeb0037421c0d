#include "press/typesetter.h"

#include <pango/pangocairo.h>

#include <numbers>

namespace tw {

namespace {

constexpr const char* kFamily = "Comic Neue";
// Layouts are measured and drawn at this many points per unit, then scaled, so that rounding in
// the layout never shows.
constexpr double kLayoutPt = 100;

struct Unref {
  void operator()(void* object) const { g_object_unref(object); }
};
struct FreeFont {
  void operator()(PangoFontDescription* font) const { pango_font_description_free(font); }
};
struct FreeOptions {
  void operator()(cairo_font_options_t* options) const { cairo_font_options_destroy(options); }
};

std::unique_ptr<PangoFontDescription, FreeFont> fontFor(Face face) {
  const bool bold = face == Face::Bold || face == Face::BoldItalic;
  const bool italic = face == Face::Italic || face == Face::BoldItalic;
  std::unique_ptr<PangoFontDescription, FreeFont> font(pango_font_description_new());
  pango_font_description_set_family_static(font.get(), kFamily);
  pango_font_description_set_weight(font.get(), bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_style(font.get(), italic ? PANGO_STYLE_ITALIC : PANGO_STYLE_NORMAL);
  pango_font_description_set_absolute_size(font.get(), kLayoutPt * PANGO_SCALE);
  return font;
}

double mmPerUnit(double sizePt) {
  return sizePt * kMmPerPt / kLayoutPt;
}

}  // namespace

struct Typesetter::Impl {
  std::unique_ptr<PangoFontMap, Unref> map{pango_cairo_font_map_new()};
  std::unique_ptr<PangoContext, Unref> context{pango_font_map_create_context(map.get())};
  std::unique_ptr<PangoLayout, Unref> layout;
  std::unique_ptr<PangoFontDescription, FreeFont> fonts[4] = {
      fontFor(Face::Regular), fontFor(Face::Italic), fontFor(Face::Bold),
      fontFor(Face::BoldItalic)};

  Impl() {
    std::unique_ptr<cairo_font_options_t, FreeOptions> options(cairo_font_options_create());
    cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
    pango_cairo_context_set_font_options(context.get(), options.get());
    pango_context_set_round_glyph_positions(context.get(), FALSE);
    layout.reset(pango_layout_new(context.get()));
    pango_layout_set_single_paragraph_mode(layout.get(), TRUE);
  }

  PangoLayoutLine* set(const std::string& text, Face face) const {
    pango_layout_set_width(layout.get(), -1);
    pango_layout_set_font_description(layout.get(), fonts[static_cast<int>(face)].get());
    pango_layout_set_text(layout.get(), text.data(), static_cast<int>(text.size()));
    return pango_layout_get_line_readonly(layout.get(), 0);
  }

  double width(PangoLayoutLine* line) const {
    PangoRectangle logical{};
    pango_layout_line_get_extents(line, nullptr, &logical);
    return static_cast<double>(logical.width) / PANGO_SCALE;
  }

  /// Sets the line and moves the context to the start of its baseline.
  PangoLayoutLine* begin(cairo_t* cairo, const TypeLine& type) const {
    PangoLayoutLine* line = set(type.text, type.face);
    const double share = type.align == Align::Left ? 0 : type.align == Align::Centre ? 0.5 : 1;
    const double back = width(line) * share;
    cairo_translate(cairo, type.turnAbout.x, type.turnAbout.y);
    cairo_rotate(cairo, -type.turnDeg * std::numbers::pi / 180);
    cairo_translate(cairo, type.at.x - type.turnAbout.x, type.at.y - type.turnAbout.y);
    cairo_scale(cairo, mmPerUnit(type.sizePt), mmPerUnit(type.sizePt));
    cairo_move_to(cairo, -back, 0);
    return line;
  }
};

Typesetter::Typesetter() : impl_(std::make_unique<Impl>()) {}
Typesetter::~Typesetter() = default;

double Typesetter::widthOf(const std::string& text, Face face, double sizePt) const {
  return impl_->width(impl_->set(text, face)) * mmPerUnit(sizePt);
}

std::vector<std::string> Typesetter::broken(const std::string& text, Face face, double sizePt,
                                            double mostMm) const {
  impl_->set(text, face);
  PangoLayout* layout = impl_->layout.get();
  pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_width(layout, static_cast<int>(mostMm / mmPerUnit(sizePt) * PANGO_SCALE));
  std::vector<std::string> lines;
  for (int i = 0; i < pango_layout_get_line_count(layout); ++i) {
    const PangoLayoutLine* line = pango_layout_get_line_readonly(layout, i);
    std::string part = text.substr(static_cast<std::size_t>(line->start_index),
                                   static_cast<std::size_t>(line->length));
    while (!part.empty() && part.back() == ' ') part.pop_back();
    lines.push_back(std::move(part));
  }
  return lines;
}

std::string Typesetter::shortened(const std::string& text, Face face, double sizePt,
                                  double mostMm) const {
  if (widthOf(text, face, sizePt) <= mostMm) return text;
  const std::string ellipsis = "…";
  std::string head = text;
  while (!head.empty() && widthOf(head + ellipsis, face, sizePt) > mostMm) {
    // Drop one whole UTF-8 character: its continuation bytes, then its first byte.
    while (!head.empty() && (static_cast<unsigned char>(head.back()) & 0xC0) == 0x80)
      head.pop_back();
    if (!head.empty()) head.pop_back();
  }
  while (!head.empty() && head.back() == ' ') head.pop_back();
  return head + ellipsis;
}

Path Typesetter::outlines(const TypeLine& type) const {
  cairo_surface_t* surface = cairo_recording_surface_create(CAIRO_CONTENT_ALPHA, nullptr);
  cairo_t* cairo = cairo_create(surface);
  cairo_matrix_t mm;
  // Paths are kept in 1/256 unit; a scale of 100 makes that 1/25600 mm.
  cairo_matrix_init_scale(&mm, 100, 100);
  cairo_set_matrix(cairo, &mm);
  PangoLayoutLine* line = impl_->begin(cairo, type);
  pango_cairo_layout_line_path(cairo, line);
  cairo_set_matrix(cairo, &mm);
  cairo_path_t* copied = cairo_copy_path(cairo);
  Path path;
  for (int i = 0; i < copied->num_data; i += copied->data[i].header.length) {
    const cairo_path_data_t* d = &copied->data[i];
    const auto at = [&](int n) { return Point{d[n].point.x, d[n].point.y}; };
    switch (d->header.type) {
      case CAIRO_PATH_MOVE_TO:
        path.moveTo(at(1));
        break;
      case CAIRO_PATH_LINE_TO:
        path.lineTo(at(1));
        break;
      case CAIRO_PATH_CURVE_TO:
        path.curveTo(at(1), at(2), at(3));
        break;
      case CAIRO_PATH_CLOSE_PATH:
        path.close();
        break;
    }
  }
  cairo_path_destroy(copied);
  cairo_destroy(cairo);
  cairo_surface_destroy(surface);
  return path;
}

void Typesetter::draw(cairo_t* cairo, const TypeLine& type) const {
  cairo_save(cairo);
  cairo_set_source_rgb(cairo, type.ink.red, type.ink.green, type.ink.blue);
  PangoLayoutLine* line = impl_->begin(cairo, type);
  pango_cairo_show_layout_line(cairo, line);
  cairo_restore(cairo);
}

}  // namespace tw
