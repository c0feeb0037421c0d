#include <doctest/doctest.h>

#include "ink/decode_picture.h"
#include "ink/picture_files_test.h"

namespace tw {

TEST_CASE("JPEG bytes that only begin like a JPEG are refused with the library's reason") {
  const auto read = decodeJpeg("\xff\xd8\xff\xe0nothing more", "a.jpg", 0);
  REQUIRE_FALSE(read);
  CHECK(read.error().front().place.file == "a.jpg");
}

TEST_CASE("a JPEG averaged down has the size asked for") {
  const auto read = decodeJpeg(jpegOf(40, 30, 1, std::vector<std::uint8_t>(1200, 0)), "a.jpg", 20);
  REQUIRE(read);
  CHECK(read->width == 20);
  CHECK(read->height == 15);
  for (const float light : read->light) CHECK(light < 0.01f);
}

}  // namespace tw
