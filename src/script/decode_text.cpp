#include "script/decode_text.h"

#include <fmt/format.h>
#include <unicode/uchar.h>
#include <unicode/unistr.h>
#include <unicode/utf8.h>

#include <algorithm>
#include <array>
#include <cstdint>

#include "base/files.h"
#include "script/text_case.h"

namespace tw {

namespace {

struct KnownFormat {
  std::string_view start, what;
};

// First bytes of formats that people send by mistake, as their own specifications give them.
constexpr KnownFormat kNoText[] = {
    {"PK\x03\x04", "a zip archive or Word document without the ending .docx"},
    {"%PDF", "a PDF"},
    {"{\\rtf", "a rich-text (RTF) document"},
    {"\xD0\xCF\x11\xE0", "an old Word document (.doc)"},
    {"\x89PNG", "a picture"},
    {"\xFF\xD8\xFF", "a picture"},
    {"\x1F\x8B", "a compressed file"},
    {"\x7F"
     "ELF",
     "a program"},
};

constexpr std::string_view kSaveAs = "Save the script as plain text or .docx and try again.";

// Windows-1252, 0x80…0x9F; the table at unicode.org/Public/MAPPINGS/VENDORS/MICSFT/WINDOWS.
constexpr std::array<char16_t, 32> kWindows1252 = {
    0x20AC, 0xFFFD, 0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0xFFFD, 0x017D, 0xFFFD, 0xFFFD, 0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0xFFFD, 0x017E, 0x0178};

bool isUtf8(std::string_view bytes) {
  const auto* data = reinterpret_cast<const std::uint8_t*>(bytes.data());
  const auto length = static_cast<std::int32_t>(bytes.size());
  for (std::int32_t i = 0; i < length;) {
    UChar32 c = 0;
    U8_NEXT(data, i, length, c);
    if (c < 0) return false;
  }
  return true;
}

void append(std::string& out, UChar32 c) {
  char bytes[4];
  std::int32_t length = 0;
  U8_APPEND_UNSAFE(reinterpret_cast<std::uint8_t*>(bytes), length, c);
  out.append(bytes, static_cast<std::size_t>(length));
}

std::string fromWindows1252(std::string_view bytes) {
  std::string out;
  out.reserve(bytes.size() * 2);
  for (const char byte : bytes) {
    const auto value = static_cast<unsigned char>(byte);
    append(out, value >= 0x80 && value < 0xA0 ? kWindows1252[value - 0x80u] : value);
  }
  return out;
}

std::string fromUtf16(std::string_view bytes, bool bigEndian) {
  icu::UnicodeString wide;
  for (std::size_t i = 0; i + 1 < bytes.size(); i += 2) {
    const auto first = static_cast<unsigned char>(bytes[i]);
    const auto second = static_cast<unsigned char>(bytes[i + 1]);
    wide.append(static_cast<char16_t>(bigEndian ? first << 8 | second : second << 8 | first));
  }
  std::string out;
  wide.toUTF8String(out);  // lone surrogates become U+FFFD
  return out;
}

/// Zero bytes at even and at odd places, as a share of half the text.
std::array<double, 2> zeroShares(std::string_view bytes) {
  std::array<double, 2> zeros{};
  for (std::size_t i = 0; i < bytes.size(); ++i)
    if (bytes[i] == 0) ++zeros[i % 2];
  const double half = std::max<double>(1, static_cast<double>(bytes.size()) / 2);
  return {zeros[0] / half, zeros[1] / half};
}

/// UTF-8 of the bytes, still with every sign in it.
DecodedText toUtf8(std::string_view bytes) {
  if (bytes.starts_with("\xEF\xBB\xBF")) bytes.remove_prefix(3);
  if (bytes.starts_with("\xFF\xFE")) return {fromUtf16(bytes.substr(2), false)};
  if (bytes.starts_with("\xFE\xFF")) return {fromUtf16(bytes.substr(2), true)};
  const auto [even, odd] = zeroShares(bytes);  // UTF-16 sent without its mark
  if (odd > 0.4 && even < 0.1) return {fromUtf16(bytes, false)};
  if (even > 0.4 && odd < 0.1) return {fromUtf16(bytes, true)};
  if (isUtf8(bytes)) return {std::string(bytes)};
  return {fromWindows1252(bytes), true};
}

bool isLineEnd(UChar32 c) {
  return c == '\n' || c == '\f' || c == 0x0B || c == 0x85 || c == 0x2028 || c == 0x2029;
}

bool isInvisible(UChar32 c) {
  return c == 0xFEFF || c == 0x200B || c == 0x2060 || c == 0xAD || c == 0x200E || c == 0x200F;
}

/// One kind of line end and of space; counts control characters that no text has.
std::string clean(std::string_view text, std::size_t& odd) {
  std::string out;
  out.reserve(text.size());
  const auto* data = reinterpret_cast<const std::uint8_t*>(text.data());
  const auto length = static_cast<std::int32_t>(text.size());
  for (std::int32_t i = 0; i < length;) {
    UChar32 c = 0;
    U8_NEXT_OR_FFFD(data, i, length, c);
    if (c == '\r') {
      if (i < length && data[i] == '\n') ++i;
      out += '\n';
    } else if (isLineEnd(c)) {
      out += '\n';
    } else if (c == '\t') {
      out += "    ";  // so that indents can be compared
    } else if (u_charType(c) == U_SPACE_SEPARATOR) {
      out += ' ';
    } else if (c < 0x20 || (c >= 0x7F && c < 0xA0)) {
      ++odd;
      out += ' ';
    } else if (!isInvisible(c)) {
      append(out, c);
    }
  }
  return out;
}

}  // namespace

Result<DecodedText> decodeText(std::string_view bytes, const std::string& fileName) {
  const Place place{.file = fileName};
  if (bytes.size() > kLargestTextBytes)
    return badInput(fmt::format("The script has {} bytes; at most {} were expected.", bytes.size(),
                                kLargestTextBytes),
                    place, "Is this the right file?");
  for (const KnownFormat& format : kNoText)
    if (bytes.starts_with(format.start))
      return badInput(fmt::format("This is {}, not a text.", format.what), place,
                      std::string(kSaveAs));
  DecodedText decoded = toUtf8(bytes);
  std::size_t odd = 0;
  decoded.text = clean(decoded.text, odd);
  // Up to 1 in 50 is a stray sign from an old program; more is no text.
  if (odd > 4 + decoded.text.size() / 50)
    return badInput("This is not a text: it is full of control characters.", place,
                    std::string(kSaveAs));
  if (bareText(decoded.text).empty())
    return badInput("The script is empty.", place, "Send the script again, or name another file.");
  return decoded;
}

}  // namespace tw
