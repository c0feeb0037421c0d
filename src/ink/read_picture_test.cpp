#include "ink/read_picture.h"

#include <doctest/doctest.h>

#include "base/files.h"
#include "base/scratch_folder.h"
#include "ink/picture_files_test.h"

namespace tw {

namespace {

using Samples = std::vector<std::uint8_t>;

std::string sentenceFor(std::string_view bytes) {
  const auto read = readPicture(bytes, "page.png");
  REQUIRE_FALSE(read);
  CHECK(read.error().front().place.file == "page.png");
  return read.error().front().sentence;
}

}  // namespace

TEST_CASE("a grey reads as its published lightness") {
  // sRGB 119 119 119 is L* 50.034 (CIE L*a*b* of the sRGB greys, from memory, high; the ends are
  // the standard's own).
  const auto read = readPicture(pngOf(3, 1, 1, Samples{0, 119, 255}), "grey.png");
  REQUIRE(read);
  CHECK(read->width == 3);
  CHECK(read->at(0, 0) == doctest::Approx(0));
  CHECK(read->at(1, 0) == doctest::Approx(0.50034).epsilon(2e-5));
  CHECK(read->at(2, 0) == doctest::Approx(1));
}

TEST_CASE("colours read as light as the eye takes them") {
  // L* of the sRGB primaries: red 53.24, green 87.73, blue 32.30 (widely published; from memory,
  // high).
  CHECK(lightOf(255, 0, 0) == doctest::Approx(0.5324).epsilon(2e-4));
  CHECK(lightOf(0, 255, 0) == doctest::Approx(0.8773).epsilon(2e-4));
  CHECK(lightOf(0, 0, 255) == doctest::Approx(0.3230).epsilon(2e-4));
}

TEST_CASE("transparent places show the paper") {
  const auto read =
      readPicture(pngOf(3, 1, 4, Samples{0, 0, 0, 0, 0, 0, 0, 255, 0, 0, 0, 128}), "line.png");
  REQUIRE(read);
  CHECK(read->at(0, 0) == 1);
  CHECK(read->at(1, 0) == 0);
  CHECK(read->at(2, 0) == doctest::Approx(lightOf(127, 127, 127)));
}

TEST_CASE("shrinking averages light and drops nothing") {
  Samples board(64 * 48);
  for (int y = 0; y < 48; ++y)
    for (int x = 0; x < 64; ++x) board[y * 64 + x] = (x + y) % 2 == 0 ? 0 : 255;
  const auto read = readPicture(pngOf(64, 48, 1, board), "board.png", {.mostSide = 8});
  REQUIRE(read);
  CHECK(read->width == 8);
  CHECK(read->height == 6);
  // Half the light of paper is L* 76.07 (ISO/CIE 11664-4).
  for (const float light : read->light) CHECK(light == doctest::Approx(0.7607).epsilon(1e-4));
}

TEST_CASE("shrinking by an odd ratio keeps the mean light") {
  Samples ramp(50 * 20);
  for (int i = 0; i < 50 * 20; ++i) ramp[i] = (i % 50) < 25 ? 0 : 255;
  const auto read = readPicture(pngOf(50, 20, 1, ramp), "half.png", {.mostSide = 7});
  REQUIRE(read);
  CHECK(read->width == 7);
  CHECK(read->height == 3);
  CHECK(read->at(0, 1) == 0);
  CHECK(read->at(3, 1) == doctest::Approx(0.7607).epsilon(1e-4));
  CHECK(read->at(6, 1) == 1);
}

TEST_CASE("JPEG reads as PNG does within its own loss") {
  const Samples flat(16 * 16 * 3, 119);
  const auto read = readPicture(jpegOf(16, 16, 3, flat), "flat.jpg");
  REQUIRE(read);
  for (const float light : read->light) CHECK(light == doctest::Approx(0.50034).epsilon(0.01));
  const auto grey = readPicture(jpegOf(16, 16, 1, Samples(256, 119)), "grey.jpg");
  REQUIRE(grey);
  CHECK(grey->at(8, 8) == doctest::Approx(0.50034).epsilon(0.01));
}

TEST_CASE("what is no picture is refused") {
  CHECK(sentenceFor("a letter") == "This is neither a PNG nor a JPEG picture.");
  CHECK(sentenceFor("") == "This is neither a PNG nor a JPEG picture.");
}

TEST_CASE("a picture cut short is refused although its end mark is there") {
  Samples noise(64 * 64 * 3);
  for (std::size_t i = 0; i < noise.size(); ++i)
    noise[i] = static_cast<std::uint8_t>(i * 131 % 251);
  const std::string jpeg = jpegOf(64, 64, 3, noise);
  CHECK(sentenceFor(jpeg.substr(0, jpeg.size() / 2) + "\xff\xd9") ==
        "The JPEG is cut off: its data end too early.");
  CHECK(sentenceFor(jpeg.substr(0, jpeg.size() / 2)).find("cut off") != std::string::npos);
  std::string png = pngOf(64, 64, 3, noise);
  png[png.size() / 2] ^= 0x55;
  CHECK(sentenceFor(png).find("The PNG is damaged") != std::string::npos);
}

TEST_CASE("printing inks are refused by name") {
  CHECK(sentenceFor(jpegOf(8, 8, 4, Samples(8 * 8 * 4, 60))).find("CMYK") != std::string::npos);
}

TEST_CASE("a picture of too many pixels is refused before it is decoded") {
  std::string png = pngOf(1, 1, 1, Samples{0});
  for (const int at : {18, 22}) {  // IHDR's width and height: 30 000 each
    png[at] = '\x75';
    png[at + 1] = '\x30';
  }
  CHECK(sentenceFor(png).find("900 million pixels; up to 100 million") != std::string::npos);
}

TEST_CASE("a picture is read from its file and a missing one is named") {
  const ScratchFolder folder;
  REQUIRE(writeFileAtomically(folder.path() / "a.png", pngOf(2, 1, 1, Samples{0, 255})));
  const auto read = readPictureFile(folder.path() / "a.png");
  REQUIRE(read);
  CHECK(read->light == std::vector<float>{0, 1});
  CHECK_FALSE(readPictureFile(folder.path() / "b.png"));
}

TEST_CASE("each picture of the fuzzer's corpus is read or refused with a sentence") {
  int read = 0, refused = 0;
  for (const auto& entry :
       std::filesystem::directory_iterator(TIERWRIGHT_SOURCE_DIR "/tests/fuzz/corpus/picture")) {
    CAPTURE(entry.path().string());
    const auto picture = readPictureFile(entry.path());
    if (!picture) CHECK_FALSE(picture.error().front().sentence.empty());
    (picture ? read : refused) += 1;
  }
  CHECK(read == 7);
  CHECK(refused == 1);
}

TEST_CASE("a PNG that states a linear gamma is as light as it says") {
  const auto read = readPictureFile(TIERWRIGHT_SOURCE_DIR "/tests/fuzz/corpus/picture/linear.png");
  REQUIRE(read);
  // Sample 128 of 255 at gamma 1 is a luminance of 0.502: L* 76.2 (ISO/CIE 11664-4).
  CHECK(read->at(1, 0) == doctest::Approx(0.762).epsilon(0.005));
}

}  // namespace tw
