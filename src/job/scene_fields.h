// Field listings of scenes and their corrections. Reader, writer and published schema all follow
// these; see field.h.
#pragma once

#include "job/field.h"
#include "job/scene.h"

namespace tw {

inline constexpr double kMostYearsAway = 100000;

template <>
struct FieldsOf<StoryScene> {
  static constexpr std::string_view kName = "scene";
  static constexpr std::string_view kHelp = "A stretch of the story at one place and time.";
  template <class F>
  static void list(F& f) {
    using T = StoryScene;
    f("id", &T::id, required(word()), "Stable word, such as s3.");
    f("heading", &T::heading, anyText(), "As in the script; left out when nothing opens it.");
    f("side", &T::side, anyText(), "interior, exterior or both.");
    f("place", &T::place, anyText(), "Where it plays.");
    f("time", &T::time, anyText(), "Time of day, continuous or later; left out: as before.");
    f("strand", &T::strand, anyText(), "present, flashback or flash-forward.");
    f("years", &T::years, number(-kMostYearsAway, kMostYearsAway), "From the story's present.");
    f("line", &T::line, count(0, 10000000), "Line of the script, from 1.");
  }
};

template <>
struct FieldsOf<SceneChange> {
  static constexpr std::string_view kName = "scene_change";
  static constexpr std::string_view kHelp =
      "The artist's corrections of one scene; absent fields keep what the script says.";
  template <class F>
  static void list(F& f) {
    using T = SceneChange;
    f("place", &T::place, anyText(), "Place instead of the script's.");
    f("time", &T::time, anyText(), "Time of day instead of the script's.");
    f("strand", &T::strand, anyText(), "present, flashback or flash-forward.");
    f("years", &T::years, number(-kMostYearsAway, kMostYearsAway), "From the story's present.");
    f("after", &T::after, word(), "Id of the scene that it follows in story time.");
    f("before", &T::before, word(), "Id of the scene that it precedes in story time.");
  }
};

}  // namespace tw
