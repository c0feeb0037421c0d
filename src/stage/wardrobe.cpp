// Reading a look out of words.
//
//  1 The note becomes lower-case words; commas and full stops stay as words of their own.
//  2 At each word the longest garment phrase wins ("long coat" before "coat"). A denial at most
//    two words before it in the same phrase ("no beard") takes it out again.
//  3 An everyday outfit is chosen by the id (FNV-1a: G. Fowler, L. Noll, P. Vo; constants public).
//  4 The garments found are put on over it in the order of the file. A word for a shade before the
//    garment ("black coat") takes the place of all its values.
//  5 What the story puts on, takes off or puts in place of everything follows in story order.
// Cost: words of the note times garments. Does badly: garments that somebody else wears.
#include "stage/wardrobe.h"

#include <algorithm>
#include <cctype>
#include <cstdint>
#include <optional>
#include <utility>

#include "job/look_words.h"
#include "stage/look_fields.h"

namespace tw {
namespace {

using Words = std::vector<std::string>;
constexpr std::size_t kShadeReach = 3;   // "black, worn coat" reaches this far, phrases do not
constexpr std::size_t kDenialReach = 2;  // "without a hat"

bool standsAt(const Words& words, std::size_t at, const Words& phrase) {
  if (at + phrase.size() > words.size()) return false;
  for (std::size_t i = 0; i + 1 < phrase.size(); ++i)
    if (words[at + i] != phrase[i]) return false;
  const std::string &last = words[at + phrase.size() - 1], &asked = phrase.back();
  return last == asked || last == asked + "s";
}

struct Worn {
  std::size_t garment = 0, at = 0, length = 0;
};

std::optional<Worn> longestAt(const std::vector<Garment>& garments, const Words& words,
                              std::size_t at) {
  std::optional<Worn> best;
  for (std::size_t g = 0; g < garments.size(); ++g)
    for (const std::string& text : garments[g].words) {
      const Words phrase = plainWords(text);
      if (standsAt(words, at, phrase) && (!best || phrase.size() > best->length))
        best = Worn{g, at, phrase.size()};
    }
  return best;
}

/// Words before `at` in the same phrase, the nearest first.
Words before(const Words& words, std::size_t at, std::size_t most) {
  Words out;
  while (at-- > 0 && out.size() < most && words[at] != ",") out.push_back(words[at]);
  return out;
}

std::uint32_t numberOf(std::string_view word) {
  std::uint32_t hash = 2166136261u;
  for (const char c : word) hash = (hash ^ static_cast<std::uint8_t>(c)) * 16777619u;
  // The last letter hardly reaches the upper bits; fold them over the lower ones.
  return (hash ^ (hash >> 15)) * 2246822519u >> 16;
}

}  // namespace

std::vector<Wardrobe::Piece> Wardrobe::piecesIn(std::string_view text) const {
  const Words words = plainWords(text);
  std::vector<Piece> pieces;
  for (std::size_t at = 0; at < words.size();) {
    const std::optional<Worn> found = longestAt(garments_, words, at);
    if (!found) {
      ++at;
      continue;
    }
    const Words denials = before(words, at, kDenialReach);
    const bool denied = std::any_of(denials.begin(), denials.end(), [&](const std::string& w) {
      return std::find(denials_.begin(), denials_.end(), w) != denials_.end();
    });
    std::string shade;
    for (const std::string& word : before(words, at, kShadeReach))
      if (const auto known = shades_.find(word); shade.empty() && known != shades_.end())
        shade = known->second;
    if (!denied) pieces.push_back({found->garment, shade});
    at += found->length;
  }
  return pieces;
}

bool Wardrobe::isCostume(const Piece& piece) const {
  const auto& changes = garments_[piece.garment].changes;
  return std::any_of(changes.begin(), changes.end(), [](const LookChange& change) {
    return change.field != "hair" && change.field != "hair cut" && change.field != "beard" &&
           change.field != "moustache";
  });
}

std::vector<Wardrobe::Piece> Wardrobe::worn(const Character& character,
                                            const LookHeld& held) const {
  std::vector<Piece> out = piecesIn(character.note);
  for (const Dressing& dressing : held.dressings) {
    const std::vector<Piece> pieces = piecesIn(dressing.words);
    if (dressing.instead) std::erase_if(out, [&](const Piece& p) { return isCostume(p); });
    std::erase_if(out, [&](const Piece& p) {
      return dressing.off ? isSameKind(p, pieces) : isReplaced(p, pieces);
    });
    if (!dressing.off) out.insert(out.end(), pieces.begin(), pieces.end());
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const Piece& a, const Piece& b) { return a.garment < b.garment; });
  return out;
}

