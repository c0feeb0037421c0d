// What holds of a character's look at a moment of the story: the note of the cast list, then every
// statement from its beat on. In another strand of the story (a flashback) only what lasts counts.
#pragma once

#include <map>
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
};

struct BodyMark {
  std::string kind, place, side;  ///< side: left, right, both or empty
  bool lasting = false, paired = false;
  const LookNote* note = nullptr;
};

struct LookHeld {
  std::vector<Dressing> dressings;  ///< beside the note of the cast list, in story order
  std::vector<BodyMark> marks;
  std::map<std::string, std::string> hands;  ///< hand by the thing's words: "lantern" → left
  std::string hand;                          ///< the hand that works, or empty
};

LookHeld lookAt(const Character& character, const StoryTime& story, std::size_t moment,
                const LookWords& words);

/// Says of every thing in the hand of somebody whose looks name its hand, or who is left- or
/// right-handed, which hand holds it. What the script says of a panel stays.
void sayHands(Job& job, const LookWords& words);

}  // namespace tw
