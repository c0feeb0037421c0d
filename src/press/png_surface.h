// Answers the drawing surface in pixels, and writes them as a PNG that knows its resolution.
#pragma once

#include <memory>
#include <string>

#include "base/result.h"
#include "press/surface.h"
#include "press/typesetter.h"

namespace tw {

class PngSurface final : public Surface {
 public:
  /// Whole pixels, rounded up; the top left corner of `view` is exact.
  PngSurface(const Typesetter& typesetter, const Rect& view, double dpi);
  ~PngSurface() override;

  void fill(const Path& path, Ink ink, FillRule rule) override;
  void line(const Path& path, const Pen& pen) override;
  void clip(const Path& path, FillRule rule) override;
  void unclip() override;
  void type(const TypeLine& line) override;
  void place(const Sketch& sketch, double scale, Point at) override;
  void openGroup(const std::string& id, const std::string& title, bool shown) override;
  void closeGroup() override;

  /// The file, with a pHYs chunk. Our fault when there is no memory for the pixels.
  Result<std::string> finished();

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

/// The PNG with its resolution said in pixels per metre (pHYs before the first IDAT; PNG
/// specification, 2nd edition, 11.3.5.3).
std::string withResolution(const std::string& png, double dpi);

}  // namespace tw
