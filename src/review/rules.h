// The rules by which a rough is judged, as data: name, weight, remedy, and whether the rule is a
// demand of the brief. What a rule costs is in costs.h, what it says in score_card.h.
#pragma once

#include <array>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

#include "base/result.h"
#include "review/evidence.h"

namespace tw {

enum class RuleId {
  AreaFollowsWeight,
  DominantShare,
  PanelShape,
  LeastSize,
  SmallPanels,
  ReadingOrder,
  AskedShot,
  AskedEyeHeight,
  HeadHeight,
  LargestFigure,
  FocusProminent,
  FrameCuts,
  JointCuts,
  Tangents,
  WholeFigure,
  Liftable,
  RoomForCopy,
  SpeakersInOrder,
  FacesSeen,
  PoseReads,
  HandedOn,
  LeaksOff,
  ShotChanges,
  AxisKept,
  ViewChanges,
  Rhythm,
  WordsOnPage,
  WordsInPanel,
  CopyFits,
  CopyCovers,
  KeepClear,
  Continuity,
  Count
};
inline constexpr std::size_t kRules = static_cast<std::size_t>(RuleId::Count);

/// The rule's name as in presets/rules/rules.json and on score cards.
std::string_view nameOf(RuleId rule);
std::optional<RuleId> ruleNamed(std::string_view name);
/// True for rules that another staging of the panel can mend.
bool isAboutStaging(RuleId rule);

struct Rule {
  double weight = 0;
  bool demand = false;
  std::string remedy;
};

class RuleBook {
 public:
  /// presets/rules/rules.json, or the file named, and presets/rules/evidence.json. Bad input when a
  /// rule is missing, unknown, or has a weight that is not a number from 0 to 1000.
  static Result<RuleBook> load(const std::optional<std::filesystem::path>& file = {});

  const Rule& operator[](RuleId rule) const { return rules_[static_cast<std::size_t>(rule)]; }
  double weight(RuleId rule) const { return (*this)[rule].weight; }
  const EvidenceBook& evidence() const { return evidence_; }
  /// How much cost a rough may have more than the best for being wholly unlike it.
  double spreadOfRoughs() const { return spread_; }

 private:
  std::array<Rule, kRules> rules_;
  EvidenceBook evidence_;
  double spread_ = 9;
};

}  // namespace tw
