// A revised script's scenes against those at hand: a scene is still the same when it holds most of
// the beats of the old one; of equals the one with the same heading. Each old id is given once.
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "script/script.h"
#include "script/text_case.h"

namespace tw {

namespace {

std::map<std::string, std::string> sceneByBeat(const std::vector<ScriptPage>& pages) {
  std::map<std::string, std::string> out;
  for (const ScriptPage& page : pages)
    for (const Beat& beat : page.beats) out.emplace(beat.id, beat.scene);
  return out;
}

/// The new id of each new scene.
std::map<std::string, std::string> renamed(const std::vector<StoryScene>& before,
                                           const std::vector<ScriptPage>& beforePages,
                                           const std::vector<StoryScene>& after,
                                           const std::vector<ScriptPage>& afterPages) {
  const auto old = sceneByBeat(beforePages), fresh = sceneByBeat(afterPages);
  std::map<std::pair<std::string, std::string>, int> common;
  for (const auto& [beat, scene] : fresh)
    if (const auto found = old.find(beat); found != old.end()) ++common[{scene, found->second}];
  const auto headingOf = [](const std::vector<StoryScene>& scenes, const std::string& id) {
    const auto found = std::ranges::find(scenes, id, &StoryScene::id);
    return found == scenes.end() ? std::string() : folded(found->heading);
  };
  std::vector<std::tuple<bool, int, std::string, std::string>> pairs;
  for (const auto& [ids, beats] : common)
    if (!ids.second.empty())
      pairs.emplace_back(headingOf(after, ids.first) != headingOf(before, ids.second), -beats,
                         ids.first, ids.second);
  std::ranges::sort(pairs);
  std::map<std::string, std::string> out;
  std::set<std::string> taken;
  for (const auto& [other, beats, is, was] : pairs)
    if (!out.contains(is) && taken.insert(was).second) out[is] = was;
  for (const StoryScene& scene : before) taken.insert(scene.id);
  int next = 1;
  for (const StoryScene& scene : after) {
    if (out.contains(scene.id)) continue;
    while (!taken.insert(fmt::format("s{}", next)).second) ++next;
    out[scene.id] = fmt::format("s{}", next);
  }
  return out;
}

}  // namespace

void carryScenesOver(const std::vector<StoryScene>& before,
                     const std::vector<ScriptPage>& beforePages, std::vector<StoryScene>& after,
                     std::vector<ScriptPage>& afterPages) {
  const auto names = renamed(before, beforePages, after, afterPages);
  for (StoryScene& scene : after) scene.id = names.at(scene.id);
  for (ScriptPage& page : afterPages)
    for (Beat& beat : page.beats)
      if (const auto found = names.find(beat.scene); found != names.end())
        beat.scene = found->second;
}

}  // namespace tw
