// What is said of a character's look and from when on, and pictures that show it. The words are
// those of the cast list's notes; what they mean is read by the wardrobe when a figure is dressed.
#pragma once

#include <string>

namespace tw {

/// One statement: it holds from a beat on in story time, until another takes its place.
struct LookNote {
  std::string from;      ///< id of the first beat for which it holds; empty: from the start
  std::string until;     ///< id of the last, in story time; empty: on and on
  std::string words;     ///< "wrapped in a blanket, cut on the left cheek, hair loose"
  bool instead = false;  ///< in place of the costume before, else put on over it
  bool told = false;     ///< the story shows how it comes about: put on, cut, handed over
  std::string source;    ///< "cast", "script" or "artist"
  bool operator==(const LookNote&) const = default;
};

/// A picture that shows what a character looks like, below art/reference/.
struct Reference {
  std::string file;
  std::string note;    ///< what it shows
  std::string rights;  ///< whose it is and who allowed its use
  bool operator==(const Reference&) const = default;
};

}  // namespace tw
