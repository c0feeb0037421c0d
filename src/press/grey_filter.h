// Turns the RGB greys that cairo writes into grey proper, so that type prints with black alone.
#pragma once

#include <qpdf/QPDFObjectHandle.hh>
#include <qpdf/QPDFPageObjectHelper.hh>
#include <string>
#include <vector>

namespace tw {

/// Replaces `x x x rg` by `x g` and `x x x RG` by `x G`; all else, white space too, stays.
class GreyFilter final : public QPDFObjectHandle::TokenFilter {
 public:
  void handleToken(QPDFTokenizer::Token const& token) override;
  void handleEOF() override;

 private:
  void flush();

  std::vector<QPDFTokenizer::Token> held_;  // since the last operator
};

/// The page's whole content after the filter.
std::string filteredContent(QPDFPageObjectHelper& page, GreyFilter& filter);

}  // namespace tw
