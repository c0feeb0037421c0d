// Feeds any bytes to the reader of pictures: it must answer with a picture of the size it states
// whose every pixel lies between black and paper, or with a reason. Corpus: tests/fuzz/corpus/
// picture. Pictures of more than a million pixels are left to the unit tests, for speed.
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "ink/read_picture.h"
#include "job/picture_size.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  const auto head = tw::pictureSizeOf(bytes, "fuzz.png");
  if (head && std::int64_t{head->width} * head->height > 1'000'000) return 0;
  const auto read = tw::readPicture(bytes, "fuzz.png", {.mostSide = 64});
  if (!read && read.error().empty()) abort();
  if (!read) return 0;
  if (read->width < 1 || read->width > 64 || read->height < 1 || read->height > 64) abort();
  if (read->light.size() != std::size_t(read->width) * std::size_t(read->height)) abort();
  for (const float light : read->light)
    if (!(light >= 0 && light <= 1)) abort();
  return 0;
}
