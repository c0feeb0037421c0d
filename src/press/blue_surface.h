// Draws on another surface in non-photo blue alone: black becomes the full blue, greys paler ones.
// For a rough that is pencilled over and must vanish in the scan.
#pragma once

#include "base/result.h"
#include "press/grid_art.h"
#include "press/surface.h"

namespace tw {

class BlueSurface final : public Surface {
 public:
  explicit BlueSurface(Surface& under) : under_(under) {}

  void fill(const Path& path, Ink ink, FillRule rule) override {
    under_.fill(path, blue(ink), rule);
  }
  void line(const Path& path, const Pen& pen) override {
    Pen own = pen;
    own.ink = blue(pen.ink);
    under_.line(path, own);
  }
  void clip(const Path& path, FillRule rule) override { under_.clip(path, rule); }
  void unclip() override { under_.unclip(); }
  void type(const TypeLine& line) override {
    TypeLine own = line;
    own.ink = blue(line.ink);
    under_.type(own);
  }
  /// Sketches that are stored once and placed often cannot be blue here and black there.
  void place(const Sketch&, double, Point) override {
    ensure(false, "blue surface: draw the sketch itself");
  }
  void openGroup(const std::string& id, const std::string& title, bool shown) override {
    under_.openGroup(id, title, shown);
  }
  void closeGroup() override { under_.closeGroup(); }

 private:
  static Ink blue(Ink ink) {
    const double paper = 0.30 * ink.red + 0.59 * ink.green + 0.11 * ink.blue;
    const auto one = [paper](double full) { return full + paper * (1 - full); };
    return {one(kNonPhotoBlue.red), one(kNonPhotoBlue.green), one(kNonPhotoBlue.blue)};
  }

  Surface& under_;
};

}  // namespace tw
