#include "press/pdf_surface.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>

namespace tw {

namespace {

void appendStep(std::string& out, double mm) {
  char digits[24];
  const auto end = std::to_chars(digits, digits + sizeof digits, std::lround(mm * kPdfStepsPerMm));
  out.append(digits, end.ptr);
  out += ' ';
}

void appendPoint(std::string& out, Point p) {
  appendStep(out, p.x);
  appendStep(out, p.y);
}

void appendPath(std::string& out, const Path& path) {
  const Point* p = path.points().data();
  for (const Path::Step step : path.steps()) switch (step) {
      case Path::Step::Move:
        appendPoint(out, *p++);
        out += "m\n";
        break;
      case Path::Step::Line:
        appendPoint(out, *p++);
        out += "l\n";
        break;
      case Path::Step::Curve:
        for (int i = 0; i < 3; ++i) appendPoint(out, *p++);
        out += "c\n";
        break;
      case Path::Step::Close:
        out += "h\n";
        break;
    }
}

/// Greys in DeviceGray, so that they print with black alone.
std::string inkOperator(Ink ink, bool lines) {
  if (ink.isGrey()) return pdfNumber(ink.red) + (lines ? " G\n" : " g\n");
  return fmt::format("{} {} {} {}\n", pdfNumber(ink.red), pdfNumber(ink.green), pdfNumber(ink.blue),
                     lines ? "RG" : "rg");
}

}  // namespace

std::string pdfNumber(double value) {
  std::string out = fmt::format("{:.4f}", value);
  while (out.back() == '0') out.pop_back();
  if (out.back() == '.') out.pop_back();
  return out == "-0" ? "0" : out;
}

void PdfSurface::fill(const Path& path, Ink ink, FillRule rule) {
  if (path.isEmpty()) return;
  content_ += inkOperator(ink, false);
  appendPath(content_, path);
  content_ += rule == FillRule::EvenOdd ? "f*\n" : "f\n";
}

void PdfSurface::line(const Path& path, const Pen& pen) {
  if (path.isEmpty()) return;
  content_ += inkOperator(pen.ink, true);
  appendStep(content_, pen.width);
  content_ += pen.round ? "w 1 J 1 j [" : "w 0 J 0 j [";
  for (const double dash : pen.dashes) appendStep(content_, dash);
  content_ += "] 0 d\n";
  appendPath(content_, path);
  content_ += "S\n";
}

void PdfSurface::clip(const Path& path, FillRule rule) {
  content_ += "q\n";
  // An empty clip hides everything; a rectangle of no size says so in PDF.
  if (path.isEmpty()) content_ += "0 0 0 0 re\n";
  appendPath(content_, path);
  content_ += rule == FillRule::EvenOdd ? "W* n\n" : "W n\n";
}

void PdfSurface::unclip() {
  content_ += "Q\n";
}

void PdfSurface::type(const TypeLine& line) {
  lines_.push_back(line);
}

void PdfSurface::place(const Sketch& sketch, double scale, Point at) {
  const int number = numberOf_(sketch);
  if (std::find(sketches_.begin(), sketches_.end(), number) == sketches_.end())
    sketches_.push_back(number);
  // A stored sketch counts points up from the lower left corner of its bounds.
  const Rect bounds = sketch.bounds();
  const double step = scale * kPdfStepsPerMm * kMmPerPt;
  content_ += fmt::format("q {:.6f} 0 0 {:.6f} {} {} cm /S{} Do Q\n", step, -step,
                          pdfNumber((at.x + scale * bounds.min.x) * kPdfStepsPerMm),
                          pdfNumber((at.y + scale * bounds.max.y) * kPdfStepsPerMm), number);
}

void PdfSurface::openGroup(const std::string&, const std::string&, bool) {}
void PdfSurface::closeGroup() {}

}  // namespace tw
