// Where each scene first shows its place: the panel from which a reader knows where the story is.
// Common practice, no source: in the scene's first panels, by a wide picture. What counts as
// showing the place is ours and stands at the head of the .cpp.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "read/seen_story.h"

namespace tw {

struct SettingShown {
  std::string scene;
  std::vector<StoryPlace> panels;  ///< of the scene, in the order they are told
  int measured = 0;                ///< how many of them have a rough
  std::optional<int> firstAt;      ///< which of the panels shows the place, from 1
  bool certain = true;  ///< no panel before it is without a rough (or, if none, none at all)
};

/// One entry per scene in the order they are first told; scenes come back under the same entry.
std::vector<SettingShown> settingsShown(const SeenStory& story);

/// Set share of a panel: what figures leave of it, 0…1.
double setShareOf(const StoryPanel& panel);
bool showsPlace(const StoryPanel& panel);

}  // namespace tw
