#include "script/dated_looks.h"

#include <optional>
#include <string_view>

#include "script/number_words.h"
#include "script/text_case.h"

namespace tw {

namespace {

/// Reads "page 6 panel 2" off the front of the words.
class DateReader {
 public:
  explicit DateReader(std::string_view text) : rest_(text) {}

  std::optional<DatedLook> read() {
    DatedLook look;
    for (const std::string_view start : {"in the ", "during the ", "the "}) take(start);
    if (take("flashbacks") || take("flashback")) {
      look.flashback = true;
      return finished(look);
    }
    const bool from = take("from ");
    if (!from) take("on "), take("in ");
    if (!takePlace(look.page, look.panel)) return {};
    bool range = false;
    for (const std::string_view mark : {"to ", "until ", "till ", "through ", "-", "\u2013"})
      range = range || take(mark);
    if (range) {
      if (!takePlace(look.lastPage, look.lastPanel) && !takeNumber(look.lastPage)) return {};
    } else if (!from) {
      look.lastPage = look.page;
      look.lastPanel = look.panel;
    } else {
      take("on");
    }
    return finished(look);
  }

 private:
  std::optional<DatedLook> finished(DatedLook look) {
    rest_ = withoutLeadingMarks(rest_, ":,-");
    if (bareText(rest_).empty()) return {};
    look.words = std::string(bareText(rest_));
    return look;
  }

  bool take(std::string_view word) {
    if (!startsWithFolded(rest_, word)) return false;
    rest_ = bareText(rest_.substr(word.size()));
    return true;
  }
  bool takeNumber(int& out) {
    const std::optional<NumberRead> number = readNumber(rest_);
    if (!number) return false;
    out = number->value;
    rest_ = bareText(rest_.substr(number->length));
    return true;
  }
  bool takePlace(int& page, int& panel) {
    if (!take("pages ") && !take("page ") && !take("p. ")) return false;
    if (!takeNumber(page)) return false;
    const std::string_view before = rest_;
    take(",");
    if (!take("panel ") || !takeNumber(panel)) rest_ = before, panel = 0;
    return true;
  }

  std::string_view rest_;
};

}  // namespace

std::vector<DatedLook> takeDatedLooks(std::string& note) {
  std::vector<DatedLook> out;
  std::string kept;
  for (std::size_t start = 0; start <= note.size();) {
    std::size_t end = start;
    while (end < note.size() && note[end] != ';' &&
           !(note[end] == '.' && (end + 1 == note.size() || note[end + 1] == ' ')))
      ++end;
    const std::string_view part = bareText(std::string_view(note).substr(start, end - start));
    if (auto look = DateReader(part).read())
      out.push_back(std::move(*look));
    else
      kept += note.substr(start, std::min(end + 1, note.size()) - start);
    start = end + 1;
  }
  if (out.empty()) return out;
  std::string_view bare = bareText(kept);
  while (bare.ends_with(';')) bare = bareText(bare.substr(0, bare.size() - 1));
  note = std::string(bare);
  return out;
}

}  // namespace tw
