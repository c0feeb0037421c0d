// Feeds bytes to the reader of models. What is read must be sound: indices in range, unit normals,
// finite places; what is refused must come with a sentence.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "base/result.h"
#include "stage/read_obj.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace tw;
  const auto mesh = readObj({reinterpret_cast<const char*>(data), size}, "model.obj");
  if (!mesh) {
    ensure(!mesh.error().empty() && !mesh.error()[0].sentence.empty(), "a refusal has a sentence");
    return 0;
  }
  ensure(!mesh->triangles.empty(), "a model has a face");
  ensure(mesh->normals.size() == mesh->points.size(), "each point has a normal");
  ensure(mesh->part.size() == mesh->triangles.size(), "each triangle has a part");
  for (const Vec3& p : mesh->points) ensure(p.allFinite(), "places are finite");
  for (const Vec3& n : mesh->normals) ensure(std::abs(n.norm() - 1) < 1e-6, "normals are units");
  for (const auto& t : mesh->triangles)
    for (const std::uint32_t i : t) ensure(i < mesh->points.size(), "corners are points");
  return 0;
}
