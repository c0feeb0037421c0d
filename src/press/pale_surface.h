// Draws on another surface in paler inks, so that what is laid over the drawing is seen first.
#pragma once

#include "base/result.h"
#include "press/surface.h"

namespace tw {

class PaleSurface final : public Surface {
 public:
  /// `strength` 1 leaves inks as they are, 0 makes all paper.
  PaleSurface(Surface& under, double strength) : under_(under), strength_(strength) {}

  void fill(const Path& path, Ink ink, FillRule rule) override {
    under_.fill(path, pale(ink), rule);
  }
  void line(const Path& path, const Pen& pen) override {
    Pen own = pen;
    own.ink = pale(pen.ink);
    under_.line(path, own);
  }
  void clip(const Path& path, FillRule rule) override { under_.clip(path, rule); }
  void unclip() override { under_.unclip(); }
  void type(const TypeLine& line) override {
    TypeLine own = line;
    own.ink = pale(line.ink);
    under_.type(own);
  }
  /// Sketches that are stored once and placed often cannot be pale here and dark there.
  void place(const Sketch&, double, Point) override {
    ensure(false, "pale surface: draw the sketch itself");
  }
  void openGroup(const std::string& id, const std::string& title, bool shown) override {
    under_.openGroup(id, title, shown);
  }
  void closeGroup() override { under_.closeGroup(); }

 private:
  Ink pale(Ink ink) const {
    const auto one = [this](double v) { return 1 - strength_ * (1 - v); };
    return {one(ink.red), one(ink.green), one(ink.blue)};
  }

  Surface& under_;
  double strength_;
};

}  // namespace tw
