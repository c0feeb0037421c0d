// Draws on another surface in other inks, each changed by one rule.
#pragma once

#include "base/result.h"
#include "press/surface.h"

namespace tw {

class ReinkedSurface : public Surface {
 public:
  void fill(const Path& path, Ink ink, FillRule rule) final { under_.fill(path, of(ink), rule); }
  void line(const Path& path, const Pen& pen) final {
    Pen own = pen;
    own.ink = of(pen.ink);
    under_.line(path, own);
  }
  void clip(const Path& path, FillRule rule) final { under_.clip(path, rule); }
  void unclip() final { under_.unclip(); }
  void type(const TypeLine& line) final {
    TypeLine own = line;
    own.ink = of(line.ink);
    under_.type(own);
  }
  /// Sketches that are stored once and placed often cannot have other inks here than there.
  void place(const Sketch&, double, Point) final {
    ensure(false, "reinked surface: draw the sketch itself");
  }
  void openGroup(const std::string& id, const std::string& title, bool shown) final {
    under_.openGroup(id, title, shown);
  }
  void closeGroup() final { under_.closeGroup(); }

 protected:
  explicit ReinkedSurface(Surface& under) : under_(under) {}
  virtual Ink of(Ink ink) const = 0;

 private:
  Surface& under_;
};

}  // namespace tw
