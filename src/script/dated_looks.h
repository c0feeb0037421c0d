// Parts of a note in the cast list that hold for some pages only: "from page 6: wrapped in a
// blanket, cut on the left cheek".
#pragma once

#include <string>
#include <vector>

namespace tw {

/// "from page 6 panel 2 to page 7: helmet", "page 6: …", "in the flashback: …"
struct DatedLook {
  std::string who;                                       ///< character id
  int page = 0, panel = 0, lastPage = 0, lastPanel = 0;  ///< lastPage 0: on and on
  bool flashback = false;
  std::string words;
};
/// Takes the dated parts out of a note of the cast list.
std::vector<DatedLook> takeDatedLooks(std::string& note);

}  // namespace tw
