// Feeds any bytes to the reader of scripts and to that of Word documents. Both must answer with a
// script or a reason, whatever they get. Corpus: tests/fuzz/corpus/script.
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "script/read_script.h"

/// So that the lexicon is found wherever the fuzzer is built and run.
extern "C" int LLVMFuzzerInitialize(int*, char***) {
  return setenv("TIERWRIGHT_PRESETS", TIERWRIGHT_SOURCE_DIR "/presets", /*overwrite=*/0);
}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  if (const auto text = tw::textOfDocx(bytes, "fuzz.docx"); !text && text.error().empty()) abort();
  static const auto lexicon = tw::loadLexicon();  // once: it takes longer than any small script
  if (!lexicon) abort();
  auto script = tw::readScriptWith(*lexicon, bytes, "fuzz.txt");
  if (!script) {
    if (script.error().empty()) abort();
    return 0;
  }
  const auto before = script->pages;
  if (!tw::carryOver(before, script->pages).empty()) abort();  // nothing was revised
  return 0;
}
