// What holds of a character's look at a moment of the story: the note of the cast list, then every
// statement from its beat on. In another strand of the story (a flashback) only what lasts counts.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "job/look_words.h"
#include "job/story_time.h"

namespace tw {

/// Something put on over, put on in place of everything, or taken off.
struct Dressing {
  std::string words;
  bool off = false, instead = false;
  const LookNote* note = nullptr;  ///< null: the cast list's note
  bool operator==(const Dressing&) const = default;
};

struct BodyMark {
  std::string kind, place, side;  ///< side: left, right, both or empty
  bool lasting = false, paired = false;
  const LookNote* note = nullptr;
  bool operator==(const BodyMark&) const = default;
};

struct LookHeld {
  std::vector<Dressing> dressings;  ///< beside the note of the cast list, in story order
  std::vector<BodyMark> marks;
  std::map<std::string, std::string> hands;  ///< hand by the thing's words: "lantern" → left
  std::string hand;                          ///< the hand that works, or empty
  bool operator==(const LookHeld&) const = default;
};

/// One character's looks along the whole story; the words are read once. Borrows the character and
/// the story.
class LooksAlong {
 public:
  LooksAlong(const Character& character, const StoryTime& story, const LookWords& words);
  LookHeld at(std::size_t moment) const;

 private:
  struct Statement {
    std::size_t from = 0;
    std::optional<std::size_t> until;
    const LookNote* note = nullptr;
    std::vector<LookItem> items;
  };
  const Character& character_;
  const StoryTime& story_;
  std::vector<LookItem> usual_;        ///< of the note of the cast list
  std::vector<Statement> statements_;  ///< in story order
};

LookHeld lookAt(const Character& character, const StoryTime& story, std::size_t moment,
                const LookWords& words);

/// Says of every thing in the hand of somebody whose looks name its hand, or who is left- or
/// right-handed, which hand holds it. What the script says of a panel stays.
void sayHands(Job& job, const LookWords& words);

}  // namespace tw
