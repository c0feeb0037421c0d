// The light of a panel as data: a key, a fill and a rim, each a direction that is fixed to the
// camera, as an artist thinks of it ("from behind her left shoulder"), and a strength. The script's
// words choose one of the lights in presets/lexicon/light.json; otherwise the key comes over the
// artist's left shoulder. More light never makes anything darker.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "stage/picture.h"

namespace tw {

struct Lamp {
  /// From the scene to the lamp: x to the camera's right, y straight up in the world, z level
  /// toward the camera. Unit length.
  Vec3 from{-0.6, 0.66, 0.36};
  double strength = 1;  ///< 1 = a surface turned to it has its own value

  bool operator==(const Lamp&) const = default;
};

struct Lighting {
  std::string name = "shoulder";
  std::string title = "over the left shoulder";
  Lamp key, fill{Vec3(0.7, 0.3, 0.65), 0.12}, rim{Vec3(0.3, 0.4, -0.87), 0};
  double ambient = 0.08;  ///< from everywhere
};

/// Unit direction in the world toward the lamp.
Vec3 towardLamp(const Lamp& lamp, const Camera& camera);

/// Left and right exchanged.
Lighting mirrored(Lighting light);

/// What the lamps give a surface with that normal, 1 = its own value. Lambert's law for each lamp;
/// `keyShare` is the share of the key that no other thing cuts off.
double illuminance(const Lighting& light, const Camera& camera, const Vec3& normal,
                   double keyShare = 1);

/// A body of `height` above level ground casts a shadow this long: height · cot(elevation).
/// Nothing falls on the ground when the lamp stands no higher than it.
std::optional<double> shadowLength(double height, const Vec3& towardLamp);

/// The lights that scripts can name.
class LightWords {
 public:
  static Result<LightWords> load();  ///< presets/lexicon/light.json
  static Result<LightWords> read(std::string_view bytes, const std::string& fileName);

  /// The first light one of whose words stands in the text, else the default one.
  const Lighting& lightFor(std::string_view words) const;
  const Lighting* find(std::string_view name) const;
  /// The first light one of whose words stands in the text, or null.
  const Lighting* saidIn(std::string_view text) const;
  /// Of a beat: what its panel says goes before what its scene says.
  const Lighting& lightFor(const Beat& beat) const;

 private:
  struct Entry {
    Lighting light;
    std::vector<std::string> words;
  };
  std::vector<Entry> entries_;
  Lighting ordinary_;
};

/// As drawPanel, by the light given.
Drawing drawLitPanel(const std::vector<Solid>& solids, const Camera& camera, const Rect& frame,
                     const Polygon& panel, const DrawOptions& options, const Lighting& light);

}  // namespace tw
