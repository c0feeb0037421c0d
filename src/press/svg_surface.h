// Answers the drawing surface in SVG 1.1 with its plainest part only: g, path, clipPath, title.
// Type is written as outlines, so that the picture looks the same without the font.
#pragma once

#include <string>

#include "press/surface.h"
#include "press/typesetter.h"

namespace tw {

class SvgSurface final : public Surface {
 public:
  /// A picture of that part of the sheet, at its size in mm.
  SvgSurface(const Typesetter& typesetter, const Rect& view, const std::string& title);

  void fill(const Path& path, Ink ink, FillRule rule) override;
  void line(const Path& path, const Pen& pen) override;
  void clip(const Path& path, FillRule rule) override;
  void unclip() override;
  void type(const TypeLine& line) override;
  void place(const Sketch& sketch, double scale, Point at) override;
  void openGroup(const std::string& id, const std::string& title, bool shown) override;
  void closeGroup() override;

  /// The whole file. The surface takes no more drawing after that.
  std::string finished() &&;

 private:
  void outline(const Path& path, FillRule rule, const std::string& paint);

  const Typesetter& typesetter_;
  std::string text_;
  int clips_ = 0;
};

}  // namespace tw
