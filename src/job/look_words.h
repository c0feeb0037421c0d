// Reads what is said of a look: "wrapped in a blanket, a cut on the left cheek, lantern in the
// right hand, left-handed". Garments stay words, for the wardrobe; marks and hands are understood
// here. The words are data in presets/wardrobe/marks.json. Left and right are the character's own.
#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace tw {

struct LookItem {
  enum class Kind { Costume, Mark, WorkingHand, Held };
  Kind kind = Kind::Costume;
  bool off = false;         ///< it is no longer there
  std::string words;        ///< of this item, without the words that take it off
  std::string mark, place;  ///< names as in the file; of a mark taken off the place may be empty
  std::string side;         ///< left, right, both or empty
  bool lasting = false, paired = false;
  std::string thing;  ///< held: "lantern"
};

class LookWords {
 public:
  static Result<LookWords> load();
  static Result<LookWords> read(std::string_view bytes, const std::string& fileName);

  std::vector<LookItem> itemsIn(std::string_view words) const;

  using Words = std::set<std::string, std::less<>>;
  Words causes, handOver, lostBy, isLost, found;  ///< words of actions, see the file

 private:
  friend class LookWordsReader;
  struct MarkEntry {
    std::string name;
    bool lasting = false;
    std::string place;
  };
  struct PlaceEntry {
    std::string name;
    bool paired = false;
  };
  std::map<std::string, MarkEntry, std::less<>> marks_;    ///< by phrase
  std::map<std::string, PlaceEntry, std::less<>> places_;  ///< by phrase
  Words off_;
};

/// Lower-case words of a text; commas, semicolons and full stops are words ",".
std::vector<std::string> plainWords(std::string_view text);

}  // namespace tw
