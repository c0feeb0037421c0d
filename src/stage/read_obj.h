// Reads a Wavefront OBJ file's surface: vertices and faces, whatever their number of corners.
// Materials, texture places, normals and groups are passed over; normals are made anew. The text
// is borrowed, nothing is opened.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "base/result.h"
#include "stage/figure.h"

namespace tw {

inline constexpr std::uintmax_t kLargestObjBytes = 32u << 20;
inline constexpr std::size_t kMostObjVertices = 100000;
inline constexpr std::size_t kMostObjTriangles = 150000;
inline constexpr std::size_t kMostObjCorners = 256;  ///< of one face

/// The surface as the file has it, in its own units taken as metres and with y up, in our space:
/// what shows its front to the file's +z shows it to the camera. Bad input, with the line: too
/// large, no face, a number that is none, an index without a vertex, a face of fewer than three
/// different corners. Faces without area are left out. Closed parts that are wound inside out are
/// turned.
Result<Mesh> readObj(std::string_view text, const std::string& fileName);

}  // namespace tw
