#include "press/svg_surface.h"

#include <fmt/format.h>

#include <cmath>
#include <cstdlib>

namespace tw {

namespace {

constexpr double kStepsPerMm = 100;  // coordinates are written to 1/100 mm

struct GridPoint {
  long x = 0, y = 0;
};

GridPoint onGrid(Point p) {
  return {std::lround(p.x * kStepsPerMm), std::lround(p.y * kStepsPerMm)};
}

/// 1234 → "12.34", -50 → "-.5".
void appendMm(std::string& out, long hundredths, bool apart) {
  if (apart && hundredths >= 0) out += ' ';
  if (hundredths < 0) out += '-';
  const long whole = std::labs(hundredths) / 100, rest = std::labs(hundredths) % 100;
  if (whole != 0 || rest == 0) out += std::to_string(whole);
  if (rest == 0) return;
  out += '.';
  out += static_cast<char>('0' + rest / 10);
  if (rest % 10 != 0) out += static_cast<char>('0' + rest % 10);
}

/// Writes a path in relative steps on the grid; rounding never adds up along the line.
class PathData {
 public:
  explicit PathData(std::string& out) : out_(out) {}

  void write(const Path& path) {
    const Point* p = path.points().data();
    for (const Path::Step step : path.steps()) {
      if (step == Path::Step::Move) move(onGrid(*p++));
      if (step == Path::Step::Line) lineTo(onGrid(*p++));
      if (step == Path::Step::Curve) {
        curve(onGrid(p[0]), onGrid(p[1]), onGrid(p[2]));
        p += 3;
      }
      if (step == Path::Step::Close) close();
    }
  }

 private:
  void move(GridPoint p) {
    pending_ = true;
    here_ = start_ = p;
  }
  void pair(GridPoint p, bool apart) {
    appendMm(out_, p.x - here_.x, apart);
    appendMm(out_, p.y - here_.y, true);
  }
  /// A move is written only when something is drawn from there.
  void begin() {
    if (!pending_) return;
    out_ += 'M';
    appendMm(out_, here_.x, false);
    appendMm(out_, here_.y, true);
    pending_ = false;
    last_ = 'M';
  }
  void command(char c) {
    begin();
    apart_ = last_ == c;
    if (!apart_) out_ += c;
    last_ = c;
  }
  void lineTo(GridPoint p) {
    command('l');
    pair(p, apart_);
    here_ = p;
  }
  void curve(GridPoint a, GridPoint b, GridPoint p) {
    command('c');
    pair(a, apart_);
    pair(b, true);
    pair(p, true);
    here_ = p;
  }
  void close() {
    if (pending_) return;
    out_ += 'z';
    last_ = 'z';
    here_ = start_;
  }

  std::string& out_;
  GridPoint here_, start_;
  bool pending_ = false, apart_ = false;
  char last_ = ' ';
};

std::string number(double value) {
  std::string out = fmt::format("{:.3f}", value);
  while (out.back() == '0') out.pop_back();
  if (out.back() == '.') out.pop_back();
  return out;
}

std::string colour(Ink ink) {
  const auto byte = [](double v) { return static_cast<int>(std::lround(v * 255)); };
  return fmt::format("#{:02x}{:02x}{:02x}", byte(ink.red), byte(ink.green), byte(ink.blue));
}

std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == '&')
      out += "&amp;";
    else if (c == '<')
      out += "&lt;";
    else if (c == '>')
      out += "&gt;";
    else if (c == '"')
      out += "&quot;";
    else if (static_cast<unsigned char>(c) >= 0x20)
      out += c;  // controls are not XML
    else
      out += ' ';
  }
  return out;
}

std::string clipRule(FillRule rule) {
  return rule == FillRule::EvenOdd ? " clip-rule=\"evenodd\"" : "";
}

}  // namespace

SvgSurface::SvgSurface(const Typesetter& typesetter, const Rect& view, const std::string& title)
    : typesetter_(typesetter) {
  text_ = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
  text_ += fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"{0}mm\" "
      "height=\"{1}mm\" viewBox=\"{2} {3} {0} {1}\">\n<title>{4}</title>\n",
      number(view.width()), number(view.height()), number(view.min.x), number(view.min.y),
      escaped(title));
  fill(Path(view), kPaper, FillRule::NonZero);
}

void SvgSurface::outline(const Path& path, FillRule rule, const std::string& paint) {
  if (path.isEmpty()) return;
  text_ += "<path " + paint;
  if (rule == FillRule::EvenOdd) text_ += " fill-rule=\"evenodd\"";
  text_ += " d=\"";
  PathData(text_).write(path);
  text_ += "\"/>\n";
}

void SvgSurface::fill(const Path& path, Ink ink, FillRule rule) {
  outline(path, rule, fmt::format("fill=\"{}\"", colour(ink)));
}

void SvgSurface::line(const Path& path, const Pen& pen) {
  std::string paint = fmt::format("fill=\"none\" stroke=\"{}\" stroke-width=\"{}\"",
                                  colour(pen.ink), number(pen.width));
  if (pen.round) paint += " stroke-linecap=\"round\" stroke-linejoin=\"round\"";
  if (!pen.dashes.empty()) {
    paint += " stroke-dasharray=\"";
    for (const double dash : pen.dashes) paint += number(dash) + " ";
    paint.back() = '"';
  }
  outline(path, FillRule::NonZero, paint);
}

void SvgSurface::clip(const Path& path, FillRule rule) {
  const int name = ++clips_;
  text_ += fmt::format("<clipPath id=\"clip-{}\"><path{} d=\"", name, clipRule(rule));
  PathData(text_).write(path);
  text_ += fmt::format("\"/></clipPath>\n<g clip-path=\"url(#clip-{})\">\n", name);
}

void SvgSurface::unclip() {
  text_ += "</g>\n";
}

void SvgSurface::type(const TypeLine& line) {
  fill(typesetter_.outlines(line), line.ink, FillRule::NonZero);
}

void SvgSurface::place(const Sketch& sketch, double scale, Point at) {
  text_ += fmt::format("<g transform=\"translate({} {}) scale({})\">\n", number(at.x), number(at.y),
                       fmt::format("{:.6g}", scale));
  clip(Path(sketch.bounds()), FillRule::NonZero);
  sketch.drawOn(*this, kFinestMm / scale);
  unclip();
  text_ += "</g>\n";
}

void SvgSurface::openGroup(const std::string& id, const std::string& title, bool shown) {
  text_ += fmt::format("<g id=\"{}\"{}>\n<title>{}</title>\n", escaped(id),
                       shown ? "" : " display=\"none\"", escaped(title));
}

void SvgSurface::closeGroup() {
  text_ += "</g>\n";
}

std::string SvgSurface::finished() && {
  text_ += "</svg>\n";
  return std::move(text_);
}

}  // namespace tw
