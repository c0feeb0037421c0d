// Words of copy as a reader counts them: by Unicode's word boundaries, dashes, dots and emoji
// left out. The trade's word limits are checked against this count.
#pragma once

#include <memory>
#include <string_view>

namespace tw {

/// Keeps the boundary rules between calls; making them is slow.
class WordCounter {
 public:
  WordCounter();
  ~WordCounter();
  WordCounter(const WordCounter&) = delete;
  WordCounter& operator=(const WordCounter&) = delete;

  int count(std::string_view utf8);

 private:
  struct Rules;
  std::unique_ptr<Rules> rules_;
};

}  // namespace tw
