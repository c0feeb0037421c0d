// From the words of a character's note to a look. The words are data (presets/wardrobe): what each
// garment covers, how dark it is and how it is cut. Whoever is not described gets an everyday
// outfit by the id, always the same one, and nobody is undressed or bald unless the note says so.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "job/beat.h"
#include "stage/look.h"

namespace tw {

/// A change to a look: one field set.
struct LookChange {
  std::string field;  ///< as in the file: "top", "skirt length", …
  std::string word;   ///< value of fields that take a word, the name of a value included
  double number = 0;
};

struct Garment {
  std::vector<std::string> words;
  std::vector<LookChange> changes;
};

class Wardrobe {
 public:
  static Result<Wardrobe> load();  ///< presets/wardrobe; every problem of the file at once
  static Result<Wardrobe> read(std::string_view bytes, const std::string& fileName);

  Look lookOf(const Character& character) const;

 private:
  friend class WardrobeReader;
  std::vector<Garment> garments_;  ///< in the order of dressing: what comes later lies over
  std::map<std::string, double> values_;
  std::map<std::string, std::string> shades_;  ///< word before a garment → name of a value
  std::vector<std::string> denials_;
  std::vector<std::vector<LookChange>> hers_, his_, childs_;
};

}  // namespace tw
