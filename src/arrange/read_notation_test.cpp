#include "arrange/read_notation.h"

#include <doctest/doctest.h>

namespace tw {

TEST_CASE("every tree of up to six panels is read back from its notation") {
  Progress progress;
  for (int panels = 1; panels <= 6; ++panels)
    for (const PackedTree& tree : enumerateTrees(panels, progress).trees) {
      const auto read = treeNoted(notation(treeFrom(tree)));
      REQUIRE(read);
      CHECK(packed(*read) == tree);
      CHECK(leavesOf(*read) == panels);
    }
}

TEST_CASE("what notation does not write is no arrangement") {
  for (const char* text : {"", "(", "1 2", "[1]", "[1 2", "[2 1]", "[1  2]", "[1 2 ]", "(1 (2 3))",
                           "[1 2)", "{1 2}", "[1 (2 3) 4] ", "x", "[1 [2 3]]", "[1 2] 3"}) {
    INFO(text);
    CHECK_FALSE(treeNoted(text));
  }
}

TEST_CASE("an arrangement of more panels than a page may have is refused") {
  std::string row = "(1";
  for (int i = 2; i <= kMostLeaves + 1; ++i) row += " " + std::to_string(i);
  CHECK_FALSE(treeNoted(row + ")"));
  CHECK_FALSE(treeNoted(std::string(100000, '[')));
}

}  // namespace tw
