// One candidate page: shapes, stagings, copy and why it is ranked where it is. Everything needed
// to draw it again is here; pictures are never stored.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "geometry/shapes.h"
#include "job/seen.h"
#include "job/set_light.h"
#include "job/words.h"

namespace tw {

/// Where a camera stands and how it looks. Pan 0 looks along +z; pitch > 0 looks up;
/// roll > 0 turns the picture counter-clockwise; focal length on a 36 mm wide frame.
struct CameraPlace {
  Place3 eye;
  double panDeg = 0, pitchDeg = 0, rollDeg = 0;
  double focalMm = 50;
  double offsetX = 0, offsetY = 0;  ///< lens shift in units of the frame width
  bool operator==(const CameraPlace&) const = default;
};

/// A figure set in the space: feet at `at`, turned so that 0 faces the default camera.
struct SetFigure {
  std::string who;
  std::string pose;
  bool poseMirrored = false;
  Place3 at;
  double headingDeg = 0;
  double gazeDeg = 0;  ///< head turned from the body's heading, > 0 toward the figure's left
  /// Joints that the artist turned otherwise than the pose does: flex, aside, twist in degrees,
  /// named as in the pose's file, and "root". Left and right are the pose's own, before mirroring.
  std::map<std::string, std::array<double, 3>> turnsDeg;
  bool operator==(const SetFigure&) const = default;
};

struct SetProp {
  std::string prop;  ///< prop id in the beat
  Place3 at;         ///< centre of the base; for held props the centre
  double headingDeg = 0;
  double pitchDeg = 0;
  double lengthM = 0;  ///< of a hauled line from the hands to its end; 0 = all of it
  bool operator==(const SetProp&) const = default;
};

/// The discrete choice that made the staging; kept so that it can be solved again when the panel
/// changes shape.
struct StagingChoice {
  ShotSize shot = ShotSize::Medium;
  EyeHeight eye = EyeHeight::Level;
  double sideDeg = 0;  ///< camera to the side of the front view, > 0 to the figure's left
  double tiltDeg = 0;  ///< roll
  bool mirrored = false;
  int placement = 0;  ///< which of the blocking variants
  double lensMm = 0;  ///< the artist's own, 0 = the one that suits the shot
  bool operator==(const StagingChoice&) const = default;
};

struct Staging {
  StagingChoice choice;
  CameraPlace camera;
  std::vector<SetFigure> figures;
  std::vector<SetProp> props;
  std::optional<SetLight> light;  ///< absent: the one that the beat's words name
  bool operator==(const Staging&) const = default;
};

/// The direction in which a panel hands the eye on.
struct Lead {
  Point from;
  Vector direction;     ///< unit length, or zero: the panel has no lead
  double strength = 0;  ///< 0…1
  std::string why;      ///< "Mara looks", "arm points", "runs"
  bool operator==(const Lead&) const = default;
};

/// What is seen of a figure in its panel.
struct SeenFigure {
  std::string who;
  double visible = 0;  ///< share of its own outline that the panel shows, 0…1
  double share = 0;    ///< of the panel's area
  double headMm = 0;   ///< chin to crown at print size
  std::string cut;     ///< "whole", "shin", "knee", …, "neck"; where the frame cuts it
  bool cutAtJoint = false;
  double reach = 0;       ///< arms and legs on the picture over their true length, mean, 0…1
  double solidity = 0;    ///< its own outline's area over its hull's, 0…1
  int tipsSeen = 0;       ///< of head, hands and feet: how many the outline alone tells, 0…5
  double overlap = 0;     ///< share of its own picture that lies on or behind another figure's
  double contrast = 0;    ///< its mean CIE L* less that of what surrounds it
  bool liftable = false;  ///< whole, and nothing before it
  std::vector<SeenLimb> limbs;
  std::vector<HiddenBy> hiddenBy;  ///< most first
  std::vector<JointCut> jointCuts;
  Polygon face;  ///< around the head, mm on the page
  Point mouth;   ///< where tails aim, mm on the page
  Region body;   ///< silhouette inside the panel, mm on the page
  bool operator==(const SeenFigure&) const = default;
};

struct CopyLine {
  std::string text;
  Point baselineMiddle;  ///< mm on the page
  bool operator==(const CopyLine&) const = default;
};

struct PlacedBalloon {
  std::string item;  ///< CopyItem id
  CopyKind kind = CopyKind::Speech;
  bool offPanel = false;
  Polygon outline;  ///< balloon or caption box; empty for SFX and titles set free
  Polygon tail;     ///< empty when there is none; joins the outline
  std::vector<CopyLine> lines;
  double sizePt = 0;    ///< type size at print
  double turnDeg = 0;   ///< of the lines about their middle, for SFX
  bool byHand = false;  ///< the artist placed it: lettering leaves it where it is
  bool operator==(const PlacedBalloon&) const = default;
};

/// A line that the artist drew over a panel to think with.
struct PenStroke {
  std::vector<Point> points;     ///< mm on the page
  std::vector<double> widthsMm;  ///< one per point
  bool black = false;            ///< else non-photo blue
  bool operator==(const PenStroke&) const = default;
};

struct CardLine {
  std::string rule;
  double cost = 0;
  std::string reason;
  std::string remedy;
  int panel = 0;  ///< reading order from 1; 0 = the page
  bool operator==(const CardLine&) const = default;
};

struct RoughPanel {
  std::string beat;
  Polygon outline;  ///< inner edge of the border or, when bled, out to the bleed
  bool dominant = false;
  bool ground = false;  ///< lies under the others, which are inset
  bool bleeds = false;
  Staging staging;
  Point focus;
  Lead lead;
  std::vector<SeenFigure> figures;
  std::vector<SeenTangent> tangents;
  std::vector<PlacedBalloon> balloons;
  std::vector<PenStroke> strokes;  ///< in the order drawn
  bool operator==(const RoughPanel&) const = default;
};

struct RoughReading {
  std::vector<int> order;  ///< panels (1 = first intended) in the likeliest order
  double followed = 0;     ///< share of readers expected to take the intended order
  double handedOn = 0;     ///< mean share of the leads' cones that arrive at the next panel
  bool operator==(const RoughReading&) const = default;
};

struct Rough {
  std::string name;         ///< A, B, C…
  double score = 0;         ///< sum of the card's costs; less is better
  std::string arrangement;  ///< tree in our notation, see docs/formats
  std::string treatment;    ///< plain, bled, ground, slanted
  std::vector<CardLine> card;
  std::vector<RoughPanel> panels;  ///< in reading order
  RoughReading reading;
  bool operator==(const Rough&) const = default;
};

}  // namespace tw
