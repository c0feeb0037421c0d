// Scenes of the story and their place in story time. A scene is opened by a heading in the script,
// or by the artist; every beat knows its scene by id. A page or spread does not end a scene.
#pragma once

#include <optional>
#include <string>

namespace tw {

inline constexpr std::string_view kPresent = "present", kFlashback = "flashback",
                                  kFlashForward = "flash-forward";

/// A stretch of the story at one place and time.
struct StoryScene {
  std::string id;                ///< "s3": stable, also through a revised script
  std::string heading;           ///< as in the script; empty when nothing opens it in words
  std::string side;              ///< "interior", "exterior", "both" or empty
  std::string place;             ///< "the boat"
  std::string time;              ///< of day, or "continuous", "later"; empty: as before
  std::string strand{kPresent};  ///< present, flashback or flash-forward
  double years = 0;              ///< from the story's present as the script says; < 0 earlier
  int line = 0;                  ///< of the heading in the script, from 1
  bool operator==(const StoryScene&) const = default;
};

/// The artist's corrections of one scene; absent fields keep what the script says.
struct SceneChange {
  std::optional<std::string> place, time;
  std::optional<std::string> strand;
  std::optional<double> years;
  std::optional<std::string> after, before;  ///< id of the scene that is next to it in story time
  bool operator==(const SceneChange&) const = default;
};

}  // namespace tw
