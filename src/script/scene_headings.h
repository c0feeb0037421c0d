// Headings that open a scene, as writers write them: "INT. BELL TOWER - NIGHT", "FLASHBACK - TEN
// YEARS EARLIER", "LATER THAT NIGHT", "BACK TO PRESENT". What a heading says of place, time of day
// and story time is read from its line alone; what it means after others is for scenes.cpp.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace tw {

enum class StoryShift {
  None,
  IntoPast,    ///< a flashback begins, `years` back when they are said
  IntoFuture,  ///< a flash-forward begins
  Onward,      ///< the present moves on by `years`
  ToPresent    ///< back from where the story went
};

struct SceneHeading {
  std::string text;         ///< as written
  std::string side;         ///< interior, exterior, both; empty when it names no place
  std::string place, time;  ///< lower case, empty when not said
  StoryShift shift = StoryShift::None;
  double years = 0;       ///< ≥ 0, of the shift
  bool thisOnly = false;  ///< the shift stands in a heading of a place and ends with its scene
};

/// The heading that the line is, or begins with when description follows a place in capitals.
std::optional<SceneHeading> sceneHeadingFrom(std::string_view line);
/// Nothing but words of story time: "Ten years earlier", in any case; for captions.
std::optional<SceneHeading> storyTimeFrom(std::string_view words);

/// The part of a line that is the heading of a place: its words in capitals, or its first sentence
/// when nothing is in capitals.
std::string_view slugPart(std::string_view line);

}  // namespace tw
