#include "script/docx_numbering.h"

#include <fmt/format.h>

namespace tw {

namespace {

constexpr int kDeepestLevel = 9;  // ECMA-376: levels 0 to 8

std::string valueOf(const pugi::xml_node& node) {
  return node.attribute("w:val").as_string();
}

}  // namespace

DocxNumbering::DocxNumbering(std::string_view xml) {
  pugi::xml_document document;
  if (xml.empty() || !document.load_buffer(xml.data(), xml.size())) return;
  const pugi::xml_node root = document.child("w:numbering");
  for (const pugi::xml_node& num : root.children("w:num"))
    listOf_[num.attribute("w:numId").as_string()] = valueOf(num.child("w:abstractNumId"));
  for (const pugi::xml_node& list : root.children("w:abstractNum"))
    for (const pugi::xml_node& level : list.children("w:lvl")) {
      const LevelKey key{list.attribute("w:abstractNumId").as_string(),
                         level.attribute("w:ilvl").as_int()};
      const int start = level.child("w:start").attribute("w:val").as_int(1);
      levels_[key] = {valueOf(level.child("w:lvlText")), start,
                      valueOf(level.child("w:numFmt")) == "decimal"};
    }
}

std::string DocxNumbering::labelOf(const pugi::xml_node& paragraph) {
  const pugi::xml_node numbering = paragraph.child("w:pPr").child("w:numPr");
  const auto list = listOf_.find(valueOf(numbering.child("w:numId")));
  if (!numbering || list == listOf_.end()) return {};
  const int depth = numbering.child("w:ilvl").attribute("w:val").as_int();
  const auto found = levels_.find({list->second, depth});
  if (found == levels_.end() || !found->second.decimal) return {};
  const auto [count, first] = counts_.try_emplace({list->second, depth}, found->second.start);
  if (!first) ++count->second;
  for (int deeper = depth + 1; deeper < kDeepestLevel; ++deeper)
    counts_.erase({list->second, deeper});
  std::string label = found->second.text;
  const std::string mark = fmt::format("%{}", depth + 1);
  if (const std::size_t at = label.find(mark); at != std::string::npos)
    label.replace(at, mark.size(), std::to_string(count->second));
  return label + " ";
}

}  // namespace tw
