// A pinhole camera (Hartley & Zisserman, Multiple View Geometry, ch. 6) over the eight corners of
// the prop's box. The picture's width is the panel's; see CameraPlace for the angles.
#include "read/prop_place.h"

#include <algorithm>
#include <array>
#include <numbers>

namespace tw {
namespace {

constexpr double kFrameWidthMm = 36;
constexpr double kRadians = std::numbers::pi / 180;
constexpr double kNearestM = 0.05;
/// A thing over this share of the panel's box is the place, not a thing in it; our choice.
constexpr double kSettingShare = 0.6;

using Row = std::array<double, 3>;

double along(const Row& row, const Row& v) {
  return row[0] * v[0] + row[1] * v[1] + row[2] * v[2];
}

struct View {
  Row right, down, forward;
};

View viewOf(const CameraPlace& c) {
  const double pan = c.panDeg * kRadians, pitch = c.pitchDeg * kRadians;
  const double roll = c.rollDeg * kRadians;
  const Row forward{std::sin(pan) * std::cos(pitch), std::sin(pitch),
                    std::cos(pan) * std::cos(pitch)};
  const Row right{std::cos(pan), 0, -std::sin(pan)};
  const Row down{std::sin(pan) * std::sin(pitch), -std::cos(pitch),
                 std::cos(pan) * std::sin(pitch)};
  View view{{}, {}, forward};
  for (std::size_t i = 0; i < 3; ++i) {
    view.right[i] = std::cos(roll) * right[i] + std::sin(roll) * down[i];
    view.down[i] = -std::sin(roll) * right[i] + std::cos(roll) * down[i];
  }
  return view;
}

std::array<Row, 8> cornersOf(const SetProp& set, const Prop& prop) {
  const double turn = set.headingDeg * kRadians;
  const double foot = prop.heldBy.empty() ? 0 : -0.5;  // held things are set by their middle
  std::array<Row, 8> corners{};
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const double x = ((i & 1) ? 0.5 : -0.5) * prop.sizeM[0];
    const double y = (((i & 2) ? 1 : 0) + foot) * prop.sizeM[1];
    const double z = ((i & 4) ? 0.5 : -0.5) * prop.sizeM[2];
    corners[i] = {set.at.x + x * std::cos(turn) - z * std::sin(turn), set.at.y + y,
                  set.at.z + x * std::sin(turn) + z * std::cos(turn)};
  }
  return corners;
}

Rect cut(const Rect& box, const Rect& by) {
  return {{std::max(box.min.x, by.min.x), std::max(box.min.y, by.min.y)},
          {std::min(box.max.x, by.max.x), std::min(box.max.y, by.max.y)}};
}

}  // namespace

std::optional<Rect> propPlace(const SetProp& set, const Prop& prop, const CameraPlace& camera,
                              const Rect& panel) {
  if (set.lengthM > 0 || panel.width() <= 0) return std::nullopt;
  const View view = viewOf(camera);
  const double focal = camera.focalMm / kFrameWidthMm * panel.width();
  const Point middle = panel.centre() + Vector{camera.offsetX, camera.offsetY} * panel.width();
  Rect box{{1e300, 1e300}, {-1e300, -1e300}};
  for (const Row& corner : cornersOf(set, prop)) {
    const Row from{corner[0] - camera.eye.x, corner[1] - camera.eye.y, corner[2] - camera.eye.z};
    const double depth = along(view.forward, from);
    if (depth < kNearestM) return std::nullopt;
    const Point p =
        middle + Vector{along(view.right, from), along(view.down, from)} * (focal / depth);
    box.min = {std::min(box.min.x, p.x), std::min(box.min.y, p.y)};
    box.max = {std::max(box.max.x, p.x), std::max(box.max.y, p.y)};
  }
  box = cut(box, panel);
  if (box.width() <= 0 || box.height() <= 0) return std::nullopt;
  if (box.area() > kSettingShare * panel.area()) return std::nullopt;
  return box;
}

}  // namespace tw
