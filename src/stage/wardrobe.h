// From the words of a character's note to a look. The words are data (presets/wardrobe): what each
// garment covers, how dark it is and how it is cut. Whoever is not described gets an everyday
// outfit by the id, always the same one, and nobody is undressed or bald unless the note says so.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "job/look_at.h"
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

  /// By the note of the cast list alone.
  Look lookOf(const Character& character) const { return lookOf(character, {}); }
  /// With everything that holds beside the note, marks included.
  Look lookOf(const Character& character, const LookHeld& held) const;

  /// Names of the garments in words, each once, in the order of dressing; none: no garment is
  /// known.
  std::vector<std::string> garmentsIn(std::string_view words) const;
  /// Names of all that is worn: note and dressings, without hair and beard.
  std::vector<std::string> wornBy(const Character& character, const LookHeld& held) const;

 private:
  struct Piece {
    std::size_t garment = 0;
    std::string shade;
    bool operator==(const Piece&) const = default;
  };
  std::vector<Piece> piecesIn(std::string_view words) const;
  std::vector<Piece> worn(const Character& character, const LookHeld& held) const;
  bool isCostume(const Piece& piece) const;  ///< not hair or beard
  bool isReplaced(const Piece& piece, const std::vector<Piece>& by) const;
  bool isSameKind(const Piece& piece, const std::vector<Piece>& named) const;

  friend class WardrobeReader;
  std::vector<Garment> garments_;  ///< in the order of dressing: what comes later lies over
  std::map<std::string, double> values_;
  std::map<std::string, std::string> shades_;  ///< word before a garment → name of a value
  std::vector<std::string> denials_;
  std::vector<std::vector<LookChange>> hers_, his_, childs_;
};

}  // namespace tw
