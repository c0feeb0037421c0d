// Files are laid out byte by byte as the standards give them: PNG specification, 2nd edition, 5.2
// and 11.2.2; ITU-T T.81, B.2.2 and JFIF 1.02. A PNG written by libpng, through cairo, is read in
// the tests of the commands.
#include "job/picture_size.h"

#include <doctest/doctest.h>

namespace tw {
namespace {

std::string bytes(std::initializer_list<int> values) {
  std::string out;
  for (const int value : values) out += static_cast<char>(value);
  return out;
}

const std::string kPngStart =
    bytes({0x89, 'P', 'N', 'G', 13, 10, 26, 10, 0, 0, 0, 13, 'I', 'H', 'D', 'R'});

std::string png(std::initializer_list<int> sides) {
  return kPngStart + bytes(sides) + bytes({8, 2, 0, 0, 0, 0, 0, 0, 0}) +
         bytes({0, 0, 0, 0, 'I', 'E', 'N', 'D', 0, 0, 0, 0});
}

std::string jpeg(int marker) {
  return bytes({0xFF, 0xD8, 0xFF, 0xE0, 0,    4,    'x', 'x', 0xFF, 0xFF, marker, 0,
                11,   8,    0x01, 0x02, 0x03, 0x04, 1,   1,   0x11, 0,    0xFF,   0xD9});
}

}  // namespace

TEST_CASE("a PNG's size stands in its header chunk") {
  const auto size = pictureSizeOf(png({0, 0, 1, 44, 0, 0, 0, 200}), "a.png");
  REQUIRE(size);
  CHECK(size->kind == PictureKind::Png);
  CHECK(size->width == 300);
  CHECK(size->height == 200);
}

TEST_CASE("a JPEG's size stands in its frame header whatever comes before") {
  for (const int marker : {0xC0, 0xC1, 0xC2}) {
    const auto size = pictureSizeOf(jpeg(marker), "a.jpg");
    REQUIRE(size);
    CHECK(size->kind == PictureKind::Jpeg);
    CHECK(size->height == 0x0102);
    CHECK(size->width == 0x0304);
  }
}

TEST_CASE("what is no sound picture is refused in a sentence") {
  const std::string whole = png({0, 0, 1, 44, 0, 0, 0, 200});
  for (const std::string& bad :
       {std::string(), std::string("GIF89a"), whole.substr(0, 20),
        whole.substr(0, whole.size() - 5), jpeg(0xC0).substr(0, 22), png({0, 0, 0, 0, 0, 0, 0, 9}),
        png({0x7F, 0xFF, 0xFF, 0xFF, 0, 0, 0, 9}), jpeg(0xC0).substr(0, 15), jpeg(0xDA),
        bytes({0xFF, 0xD8, 0xFF, 0xE0, 0, 0})}) {
    const auto size = pictureSizeOf(bad, "bad");
    REQUIRE_FALSE(size);
    CHECK_FALSE(size.error().front().sentence.empty());
    CHECK(size.error().front().place.file == "bad");
  }
}

}  // namespace tw
