// Draws on another surface in other inks, each changed by one rule.
#pragma once

#include "press/passing_surface.h"

namespace tw {

class ReinkedSurface : public PassingSurface {
 public:
  void fill(const Path& path, Ink ink, FillRule rule) final { under().fill(path, of(ink), rule); }
  void line(const Path& path, const Pen& pen) final {
    Pen own = pen;
    own.ink = of(pen.ink);
    under().line(path, own);
  }
  void type(const TypeLine& line) final {
    TypeLine own = line;
    own.ink = of(line.ink);
    under().type(own);
  }

 protected:
  explicit ReinkedSurface(Surface& under) : PassingSurface(under) {}
  virtual Ink of(Ink ink) const = 0;
};

}  // namespace tw
