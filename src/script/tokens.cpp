#include "script/tokens.h"

#include <array>

#include "script/text_case.h"

namespace tw {

namespace {

struct Mark {
  std::string_view text;
  Token::Kind kind;
  bool endsSentence;
};

constexpr std::array<Mark, 13> kMarks = {{{".", Token::Kind::Stop, true},
                                          {"!", Token::Kind::Stop, true},
                                          {"?", Token::Kind::Stop, true},
                                          {"\n", Token::Kind::Stop, true},
                                          {";", Token::Kind::Stop, false},
                                          {":", Token::Kind::Stop, true},
                                          {"\u2026", Token::Kind::Stop, false},
                                          {"\u2014", Token::Kind::Stop, false},
                                          {"\u2013", Token::Kind::Stop, false},
                                          {"--", Token::Kind::Stop, false},
                                          {"(", Token::Kind::Comma, false},
                                          {")", Token::Kind::Comma, false},
                                          {",", Token::Kind::Comma, false}}};

constexpr std::array<std::string_view, 4> kCurly = {"\u201C", "\u201D", "\u2018", "\u201E"};

bool isWordByte(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return std::isalnum(byte) != 0 || byte >= 0x80 || c == '\'' || c == '#';
}

const Mark* markAt(std::string_view text) {
  for (const Mark& mark : kMarks)
    if (text.starts_with(mark.text)) return &mark;
  return nullptr;
}

std::size_t curlyAt(std::string_view text) {
  for (const std::string_view quote : kCurly)
    if (text.starts_with(quote)) return quote.size();
  return 0;
}

bool isContracted(std::string_view before) {
  static constexpr std::array<std::string_view, 8> kWords = {"he",   "she",   "it",   "who",
                                                             "that", "there", "here", "what"};
  for (const std::string_view word : kWords)
    if (before == word) return true;
  return false;
}

Token wordToken(std::string_view text) {
  while (text.starts_with('\'')) text.remove_prefix(1);
  Token token{Token::Kind::Word, std::string(text), folded(text)};
  const bool apostropheS = token.low.ends_with("'s");
  if (!apostropheS && !token.low.ends_with("s'")) {
    while (token.low.ends_with('\'')) token.low.pop_back(), token.text.pop_back();
    return token;
  }
  token.low.resize(token.low.size() - (apostropheS ? 2 : 1));
  // A curly apostrophe takes three bytes in the text as written.
  const std::size_t end = token.text.find_last_of(apostropheS ? "sS" : "'\x99");
  token.text.resize(std::min(end, token.text.size()));
  while (!token.text.empty() && (token.text.back() == '\'' || token.text.ends_with("\u2019")))
    token.text.resize(token.text.size() - (token.text.back() == '\'' ? 1 : 3));
  token.possessive = !isContracted(token.low);
  return token;
}

}  // namespace

std::vector<Token> tokensOf(std::string_view text) {
  std::vector<Token> tokens;
  bool start = true;
  for (std::size_t i = 0; i < text.size();) {
    const std::string_view ahead = text.substr(i);
    if (const Mark* mark = markAt(ahead)) {
      tokens.push_back(
          {mark->kind, std::string(mark->text), mark->kind == Token::Kind::Stop ? "." : ","});
      start |= mark->endsSentence;
      i += mark->text.size();
    } else if (const std::size_t quote = curlyAt(ahead)) {
      i += quote;
    } else if (!isWordByte(text[i])) {
      ++i;
    } else {
      std::size_t end = i;
      while (end < text.size() && isWordByte(text[end]) && curlyAt(text.substr(end)) == 0 &&
             (static_cast<unsigned char>(text[end]) < 0x80 || markAt(text.substr(end)) == nullptr))
        ++end;
      Token token = wordToken(text.substr(i, end - i));
      token.startsSentence = start;
      start &= token.low.empty();
      if (!token.low.empty()) tokens.push_back(std::move(token));
      i = end;
    }
  }
  return tokens;
}

std::vector<std::string> phraseOf(std::string_view text) {
  std::vector<std::string> words;
  for (Token& token : tokensOf(text))
    if (token.isWord()) words.push_back(std::move(token.low));
  return words;
}

const std::string& wordAt(const std::vector<Token>& tokens, std::size_t at) {
  static const std::string kNone;
  return at < tokens.size() && tokens[at].isWord() ? tokens[at].low : kNone;
}

}  // namespace tw
