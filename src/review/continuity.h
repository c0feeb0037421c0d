// What does not hold together along story time: costumes, marks, hands and things. Each finding
// names the two panels, with their scenes, and what to do. Which break of continuity is a fault and
// which only worth a look is common practice, no source.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "job/finding.h"
#include "job/look_at.h"
#include "stage/wardrobe.h"

namespace tw {

struct ContinuityPlace {
  std::string beat;
  int page = 0, panel = 0;
  std::string scene, heading;
};

struct ContinuityFinding {
  std::string rule;  ///< costume, mark, side, hand, holder, lost thing, words, statement
  Severity severity = Severity::Should;
  std::string who, thing;
  std::string sentence;  ///< names both places
  std::string remedy;
  ContinuityPlace here, there;  ///< where it shows, and with what it disagrees
};

/// The most severe first, then along story time.
std::vector<ContinuityFinding> continuityOf(const Job& job, const StoryTime& story,
                                            const LookWords& words, const Wardrobe& wardrobe);

/// Which hand each thing is in, as a rough stages it; empty hands are not known.
struct StagedHand {
  std::string beat, who, thing, hand;
};
/// Findings on hands as staged: against what is stated, and from panel to panel of a scene.
std::vector<ContinuityFinding> stagedHandsOf(const Job& job, const StoryTime& story,
                                             const LookWords& words,
                                             const std::vector<StagedHand>& hands);

ContinuityPlace placeOf(const StoryTime& story, std::size_t moment);

}  // namespace tw
