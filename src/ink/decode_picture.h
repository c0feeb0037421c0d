// The two decoders behind read_picture.h, which has looked at the file's head before. Each hands
// its rows to the gatherer, or says in a sentence why it cannot.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"
#include "ink/gather_light.h"

namespace tw {

Result<GreyPicture> decodePng(std::string_view bytes, const std::string& fileName, int mostSide);
Result<GreyPicture> decodeJpeg(std::string_view bytes, const std::string& fileName, int mostSide);

tl::unexpected<Problems> refusedPicture(std::string sentence, const std::string& fileName);

}  // namespace tw
