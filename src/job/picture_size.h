// Kind and size of a picture file from its head: PNG and JPEG. Nothing is decoded; what is no such
// picture, or has a size that cannot be, is refused in a sentence.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "base/result.h"

namespace tw {

inline constexpr int kLargestPictureSide = 40000;  ///< px; a 600 dpi board scan has 10200
inline constexpr std::uintmax_t kLargestPictureBytes = 128u << 20;

enum class PictureKind { Png, Jpeg };

struct PictureSize {
  PictureKind kind = PictureKind::Png;
  int width = 0, height = 0;  ///< px
};

Result<PictureSize> pictureSizeOf(std::string_view bytes, const std::string& fileName);

}  // namespace tw
