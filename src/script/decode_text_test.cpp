#include "script/decode_text.h"

#include "script/script_fixture.h"

using namespace tw;

namespace {

std::string textOf(std::string_view bytes) {
  const Result<DecodedText> decoded = decodeText(bytes, "x");
  REQUIRE(decoded.has_value());
  return decoded->text;
}

std::string utf16(std::u16string_view text, bool bigEndian, bool mark) {
  std::string bytes;
  const auto put = [&](char16_t unit) {
    const char high = static_cast<char>(unit >> 8), low = static_cast<char>(unit & 0xFF);
    bytes += bigEndian ? high : low;
    bytes += bigEndian ? low : high;
  };
  if (mark) put(0xFEFF);
  for (const char16_t unit : text) put(unit);
  return bytes;
}

}  // namespace

TEST_CASE("every encoding of one text gives the same UTF-8") {
  const std::string expected = "Caf\u00e9 \u2019\n";
  CHECK(textOf("Caf\u00e9 \u2019\n") == expected);
  CHECK(textOf("\xEF\xBB\xBF"
               "Caf\u00e9 \u2019\n") == expected);
  CHECK(textOf("Caf\xE9 \x92\n") == expected);  // Windows-1252, by its published table
  for (const bool bigEndian : {false, true})
    for (const bool mark : {false, true})
      CHECK(textOf(utf16(u"Plain Caf\u00e9\n", bigEndian, mark)) == "Plain Caf\u00e9\n");
}

TEST_CASE("all line ends and spaces become one kind") {
  CHECK(textOf("a\r\nb\rc\fd") == "a\nb\nc\nd");
  CHECK(textOf("a\u00a0b\u2003c\td") == "a b c    d");
  CHECK(textOf("a\u200bb") == "ab");
}

TEST_CASE("a script reads the same with CRLF, as Latin-1 and with a byte-order mark") {
  const std::string unix = "PAGE 1\nPanel 1\nMARA runs to the caf\u00e9.\nMARA: Allons!\n";
  std::string crlf, latin = unix;
  for (const char c : unix) crlf += c == '\n' ? std::string("\r\n") : std::string(1, c);
  latin.replace(latin.find("\u00e9"), 2, "\xE9");
  const Beat beat = readText(unix).pages[0].beats[0];
  for (const std::string& other : {crlf, latin, "\xEF\xBB\xBF" + unix}) {
    const Beat same = readText(other).pages.at(0).beats.at(0);
    CHECK(same.description == beat.description);
    CHECK(same.copy.at(0).text == beat.copy[0].text);
  }
}
