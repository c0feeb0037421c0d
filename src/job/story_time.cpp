// Sorting scenes into story time.
//
//  1 Each scene has a year, counted from the story's present: 0, or what the script's words say. A
//    flashback of no stated age comes just before the present, a flash-forward just after it.
//  2 Scenes are sorted by year; within a year they keep the script's order.
//  3 The artist's "after" and "before" then move single scenes, in the script's order.
// Cost: n log n in the scenes. Does badly: two undated flashbacks of different depth come in the
// order of the script until the artist says otherwise.
#include "job/story_time.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace tw {

namespace {

constexpr double kJustAside = 1e-5;  // years; less than the five minutes of any dated step

double yearOf(const StoryScene& scene) {
  if (scene.years != 0) return scene.years;
  if (scene.strand == kFlashback) return -kJustAside;
  return scene.strand == kFlashForward ? kJustAside : 0;
}

/// Moves the scene next to the one named; a name that is not there changes nothing.
void moveTo(std::vector<StoryScene>& scenes, const std::string& id, const std::string& by,
            bool after) {
  const auto from = std::ranges::find(scenes, id, &StoryScene::id);
  if (from == scenes.end() || id == by ||
      std::ranges::find(scenes, by, &StoryScene::id) == scenes.end())
    return;
  StoryScene scene = std::move(*from);
  scenes.erase(from);
  const auto place = std::ranges::find(scenes, by, &StoryScene::id);
  scenes.insert(after ? place + 1 : place, std::move(scene));
}

std::vector<StoryScene> sorted(std::vector<StoryScene> scenes,
                               const std::map<std::string, SceneChange>& changes) {
  std::vector<std::string> ids;
  for (const StoryScene& scene : scenes) ids.push_back(scene.id);
  std::ranges::stable_sort(scenes, {}, yearOf);
  for (const std::string& id : ids) {
    const auto change = changes.find(id);
    if (change == changes.end()) continue;
    if (change->second.after) moveTo(scenes, id, *change->second.after, true);
    if (change->second.before) moveTo(scenes, id, *change->second.before, false);
  }
  return scenes;
}

bool isOneOf(const std::string& word, std::initializer_list<std::string_view> words) {
  return std::ranges::find(words, word) != words.end();
}

bool goesStraightOn(const std::string& time) {
  return isOneOf(time, {"continuous", "same", "same time", "moments later", "meanwhile"});
}

/// A word that says nothing new of the time of day.
bool keepsTime(const std::string& time) {
  return time.empty() || goesStraightOn(time) || time == "later";
}

}  // namespace

std::vector<StoryScene> correctedScenes(const Job& job) {
  std::vector<StoryScene> scenes = job.scenes;
  for (StoryScene& scene : scenes) {
    const auto found = job.sceneChanges.find(scene.id);
    if (found == job.sceneChanges.end()) continue;
    const SceneChange& change = found->second;
    if (change.place) scene.place = *change.place;
    if (change.time) scene.time = *change.time;
    if (change.strand) scene.strand = *change.strand;
    if (change.years) scene.years = *change.years;
  }
  return scenes;
}

std::string titleOf(const StoryScene& scene) {
  if (!scene.heading.empty()) return scene.heading;
  if (scene.place.empty()) return "no heading";
  return scene.time.empty() ? scene.place : scene.place + ", " + scene.time;
}

StoryTime::StoryTime(const Job& job) : scenes_(sorted(correctedScenes(job), job.sceneChanges)) {
  std::map<std::string, std::vector<int>> pages;
  for (const Page& page : job.pages)
    for (Beat& beat : page.correctedBeats()) {
      const bool known = std::ranges::find(scenes_, beat.scene, &StoryScene::id) != scenes_.end();
      const std::string id = known ? beat.scene : std::string();
      pages[id].push_back(page.number);
      corrected_[id].push_back(std::move(beat));
    }
  if (corrected_.contains("")) scenes_.insert(scenes_.begin(), StoryScene{});
  for (std::size_t s = 0; s < scenes_.size(); ++s) {
    const auto found = corrected_.find(scenes_[s].id);
    if (found == corrected_.end()) continue;
    for (std::size_t i = 0; i < found->second.size(); ++i) {
      byBeat_.emplace(found->second[i].id, moments_.size());
      moments_.push_back({&found->second[i], pages[found->first][i], s});
    }
  }
}

std::optional<std::size_t> StoryTime::momentOf(const std::string& beat) const {
  const auto found = byBeat_.find(beat);
  return found == byBeat_.end() ? std::nullopt : std::optional(found->second);
}

SceneStep StoryTime::stepInto(std::size_t scene) const {
  if (scene == 0) return SceneStep::Apart;
  const StoryScene &was = scenes_[scene - 1], &is = scenes_[scene];
  if (was.strand != is.strand || was.years != is.years) return SceneStep::Apart;
  if (goesStraightOn(is.time)) return SceneStep::StraightOn;
  if (keepsTime(is.time)) return SceneStep::SameTime;
  std::size_t told = scene - 1;
  while (told > 0 && keepsTime(scenes_[told].time) && stepInto(told) != SceneStep::Apart) --told;
  const std::string& before = scenes_[told].time;
  return keepsTime(before) || before == is.time ? SceneStep::SameTime : SceneStep::Apart;
}

SceneStep StoryTime::stepBetween(std::size_t from, std::size_t to) const {
  SceneStep loosest = SceneStep::StraightOn;
  for (std::size_t s = moments_[from].scene + 1; s <= moments_[to].scene; ++s)
    loosest = std::max(loosest, stepInto(s));
  return loosest;
}

bool StoryTime::sameStrand(std::size_t a, std::size_t b) const {
  const StoryScene &first = sceneOf(a), &second = sceneOf(b);
  return first.strand == second.strand && (first.strand == kPresent || first.years == second.years);
}

std::string StoryTime::inWords(std::size_t moment) const {
  const Moment& at = moments_[moment];
  return fmt::format("page {} panel {} ({})", at.page, at.beat->panel, titleOf(sceneOf(moment)));
}

}  // namespace tw
