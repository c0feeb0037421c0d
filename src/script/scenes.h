// The scenes of a script: which heading opens one, which beats belong to it, where it lies in
// story time.
#pragma once

#include <vector>

#include "job/scene.h"
#include "script/raw_script.h"
#include "script/script.h"

namespace tw {

/// Gives each beat of the pages its scene and returns the scenes in the script's order. `raw` and
/// `pages` run alike.
std::vector<StoryScene> scenesIn(const std::vector<RawPage>& raw, std::vector<ScriptPage>& pages);

}  // namespace tw
