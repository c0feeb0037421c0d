// A text as words and stops, the form in which the breakdown reads descriptions. Words keep their
// spelling beside their lower-case form; other signs are left out.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tw {

struct Token {
  enum class Kind { Word, Comma, Stop };
  Kind kind = Kind::Word;
  std::string text;         ///< as written, without a possessive ending
  std::string low;          ///< folded; "," or "." for marks
  bool possessive = false;  ///< "Mara's"
  bool startsSentence = false;

  bool isWord() const { return kind == Kind::Word; }
};

/// Words split at spaces and hyphens; brackets and quotes left out; dashes, line ends, colons and
/// full stops are stops.
std::vector<Token> tokensOf(std::string_view text);
/// The folded words alone, as phrases are kept in the lexicon.
std::vector<std::string> phraseOf(std::string_view text);
/// The folded word at that place, or empty outside the text.
const std::string& wordAt(const std::vector<Token>& tokens, std::size_t at);

}  // namespace tw
