// Feeds bytes to the readers of job.json, pages/NN.json and sheets. Whatever is read must survive
// being written and read again; whatever is refused must come with a sentence.
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "base/result.h"
#include "job/document.h"

namespace {

using namespace tw;

template <class T>
void check(const Result<T>& read) {
  if (read) return;
  ensure(!read.error().empty(), "a refusal names a problem");
  for (const Problem& problem : read.error())
    ensure(!problem.sentence.empty(), "a problem has a sentence");
}

template <class T>
void checkRoundTrip(const Result<T>& read, std::string (*write)(const T&),
                    Result<T> (*again)(std::string_view, const std::string&)) {
  check(read);
  if (!read) return;
  const std::string text = write(*read);
  const Result<T> back = again(text, "again");
  ensure(back.has_value(), "what was written can be read");
  ensure(write(*back) == text, "what is written twice is the same");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  checkRoundTrip<JobFile>(readJobText(bytes, "job.json"), writeJobText, readJobText);
  checkRoundTrip<Page>(readPageText(bytes, "pages/01.json"), writePageText, readPageText);
  checkRoundTrip<Sheet>(readSheetText(bytes, "sheet.json"), writeSheetText, readSheetText);
  return 0;
}
