// Reads a PNG or JPEG file as a grey picture: how light each pixel looks, as the eye steps (CIE
// L* / 100). Transparent places show paper white. Large pictures are averaged down while they are
// read; nothing is ever picked by nearest pixel. What cannot be read is refused in a sentence.
#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>

#include "base/result.h"
#include "geometry/grey_picture.h"

namespace tw {

/// An A3 board at 600 dpi has 70 million.
inline constexpr std::int64_t kMostPicturePixels = 100'000'000;

struct PictureWanted {
  int mostSide =
      0;  ///< the longer side is averaged down to this many pixels; 0: as the file has it
};

/// `fileName` is for sentences only. The picture's origin is 0, 0 and a millimetre a pixel: who
/// knows the page sets both.
Result<GreyPicture> readPicture(std::string_view bytes, const std::string& fileName,
                                const PictureWanted& wanted = {});
Result<GreyPicture> readPictureFile(const std::filesystem::path& path,
                                    const PictureWanted& wanted = {});

/// CIE L* / 100 of an sRGB colour (each channel 0…255): IEC 61966-2-1 to linear luminance
/// (Y of Rec. 709 primaries), then ISO/CIE 11664-4.
float lightOf(std::uint8_t red, std::uint8_t green, std::uint8_t blue);

}  // namespace tw
