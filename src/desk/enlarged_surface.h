// Draws marks that are made for a printed page larger on another surface, each where it stands, so
// that they can be read on a page that the window shows small. Lines grow thicker, type and small
// shapes grow about their middles; what is large keeps its shape.
#pragma once

#include "press/passing_surface.h"

namespace tw {

class EnlargedSurface final : public PassingSurface {
 public:
  /// `factor` ≥ 1.
  EnlargedSurface(Surface& under, double factor) : PassingSurface(under), factor_(factor) {}

  void fill(const Path& path, Ink ink, FillRule rule) override;
  void line(const Path& path, const Pen& pen) override;
  void type(const TypeLine& line) override;

 private:
  Path grown(const Path& path) const;

  double factor_;
};

}  // namespace tw
