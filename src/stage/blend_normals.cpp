// Where forms run into each other their normals are made to agree, so that light falls over the
// whole body in a few large shapes, as a draughtsman masses it, and not form by form.
//
// 1. Points are sorted into the cells of a cubic grid as wide as `reach`, so that a row of three
//    cells is one run of memory.
// 2. Each point's normal becomes the mean of all normals within `reach` that do not point away
//    from it, weighted (1 − d²/reach²)².
// Cost: points × neighbours (about 20). It does badly where two limbs touch side by side with
// normals less than a right angle apart: their edge is shaded too softly.
#include "stage/loft.h"

namespace tw {
namespace {

using Vec3f = Eigen::Vector3f;

struct Sample {
  Vec3f at, normal;
};

/// Samples sorted by cell: x runs fastest.
class Grid {
 public:
  Grid(const Mesh& mesh, std::size_t count, double width) : width_(static_cast<float>(width)) {
    Vec3f low = mesh.points[0].cast<float>(), high = low;
    for (std::size_t i = 0; i < count; ++i) {
      low = low.cwiseMin(mesh.points[i].cast<float>());
      high = high.cwiseMax(mesh.points[i].cast<float>());
    }
    low_ = low - Vec3f::Constant(1.5f * width_);  // an empty border spares every check of bounds
    for (int k = 0; k < 3; ++k) size_[k] = static_cast<int>((high[k] - low_[k]) / width_) + 2;
    sort(mesh, count);
  }

  /// The blended normal at a point whose own normal is `normal`.
  Vec3f blended(const Vec3f& at, const Vec3f& normal) const {
    const float most = width_ * width_;
    Vec3f sum = normal;
    const int middle = cellOf(at);
    for (int z = -1; z <= 1; ++z)
      for (int y = -1; y <= 1; ++y) {
        const int row = middle + (z * size_[1] + y) * size_[0];
        for (std::uint32_t k = start_[row - 1]; k < start_[row + 2]; ++k) {
          const float d2 = (samples_[k].at - at).squaredNorm();
          if (d2 >= most || samples_[k].normal.dot(normal) <= 0) continue;
          const float fade = 1 - d2 / most;
          sum += fade * fade * samples_[k].normal;
        }
      }
    return sum;
  }

 private:
  int cellOf(const Vec3f& at) const {
    const Vec3f c = (at - low_) / width_;
    return (static_cast<int>(c.z()) * size_[1] + static_cast<int>(c.y())) * size_[0] +
           static_cast<int>(c.x());
  }

  void sort(const Mesh& mesh, std::size_t count) {
    start_.assign(static_cast<std::size_t>(size_[0]) * size_[1] * size_[2] + 1, 0);
    std::vector<int> cells(count);
    for (std::size_t i = 0; i < count; ++i) {
      cells[i] = cellOf(mesh.points[i].cast<float>());
      ++start_[cells[i] + 1];
    }
    for (std::size_t c = 0; c + 1 < start_.size(); ++c) start_[c + 1] += start_[c];
    std::vector<std::uint32_t> next(start_);
    samples_.resize(count);
    for (std::size_t i = 0; i < count; ++i)
      samples_[next[cells[i]]++] = {mesh.points[i].cast<float>(), mesh.normals[i].cast<float>()};
  }

  float width_;
  Vec3f low_;
  int size_[3] = {0, 0, 0};
  std::vector<std::uint32_t> start_;
  std::vector<Sample> samples_;
};

}  // namespace

void blendNormals(Mesh& mesh, std::size_t count, double reach) {
  const Grid grid(mesh, count, reach);
  for (std::size_t i = 0; i < count; ++i) {
    const Vec3f own = mesh.normals[i].cast<float>();
    mesh.normals[i] =
        grid.blended(mesh.points[i].cast<float>(), own).normalized().cast<double>().normalized();
  }
}

}  // namespace tw
