// Feeds any bytes to the reader of picture heads: it must answer with a size within its bounds or a
// reason. Corpus: tests/fuzz/corpus/picture_size.
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "job/picture_size.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  const auto read = tw::pictureSizeOf(bytes, "fuzz.png");
  if (!read && read.error().empty()) abort();
  if (read && (read->width < 1 || read->width > tw::kLargestPictureSide)) abort();
  if (read && (read->height < 1 || read->height > tw::kLargestPictureSide)) abort();
  return 0;
}
