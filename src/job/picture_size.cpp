// PNG: signature, then the chunk IHDR with width and height (PNG specification, 2nd edition, 5.2
// and 11.2.2); the chunk IEND ends it (11.2.5). JPEG: markers up to the frame header SOFn (ITU-T
// T.81, B.1.1.4 and B.2.2); the marker EOI ends it (B.2.1).
#include "job/picture_size.h"

#include <fmt/format.h>

namespace tw {

namespace {

std::uint32_t bytesAt(std::string_view bytes, std::size_t at, std::size_t count) {
  std::uint32_t value = 0;
  for (std::size_t i = 0; i < count; ++i)
    value = value << 8 | static_cast<std::uint8_t>(bytes[at + i]);
  return value;
}

tl::unexpected<Problems> refused(std::string sentence, const std::string& file) {
  return badInput(std::move(sentence), {.file = file}, "Export it anew as PNG or JPEG.");
}

Result<PictureSize> sized(PictureKind kind, std::uint32_t width, std::uint32_t height,
                          const std::string& file) {
  const bool sound =
      width > 0 && height > 0 && width <= kLargestPictureSide && height <= kLargestPictureSide;
  if (!sound)
    return refused(fmt::format("The picture says it is {} × {} pixels; sides of 1 to {} can be "
                               "used.",
                               width, height, kLargestPictureSide),
                   file);
  return PictureSize{kind, static_cast<int>(width), static_cast<int>(height)};
}

/// Chunk follows chunk up to IEND within the file.
bool isWholePng(std::string_view bytes) {
  constexpr std::uint64_t kAround = 12;  // length, type and checksum
  for (std::uint64_t at = 8; at + kAround <= bytes.size();) {
    if (bytes.substr(at + 4, 4) == "IEND") return true;
    at += kAround + bytesAt(bytes, at, 4);
  }
  return false;
}

Result<PictureSize> pngSize(std::string_view bytes, const std::string& file) {
  constexpr std::size_t kHeaderEnd = 8 + 4 + 4 + 13 + 4;
  if (bytes.size() < kHeaderEnd || bytesAt(bytes, 8, 4) != 13 || bytes.substr(12, 4) != "IHDR")
    return refused("The PNG is cut off or damaged at its head.", file);
  if (!isWholePng(bytes)) return refused("The PNG is cut off or damaged: it has no end.", file);
  return sized(PictureKind::Png, bytesAt(bytes, 16, 4), bytesAt(bytes, 20, 4), file);
}

bool isFrameHeader(std::uint8_t marker) {
  return marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
}

Result<PictureSize> jpegSize(std::string_view bytes, const std::string& file) {
  const auto damaged = [&] { return refused("The JPEG is cut off or damaged at its head.", file); };
  for (std::size_t at = 2; at + 4 <= bytes.size();) {
    if (bytesAt(bytes, at, 1) != 0xFF) return damaged();
    const auto marker = static_cast<std::uint8_t>(bytesAt(bytes, at + 1, 1));
    if (marker == 0xFF) {  // fill byte
      ++at;
      continue;
    }
    const bool alone = marker == 0x01 || (marker >= 0xD0 && marker <= 0xD8);
    if (alone) {
      at += 2;
      continue;
    }
    if (marker == 0xD9 || marker == 0xDA) return damaged();  // data or end before any frame
    const std::uint32_t length = bytesAt(bytes, at + 2, 2);
    if (length < 2 || at + 2 + length > bytes.size()) return damaged();
    if (isFrameHeader(marker)) {
      if (length < 8) return damaged();
      if (bytes.rfind("\xff\xd9") == std::string_view::npos)
        return refused("The JPEG is cut off: it has no end.", file);
      return sized(PictureKind::Jpeg, bytesAt(bytes, at + 7, 2), bytesAt(bytes, at + 5, 2), file);
    }
    at += 2 + length;
  }
  return damaged();
}

}  // namespace

Result<PictureSize> pictureSizeOf(std::string_view bytes, const std::string& fileName) {
  constexpr std::string_view kPng = "\x89PNG\r\n\x1a\n", kJpeg = "\xff\xd8\xff";
  if (bytes.starts_with(kPng)) return pngSize(bytes, fileName);
  if (bytes.starts_with(kJpeg)) return jpegSize(bytes, fileName);
  return refused("This is neither a PNG nor a JPEG picture.", fileName);
}

}  // namespace tw
