// Picture files made in memory for the tests, by the same open libraries in their writing half.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace tw {

/// 8 bits a channel: 1 grey, 3 RGB or 4 RGBA samples a pixel.
std::string pngOf(int width, int height, int channels, const std::vector<std::uint8_t>& samples);
/// 1 grey, 3 RGB or 4 inverted CMYK samples a pixel.
std::string jpegOf(int width, int height, int channels, const std::vector<std::uint8_t>& samples);

}  // namespace tw
