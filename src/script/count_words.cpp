#include "script/count_words.h"

#include <unicode/brkiter.h>
#include <unicode/ubrk.h>
#include <unicode/unistr.h>

#include "base/result.h"

namespace tw {

struct WordCounter::Rules {
  std::unique_ptr<icu::BreakIterator> words;
};

WordCounter::WordCounter() : rules_(std::make_unique<Rules>()) {
  UErrorCode status = U_ZERO_ERROR;
  rules_->words.reset(icu::BreakIterator::createWordInstance(icu::Locale::getRoot(), status));
  ensure(U_SUCCESS(status) && rules_->words, "ICU has no word boundary rules");
}

WordCounter::~WordCounter() = default;

int WordCounter::count(std::string_view utf8) {
  const icu::UnicodeString text = icu::UnicodeString::fromUTF8(
      icu::StringPiece(utf8.data(), static_cast<std::int32_t>(utf8.size())));
  icu::BreakIterator& words = *rules_->words;
  words.setText(text);
  int count = 0;
  // A segment is a word when its status says letters, digits, kana or ideographs (UAX #29).
  while (words.next() != icu::BreakIterator::DONE)
    if (words.getRuleStatus() >= UBRK_WORD_NONE_LIMIT) ++count;
  return count;
}

}  // namespace tw
