// Everyone who may be named in a script: the declared cast, then speakers, then names in capitals.
// Finds a person by the name on a cue or in a description.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "job/beat.h"
#include "script/tokens.h"

namespace tw {

class Roster {
 public:
  /// Index of the new person; of the old one when the id is there already.
  std::size_t add(Character person);
  std::optional<std::size_t> find(std::string_view name) const;
  /// The longest name that starts at that token, written with a capital. Sets `length` in tokens.
  std::optional<std::size_t> findAt(const std::vector<Token>& tokens, std::size_t at,
                                    std::size_t& length) const;
  /// A declared name at most one letter off, for advice; empty when there is none.
  std::string nearest(std::string_view name) const;

  const std::vector<Character>& people() const { return people_; }
  Character& person(std::size_t index) { return people_[index]; }
  const std::string& idOf(std::size_t index) const { return people_[index].id; }

 private:
  void addName(std::string_view name, std::size_t index, bool whole);

  struct NameEntry {
    std::size_t person;
    bool whole;      ///< the full name or an alias of several words beats one word of a name
    bool ambiguous;  ///< one word shared by two people names nobody
  };
  std::vector<Character> people_;
  std::map<std::string, std::size_t, std::less<>> byId_;
  std::map<std::vector<std::string>, NameEntry> names_;
  std::size_t longest_ = 1;
};

}  // namespace tw
