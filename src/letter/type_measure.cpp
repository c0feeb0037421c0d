#include "letter/type_measure.h"

#include <pango/pangocairo.h>

#include <algorithm>
#include <map>
#include <mutex>

#include "job/emphasis.h"

namespace tw {
namespace {

/// Measured at this size so that Pango's 1/1024 unit does not show.
constexpr double kMeasuredAt = 100;

struct GObjectDeleter {
  void operator()(gpointer object) const { g_object_unref(object); }
};
template <class T>
using GOwned = std::unique_ptr<T, GObjectDeleter>;

struct FontDeleter {
  void operator()(PangoFontDescription* font) const { pango_font_description_free(font); }
};
using OwnedFont = std::unique_ptr<PangoFontDescription, FontDeleter>;

PangoContext* makeContext(PangoFontMap* map) {
  pango_cairo_font_map_set_resolution(PANGO_CAIRO_FONT_MAP(map), 72);
  PangoContext* context = pango_font_map_create_context(map);
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options(context, options);
  cairo_font_options_destroy(options);
  pango_context_set_round_glyph_positions(context, FALSE);
  return context;
}

bool isInstalled(PangoContext* context, PangoFontDescription* wanted) {
  GOwned<PangoFont> font(pango_context_load_font(context, wanted));
  if (!font) return false;
  OwnedFont found(pango_font_describe(font.get()));
  return g_ascii_strcasecmp(pango_font_description_get_family(found.get()),
                            pango_font_description_get_family(wanted)) == 0;
}

}  // namespace

struct TypeMeasure::Impl {
  GOwned<PangoFontMap> map;
  GOwned<PangoContext> context;
  GOwned<PangoLayout> layout, stressedLayout;
  mutable std::mutex mutex;
  mutable std::map<std::string, double, std::less<>> widths;
  mutable std::map<std::string, int, std::less<>> unknown;
  double capHeight = 0.7, space = 0.25;

  double measure(std::string_view text, bool stressed = false) const {
    PangoLayout* by = stressed ? stressedLayout.get() : layout.get();
    pango_layout_set_text(by, text.data(), static_cast<int>(text.size()));
    PangoRectangle logical;
    pango_layout_get_extents(by, nullptr, &logical);
    return logical.width / (PANGO_SCALE * kMeasuredAt);
  }

  /// Plain and stressed words one after the other.
  double measureRuns(std::string_view text) const {
    double width = 0;
    for (bool stressed = false; !text.empty(); stressed = !stressed) {
      const std::size_t end = std::min(text.find(stressed ? kStressOff : kStressOn), text.size());
      if (end > 0) width += measure(text.substr(0, end), stressed);
      text.remove_prefix(std::min(end + 1, text.size()));
    }
    return width;
  }

