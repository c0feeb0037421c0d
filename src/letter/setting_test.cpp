// Lines, shapes and widths before any panel. Outside judges: cairo's own text advances, the
// superellipse table of the lettering facts (computed), Unicode's special casing of ß.
#include "letter/setting.h"

#include <cairo.h>
#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>

#include "geometry/polygon.h"
#include "letter/copy_limits.h"
#include "letter/line_breaking.h"

namespace tw {
namespace {

const TypeMeasure& type() {
  static const TypeMeasure measure = std::move(*TypeMeasure::make("Comic Neue", "bold"));
  return measure;
}

constexpr CopyKind kRounded[] = {CopyKind::Speech, CopyKind::Whisper, CopyKind::Shout,
                                 CopyKind::Thought, CopyKind::Caption};
const std::vector<std::string> kWords{"THE",   "BELL",   "RINGS", "UNDER",    "DARK",  "WATER,",
                                      "I",     "HEAR",   "IT",    "TONIGHT.", "JONAS", "COUNTS",
                                      "FORTY", "METRES", "OF",    "ROPE"};

std::string randomCopy() {
  std::string text;
  const int n = *rc::gen::inRange(1, 28);
  for (int i = 0; i < n; ++i) text += (i ? " " : "") + *rc::gen::elementOf(kWords);
  return text;
}

TEST_CASE("a font that is not installed is said so, with advice") {
  const auto missing = TypeMeasure::make("No Such Lettering Face", "bold");
  REQUIRE(!missing);
  CHECK(missing.error().front().sentence.find("No Such Lettering Face") != std::string::npos);
  CHECK(!missing.error().front().advice.empty());
}

TEST_CASE("widths agree with cairo's own advances of the same font") {
  cairo_surface_t* surface = cairo_image_surface_create(CAIRO_FORMAT_A8, 8, 8);
  cairo_t* context = cairo_create(surface);
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_set_font_options(context, options);
  cairo_select_font_face(context, "Comic Neue", CAIRO_FONT_SLANT_NORMAL, CAIRO_FONT_WEIGHT_BOLD);
  cairo_set_font_size(context, 100);
  for (const char* text : {"HELLO", "DON'T TOUCH THE ROPE!", "SHE WROTE DOWN THE HOUR."}) {
    cairo_text_extents_t extents;
    cairo_text_extents(context, text, &extents);
    // That interface does not kern; kerning stays within three in a hundred.
    CHECK(type().widthEm(text) == doctest::Approx(extents.x_advance / 100).epsilon(0.03));
  }
  cairo_font_options_destroy(options);
  cairo_destroy(context);
  cairo_surface_destroy(surface);
}

TEST_CASE("the lettering font has every character that scripts bring") {
  for (const char* text : {"ABCDEFGHIJKLMNOPQRSTUVWXYZ 0123456789",
                           "“QUOTE” ‘IT’ … — – - ! ? ; :", "ÄÖÜ É È Ç Ñ Å Ø Æ", "(&) / % # * +"}) {
    CHECK(type().unknownGlyphs(text) == 0);
  }
  CHECK(type().unknownGlyphs("\xF4\x80\x80\x80") > 0);  // a private-use character has no glyph
}

TEST_CASE("copy is capitalised by Unicode's rules and keeps its stress") {
  const std::string stressed = lettered("It is *not* here, **Mara**.", true);
  CHECK(bareWords(stressed) == "IT IS NOT HERE, MARA.");
  CHECK(starred(stressed) == "IT IS *NOT* HERE, *MARA*.");
  CHECK(lettered("Straße, école", true) == "STRASSE, ÉCOLE");  // SpecialCasing.txt: ß → SS
  CHECK(lettered("  two\t words \r\n next ", false) == "two words\nnext");
  CHECK(lettered("2 * 3", true) == "2 * 3");
}

TEST_CASE("a square in a superellipse grows as the table says") {
  // Facts on lettering (computed): growth of the box for n = 2.2, 2.5, 3, 4; √2 for an ellipse.
  const std::vector<std::pair<double, double>> table{
      {2, std::sqrt(2.0)}, {2.2, 1.370}, {2.5, 1.320}, {3, 1.260}, {4, 1.189}};
  for (const auto& [n, growth] : table) {
    CHECK(halfWidthAt(0.5, growth / 2, growth / 2, n) == doctest::Approx(0.5).epsilon(0.002));
  }
}

TEST_CASE("a balloon's lines go short, long, short") {
  const Settings settings = settingsOf(
      "SOMETHING MOVED BEHIND THE ALTAR. SOMETHING BIG. GET THE LAMP AND STAY CLOSE TO ME.",
      CopyKind::Speech, 7.5, 80, {}, type());
  for (const Setting& s : settings) {
    if (s.lines.size() < 4 || s.lines.size() > 6) continue;
    const double longest = *std::max_element(s.lineWidths.begin(), s.lineWidths.end());
    CHECK(s.lineWidths.front() < longest);
    CHECK(s.lineWidths.back() < longest);
    CHECK(s.lineWidths[s.lines.size() / 2] > s.lineWidths.front());
  }
}

TEST_CASE("no line ends a balloon with a lone short word when it can be helped") {
  const Settings settings = settingsOf("WE WILL ALL GO DOWN WITH IT IF YOU ARE NOT QUICK, SIR",
                                       CopyKind::Speech, 7.5, 80, {}, type());
  const auto best =
      std::min_element(settings.begin(), settings.end(),
                       [](const Setting& a, const Setting& b) { return a.cost < b.cost; });
  CHECK(best->lines.back() != "SIR");
}

double leastDistance(const Polygon& outline, const Setting& s) {
  double least = 1e300;
  for (std::size_t i = 0; i < s.lines.size(); ++i) {
    const double bottom = s.baselineAt(i), top = bottom - s.capHeight, half = s.lineWidths[i] / 2;
    for (const Point p : {Point{-half, top}, {half, top}, {half, bottom}, {-half, bottom}}) {
      least = std::min(least, contains(outline, p) ? distanceToOutline(outline, p) : -1);
    }
  }
  return least;
}

TEST_CASE("every outline holds every line with air around it") {
  const LetterStyle style;
  CHECK(rc::check("lines inside", [&] {
    const CopyKind kind =
        *rc::gen::elementOf(std::vector<CopyKind>(std::begin(kRounded), std::end(kRounded)));
    const double size = *rc::gen::inRange(60, 91) / 10.0;
    for (const Setting& s : settingsOf(randomCopy(), kind, size, 60, style, type())) {
      const double padding = style.paddingMm * size / style.sizePt;
      RC_ASSERT(leastDistance(outlineOf(s.shape, {}), s) > 0.5 * padding);
    }
  }));
}

TEST_CASE("the strips of a shape contain its outline") {
  CHECK(rc::check("strips contain", [] {
    const CopyKind kind =
        *rc::gen::elementOf(std::vector<CopyKind>(std::begin(kRounded), std::end(kRounded)));
    for (const Setting& s : settingsOf(randomCopy(), kind, 7.5, 60, {}, type())) {
      for (const Point& p : outlineOf(s.shape, {}).points) {
        RC_ASSERT(std::any_of(s.strips.begin(), s.strips.end(),
                              [&](const Rect& r) { return r.outset(1e-9).contains(p); }));
      }
    }
  }));
}

TEST_CASE("no setting loses a word") {
  CHECK(rc::check("same words", [] {
    const std::string text = randomCopy();
    for (const Setting& s : settingsOf(text, CopyKind::Speech, 7.5, 60, {}, type())) {
      std::string joined;
      for (const std::string& line : s.lines) joined += (joined.empty() ? "" : " ") + line;
      RC_ASSERT(joined == text);
    }
  }));
}

TEST_CASE("a word wider than the panel is broken with a hyphen") {
  const Settings settings = settingsOf("UNBELIEVABLENESS!", CopyKind::Speech, 7.5, 24, {}, type());
  REQUIRE(!settings.empty());
  CHECK(settings.front().lines.size() > 1);
  CHECK(settings.front().lines.front().back() == '-');
  CHECK(2 * settings.front().shape.halfWidth() <= 24);
}

TEST_CASE("a new paragraph begins a new line") {
  const Settings settings =
      settingsOf("STOP.\nLISTEN TO THE WATER.", CopyKind::Caption, 7.5, 80, {}, type());
  for (const Setting& s : settings) CHECK(s.lines.front() == "STOP.");
}

TEST_CASE("absurdly much copy is still set, every word of it") {
  std::string text, word(3000, 'W');
  for (int i = 0; i < 5000; ++i) text += i ? " BELL" : "BELL";
  const Settings many = settingsOf(text, CopyKind::Speech, 7.5, 60, {}, type());
  REQUIRE(!many.empty());
  std::size_t letters = 0;
  for (const std::string& line : many.front().lines) letters += line.size() + 1;
  CHECK(letters == text.size() + 1);
  CHECK(!settingsOf(word, CopyKind::Speech, 7.5, 60, {}, type()).empty());
}

TEST_CASE("copy without letters still gets a shape") {
  const Settings settings = settingsOf("", CopyKind::Speech, 7.5, 50, {}, type());
  REQUIRE(settings.size() == 1);
  CHECK(settings.front().shape.a > 0);
}

TEST_CASE("the most words for a panel follow the trade's table") {
  // Trade guides (production facts on lettering).
  const std::vector<std::pair<int, int>> table{{1, 210}, {2, 105}, {3, 70}, {4, 52},
                                               {5, 42},  {6, 35},  {7, 30}, {8, 26},
                                               {9, 23},  {12, 17}, {16, 13}};
  for (const auto& [panels, words] : table) CHECK(mostWordsPerPanel(panels) == words);
  CHECK(mostWordsPerPanel(10) == 17);
  CHECK(mostWordsPerPanel(30) == 7);
}

TEST_CASE("too many words are found per balloon and per panel") {
  CopyItem item;
  item.id = "p1-1-c1";
  item.words = 30;
  const std::vector<CopyFinding> findings = wordFindings({item, item}, 6);
  REQUIRE(findings.size() == 3);
  CHECK(findings[0].rule == "words per balloon");
  CHECK(findings[0].amount == doctest::Approx(0.2));
  CHECK(findings[2].rule == "words per panel");
  CHECK(findings[2].amount == doctest::Approx(60.0 / 35 - 1));
  item.words = 25;
  CHECK(wordFindings({item}, 6).empty());
}

}  // namespace
}  // namespace tw
