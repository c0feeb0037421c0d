// Answers press's drawing surface on a QPainter, so that the window shows the very art that is
// printed. The painter's user space must be mm of what is drawn.
#pragma once

#include "press/surface.h"
#include "press/typesetter.h"

class QPainter;
class QPainterPath;
class QColor;

namespace tw {

QPainterPath painterPath(const Path& path, FillRule rule = FillRule::NonZero);
QColor colourOf(Ink ink);

class PainterSurface final : public Surface {
 public:
  /// Both must outlive the surface.
  PainterSurface(QPainter& painter, const Typesetter& typesetter);

  void fill(const Path& path, Ink ink, FillRule rule) override;
  void line(const Path& path, const Pen& pen) override;
  void clip(const Path& path, FillRule rule) override;
  void unclip() override;
  void type(const TypeLine& line) override;
  void place(const Sketch& sketch, double scale, Point at) override;
  void openGroup(const std::string&, const std::string&, bool) override {}
  void closeGroup() override {}

 private:
  QPainter& painter_;
  const Typesetter& typesetter_;
};

}  // namespace tw