  double inkHeight(std::string_view text) const {
    pango_layout_set_text(layout.get(), text.data(), static_cast<int>(text.size()));
    PangoRectangle ink;
    pango_layout_get_extents(layout.get(), &ink, nullptr);
    return ink.height / (PANGO_SCALE * kMeasuredAt);
  }
};

TypeMeasure::TypeMeasure(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
TypeMeasure::TypeMeasure(TypeMeasure&&) noexcept = default;
TypeMeasure::~TypeMeasure() = default;

Result<TypeMeasure> TypeMeasure::make(const std::string& family, const std::string& weight) {
  auto impl = std::make_unique<Impl>();
  impl->map.reset(pango_cairo_font_map_new_for_font_type(CAIRO_FONT_TYPE_FT));
  if (!impl->map) return ourFault("The type library offers no FreeType fonts.");
  impl->context.reset(makeContext(impl->map.get()));
  OwnedFont font(pango_font_description_from_string((family + " " + weight).c_str()));
  pango_font_description_set_absolute_size(font.get(), kMeasuredAt * PANGO_SCALE);
  if (!isInstalled(impl->context.get(), font.get())) {
    return ourFault("The lettering font “" + family + "” is not installed.", {},
                    "Install the package fonts-comic-neue or name another font.");
  }
  impl->layout.reset(pango_layout_new(impl->context.get()));
  pango_layout_set_font_description(impl->layout.get(), font.get());
  impl->stressedLayout.reset(pango_layout_new(impl->context.get()));
  pango_font_description_set_style(font.get(), PANGO_STYLE_ITALIC);
  pango_layout_set_font_description(impl->stressedLayout.get(), font.get());
  impl->capHeight = impl->inkHeight("H");
  impl->space = impl->measure("H H") - impl->measure("HH");
  return TypeMeasure(std::move(impl));
}

double TypeMeasure::widthEm(std::string_view text) const {
  std::scoped_lock lock(impl_->mutex);
  if (const auto it = impl_->widths.find(text); it != impl_->widths.end()) return it->second;
  const double width = impl_->measureRuns(text);
  impl_->widths.emplace(std::string(text), width);
  return width;
}

double TypeMeasure::capHeightEm() const {
  return impl_->capHeight;
}

double TypeMeasure::spaceEm() const {
  return impl_->space;
}

int TypeMeasure::unknownGlyphs(std::string_view line) const {
  const std::string text = bareWords(line);
  std::scoped_lock lock(impl_->mutex);
  if (const auto it = impl_->unknown.find(text); it != impl_->unknown.end()) return it->second;
  pango_layout_set_text(impl_->layout.get(), text.data(), static_cast<int>(text.size()));
  const int count = pango_layout_get_unknown_glyphs_count(impl_->layout.get());
  impl_->unknown.emplace(text, count);
  return count;
}

namespace {

/// For each byte of the bare words: is it stressed?
std::vector<char> stressOf(std::string_view marked) {
  std::vector<char> result;
  char stressed = 0;
  for (const char c : marked) {
    if (c == kStressOn || c == kStressOff)
      stressed = c == kStressOn;
    else
      result.push_back(stressed);
  }
  return result;
}

std::string withStressMarks(std::string_view piece, const std::vector<char>& stressed,
                            std::size_t begin) {
  std::string result;
  bool on = false;
  for (std::size_t i = 0; i < piece.size(); ++i) {
    if (on != (stressed[begin + i] != 0)) {
      on = !on;
      result += on ? kStressOn : kStressOff;
    }
    result += piece[i];
  }
  if (on) result += kStressOff;
  return result;
}

}  // namespace

std::vector<Chunk> TypeMeasure::chunks(const std::string& marked) const {
  std::vector<Chunk> result;
  const std::string text = bareWords(marked);
  const std::vector<char> stressed = stressOf(marked);
  const glong count = g_utf8_strlen(text.c_str(), static_cast<gssize>(text.size()));
  std::vector<PangoLogAttr> attrs(static_cast<std::size_t>(count) + 1);
  pango_get_log_attrs(text.c_str(), static_cast<int>(text.size()), -1,
                      pango_language_from_string("en"), attrs.data(),
                      static_cast<int>(attrs.size()));
  const char* from = text.c_str();
  const char* at = from;
  for (glong i = 1; i <= count; ++i) {
    at = g_utf8_next_char(at);
    if (i < count && !attrs[i].is_line_break) continue;
    std::string_view piece(from, static_cast<std::size_t>(at - from));
    from = at;
    Chunk chunk;
    const std::size_t end = piece.find_last_not_of(" \n");
    const std::string_view tail = end == piece.npos ? piece : piece.substr(end + 1);
    chunk.mustBreak = tail.find('\n') != tail.npos;
    chunk.spaceAfter = !tail.empty();
    if (end == piece.npos) continue;
    const auto begin = static_cast<std::size_t>(piece.data() - text.data());
    chunk.text = withStressMarks(piece.substr(0, end + 1), stressed, begin);
    chunk.widthEm = widthEm(chunk.text);
    result.push_back(std::move(chunk));
  }
  return result;
}

namespace {

/// What is left of marks after stress was read, in a muddle; a lone star or underscore is kept.
std::string withoutMarks(const std::string& text) {
  std::string result;
  const bool stars = std::count(text.begin(), text.end(), '*') > 1;
  const bool lines = std::count(text.begin(), text.end(), '_') > 1;
  for (const char c : text) {
    if ((c == '*' && stars) || (c == '_' && lines)) continue;
    result += c;
  }
  return result;
}

std::string withPlainSpaces(const std::string& text) {
  std::string result;
  for (char c : text) {
    if (c == '\t' || c == '\r') c = ' ';
    const bool blank = c == ' ' || c == '\n';
    if (blank && result.empty()) continue;
    if (blank && (result.back() == ' ' || result.back() == '\n')) {
      if (c == '\n') result.back() = '\n';
      continue;
    }
    result += c;
  }
  while (!result.empty() && (result.back() == ' ' || result.back() == '\n')) result.pop_back();
  return result;
}

}  // namespace

std::string lettered(const std::string& text, bool upperCase) {
  gchar* valid = g_utf8_make_valid(text.c_str(), static_cast<gssize>(text.size()));
  gchar* cased = upperCase ? g_utf8_strup(valid, -1) : g_strdup(valid);
  std::string marked;
  for (const EmphasisRun& run : emphasisRuns(bareWords(cased))) {
    const std::string words = withoutMarks(run.text);
    marked += run.strong ? kStressOn + words + kStressOff : words;
  }
  g_free(cased);
  g_free(valid);
  return withPlainSpaces(marked);
}

std::string bareWords(std::string_view lettered) {
  std::string result;
  for (const char c : lettered) {
    if (c != kStressOn && c != kStressOff) result += c;
  }
  return result;
}

std::string starred(std::string_view lettered) {
  std::string result;
  for (std::size_t i = 0; i < lettered.size(); ++i) {
    // Stress that goes on in the next piece or word needs no marks between.
    if (lettered.substr(i, 2) == std::string{kStressOff, kStressOn}) {
      ++i;
    } else if (lettered.substr(i, 3) == std::string{kStressOff, ' ', kStressOn}) {
      result += ' ';
      i += 2;
    } else {
      const bool mark = lettered[i] == kStressOn || lettered[i] == kStressOff;
      result += mark ? '*' : lettered[i];
    }
  }
  return result;
}

}  // namespace tw
