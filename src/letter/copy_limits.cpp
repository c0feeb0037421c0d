#include "letter/copy_limits.h"

#include <algorithm>
#include <array>
#include <sstream>

namespace tw {
namespace {

struct Limit {
  int panels, words;
};
/// Trade guides, production facts on lettering.
constexpr std::array<Limit, 11> kLimits{{{1, 210},
                                         {2, 105},
                                         {3, 70},
                                         {4, 52},
                                         {5, 42},
                                         {6, 35},
                                         {7, 30},
                                         {8, 26},
                                         {9, 23},
                                         {12, 17},
                                         {16, 13}}};

std::string number(int n, const char* what) {
  return std::to_string(n) + " " + what + (n == 1 ? "" : "s");
}

}  // namespace

int mostWordsPerPanel(int panelsOnPage) {
  for (const Limit& limit : kLimits) {
    if (panelsOnPage <= limit.panels) return limit.words;
  }
  return std::max(1, 210 / panelsOnPage);  // the same page total, shared out
}

int wordsIn(const CopyItem& item) {
  if (item.words > 0) return item.words;
  std::istringstream text(item.text);
  int count = 0;
  for (std::string word; text >> word;) ++count;
  return count;
}

std::vector<CopyFinding> wordFindings(const std::vector<CopyItem>& items, int panelsOnPage) {
  std::vector<CopyFinding> findings;
  int sum = 0;
  for (const CopyItem& item : items) {
    const int words = wordsIn(item);
    sum += words;
    if (words <= kMostWordsPerBalloon) continue;
    findings.push_back({item.id, "words per balloon",
                        "The balloon has " + number(words, "word") + "; more than " +
                            std::to_string(kMostWordsPerBalloon) + " tire the reader.",
                        "Cut it, or split it into two balloons.",
                        static_cast<double>(words) / kMostWordsPerBalloon - 1});
  }
  const int most = mostWordsPerPanel(std::max(1, panelsOnPage));
  if (sum > most) {
    findings.push_back(
        {"", "words per panel",
         "The panel has " + number(sum, "word") + "; with " + number(panelsOnPage, "panel") +
             " on the page " + std::to_string(most) + " is the most.",
         "Cut copy, or give the page fewer panels.", static_cast<double>(sum) / most - 1});
  }
  return findings;
}

}  // namespace tw
