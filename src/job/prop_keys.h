// Corrections of one thing in a beat: which hand holds it, where it stands, its size, shape and
// model. Typed as "p3-2.prop.lantern.hand=left".
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/result.h"
#include "job/assignment.h"
#include "job/override_keys.h"

namespace tw {

/// Sets "THING.KEY": hand (left, right, both, any), place (X,Y,Z metres), turn (degrees), size
/// (W,H,D metres), shape, model, up (y, z). The value guess goes back to the breakdown's guess.
Result<void> setPropKey(BeatOverride& change, const Beat& beat, std::string_view thingAndKey,
                        const Assignment& assignment, const KnownWords& known);

/// Key and value of each correction, as setPropKey takes them, in a fixed order.
std::vector<std::pair<std::string, std::string>> describeProp(const PropOverride& change);

/// Bad input unless `word` is listed or the list is empty.
Result<void> mustBeKnown(std::string_view word, const std::vector<std::string>& known,
                         std::string_view kind);

}  // namespace tw
