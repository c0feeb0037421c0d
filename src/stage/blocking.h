// Who stands where: from a beat to figures and props in the panel's space, before any camera.
// The reading side, the relations ("points at", "runs to", "hauls") and natural distances are
// kept here; no two heads hide each other from the side the camera will look from.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "stage/staging.h"
#include "stage/volumes.h"

namespace tw {

/// A figure ready to be framed.
struct Actor {
  SetFigure set;
  const Body* body = nullptr;
  const Pose* pose = nullptr;
  Skeleton skeleton;
  Volumes volumes;
  double floor = 0;  ///< height of what it stands, sits or floats on
  bool speaks = false;
};

/// An upright box in the space, for things that the camera has to hold.
struct Box3 {
  Vec3 min = Vec3::Zero(), max = Vec3::Zero();
  Vec3 middle() const { return (min + max) / 2; }
  std::array<Vec3, 8> corners() const;
};

struct Scene {
  std::vector<Actor> actors;      ///< in the beat's order
  std::vector<SetProp> props;     ///< in the beat's order
  std::vector<Box3> propBoxes;    ///< what each prop fills, roughly
  std::vector<bool> propMatters;  ///< held or looked at by a figure: the frame tries to keep it
  int focus = -1;                 ///< index into actors; −1: the subject is a thing
  int partner = -1;               ///< in one pose for two with the focus, or −1
  Box3 subject;                   ///< the thing, when there is no figure
  bool handIsSubject = false;     ///< a close-up asked for a hand, not for a face
};

/// What blocking needs of the cast; built once per Stager.
struct Cast {
  std::map<std::string, Body> bodies;
  Body stranger;  ///< for names that the cast does not know
  const Body& of(const std::string& who) const;
};

/// Number of different placements worth trying for a beat.
int placementsFor(const Beat& beat);
/// True when the picture is laid out from right to left: mirrored, or read that way, not both.
bool runsLeftward(const StageRequest& request, const StagingChoice& choice);
/// By camera and choice, never by a figure's pose: that may be flipped by itself.
bool runsLeftward(const Staging& staging);

Scene blocked(const StageRequest& request, const StagingChoice& choice, const Cast& cast,
              const PoseLibrary& poses);
/// The scene of a staging that is already solved.
Scene sceneOf(const Staging& staging, const Beat& beat, const std::string& focus, const Cast& cast,
              const PoseLibrary& poses);

/// Unit direction of a heading: 0 = toward −z, > 0 toward the figure's left (+x).
Vec3 directionOf(double headingDeg);
double headingOf(const Vec3& direction);

/// Character ids in the order in which they speak in the panel.
std::vector<std::string> speakersOf(const Beat& beat);
bool isUnderwater(const Beat& beat);

}  // namespace tw
