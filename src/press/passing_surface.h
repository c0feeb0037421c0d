// Draws on another surface what it is asked to draw; whoever derives from it changes some of that
// on the way.
#pragma once

#include "base/result.h"
#include "press/surface.h"

namespace tw {

class PassingSurface : public Surface {
 public:
  void fill(const Path& path, Ink ink, FillRule rule) override { under_.fill(path, ink, rule); }
  void line(const Path& path, const Pen& pen) override { under_.line(path, pen); }
  void clip(const Path& path, FillRule rule) override { under_.clip(path, rule); }
  void unclip() override { under_.unclip(); }
  void type(const TypeLine& line) override { under_.type(line); }
  /// Sketches that are stored once and placed often cannot be changed here and not there.
  void place(const Sketch&, double, Point) override {
    ensure(false, "a surface that changes what passes: draw the sketch itself");
  }
  void openGroup(const std::string& id, const std::string& title, bool shown) override {
    under_.openGroup(id, title, shown);
  }
  void closeGroup() override { under_.closeGroup(); }

 protected:
  explicit PassingSurface(Surface& under) : under_(under) {}
  Surface& under() { return under_; }

 private:
  Surface& under_;
};

}  // namespace tw
