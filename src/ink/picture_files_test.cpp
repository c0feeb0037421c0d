#include "ink/picture_files_test.h"

#include <cstdio>
#include <cstdlib>
// jpeglib.h needs the two above.
#include <doctest/doctest.h>
#include <jpeglib.h>
#include <png.h>

#include "job/picture_size.h"

namespace tw {

std::string pngOf(int width, int height, int channels, const std::vector<std::uint8_t>& samples) {
  png_image image{};
  image.version = PNG_IMAGE_VERSION;
  image.width = width;
  image.height = height;
  image.format = channels == 1 ? PNG_FORMAT_GRAY : channels == 3 ? PNG_FORMAT_RGB : PNG_FORMAT_RGBA;
  png_alloc_size_t size = 0;
  REQUIRE(png_image_write_to_memory(&image, nullptr, &size, 0, samples.data(), 0, nullptr));
  std::string bytes(size, '\0');
  REQUIRE(png_image_write_to_memory(&image, bytes.data(), &size, 0, samples.data(), 0, nullptr));
  bytes.resize(size);
  return bytes;
}

std::string jpegOf(int width, int height, int channels, const std::vector<std::uint8_t>& samples) {
  jpeg_compress_struct codec{};
  jpeg_error_mgr errors{};
  codec.err = jpeg_std_error(&errors);
  jpeg_create_compress(&codec);
  unsigned char* buffer = nullptr;
  unsigned long size = 0;
  jpeg_mem_dest(&codec, &buffer, &size);
  codec.image_width = width;
  codec.image_height = height;
  codec.input_components = channels;
  codec.in_color_space = channels == 1 ? JCS_GRAYSCALE : channels == 3 ? JCS_RGB : JCS_CMYK;
  jpeg_set_defaults(&codec);
  jpeg_set_quality(&codec, 95, TRUE);
  jpeg_start_compress(&codec, TRUE);
  while (codec.next_scanline < codec.image_height) {
    auto* row = const_cast<JSAMPLE*>(samples.data()) +
                static_cast<std::size_t>(codec.next_scanline) * width * channels;
    jpeg_write_scanlines(&codec, &row, 1);
  }
  jpeg_finish_compress(&codec);
  jpeg_destroy_compress(&codec);
  std::string bytes(reinterpret_cast<char*>(buffer), size);
  std::free(buffer);
  return bytes;
}

TEST_CASE("pictures made for the tests have the size they were given") {
  const std::vector<std::uint8_t> samples(7 * 5 * 3, 90);
  const auto png = pictureSizeOf(pngOf(7, 5, 3, samples), "a.png");
  const auto jpeg = pictureSizeOf(jpegOf(7, 5, 3, samples), "a.jpg");
  REQUIRE(png);
  REQUIRE(jpeg);
  CHECK(png->width == 7);
  CHECK(jpeg->height == 5);
}

}  // namespace tw
