// Where forms run into each other their normals are made to agree, so that light falls over the
// whole body in a few large shapes, as a draughtsman masses it, and not form by form.
//
// The idea: a normal that depends on the place alone is the same on both sides of every seam.
// 1. Every point's normal is shared out to the eight corners of its cell in a cubic grid.
// 2. The grid is blurred once along each axis with the weights 1 2 1.
// 3. Each point reads the blurred normal at its place and keeps a little of its own.
// Cost: linear in points plus cells (about 25 000 for a body). It does badly where two limbs touch
// side by side: the light on their edges is softened; and forms thinner than two cells must be
// left out, since their two sides would cancel.
#include <algorithm>

#include "stage/loft.h"

namespace tw {
namespace {

using Vec3f = Eigen::Vector3f;

constexpr float kOwn = 0.3f;         // weight of a point's own normal beside the blurred one
constexpr float kLeastAgree = 0.1f;  // cosine below which the blurred normal is not believed
constexpr int kMostCells = 1 << 21;  // a grid beyond this would be a figure torn apart

class NormalGrid {
 public:
  NormalGrid(const Mesh& mesh, std::size_t count, double width)
      : width_(static_cast<float>(width)) {
    Vec3f low = mesh.points[0].cast<float>(), high = low;
    for (std::size_t i = 0; i < count; ++i) {
      low = low.cwiseMin(mesh.points[i].cast<float>());
      high = high.cwiseMax(mesh.points[i].cast<float>());
    }
    low_ = low - Vec3f::Constant(1.5f * width_);  // an empty border spares every check of bounds
    for (int k = 0; k < 3; ++k) size_[k] = static_cast<int>((high[k] - low_[k]) / width_) + 3;
    step_[0] = 1;
    step_[1] = size_[0];
    step_[2] = size_[0] * size_[1];
  }

  bool tooLarge() const { return static_cast<double>(size_[0]) * size_[1] * size_[2] > kMostCells; }

  void fill(const Mesh& mesh, std::size_t count) {
    cells_.assign(static_cast<std::size_t>(step_[2]) * size_[2], Vec3f::Zero());
    for (std::size_t i = 0; i < count; ++i) {
      const Vec3f normal = mesh.normals[i].cast<float>();
      atCorners(mesh.points[i].cast<float>(),
                [&](int cell, float weight) { cells_[cell] += weight * normal; });
    }
    for (const int step : step_) blurAlong(step);
  }

  Vec3f at(const Vec3f& place) const {
    Vec3f sum = Vec3f::Zero();
    atCorners(place, [&](int cell, float weight) { sum += weight * cells_[cell]; });
    return sum;
  }

 private:
  template <class Visit>
  void atCorners(const Vec3f& place, const Visit& visit) const {
    const Vec3f c = (place - low_) / width_;
    const int x = static_cast<int>(c.x()), y = static_cast<int>(c.y()), z = static_cast<int>(c.z());
    const Vec3f f(c.x() - float(x), c.y() - float(y), c.z() - float(z));
    const int cell = x + y * step_[1] + z * step_[2];
    for (int k = 0; k < 8; ++k) {
      const bool right = k & 1, up = k & 2, far = k & 4;
      visit(cell + (right ? 1 : 0) + (up ? step_[1] : 0) + (far ? step_[2] : 0),
            (right ? f.x() : 1 - f.x()) * (up ? f.y() : 1 - f.y()) * (far ? f.z() : 1 - f.z()));
    }
  }

  /// The grid's border is empty, so wrapping from one row into the next adds nothing.
  void blurAlong(int step) {
    const int last = static_cast<int>(cells_.size()) - step;
    std::vector<Vec3f> out(cells_.size(), Vec3f::Zero());
    for (int i = step; i < last; ++i) out[i] = cells_[i - step] + 2 * cells_[i] + cells_[i + step];
    cells_.swap(out);
  }

  float width_;
  Vec3f low_;
  int size_[3] = {0, 0, 0}, step_[3] = {0, 0, 0};
  std::vector<Vec3f> cells_;
};

}  // namespace

void blendNormals(Mesh& mesh, std::size_t count, double cell) {
  NormalGrid grid(mesh, count, cell);
  if (grid.tooLarge()) return;
  grid.fill(mesh, count);
  for (std::size_t i = 0; i < count; ++i) {
    const Vec3f own = mesh.normals[i].cast<float>();
    const Vec3f blurred = grid.at(mesh.points[i].cast<float>()).normalized();
    if (blurred.dot(own) < kLeastAgree) continue;
    mesh.normals[i] = (blurred + kOwn * own).cast<double>().normalized();
  }
}

}  // namespace tw
