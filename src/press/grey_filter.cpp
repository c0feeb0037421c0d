#define POINTERHOLDER_TRANSITION 4
#include "press/grey_filter.h"

#include <qpdf/Pl_Buffer.hh>

namespace tw {

namespace {

using Token = QPDFTokenizer::Token;

bool isNumber(const Token& token) {
  return token.getType() == QPDFTokenizer::tt_integer || token.getType() == QPDFTokenizer::tt_real;
}

bool isSpace(const Token& token) {
  return token.getType() == QPDFTokenizer::tt_space || token.getType() == QPDFTokenizer::tt_comment;
}

/// Where the last three numbers stand among the held tokens, if those are all the operands.
std::vector<std::size_t> operands(const std::vector<Token>& held) {
  std::vector<std::size_t> numbers;
  for (std::size_t i = 0; i < held.size(); ++i) {
    if (isSpace(held[i])) continue;
    if (!isNumber(held[i])) return {};
    numbers.push_back(i);
  }
  return numbers;
}

}  // namespace

void GreyFilter::handleToken(Token const& token) {
  if (token.getType() != QPDFTokenizer::tt_word) {
    held_.push_back(token);
    return;
  }
  const bool isFill = token.getValue() == "rg", isLine = token.getValue() == "RG";
  const std::vector<std::size_t> at =
      isFill || isLine ? operands(held_) : std::vector<std::size_t>{};
  const bool grey = at.size() == 3 && held_[at[0]].getValue() == held_[at[1]].getValue() &&
                    held_[at[0]].getValue() == held_[at[2]].getValue();
  // The space before the first number keeps it apart from the operator before.
  if (grey)
    held_.erase(held_.begin() + static_cast<long>(at[0]) + 1,
                held_.begin() + static_cast<long>(at[2]) + 1);
  flush();
  if (grey)
    write(isFill ? "g" : "G");
  else
    writeToken(token);
}

void GreyFilter::handleEOF() {
  flush();
}

void GreyFilter::flush() {
  for (const Token& token : held_) writeToken(token);
  held_.clear();
}

std::string filteredContent(QPDFPageObjectHelper& page, GreyFilter& filter) {
  Pl_Buffer out("filtered content");
  page.filterContents(&filter, &out);
  const std::shared_ptr<Buffer> buffer = out.getBufferSharedPointer();
  return {reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize()};
}

}  // namespace tw
