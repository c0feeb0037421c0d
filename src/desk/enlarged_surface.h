// Draws marks that are made for a printed page larger on another surface, each where it stands, so
// that they can be read on a page that the window shows small. Lines grow thicker, type and small
// shapes grow about their middles; what is large keeps its shape.
#pragma once

#include "base/result.h"
#include "press/surface.h"

namespace tw {

class EnlargedSurface final : public Surface {
 public:
  /// `factor` ≥ 1.
  EnlargedSurface(Surface& under, double factor) : under_(under), factor_(factor) {}

  void fill(const Path& path, Ink ink, FillRule rule) override;
  void line(const Path& path, const Pen& pen) override;
  void clip(const Path& path, FillRule rule) override { under_.clip(path, rule); }
  void unclip() override { under_.unclip(); }
  void type(const TypeLine& line) override;
  void place(const Sketch&, double, Point) override {
    ensure(false, "enlarged surface: draw the sketch itself");
  }
  void openGroup(const std::string& id, const std::string& title, bool shown) override {
    under_.openGroup(id, title, shown);
  }
  void closeGroup() override { under_.closeGroup(); }

 private:
  Path grown(const Path& path) const;

  Surface& under_;
  double factor_;
};

}  // namespace tw
