// A panel shows its place when there is one to show and either
//
//    the shot is very long or extremely long, or
//    the shot is medium long or wider and set share = 1 − figures' share ≥ 0.6.
//
// Nearer shots show a wall or a sky behind a head; that is a place only to someone who knows it
// already. Cost: linear. Does badly: a close shot of a street sign tells the place and is not
// counted; a wide shot of fog is.
#include "read/setting_shown.h"

#include <algorithm>

namespace tw {

namespace {

constexpr double kLeastSetShare = 0.6;  // ours

SettingShown& entryOf(std::vector<SettingShown>& all, const std::string& scene) {
  const auto found = std::ranges::find(all, scene, &SettingShown::scene);
  if (found != all.end()) return *found;
  all.push_back({.scene = scene, .panels = {}, .firstAt = {}});
  return all.back();
}

void fillFirst(const SeenStory& story, SettingShown& scene) {
  for (std::size_t i = 0; i < scene.panels.size(); ++i) {
    const StoryPlace at = scene.panels[i];
    if (!story.pages[at.page].measured) {
      scene.certain = scene.certain && scene.firstAt.has_value();
      continue;
    }
    ++scene.measured;
    if (!scene.firstAt && showsPlace(panelAt(story, at))) scene.firstAt = static_cast<int>(i) + 1;
  }
}

}  // namespace

double setShareOf(const StoryPanel& panel) {
  return std::clamp(1 - panel.figureShare, 0.0, 1.0);
}

bool showsPlace(const StoryPanel& panel) {
  if (!panel.isSet || panel.shot < ShotSize::MediumLong) return false;
  return panel.shot >= ShotSize::VeryLong || setShareOf(panel) >= kLeastSetShare;
}

std::vector<SettingShown> settingsShown(const SeenStory& story) {
  std::vector<SettingShown> out;
  for (const StoryPlace at : placesOf(story))
    entryOf(out, panelAt(story, at).scene).panels.push_back(at);
  for (SettingShown& scene : out) fillFirst(story, scene);
  return out;
}

}  // namespace tw
