// One thing that a check found: what was measured, against which limit, where, why it matters, what
// mends it and how sure the evidence is. Made by review, drawn by press, printed by the terminal.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "geometry/shapes.h"

namespace tw {

/// Must: the brief asks for it or it cannot be printed so. Should: craft. Look: may well be meant.
enum class Severity { Must, Should, Look };
std::string_view nameOf(Severity severity);  ///< "must", "should", "look"

enum class Evidence { Published, CommonPractice, Ours };
std::string_view nameOf(Evidence evidence);  ///< "published", "common practice", "ours"

/// A change that was tried, and what the measure then is.
struct TriedRemedy {
  std::string change;  ///< "mirror the panel", in words that follow "try: "
  double before = 0, after = 0;
  bool helps = false;
  std::string aside;  ///< what it would harm, or empty
  bool operator==(const TriedRemedy&) const = default;
};

/// A finding that the artist has answered: it stays in the list, with her reason.
struct Silenced {
  std::string rule;
  std::string beat;  ///< empty: the finding on the page as a whole
  std::string reason;
  bool operator==(const Silenced&) const = default;
};

struct Finding {
  std::string rule;  ///< name of the rule, as in presets/rules
  Severity severity = Severity::Should;
  int page = 0, panel = 0;  ///< panel in reading order from 1; 0 = the page
  std::string beat;         ///< of the panel; empty for the page
  std::string measure;      ///< what was measured, in words
  double value = 0, limit = 0;
  std::string unit;  ///< "mm", "%", …
  Polygon place;     ///< mm on the page; empty: the whole panel or page
  std::string reason;
  std::string remedy;
  std::vector<TriedRemedy> tried;  ///< the best first
  Evidence evidence = Evidence::Ours;
  std::string source;       ///< of published evidence, with how surely it is known
  std::string silencedWhy;  ///< the artist's reason; empty: not silenced
  bool operator==(const Finding&) const = default;
};

}  // namespace tw
