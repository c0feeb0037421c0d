#include "script/text_case.h"

#include <unicode/locid.h>
#include <unicode/normalizer2.h>
#include <unicode/uchar.h>
#include <unicode/unistr.h>
#include <unicode/utf8.h>

#include <algorithm>

namespace tw {

namespace {

bool isAscii(std::string_view text) {
  return std::ranges::all_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

bool isSpace(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

char asciiLower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
}

/// Calls visit(code point) for each; stops when it returns false.
template <class Visit>
void eachCodePoint(std::string_view text, Visit visit) {
  const auto* bytes = reinterpret_cast<const std::uint8_t*>(text.data());
  const auto length = static_cast<std::int32_t>(text.size());
  for (std::int32_t i = 0; i < length;) {
    UChar32 c = 0;
    U8_NEXT_OR_FFFD(bytes, i, length, c);
    if (!visit(c)) return;
  }
}

icu::UnicodeString wide(std::string_view text) {
  return icu::UnicodeString::fromUTF8(
      icu::StringPiece(text.data(), static_cast<std::int32_t>(text.size())));
}

/// Bytes of a dash (en, em, minus) or another separator at the start, or 0.
std::size_t leadingDash(std::string_view text) {
  for (const std::string_view dash : {"\u2013", "\u2014", "\u2212", "\u2022"})
    if (text.starts_with(dash)) return dash.size();
  return 0;
}

bool isJoiningWord(std::string_view word) {
  static constexpr std::string_view kJoining[] = {"the", "of", "and", "de", "van", "von", "la"};
  return std::ranges::find(kJoining, word) != std::end(kJoining);
}

}  // namespace

std::string folded(std::string_view text) {
  std::string out;
  if (isAscii(text)) {
    out.resize(text.size());
    std::ranges::transform(text, out.begin(), asciiLower);
    return out;
  }
  icu::UnicodeString wideText = wide(text);
  wideText.findAndReplace(icu::UnicodeString(UChar32{0x2019}), icu::UnicodeString(UChar32{'\''}));
  wideText.findAndReplace(icu::UnicodeString(UChar32{0x2018}), icu::UnicodeString(UChar32{'\''}));
  wideText.toLower(icu::Locale::getRoot()).toUTF8String(out);
  return out;
}

bool isAllCaps(std::string_view text) {
  bool letter = false, lower = false;
  eachCodePoint(text, [&](UChar32 c) {
    letter |= u_isalpha(c) != 0;
    lower = u_islower(c) != 0;
    return !lower;
  });
  return letter && !lower;
}

bool isTitleCase(std::string_view text) {
  const std::vector<std::string_view> words = splitWords(text);
  return !words.empty() && std::ranges::all_of(words, [](std::string_view word) {
    return !startsLower(word) || isJoiningWord(word);
  });
}

bool startsLower(std::string_view text) {
  bool lower = false;
  eachCodePoint(text, [&](UChar32 c) {
    if (u_isalpha(c) == 0) return true;
    lower = u_islower(c) != 0;
    return false;
  });
  return lower;
}

bool hasLetter(std::string_view text) {
  bool letter = false;
  eachCodePoint(text, [&](UChar32 c) { return !(letter = u_isalpha(c) != 0); });
  return letter;
}

std::string_view bareText(std::string_view text) {
  while (!text.empty() && isSpace(text.front())) text.remove_prefix(1);
  while (!text.empty() && isSpace(text.back())) text.remove_suffix(1);
  return text;
}

std::string_view withoutLeadingMarks(std::string_view text, std::string_view marks) {
  while (!text.empty()) {
    if (isSpace(text.front()) || marks.find(text.front()) != std::string_view::npos)
      text.remove_prefix(1);
    else if (const std::size_t dash = leadingDash(text))
      text.remove_prefix(dash);
    else
      break;
  }
  return text;
}

std::vector<std::string_view> splitWords(std::string_view text) {
  std::vector<std::string_view> words;
  for (std::size_t i = 0; i < text.size();) {
    while (i < text.size() && isSpace(text[i])) ++i;
    const std::size_t start = i;
    while (i < text.size() && !isSpace(text[i])) ++i;
    if (i > start) words.push_back(text.substr(start, i - start));
  }
  return words;
}

bool startsWithFolded(std::string_view text, std::string_view lowerPrefix) {
  if (text.size() < lowerPrefix.size()) return false;
  return std::ranges::equal(text.substr(0, lowerPrefix.size()), lowerPrefix,
                            [](char a, char b) { return asciiLower(a) == b; });
}

std::string idFrom(std::string_view name) {
  UErrorCode status = U_ZERO_ERROR;
  const icu::Normalizer2* nfd = icu::Normalizer2::getNFDInstance(status);
  icu::UnicodeString text = wide(name);
  if (U_SUCCESS(status)) text = nfd->normalize(text, status);
  text.toLower(icu::Locale::getRoot());
  icu::UnicodeString out;
  for (std::int32_t i = 0; i < text.length(); i = text.moveIndex32(i, 1)) {
    const UChar32 c = text.char32At(i);
    if (u_isalnum(c) != 0)
      out.append(c);
    else if ((c == ' ' || c == '-' || c == '#') && !out.isEmpty() && !out.endsWith(u"-", 1))
      out.append(UChar32{'-'});
  }
  if (out.endsWith(u"-", 1)) out.truncate(out.length() - 1);
  std::string id;
  out.toUTF8String(id);
  return id;
}

}  // namespace tw
