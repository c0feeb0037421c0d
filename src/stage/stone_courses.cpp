#include "stage/stone_courses.h"

#include <algorithm>
#include <cmath>

#include "base/random.h"
#include "stage/solid_shapes.h"

namespace tw {

namespace {

constexpr double kCourseM = 0.35;          // height of a row of stones
constexpr double kLeastOnPage = 1.0 / 60;  // of the frame's width between two rows
constexpr double kProudM = 0.012;          // off the wall, so that it does not hide them
constexpr double kWeight = 0.42;

struct Side {
  double wide, from, to;  ///< metres; levels between which stones are drawn
};

/// One joint, in the wall's own plane, as a line that placed() turns with the tower.
void addJoint(std::vector<Mesh>& out, Point a, Point b, double half) {
  constexpr double kStepM = 0.3;
  const int steps = std::max(1, static_cast<int>((b - a).length() / kStepM));
  Mesh line;
  for (int i = 0; i <= steps; ++i) {
    const Point p = between(a, b, static_cast<double>(i) / steps);
    line.points.emplace_back(p.x, p.y, -half - kProudM);
    line.normals.emplace_back(0, 0, -1);
  }
  out.push_back(std::move(line));
}

/// Rows break off: each has a piece at either edge, and now and then one between.
void addRow(std::vector<Mesh>& out, const Side& side, double y, double row, Random& random) {
  const double half = side.wide / 2;
  const double left = side.wide * (0.08 + 0.26 * random.uniform());
  const double right = side.wide * (0.08 + 0.26 * random.uniform());
  addJoint(out, {-half, y}, {-half + left, y}, half);
  addJoint(out, {half - right, y}, {half, y}, half);
  if (random.uniform() < 0.3) {
    const double x = half * (random.uniform() - 0.6), length = side.wide * 0.2;
    addJoint(out, {x, y}, {std::min(half, x + length), y}, half);
  }
  const double x = random.uniform() < 0.5 ? -half + 0.6 * left : half - 0.6 * right;
  addJoint(out, {x, y}, {x, std::min(side.to, y + row)}, half);
}

}  // namespace

std::vector<GarmentLine> stoneCourses(const std::array<double, 3>& size, bool broken,
                                      const Place3& at, double headingDeg, double metresPerWidth) {
  const double body = (broken ? 1.0 : 0.8) * size[1], wide = std::min(size[0], size[2]);
  const double belfry = std::min(1.35 * wide, 0.36 * body);
  double row = kCourseM;
  while (row < kLeastOnPage * metresPerWidth) row *= 2;
  std::vector<GarmentLine> lines;
  Random random(7);
  for (int face = 0; face < 4; ++face) {
    std::vector<Mesh> joints;
    const Side side{wide, std::max(0.2 * wide, -at.y), body - belfry};  // none under the ground
    for (double y = side.from; y < side.to; y += row) addRow(joints, side, y, row, random);
    for (Mesh& joint : joints) {
      joint = placed(placed(std::move(joint), {}, 90.0 * face), at, headingDeg);
      lines.push_back({std::move(joint.points), std::move(joint.normals), 1, 0, kWeight});
    }
  }
  return lines;
}

}  // namespace tw
