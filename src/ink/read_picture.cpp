#include "ink/read_picture.h"

#include <fmt/format.h>

#include "base/files.h"
#include "ink/decode_picture.h"
#include "job/picture_size.h"

namespace tw {

tl::unexpected<Problems> refusedPicture(std::string sentence, const std::string& fileName) {
  return badInput(std::move(sentence), {.file = fileName}, "Export it anew as PNG or JPEG.");
}

Result<GreyPicture> readPicture(std::string_view bytes, const std::string& fileName,
                                const PictureWanted& wanted) {
  const auto size = pictureSizeOf(bytes, fileName);
  if (!size) return tl::unexpected(size.error());
  const std::int64_t pixels = std::int64_t{size->width} * size->height;
  if (pixels > kMostPicturePixels)
    return refusedPicture(fmt::format("The picture has {} million pixels; up to {} million can be "
                                      "read.",
                                      pixels / 1'000'000, kMostPicturePixels / 1'000'000),
                          fileName);
  return size->kind == PictureKind::Png ? decodePng(bytes, fileName, wanted.mostSide)
                                        : decodeJpeg(bytes, fileName, wanted.mostSide);
}

Result<GreyPicture> readPictureFile(const std::filesystem::path& path,
                                    const PictureWanted& wanted) {
  const auto bytes = readFile(path, kLargestPictureBytes);
  if (!bytes) return tl::unexpected(bytes.error());
  return readPicture(*bytes, path.filename().string(), wanted);
}

float lightOf(std::uint8_t red, std::uint8_t green, std::uint8_t blue) {
  return lightOfLuminance(luminanceOf(Rgba{red, green, blue, 255}));
}

}  // namespace tw