/// Of hats, beards and ways to wear the hair the last one told counts.
bool Wardrobe::isReplaced(const Piece& piece, const std::vector<Piece>& by) const {
  const auto sets = [&](const Piece& p, const char* field) {
    const auto& changes = garments_[p.garment].changes;
    return std::any_of(changes.begin(), changes.end(),
                       [&](const LookChange& change) { return change.field == field; });
  };
  return std::any_of(by.begin(), by.end(), [&](const Piece& other) {
    return (sets(piece, "hat kind") && sets(other, "hat kind")) ||
           (sets(piece, "hair cut") && sets(other, "hair cut")) ||
           (sets(piece, "beard") && sets(other, "beard"));
  });
}

/// "Takes off the coat" takes off the long coat too.
bool Wardrobe::isSameKind(const Piece& piece, const std::vector<Piece>& named) const {
  const auto ends = [](const std::string& text, const std::string& end) {
    return text == end || text.ends_with(" " + end);
  };
  return std::any_of(named.begin(), named.end(), [&](const Piece& other) {
    if (other.garment == piece.garment || isReplaced(piece, {other})) return true;
    for (const std::string& name : garments_[other.garment].words)
      for (const std::string& word : garments_[piece.garment].words)
        if (ends(word, name)) return true;
    return false;
  });
}

Look Wardrobe::lookOf(const Character& character, const LookHeld& held) const {
  Look look;
  look.clothed = true;
  const auto& outfits = character.build == "child"     ? childs_
                        : character.sex == Sex::Female ? hers_
                                                       : his_;
  const auto put = [&](const std::vector<LookChange>& changes, const std::string& shade) {
    for (const LookChange& change : changes) applyTo(look, change, values_, shade);
  };
  put(outfits[numberOf(character.id) % outfits.size()], {});
  for (const Piece& piece : worn(character, held))
    put(garments_[piece.garment].changes, piece.shade);
  for (const BodyMark& mark : held.marks) {
    const double side = mark.side == "right" ? 1 : mark.side == "left" || mark.paired ? -1 : 0;
    look.marks.push_back({mark.kind, mark.place, side});
    if (mark.side == "both") look.marks.push_back({mark.kind, mark.place, 1});
  }
  return look;
}

std::vector<std::string> Wardrobe::garmentsIn(std::string_view words) const {
  std::vector<Piece> pieces = piecesIn(words);
  std::stable_sort(pieces.begin(), pieces.end(),
                   [](const Piece& a, const Piece& b) { return a.garment < b.garment; });
  std::vector<std::string> out;
  for (const Piece& piece : pieces)
    if (out.empty() || out.back() != garments_[piece.garment].words.front())
      out.push_back(garments_[piece.garment].words.front());
  return out;
}

std::vector<std::string> Wardrobe::wornBy(const Character& character, const LookHeld& held) const {
  std::vector<std::string> out;
  for (const Piece& piece : worn(character, held))
    if (isCostume(piece) && (out.empty() || out.back() != garments_[piece.garment].words.front()))
      out.push_back(garments_[piece.garment].words.front());
  return out;
}

}  // namespace tw
