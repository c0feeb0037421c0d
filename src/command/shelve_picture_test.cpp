#include "command/shelve_picture.h"

#include <doctest/doctest.h>

#include "base/files.h"
#include "base/scratch_folder.h"

namespace tw {

namespace {

std::string demoPicture() {
  return *readFile(std::filesystem::path(TIERWRIGHT_SOURCE_DIR) / "demo" / "ines-suit.png",
                   16u << 20);
}

}  // namespace

TEST_CASE("shelve picture: the same bytes are kept once and others under a name of their own") {
  const ScratchFolder scratch;
  const std::string bytes = demoPicture();
  const auto first = shelvePicture(scratch / "art", "some/where/sketch.png", bytes);
  const auto again = shelvePicture(scratch / "art", "sketch.png", bytes);
  const auto other = shelvePicture(scratch / "art", "sketch.png", bytes + "\n");
  REQUIRE(first.has_value());
  CHECK(*first == "sketch.png");
  REQUIRE(again);
  CHECK(*again == *first);
  REQUIRE(other.has_value());
  CHECK(*other == "sketch-2.png");
  CHECK(readFile(scratch / "art" / *first, 16u << 20) == bytes);
}

TEST_CASE("shelve picture: what is no picture is refused and nothing is written") {
  const ScratchFolder scratch;
  CHECK_FALSE(shelvePicture(scratch / "art", "sketch.png", "no picture").has_value());
  CHECK_FALSE(std::filesystem::exists(scratch / "art" / "sketch.png"));
}

}  // namespace tw
