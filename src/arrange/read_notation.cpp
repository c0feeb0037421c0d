#include "arrange/read_notation.h"

#include <cctype>

namespace tw {

namespace {

// A tree of kMostLeaves panels nests less deep than it has panels and needs no more letters than
// this; longer text is not ours.
constexpr std::size_t kMostLetters = 8 * kMostLeaves;

class NotationReader {
 public:
  explicit NotationReader(std::string_view text) : text_(text) {}

  std::optional<TreeNode> whole() {
    auto tree = node();
    if (!tree || at_ != text_.size()) return std::nullopt;
    return tree;
  }

 private:
  bool atDigit() const {
    return at_ < text_.size() && std::isdigit(static_cast<unsigned char>(text_[at_])) != 0;
  }

  std::optional<TreeNode> node() {
    if (at_ >= text_.size()) return std::nullopt;
    if (!atDigit()) return inner();
    while (atDigit()) ++at_;  // which number it is, whoever writes the tree again will find
    return TreeNode{};
  }

  std::optional<TreeNode> inner() {
    const char open = text_[at_++];
    if (open != '(' && open != '[') return std::nullopt;
    TreeNode out{open == '(', {}};
    const char close = out.isRow ? ')' : ']';
    while (at_ < text_.size() && text_[at_] != close) {
      if (text_[at_] == ' ') ++at_;
      auto child = node();
      if (!child) return std::nullopt;
      out.children.push_back(std::move(*child));
    }
    if (at_ >= text_.size() || out.children.size() < 2) return std::nullopt;
    ++at_;
    return out;
  }

  std::string_view text_;
  std::size_t at_ = 0;
};

bool takesTurns(const TreeNode& tree) {
  for (const TreeNode& child : tree.children)
    if (!child.isLeaf() && (child.isRow == tree.isRow || !takesTurns(child))) return false;
  return true;
}

}  // namespace

int leavesOf(const TreeNode& tree) {
  if (tree.isLeaf()) return 1;
  int sum = 0;
  for (const TreeNode& child : tree.children) sum += leavesOf(child);
  return sum;
}

std::optional<TreeNode> treeNoted(std::string_view text) {
  if (text.size() > kMostLetters) return std::nullopt;
  auto tree = NotationReader(text).whole();
  if (!tree || leavesOf(*tree) > kMostLeaves || !takesTurns(*tree)) return std::nullopt;
  // Written again it must be the same, so numbers out of order and stray spaces are refused.
  if (notation(*tree) != text) return std::nullopt;
  return tree;
}

}  // namespace tw
