// What one panel has to show: a beat, with its figures, props and copy. Written by script's
// breakdown, corrected by the artist, read by everyone else.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "job/look_note.h"
#include "job/words.h"

namespace tw {

enum class Sex { Female, Male };
std::string_view nameOf(Sex sex);  ///< "female", "male"

struct Character {
  std::string id;    ///< lower-case word, stable: "mara"
  std::string name;  ///< as in the script: "MARA"
  std::vector<std::string> aliases;
  Sex sex = Sex::Female;
  double heightM = 1.70;
  std::string build = "medium";  ///< slight, medium, heavy, heroic, ideal, child
  std::string note;
  double ageYears = 0;          ///< 0 = grown up, of no stated age
  double heads = 0;             ///< head heights in the stature; 0 = by age and build
  std::string hand;             ///< that works: "left", "right", "both" or empty, not said
  std::vector<LookNote> looks;  ///< beside the note, by story time
  std::vector<Reference> references;
  bool operator==(const Character&) const = default;
};

/// One lettering item: a balloon, caption, sound effect or title.
struct CopyItem {
  std::string id;  ///< "p3-2-c1": page, panel, item
  CopyKind kind = CopyKind::Speech;
  std::string speaker;  ///< character id; empty for captions, SFX, titles and unknown voices
  bool offPanel = false;
  std::string text;  ///< UTF-8, one paragraph per line
  int words = 0;
  bool operator==(const CopyItem&) const = default;
};

struct BeatFigure {
  std::string who;       ///< character id
  std::string pose;      ///< name of a pose in presets/poses
  std::string relation;  ///< "holds", "points at", "looks at", "runs to", … or empty
  std::string target;    ///< character id or prop id the relation is to, or empty
  bool operator==(const BeatFigure&) const = default;
};

struct Prop {
  std::string id;
  std::string name;                      ///< as in the script: "lantern"
  std::string shape = "box";             ///< box, cylinder, ellipsoid, cone
  std::array<double, 3> sizeM{1, 1, 1};  ///< width, height, depth
  std::string heldBy;                    ///< character id or empty
  std::string hand;    ///< the holder's own "left", "right" or "both"; empty: as the pose has it
  std::string model;   ///< name of a file in art/models, without ".obj"; empty: by id or name
  std::string up;      ///< the model's upward axis, "y" (also when empty) or "z"
  double heightM = 0;  ///< as the artist declares it, to which the model is scaled; 0: as it is
  /// Fixed in the space: metres from the figures' middle, x toward the side that is read last, y
  /// up, z away from the camera. Absent: where staging puts it.
  std::optional<std::array<double, 3>> placeM;
  std::optional<double> turnDeg;  ///< its front turned from the camera toward +x
  bool operator==(const Prop&) const = default;
};

inline constexpr double kShortestLensMm = 14, kLongestLensMm = 300;
inline constexpr double kMostRollDeg = 90;

struct Beat {
  std::string id;     ///< "p3-2": page and panel as in the script
  int panel = 1;      ///< as numbered on its page, from 1
  int line = 0;       ///< in the script, from 1
  std::string scene;  ///< id of its scene, "s3"
  std::string description;
  std::string setting;  ///< "interior", "exterior", "underwater", "none" and words of the place
  std::vector<BeatFigure> figures;
  std::vector<Prop> props;
  std::vector<std::string> notDrawn;  ///< things that the description names and nothing is built of
  std::vector<CopyItem> copy;
  std::optional<ShotSize> shot;   ///< asked for in words
  std::optional<EyeHeight> eye;   ///< asked for in words
  std::optional<double> lensMm;   ///< asked for, on a frame 36 mm wide
  std::optional<double> rollDeg;  ///< asked for; over 0 turns the picture counter-clockwise
  std::string light;              ///< the artist's own, in trade words; empty: as the script says
  bool dominant = false;
  double weight = 1;  ///< share of the page's area wanted, relative to the other beats

  int words() const {
    int sum = 0;
    for (const CopyItem& item : copy) sum += item.words;
    return sum;
  }
  bool operator==(const Beat&) const = default;
};

/// The artist's corrections of one thing; absent fields keep the guess.
struct PropOverride {
  std::optional<std::string> hand, shape, model, up;
  std::optional<std::array<double, 3>> sizeM, placeM;
  std::optional<double> turnDeg;
  bool operator==(const PropOverride&) const = default;
};

/// Copy as retyped, with its words counted by script/count_words.
struct CopyWords {
  std::string text;  ///< empty: the item is left out
  int words = 0;
  bool operator==(const CopyWords&) const = default;
};

/// The artist's corrections of one beat; absent fields keep the breakdown's guess.
struct BeatOverride {
  std::optional<ShotSize> shot;
  std::optional<EyeHeight> eye;
  std::optional<double> lensMm, rollDeg;
  std::optional<std::string> light;  ///< "from the left and above, key 1, fill 0.3"
  std::optional<bool> dominant;
  std::optional<double> weight;
  std::optional<std::string> setting;
  std::optional<std::string> scene;          ///< id
  std::map<std::string, std::string> poses;  ///< character id → pose
  std::map<std::string, std::string> does;   ///< character id → "RELATION TARGET" or "nothing"
  std::vector<std::string> addFigures, dropFigures;
  std::vector<Prop> addProps;
  std::vector<std::string> dropProps;         ///< prop ids
  std::map<std::string, PropOverride> props;  ///< by prop id
  std::map<std::string, CopyWords> copy;      ///< by copy item id
  bool operator==(const BeatOverride&) const = default;
};

/// What "points at lantern" says: the last word is the target when it is the id of somebody or of
/// a thing in the beat, all before it the relation. "nothing" is no relation.
struct Doing {
  std::string relation, target;
};
Doing doingIn(std::string_view words, const Beat& beat);

/// The beat with the correction applied. Figures that are added stand in a neutral pose.
Beat withOverride(Beat beat, const BeatOverride& change);

}  // namespace tw
