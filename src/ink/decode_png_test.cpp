#include <doctest/doctest.h>

#include "ink/decode_picture.h"
#include "ink/picture_files_test.h"

namespace tw {

TEST_CASE("PNG bytes that only begin like a PNG are refused with the library's reason") {
  const auto read = decodePng("\x89PNG\r\n\x1a\nnothing more", "a.png", 0);
  REQUIRE_FALSE(read);
  CHECK(read.error().front().sentence.starts_with("The PNG is damaged ("));
}

TEST_CASE("RGB and grey PNG of the same greys are equally light") {
  const auto grey = decodePng(pngOf(2, 1, 1, {30, 200}), "a.png", 0);
  const auto rgb = decodePng(pngOf(2, 1, 3, {30, 30, 30, 200, 200, 200}), "b.png", 0);
  REQUIRE(grey);
  REQUIRE(rgb);
  CHECK(grey->light == rgb->light);
}

}  // namespace tw
