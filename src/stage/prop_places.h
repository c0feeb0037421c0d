// Where the things of a beat stand: where the artist says, else beside who uses them, else where
// they dress the floor. What is in a hand gets its place later (held_props.h).
#pragma once

#include "stage/blocking.h"

namespace tw {

/// Places the props of `beat` in a scene whose actors have their first places. Distances are common
/// practice, no source.
class PropPlaces {
 public:
  PropPlaces(const Beat& beat, const StagingChoice& choice, bool aboard, Scene& scene)
      : beat_(beat), choice_(choice), aboard_(aboard), scene_(scene) {}

  void place();
  /// Once the actors are turned: what somebody passes through stands across their way; what a
  /// figure touches turns its front to them.
  void turnBuilt();

 private:
  Vec3 placeOf(std::size_t prop, int user, double& dressing) const;
  void layClose(std::size_t prop, SetProp& set) const;
  int userOf(std::size_t prop) const;
  Vec3 besideUser(std::size_t prop, int user) const;
  double propHeading(const Prop& p, const Vec3& from) const;
  double heightOver(const Prop& p) const;
  Vec3 dressingPlace(std::size_t prop, double rank) const;
  Vec3 backPlace(const Prop& p, double rank) const;
  void putAround(const Actor& actor, std::size_t prop);
  Vec3 vesselPlace(const Prop& p) const;
  Vec3 spot(int actor) const;

  const Beat& beat_;
  const StagingChoice& choice_;
  bool aboard_;
  Scene& scene_;
};

}  // namespace tw
