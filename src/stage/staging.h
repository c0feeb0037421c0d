// From a beat to pictures of it: who stands where, from where it is seen, and what that gives the
// panel (focus, lead, prominence, cuts, room for copy). Fast measures come from joints alone and
// serve the search; exact ones come from a rendered picture and serve the survivors.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "geometry/perspective.h"
#include "job/job.h"
#include "stage/joint_limits.h"
#include "stage/models.h"
#include "stage/picture.h"

namespace tw {

struct Scene;

struct StageRequest {
  const Beat* beat = nullptr;
  const std::vector<Character>* cast = nullptr;
  ReadingDirection direction = ReadingDirection::LeftToRight;
  std::string focus;         ///< character id; empty: the beat's first figure
  bool wholeFigure = false;  ///< the focus must not be cut
  double aspect = 1.5;       ///< panel width / height
  double airShare = 0;       ///< share of the panel wanted free for copy, mostly at the top
  double axisSide = 0;       ///< side of the axis kept by the panel before: −1, +1, 0 free
  /// Part of the panel in which the focus must stand, panel units 0…1 both ways: the free part of
  /// a ground panel under insets, or the live area of a bled one. Absent: the whole panel.
  std::optional<Rect> keepInside;
};

/// Quick facts of one way to stage a panel. Places in panel units: x 0…1 across, y 0…1 down.
struct Variant {
  StagingChoice choice;
  Point focus;  ///< centre of the focus figure's head (or of the subject)
  Vector lead;  ///< unit direction in the panel's picture (square units), or zero
  double leadStrength = 0;
  std::string leadWhy;
  double focusHead = 0;  ///< focus head height / panel height
  double focusRank = 1;  ///< 1 = focus is the tallest figure seen; else its height / tallest's
  double visible = 1;    ///< estimated visible share of the focus figure
  double cutCost = 0;    ///< 0 none … 1 frame cuts at a joint or through a face
  std::string cut;       ///< where the frame cuts the focus: "whole", "knee", …
  bool focusWhole = false;
  double air = 0;              ///< share of the panel free of figures
  double airTop = 0;           ///< share of the upper third free of figures
  double axisSide = 0;         ///< sign of the camera's side of the axis of action, 0 = none
  double reach = 0;            ///< limbs' projected over true length, mean of arms and legs, 0…1
  double facesSeen = 1;        ///< 1 when the focus and who speaks face the camera, 0 from behind
  double speakersInOrder = 1;  ///< 1 when the first speaker stands on the side read first
  ShotSize wantedShot = ShotSize::Medium;  ///< asked for, or the one that suits such a beat
  double askedShot = 0;                    ///< steps between this shot and the wanted one
  double askedEye = 0;                     ///< steps between this eye height and the one asked for
  std::vector<Rect> heads;                 ///< of all figures, panel units, in the staging's order
};

/// What a look fills in: shares, heads, cuts, silhouettes, focus and lead; or also limbs, outline,
/// overlaps, contrast, joint cuts and tangents, at twice the price.
enum class LookFor { Shares, Everything };

class Stager {
 public:
  /// Props that have a model among `models` are drawn with it and take its size.
  static Result<Stager> make(const std::vector<Character>& cast, Models models = {});
  /// Dresses every figure with the look that holds at its beat in story time.
  static Result<Stager> make(const Job& job, Models models = {});
  Stager(Stager&&) noexcept;
  ~Stager();

  /// Every variant worth considering for the beat at that aspect, in a fixed order.
  /// At most `most`; the asked-for shot and eye height always among them. Thread-safe.
  std::vector<Variant> variants(const StageRequest& request, std::size_t most = 48) const;
  /// One choice solved for an exact aspect.
  Variant measured(const StageRequest& request, const StagingChoice& choice) const;
  /// The full staging (camera, figures, props) of a choice.
  Staging solved(const StageRequest& request, const StagingChoice& choice) const;

  /// Everything that stands before the camera of a staging, `detail` as for bodyMesh.
  std::vector<Solid> solidsOf(const Staging& staging, const Beat& beat, double detail = 1) const;
  /// Fills figures, tangents, focus and lead of the panel exactly, from a rendered picture.
  /// `panel.outline`, `panel.staging` are read. `width` px.
  void look(RoughPanel& panel, const Beat& beat, const std::string& focus, int width = 240,
            LookFor what = LookFor::Everything) const;
  /// The panel's picture as vectors.
  Drawing draw(const RoughPanel& panel, const Beat& beat, const std::string& focus,
               const DrawOptions& options) const;

  /// The staging with its figures posed.
  Scene sceneOf(const Staging& staging, const Beat& beat, const std::string& focus = {}) const;
  /// The panel's perspective for pencilling, its measuring wall through the focus' feet.
  PerspectiveGrid grid(const RoughPanel& panel, const std::string& focus) const;

  const PoseLibrary& poses() const;
  const JointLimits& limits() const;
  /// As dressed for that beat; without one, by the note of the cast list.
  const Body& bodyOf(const std::string& who, const std::string& beat = {}) const;

 private:
  struct Impl;
  explicit Stager(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

/// Frame width / height and the rectangle of the camera frame for a panel outline: its bounding
/// box, mm.
Rect frameOf(const Polygon& panelOutline);

}  // namespace tw
