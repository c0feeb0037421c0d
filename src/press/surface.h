// The one drawing surface behind every sheet that leaves the program. Whoever draws a page speaks
// only this language: filled paths, drawn lines, clips, lines of type, named groups. PDF, SVG and
// PNG each answer it once. All lengths in mm from the sheet's own origin, y down.
#pragma once

#include <string>
#include <vector>

#include "geometry/shapes.h"

namespace tw {

/// A flat colour. Greys stay greys in every file, so that page art prints with black alone.
struct Ink {
  double red = 0, green = 0, blue = 0;
  bool isGrey() const { return red == green && green == blue; }
  bool operator==(const Ink&) const = default;
};

inline constexpr Ink kBlack{0, 0, 0};
inline constexpr Ink kPaper{1, 1, 1};

/// 0 paper … 1 black.
inline Ink greyOf(double darkness) {
  return {1 - darkness, 1 - darkness, 1 - darkness};
}

/// Straight and curved pieces; `points` holds 1, 1, 3 or 0 points for each step.
class Path {
 public:
  enum class Step : unsigned char { Move, Line, Curve, Close };

  Path() = default;
  explicit Path(const Region& region);
  explicit Path(const Polygon& polygon);
  explicit Path(const Rect& rect);

  void moveTo(Point p);
  void lineTo(Point p);
  void curveTo(Point a, Point b, Point p);
  void close();
  /// Appends a closed outline, or an open line.
  void add(const std::vector<Point>& points, bool closed);
  void add(const Path& other);

  bool isEmpty() const { return steps_.empty(); }
  const std::vector<Step>& steps() const { return steps_; }
  const std::vector<Point>& points() const { return points_; }

 private:
  std::vector<Step> steps_;
  std::vector<Point> points_;
};

enum class FillRule { EvenOdd, NonZero };

struct Pen {
  Ink ink = kBlack;
  double width = 0.35;           ///< mm
  std::vector<double> dashes{};  ///< mm on, mm off, …; empty draws through
  bool round = false;            ///< round caps and joins, else butt caps and mitred joins
};

enum class Face { Regular, Italic, Bold, BoldItalic };
enum class Align { Left, Centre, Right };

/// One line of type on a baseline.
struct TypeLine {
  std::string text;  ///< UTF-8, no line breaks
  Face face = Face::Regular;
  double sizePt = 7.5;
  Point at{};  ///< left end, middle or right end of the baseline
  Align align = Align::Left;
  Ink ink = kBlack;
  double turnDeg = 0;  ///< counter-clockwise about `turnAbout`
  Point turnAbout{};
};

class Surface;

/// Something drawn once and placed several times, such as a rough on its sheet and in miniature
/// among the others.
class Sketch {
 public:
  virtual ~Sketch() = default;
  /// Nothing of it shows outside.
  virtual Rect bounds() const = 0;
  /// `smallestMm`: detail finer than this will not be seen and may be left out.
  virtual void drawOn(Surface& surface, double smallestMm) const = 0;
};

class Surface {
 public:
  virtual ~Surface() = default;

  virtual void fill(const Path& path, Ink ink, FillRule rule) = 0;
  virtual void line(const Path& path, const Pen& pen) = 0;
  /// Until the matching unclip(), nothing shows outside.
  virtual void clip(const Path& path, FillRule rule) = 0;
  virtual void unclip() = 0;
  /// PDF sets the type of a layer above all its shapes, so draw in that order.
  virtual void type(const TypeLine& line) = 0;
  /// Draws the sketch so that its point p comes to stand at at + p · scale.
  virtual void place(const Sketch& sketch, double scale, Point at) = 0;
  /// A named part of the picture, where the file can hold names.
  virtual void openGroup(const std::string& id, const std::string& title, bool shown) = 0;
  virtual void closeGroup() = 0;
};

/// Finest detail worth keeping at print size: half a dot of a 600 dpi printer.
inline constexpr double kFinestMm = 0.02;
inline constexpr double kMmPerPt = 25.4 / 72;

}  // namespace tw
