// Stressed words in copy. The document keeps copy as plain text with marks around them, one star
// or underscore on each side or two; whoever sets or draws it asks here which words they are.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tw {

struct EmphasisRun {
  std::string text;  ///< without its marks
  bool strong = false;
};

/// The text in order, cut where stress begins and ends. Marks open before a word and close behind
/// one on the same line; "2 * 3", snake_case and marks without a partner are text.
std::vector<EmphasisRun> emphasisRuns(std::string_view text);

/// The text with a single star on each side of what is stressed.
std::string withStars(const std::vector<EmphasisRun>& runs);

/// The words alone.
std::string withoutStress(std::string_view text);

}  // namespace tw
