// PNG by libpng's simplified interface, which takes care of interlacing, palettes, depths and the
// file's own gamma, and reports by return value.
#include <fmt/format.h>
#include <png.h>

#include <cstring>

#include "ink/decode_picture.h"

namespace tw {

namespace {

/// Frees what libpng holds, whichever way we leave.
struct PngHead {
  png_image image{};
  PngHead() { image.version = PNG_IMAGE_VERSION; }
  ~PngHead() { png_image_free(&image); }
  PngHead(const PngHead&) = delete;
  PngHead& operator=(const PngHead&) = delete;
  bool failed() const { return PNG_IMAGE_FAILED(image); }
};

}  // namespace

Result<GreyPicture> decodePng(std::string_view bytes, const std::string& fileName, int mostSide) {
  static_assert(sizeof(Rgba) == 4);
  PngHead png;
  const auto refused = [&] {
    return refusedPicture(fmt::format("The PNG is damaged ({}).", png.image.message), fileName);
  };
  png_image_begin_read_from_memory(&png.image, bytes.data(), bytes.size());
  if (png.failed()) return refused();
  png.image.format = PNG_FORMAT_RGBA;
  const int width = static_cast<int>(png.image.width), height = static_cast<int>(png.image.height);
  std::vector<Rgba> pixels(static_cast<std::size_t>(width) * height);
  png_image_finish_read(&png.image, nullptr, pixels.data(), 0, nullptr);
  if (png.failed()) return refused();
  LightGatherer gatherer(width, height, mostSide);
  for (int y = 0; y < height; ++y)
    gatherer.addRow(
        {pixels.data() + static_cast<std::size_t>(y) * width, static_cast<std::size_t>(width)});
  return gatherer.finished();
}

}  // namespace tw
