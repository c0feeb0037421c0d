// The artist's corrections of scenes, and scenes that the script does not open.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "command/job_pages.h"
#include "command/looks.h"
#include "job/assignment.h"
#include "script/scene_headings.h"

namespace tw {

namespace {

constexpr std::string_view kGuess = "guess";

std::string sceneList(const Job& job) {
  std::vector<std::string> ids;
  for (const StoryScene& scene : job.scenes) ids.push_back(scene.id);
  return ids.empty() ? "The script opens none." : fmt::format("{}.", fmt::join(ids, ", "));
}

bool isScene(const Job& job, std::string_view id) {
  return std::ranges::any_of(job.scenes, [&](const StoryScene& scene) { return scene.id == id; });
}

void setOrGuess(std::optional<std::string>& field, std::string_view value) {
  if (value == kGuess)
    field.reset();
  else
    field = std::string(value);
}

Result<void> setYears(SceneChange& change, const Assignment& a) {
  const auto years = decimalNumber(a.value);
  if (a.value != kGuess && (!years || std::abs(*years) > 100000))
    return wrongValue(a, "years from the story's present, < 0 earlier, or guess,");
  change.years = a.value == kGuess ? std::nullopt : years;
  return {};
}

Result<void> setKey(const Job& job, const std::string& id, std::string_view key,
                    const Assignment& a, SceneChange& change) {
  if (key == "place") return setOrGuess(change.place, a.value), Result<void>();
  if (key == "time") return setOrGuess(change.time, a.value), Result<void>();
  if (key == "years") return setYears(change, a);
  if (key == "strand") {
    if (a.value != kGuess && a.value != kPresent && a.value != kFlashback &&
        a.value != kFlashForward)
      return wrongValue(a, "present, flashback, flash-forward or guess");
    return setOrGuess(change.strand, a.value), Result<void>();
  }
  if (key == "after" || key == "before") {
    if (a.value != kGuess && (!isScene(job, a.value) || a.value == id))
      return badInput(fmt::format("\"{}\" is no other scene.", a.value), {},
                      "The scenes are: " + sceneList(job));
    return setOrGuess(key == "after" ? change.after : change.before, a.value), Result<void>();
  }
  return badInput(fmt::format("A scene has no key \"{}\".", key), {},
                  "Known are: place, time, strand, years, after, before.");
}

Result<void> set(Job& job, const std::string& setting) {
  const auto a = assignmentIn(setting);
  if (!a) return tl::unexpected(a.error());
  const std::size_t dot = a->key.find('.');
  const std::string id(a->key.substr(0, dot));
  if (dot == std::string_view::npos || !isScene(job, id))
    return badInput(fmt::format("\"{}\" does not start with a scene.", a->key), {},
                    "Write SCENE.KEY=VALUE; the scenes are: " + sceneList(job));
  SceneChange change = job.sceneChanges[id];
  auto done = setKey(job, id, a->key.substr(dot + 1), *a, change);
  if (done && change != SceneChange{})
    job.sceneChanges[id] = std::move(change);
  else if (done || job.sceneChanges[id] == SceneChange{})
    job.sceneChanges.erase(id);
  return done;
}

/// Scenes that by their corrections would each come after the other, in a sentence.
Result<void> mustHaveAnOrder(const Job& job) {
  std::map<std::string, std::vector<std::string>> follows;
  for (const auto& [id, change] : job.sceneChanges) {
    if (change.after) follows[id].push_back(*change.after);
    if (change.before) follows[*change.before].push_back(id);
  }
  for (const auto& [start, direct] : follows) {
    std::vector<std::string> earlier = direct;
    for (std::size_t i = 0; i < earlier.size(); ++i) {
      if (earlier[i] == start)
        return badInput(fmt::format("Scene {} would come after itself.", start), {},
                        "Take one of the corrections back with the value guess.");
      for (const std::string& next : follows[earlier[i]])
        if (std::ranges::find(earlier, next) == earlier.end()) earlier.push_back(next);
    }
  }
  return {};
}

StoryScene sceneOf(const SceneOpening& opening, const Job& job) {
  StoryScene scene;
  int next = 1;
  while (isScene(job, fmt::format("own{}", next))) ++next;
  scene.id = fmt::format("own{}", next);
  scene.heading = opening.heading;
  const auto read = sceneHeadingFrom(opening.heading);
  if (!read) return scene;
  scene.side = read->side;
  scene.place = read->place;
  scene.time = read->time;
  if (read->shift == StoryShift::IntoPast) scene.strand = kFlashback, scene.years = -read->years;
  if (read->shift == StoryShift::IntoFuture)
    scene.strand = kFlashForward, scene.years = read->years;
  if (read->shift == StoryShift::Onward) scene.years = read->years;
  return scene;
}

Result<void> openScene(Job& job, const SceneOpening& opening) {
  if (!sceneHeadingFrom(opening.heading))
    return badInput(fmt::format("\"{}\" is no heading of a scene.", opening.heading), {},
                    "Write it as in a script: EXT. HARBOUR - DAWN, FLASHBACK, TEN YEARS LATER.");
  const StoryScene scene = sceneOf(opening, job);
  bool inside = false;
  std::string was;
  for (Page& page : job.pages)
    for (const Beat& beat : page.correctedBeats()) {
      if (beat.id == opening.beat) inside = true, was = beat.scene;
      if (inside && beat.scene == was) page.overrides[beat.id].scene = scene.id;
    }
  if (!inside)
    return badInput(fmt::format("No panel is called \"{}\".", opening.beat), {},
                    "`tierwright beats JOB` lists the panels.");
  auto place = std::ranges::find(job.scenes, was, &StoryScene::id);
  job.scenes.insert(place == job.scenes.end() ? place : place + 1, scene);
  return {};
}

}  // namespace

Result<Job> changeScenes(const std::filesystem::path& folder,
                         const std::vector<std::string>& settings,
                         const std::vector<SceneOpening>& openings) {
  auto open = openJob(folder);
  if (!open) return tl::unexpected(open.error());
  if (settings.empty() && openings.empty()) return std::move(open->job);
  if (auto writable = mustBeWritable(*open); !writable) return tl::unexpected(writable.error());
  Problems problems;
  const auto gather = [&](const Result<void>& done) {
    if (!done) problems.insert(problems.end(), done.error().begin(), done.error().end());
  };
  for (const SceneOpening& opening : openings) gather(openScene(open->job, opening));
  for (const std::string& setting : settings) gather(set(open->job, setting));
  if (problems.empty()) gather(mustHaveAnOrder(open->job));
  if (!problems.empty()) return tl::unexpected(problems);
  if (auto saved = open->folder.save(open->job); !saved) return tl::unexpected(saved.error());
  return std::move(open->job);
}

}  // namespace tw
