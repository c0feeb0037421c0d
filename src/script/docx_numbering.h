// The labels that a word processor draws in front of the items of its automatic lists. They stand
// nowhere in the text, yet writers let them number pages, panels and copy.
#pragma once

#include <map>
#include <pugixml.hpp>
#include <string>
#include <string_view>
#include <utility>

namespace tw {

class DocxNumbering {
 public:
  /// `xml` is word/numbering.xml, empty when the document has no lists.
  explicit DocxNumbering(std::string_view xml);

  /// "1. " or "Panel 3: " in front of that paragraph, or empty. Counts as it is asked.
  std::string labelOf(const pugi::xml_node& paragraph);

 private:
  struct Level {
    std::string text;  ///< "%1." with the level's own number as %N
    int start = 1;
    bool decimal = false;
  };
  using LevelKey = std::pair<std::string, int>;  ///< list id and depth

  std::map<std::string, std::string> listOf_;  ///< numId → abstract list
  std::map<LevelKey, Level> levels_;
  std::map<LevelKey, int> counts_;
};

}  // namespace tw
