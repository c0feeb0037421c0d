// Answers the drawing surface in pixels, and writes them as a PNG that knows its resolution.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "base/result.h"
#include "press/surface.h"
#include "press/typesetter.h"

namespace tw {

/// A picture in plain colour, 0xRRGGBB a pixel, row by row.
struct PixelPicture {
  int width = 0, height = 0;
  std::vector<std::uint32_t> colour;
};

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

  /// Lays a picture into a rectangle; only files of pixels can hold one.
  void paint(const PixelPicture& picture, const Rect& at);
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
