// Judges from outside: poppler (pdfinfo, pdffonts, pdftotext, pdftoppm), qpdf, Ghostscript, and
// cairo's PNG reader. Check values for the US sheet: 6.625 × 10.25 in trim, an eighth of an inch
// of bleed, at 72 pt to the inch: 477 × 738 and 495 × 756 pt.
#include "press/proof.h"

#include <cairo.h>
#include <doctest/doctest.h>
#include <sys/wait.h>

#include <array>
#include <cstdio>
#include <memory>
#include <sstream>

#include "base/files.h"
#include "base/parallel.h"
#include "base/scratch_folder.h"
#include "press/example_rough.h"
#include "press/png_surface.h"

using namespace tw;
namespace fs = std::filesystem;

namespace {

constexpr Overlays kAll{true, true, true, true};

struct Answer {
  int code = 0;
  std::string text;  ///< both streams
};

Answer ask(const std::string& command) {
  FILE* pipe = popen((command + " 2>&1").c_str(), "r");
  REQUIRE(pipe != nullptr);
  Answer answer;
  std::array<char, 4096> buffer{};
  while (const std::size_t n = fread(buffer.data(), 1, buffer.size(), pipe))
    answer.text.append(buffer.data(), n);
  const int status = pclose(pipe);
  answer.code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  return answer;
}

std::string quoted(const fs::path& file) {
  return "'" + file.string() + "'";
}

/// Runs of white space become one space, so that columns can be compared.
std::string squeezed(const std::string& text) {
  std::string out;
  for (const char c : text)
    if (c != ' ' || out.empty() || out.back() != ' ') out += c;
  return out;
}

bool says(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

std::string bytesOf(const fs::path& file) {
  const Result<std::string> bytes = readFile(file, 64u << 20);
  REQUIRE(bytes);
  return *bytes;
}

std::vector<RoughPicture> threeRoughs() {
  return {example::rough(0, "A"), example::rough(1, "B"), example::rough(2, "C")};
}

struct Picture {
  int width = 0, height = 0;
  std::vector<unsigned char> grey;
  int at(int x, int y) const { return grey[static_cast<std::size_t>(y * width + x)]; }
};

Picture greyPicture(const fs::path& png) {
  cairo_surface_t* surface = cairo_image_surface_create_from_png(png.c_str());
  REQUIRE(cairo_surface_status(surface) == CAIRO_STATUS_SUCCESS);
  Picture picture{
      cairo_image_surface_get_width(surface), cairo_image_surface_get_height(surface), {}};
  const unsigned char* row = cairo_image_surface_get_data(surface);
  for (int y = 0; y < picture.height; ++y, row += cairo_image_surface_get_stride(surface))
    for (int x = 0; x < picture.width; ++x)
      picture.grey.push_back(
          static_cast<unsigned char>((row[4 * x] + row[4 * x + 1] + row[4 * x + 2]) / 3));
  cairo_surface_destroy(surface);
  return picture;
}

double meanDifference(const Picture& a, const Picture& b) {
  double sum = 0;
  for (std::size_t i = 0; i < a.grey.size(); ++i) sum += std::abs(a.grey[i] - b.grey[i]);
  return sum / static_cast<double>(a.grey.size());
}

/// The document with its streams and object streams opened, for looking at keys.
std::string opened(const fs::path& pdf) {
  return squeezed(
      ask("qpdf --qdf --object-streams=disable " + quoted(pdf) + " - | tr '\\n' ' '").text);
}

std::string inside(const std::string& text, const std::string& from, const std::string& to) {
  const std::size_t start = text.find(from);
  if (start == std::string::npos) return "";
  const std::size_t end = text.find(to, start);
  return text.substr(start + from.size(), end - start - from.size());
}

long count(const std::string& text, const std::string& part) {
  long n = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
  return n;
}

}  // namespace

TEST_CASE("pdfinfo reads back the exact boxes of the US sheet, on every page") {
  const ScratchFolder scratch;
  REQUIRE(writePdf(scratch / "r.pdf", threeRoughs(), {}));
  const std::string boxes = squeezed(ask("pdfinfo -box -l 3 " + quoted(scratch / "r.pdf")).text);
  for (const std::string page : {"1", "2", "3"}) {
    CHECK(says(boxes, "Page " + page + " MediaBox: 0.00 0.00 531.00 792.00"));
    CHECK(says(boxes, "Page " + page + " BleedBox: 18.00 18.00 513.00 774.00"));
    CHECK(says(boxes, "Page " + page + " TrimBox: 27.00 27.00 504.00 765.00"));
  }
  CHECK(says(opened(scratch / "r.pdf"), "/TrimBox [ 27 27 504 765 ]"));
}

TEST_CASE("lengths that are no whole points keep four decimals") {
  const ScratchFolder scratch;
  RoughPicture album = example::rough(0, "A");
  album.sheet.trimWidth = 240;
  album.sheet.trimHeight = 320;
  album.sheet.bleed = 3;
  REQUIRE(writePdf(scratch / "r.pdf", {album}, {}));
  // 240 mm = 680.3150 pt, 3 mm = 8.5039 pt, the slug 18 pt.
  CHECK(says(opened(scratch / "r.pdf"), "/TrimBox [ 26.5039 26.5039 706.8189 933.5906 ]"));
}

TEST_CASE("the score card grows the sheet to the side and moves no box") {
  const ScratchFolder scratch;
  REQUIRE(writePdf(scratch / "r.pdf", threeRoughs(), kAll));
  const std::string boxes = squeezed(ask("pdfinfo -box " + quoted(scratch / "r.pdf")).text);
  CHECK(says(boxes, "TrimBox: 27.00 27.00 504.00 765.00"));
  CHECK(says(boxes, "Page size: 752.102 x 792 pts"));
}

TEST_CASE("a whole proof passes qpdf and Ghostscript without a word, all fonts embedded") {
  const ScratchFolder scratch;
  REQUIRE(writeProof(scratch / "p.pdf", {threeRoughs(), threeRoughs()}));
  const std::string file = quoted(scratch / "p.pdf");
  CHECK(ask("qpdf --check " + file).code == 0);
  const Answer gs = ask("gs -q -dPDFSTOPONERROR -o /dev/null -sDEVICE=nullpage " + file);
  CHECK(gs.code == 0);
  CHECK(gs.text == "");
  CHECK(says(squeezed(ask("pdfinfo " + file).text), "Pages: 8"));
  std::istringstream fonts(squeezed(ask("pdffonts " + file).text));
  std::string line;
  int fontLines = 0;
  while (std::getline(fonts, line)) {
    if (line.rfind("name", 0) == 0 || line.rfind("---", 0) == 0) continue;
    ++fontLines;
    CHECK_MESSAGE(says(line, " yes yes yes "), line);
  }
  CHECK(fontLines >= 2);
}

TEST_CASE("overlays are layers of the file, shown or hidden as asked when it opens") {
  const ScratchFolder scratch;
  REQUIRE(writePdf(scratch / "r.pdf", threeRoughs(),
                   {.order = true, .leads = false, .live = true, .card = true}));
  const std::string file = opened(scratch / "r.pdf");
  for (const char* name :
       {"Panel order", "Perspective grid", "Leads", "Trim and live area", "Score card"})
    CHECK(count(file, "/Name (" + std::string(name) + ")") == 1);
  CHECK(count(inside(file, "/ON [", "]"), " 0 R") == 3);
  CHECK(count(inside(file, "/OFF [", "]"), " 0 R") == 2);
  CHECK(count(file, "/OC /L") == 3 * 5);
}

TEST_CASE("with every overlay off the page is the bare rough, in black ink alone") {
  const ScratchFolder scratch;
  REQUIRE(writePdf(scratch / "off.pdf", threeRoughs(), {}));
  REQUIRE(writePdf(scratch / "on.pdf", threeRoughs(), kAll));
  const auto ink = [](const fs::path& file) {
    return squeezed(ask("gs -q -o - -sDEVICE=inkcov " + quoted(file)).text);
  };
  CHECK(count(ink(scratch / "off.pdf"), "0.00000 0.00000 0.00000 ") == 3);
  CHECK(count(ink(scratch / "on.pdf"), "0.00000 0.00000 0.00000 ") == 0);
  // The card's words are private and must not travel along unseen.
  CHECK_FALSE(says(ask("pdftotext " + quoted(scratch / "off.pdf") + " -").text, "head size"));
}

TEST_CASE("copy and card can be read back as text") {
  const ScratchFolder scratch;
  REQUIRE(writePdf(scratch / "r.pdf", threeRoughs(), kAll));
  const std::string text = ask("pdftotext -layout " + quoted(scratch / "r.pdf") + " -").text;
  for (const char* words : {"YOU HEAR", "THE TIDE KEEPS ITS", "head size", "Take panel 3 closer",
                            "The Bell Below · page 3 · rough A"})
    CHECK_MESSAGE(says(text, words), words);
}

TEST_CASE("the same roughs give the same bytes, whoever holds them") {
  const ScratchFolder scratch;
  const std::vector<RoughPicture> once = threeRoughs(), again = threeRoughs();
  REQUIRE(writeProof(scratch / "1.pdf", {once}));
  REQUIRE(writeProof(scratch / "2.pdf", {again}));
  CHECK(bytesOf(scratch / "1.pdf") == bytesOf(scratch / "2.pdf"));
  REQUIRE(writeSvg(scratch / "1.svg", once[1], kAll));
  REQUIRE(writeSvg(scratch / "2.svg", again[1], kAll));
  CHECK(bytesOf(scratch / "1.svg") == bytesOf(scratch / "2.svg"));
  REQUIRE(writePng(scratch / "1.png", once[1], kAll, 60));
  REQUIRE(writePng(scratch / "2.png", again[1], kAll, 60));
  CHECK(bytesOf(scratch / "1.png") == bytesOf(scratch / "2.png"));
}

TEST_CASE("files written side by side by several threads are the same as one by one") {
  const ScratchFolder scratch;
  const std::vector<RoughPicture> roughs = threeRoughs();
  const auto write = [&](std::size_t i) {
    const std::string stem = (scratch / std::to_string(i).c_str()).string();
    if (!writeProof(stem + ".pdf", {roughs})) std::abort();
    if (!writeSvg(stem + ".svg", roughs[i % 3], kAll)) std::abort();
  };
  write(0);
  parallelFor(6, 4, [&](std::size_t i) { write(i + 3); });
  const std::string alone = bytesOf(scratch / "0.pdf");
  for (const char* name : {"3.pdf", "4.pdf", "5.pdf", "6.pdf", "7.pdf", "8.pdf"})
    CHECK(bytesOf(scratch / name) == alone);
  CHECK(bytesOf(scratch / "3.svg") == bytesOf(scratch / "0.svg"));
}

TEST_CASE("poppler's picture of the PDF and our PNG are the same picture") {
  const ScratchFolder scratch;
  REQUIRE(writePng(scratch / "other.png", example::rough(1, "B"), kAll, 72));
  for (const int kind : {0, 2}) {
    const RoughPicture rough = example::rough(kind, "A");
    REQUIRE(writePdf(scratch / "r.pdf", {rough}, kAll));
    REQUIRE(writePng(scratch / "ours.png", rough, kAll, 72));
    const fs::path theirs = scratch / "theirs";
    CHECK(ask("pdftoppm -r 72 -png -singlefile " + quoted(scratch / "r.pdf") + " " + quoted(theirs))
              .text == "");
    const Picture a = greyPicture(scratch / "ours.png"), b = greyPicture(scratch / "theirs.png");
    REQUIRE(a.width == b.width);
    REQUIRE(a.height == b.height);
    // Of 255 levels: edges are softened differently; another rough is ten times as far.
    CHECK(meanDifference(a, b) < 4);
    CHECK(meanDifference(a, greyPicture(scratch / "other.png")) > 15);
  }
}

TEST_CASE("a PNG says its resolution: 600 dpi is 23622 pixels per metre") {
  const ScratchFolder scratch;
  REQUIRE(writePng(scratch / "r.png", example::rough(0, "A", 1), {}, 100));
  const std::string png = bytesOf(scratch / "r.png");
  CHECK(png.substr(37, 4) == "pHYs");
  CHECK(count(png, "pHYs") == 1);
  // 531 × 792 pt at 100 dpi is 737.5 × 1100 pixels; a part of a pixel is rounded up.
  const Picture picture = greyPicture(scratch / "r.png");
  CHECK(picture.width == 738);
  CHECK(picture.height == 1100);
  // PNG specification: pixels per metre, unit 1, CRC; the chunk every 72 dpi PNG carries.
  CHECK(withResolution(png, 72).substr(33, 21) ==
        std::string("\0\0\0\x09pHYs\0\0\x0B\x13\0\0\x0B\x13\x01\0\x9A\x9C\x18", 21));
  CHECK(withResolution(png, 600).substr(41, 4) == std::string("\0\0\x5C\x46", 4));
}

TEST_CASE("panels have a border inside their outline, but none where they bleed") {
  const ScratchFolder scratch;
  const RoughPicture rough = example::rough(2, "C", 0);
  REQUIRE(writePng(scratch / "r.png", rough, {}, 254));  // 10 pixels a mm
  const Picture picture = greyPicture(scratch / "r.png");
  const auto darkAt = [&](double x, double y) {
    const double origin = rough.sheet.bleed + 6.35;
    return picture.at(static_cast<int>((x + origin) * 10), static_cast<int>((y + origin) * 10)) <
           60;
  };
  CHECK(darkAt(114.25, 220));        // left border of the bled panel
  CHECK_FALSE(darkAt(113.9, 220));   // the gutter keeps its width
  CHECK_FALSE(darkAt(114.75, 220));  // and the border its weight
  CHECK(darkAt(140, 174.25));
  CHECK_FALSE(darkAt(171.2, 220));  // right side: bled
  CHECK_FALSE(darkAt(140, 263.3));  // bottom: bled
}

TEST_CASE("a PDF or picture without roughs, and a strange file name, are bad input") {
  const ScratchFolder scratch;
  CHECK_FALSE(writePdf(scratch / "r.pdf", {}, {}));
  CHECK_FALSE(writeProof(scratch / "r.pdf", {{}, {}}));
  CHECK_FALSE(writeContactSheet(scratch / "r.pdf", {}));
  const Result<void> strange = writeContactSheet(scratch / "r.tiff", threeRoughs());
  REQUIRE_FALSE(strange);
  CHECK(strange.error().front().cause == Cause::BadInput);
  CHECK_FALSE(fs::exists(scratch / "r.tiff"));
}

TEST_CASE("a contact sheet comes as PDF, SVG and PNG of one A4 sheet") {
  const ScratchFolder scratch;
  for (const char* name : {"c.pdf", "c.svg", "c.png"})
    REQUIRE(writeContactSheet(scratch / name, threeRoughs()));
  CHECK(says(squeezed(ask("pdfinfo " + quoted(scratch / "c.pdf")).text), "(A4)"));
  CHECK(says(bytesOf(scratch / "c.svg"), "width=\"297mm\" height=\"210mm\""));
  CHECK(greyPicture(scratch / "c.png").width == 2339);  // 297 mm at 200 dpi
}
