// The beats of a job along story time: flashbacks before the present, whatever page they stand on.
// Scenes come corrected and sorted, beats keep the script's order within their scene. A beat whose
// scene is unknown belongs to a scene without a heading.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "job/job.h"

namespace tw {

/// How a scene follows the one before it in story time.
enum class SceneStep {
  StraightOn,  ///< nothing can have changed between them
  SameTime,    ///< the same time of day, or not said otherwise
  Apart        ///< another time of day, day or strand of the story
};

/// One beat at its place in story time.
struct Moment {
  const Beat* beat = nullptr;
  int page = 1;
  std::size_t scene = 0;  ///< index into StoryTime::scenes
};

class StoryTime {
 public:
  explicit StoryTime(const Job& job);
  StoryTime(StoryTime&&) = default;

  /// In story order.
  const std::vector<StoryScene>& scenes() const { return scenes_; }
  const std::vector<Moment>& moments() const { return moments_; }

  std::optional<std::size_t> momentOf(const std::string& beat) const;
  const StoryScene& sceneOf(std::size_t moment) const { return scenes_[moments_[moment].scene]; }
  /// Apart for the first scene.
  SceneStep stepInto(std::size_t scene) const;
  /// The loosest step between two moments, the earlier one first.
  SceneStep stepBetween(std::size_t from, std::size_t to) const;
  /// The same strand of the story: one flashback, or the present.
  bool sameStrand(std::size_t a, std::size_t b) const;

  /// "page 6 panel 1 (EXT. THE BOAT - DUSK)"
  std::string inWords(std::size_t moment) const;

 private:
  std::map<std::string, std::vector<Beat>> corrected_;  ///< keeps the beats alive, by scene
  std::vector<StoryScene> scenes_;
  std::vector<Moment> moments_;
  std::map<std::string, std::size_t> byBeat_;
};

/// The scenes with the artist's corrections, in the script's order.
std::vector<StoryScene> correctedScenes(const Job& job);
/// What a scene is called where it has no heading of its own.
std::string titleOf(const StoryScene& scene);

}  // namespace tw
