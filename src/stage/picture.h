// One software renderer (id, depth, normal) and the drawing made from it: outlines with hidden
// lines removed, as smooth vector strokes with weight; shadow tones; horizon and set lines.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "geometry/drawing.h"
#include "stage/camera.h"
#include "stage/figure.h"

namespace tw {

/// Where a head's marks (eyes, brow, nose, mouth) are drawn: head coordinates are x in half head
/// breadths to the head's right, y in head heights above the chin, z in head depths to the front
/// of the ears' axis.
struct HeadMarks {
  Vec3 origin;           ///< the chin's level on the ears' axis
  Eigen::Matrix3d axes;  ///< columns: metres per unit of x, y, z
  double mouthOpen = 0;  ///< 0 closed … 1 wide open
  Vec3 at(double x, double y, double z) const { return origin + axes * Vec3(x, y, z); }
};
HeadMarks headMarks(const Body& body, const Skeleton& skeleton);

/// A line of the costume, or joints of a wall: places on the surface with the directions they look
/// to.
struct GarmentLine {
  std::vector<Vec3> at, out;
  std::uint32_t parts = 0;  ///< bit per BodyPart on which it may be seen
  double leastHeadMm = 0;   ///< left out when the head is smaller on the page
  double weight = 1;        ///< of the drawing's base line
};

/// The light that roughs are drawn by comes over the artist's left shoulder, whichever way the
/// camera looks: this direction, turned with the camera's pan.
Vec3 keyLight(const Camera& camera);

/// A thing in front of the camera: mesh in world space and who it is.
struct Solid {
  Mesh mesh;
  int figure = -1;     ///< index into the staging's figures, or −1
  int prop = -1;       ///< index into the staging's props, or −1
  bool isSet = false;  ///< walls, stairs, far things: drawn lighter
  bool isFocus = false;
  std::optional<HeadMarks> head;          ///< figures: the face is drawn when it is large enough
  Look look;                              ///< figures: values of hair and costume
  std::vector<GarmentLine> garmentLines;  ///< of stone walls too
};

/// Gives a figure's solid its head marks, the values of its look and, when it will be drawn, the
/// lines of its costume.
void dress(Solid& solid, const Body& body, const Skeleton& skeleton, bool withLines = true);

struct Picture {
  int width = 0, height = 0;
  std::vector<std::int16_t> solid;  ///< index into the solids, −1 = nothing; row by row
  std::vector<std::uint8_t> part;
  std::vector<float> depth;  ///< camera depth in m, infinity where nothing
  std::vector<float> light;  ///< 0 in shadow … 1 fully lit by the key light
};

/// Renders the solids into a picture of that width (px); height from the camera's aspect.
Picture render(const std::vector<Solid>& solids, const Camera& camera, int width,
               const Vec3& towardLight = Vec3(-0.5, 0.8, -0.45));

/// Share of the solid's own pixels (rendered alone, beyond the frame too) that the picture shows.
std::vector<double> visibleShares(const std::vector<Solid>& solids, const Camera& camera,
                                  int width);
/// The same for the `first` solids in their picture that has been rendered already.
std::vector<double> visibleShares(const Picture& picture, const std::vector<Solid>& solids,
                                  const Camera& camera, std::size_t first);

struct DrawOptions {
  double lineMm = 0.35;  ///< base weight at print size
  bool shadows = true;
  bool setLines = true;  ///< horizon and ground lines
  int width = 600;       ///< render width in px for visibility and tones
  std::string setting;   ///< beat.setting: "interior …", "exterior …", "underwater …"
};

/// The panel's drawing on the page. The camera frame is laid over `frame` (mm) and everything is
/// clipped to `panel`.
Drawing drawPanel(const std::vector<Solid>& solids, const Camera& camera, const Rect& frame,
                  const Polygon& panel, const DrawOptions& options);

}  // namespace tw
