// The artist's corrections of beats as typed: "p3-2.shot=close-up", "p3-2.pose.mara=kneel". What
// is shown of a correction can be typed back.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "job/job.h"

namespace tw {

/// What the rest of the program knows that a correction may name. An empty list checks nothing.
struct KnownWords {
  std::vector<std::string> poses, relations;
  /// A thing by its name, with shape and size; empty function: any name, as a plain box.
  std::function<Result<std::optional<Prop>>(std::string_view)> thing;
  std::vector<std::string> shapes;                 ///< plain bodies and pieces of sets
  std::optional<std::vector<std::string>> models;  ///< files in the job's art/models
  /// Refuses words that name no light; empty function: takes any.
  std::function<Result<void>(std::string_view)> light;
  /// Words as a reader counts them; empty function: what stands between blanks.
  std::function<int(std::string_view)> words;
};

/// Sets one correction from "BEAT.KEY=VALUE". Keys: shot, eye, lens, roll, light, dominant,
/// weight, setting, scene, pose.WHO, does.WHO, add, drop, prop.add, prop.drop, prop.THING.KEY as
/// prop_keys.h has them, and copy.ITEM: other words for a balloon, "\n" for a new paragraph, none
/// to leave it out. The value guess goes back to the breakdown's guess; add and drop of the
/// same character or thing undo each other. The page is unchanged when anything is refused.
Result<void> setOverrideKey(Page& page, const Job& job, std::string_view assignment,
                            const KnownWords& known = {});

/// The corrections of one beat as texts that setOverrideKey takes, in a fixed order.
std::vector<std::string> describeOverride(const std::string& beat, const BeatOverride& change);

}  // namespace tw
