// Shadows that things throw. On bodies, props and walls: a picture of the scene as the lamp sees it
// tells which places it does not reach. On level ground at height 0: the things pressed flat along
// the light, exact to the picture's pixels.
#pragma once

#include <optional>
#include <vector>

#include "stage/picture.h"
#include "stage/shade.h"

namespace tw {

/// What the lamp sees of the figures and props; sets cast none (a roof would darken everything).
class ShadowMap {
 public:
  ShadowMap(const std::vector<Solid>& solids, const Vec3& towardLamp, int width = 512);

  /// Something stands between the place and the lamp, at least `leastM` away from the place.
  bool isShaded(const Vec3& place, double leastM) const;
  /// Takes the lamp's light from the pixels that it does not reach.
  void darken(const std::vector<Solid>& solids, const Camera& camera, Picture& picture) const;

 private:
  double shadeAt(const Vec3& lampSpace, double leastM) const;  ///< 0 lit … 1 shaded

  std::optional<Camera> lamp_;
  Picture seen_;
};

/// 1 where the ground at height 0 lies in the shadow of a figure or prop, at half the picture's
/// width. Nothing of it where something stands before the ground.
Field groundShadow(const std::vector<Solid>& solids, const Camera& camera, const Vec3& towardLamp,
                   const Picture& picture);

/// 1 where a foot or the base of a thing meets the ground: there it is darkest, whatever the light.
Field contactShadow(const std::vector<Solid>& solids, const Camera& camera, const Picture& picture);

/// The place pressed onto the ground along the light.
Vec3 onGround(const Vec3& place, const Vec3& towardLamp);

}  // namespace tw
