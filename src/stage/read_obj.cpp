// From an OBJ file to a mesh.
//
//  1 Sizes are counted by line beginnings before anything is parsed.
//  2 tinyobjloader parses; a buffer that knows how many lines it has handed out tells where. Its
//    numbers are checked against the line's own text: it takes what is no number for 0.
//  3 Each face is flattened along its normal by Newell's formula (I. Sutherland, R. Sproull,
//    R. Schumacker 1974, "A characterization of ten hidden-surface algorithms") and cut into
//    triangles by ear clipping, so concave faces come out right.
//  4 smoothMesh makes normals and turns what is wound wrongly.
// Cost: linear but for ear clipping. Does badly: faces far from flat, and curves and free-form
// surfaces, which it does not know.
#include "stage/read_obj.h"

#include <fmt/format.h>
#include <tiny_obj_loader.h>

#include <Eigen/Geometry>
#include <charconv>
#include <cmath>
#include <istream>
#include <optional>
#include <streambuf>

#include "geometry/triangulate.h"
#include "stage/smooth_mesh.h"

namespace tw {

namespace {

constexpr double kFarthest = 1e6;  // from the origin; beyond it floats lose the millimetre

/// A text as a stream that knows the line it has handed out last.
class LineBuffer : public std::streambuf {
 public:
  explicit LineBuffer(std::string_view text) : text_(text) {
    char* start = const_cast<char*>(text.data());  // the interface asks for it; nothing writes
    setg(start, start, start + text.size());
  }

  /// From 1. Each line is asked for once or not at all, in order.
  int line() {
    skipTo(handedOut());
    return line_;
  }
  std::string_view lineText() {
    skipTo(handedOut());
    std::size_t end = text_.find_first_of("\r\n", start_);
    if (end == std::string_view::npos) end = text_.size();
    return text_.substr(start_, end - start_);
  }

 private:
  std::size_t handedOut() const { return static_cast<std::size_t>(gptr() - eback()); }

  /// Lines end in "\n", "\r\n" or "\r", as the parser has it.
  void skipTo(std::size_t end) {
    while (true) {
      const std::size_t stop = text_.find_first_of("\r\n", start_);
      if (stop == std::string_view::npos) return;
      const bool two = text_[stop] == '\r' && stop + 1 < text_.size() && text_[stop + 1] == '\n';
      const std::size_t next = stop + (two ? 2 : 1);
      if (next >= end) return;
      start_ = next;
      ++line_;
    }
  }

  std::string_view text_;
  std::size_t start_ = 0;
  int line_ = 1;
};

/// Words of a line after its first.
template <class Take>
void eachWord(std::string_view line, Take take) {
  constexpr std::string_view kBlank = " \t";
  bool first = true;
  while (true) {
    const std::size_t start = line.find_first_not_of(kBlank);
    if (start == std::string_view::npos) return;
    line.remove_prefix(start);
    const std::size_t end = std::min(line.find_first_of(kBlank), line.size());
    if (!first) take(line.substr(0, end));
    first = false;
    line.remove_prefix(end);
  }
}

/// A finite number that fills the word.
bool isNumber(std::string_view word) {
  if (!word.empty() && word.front() == '+') word.remove_prefix(1);
  double value = 0;
  const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), value);
  return error == std::errc() && end == word.data() + word.size() && std::isfinite(value) &&
         std::abs(value) <= kFarthest;
}

class ObjSurface {
 public:
  ObjSurface(std::string_view text, std::string file)
      : buffer_(text), text_(text), file_(std::move(file)) {}

  Result<Mesh> read() {
    if (auto fits = mustFit(); !fits) return tl::unexpected(fits.error());
    tinyobj::callback_t calls;
    calls.vertex_cb = [](void* self, float x, float y, float z, float) {
      static_cast<ObjSurface*>(self)->addVertex(x, y, z);
    };
    calls.index_cb = [](void* self, tinyobj::index_t* corners, int count) {
      static_cast<ObjSurface*>(self)->addFace(corners, static_cast<std::size_t>(count));
    };
    std::istream stream(&buffer_);
    std::string warnings, error;  // of materials mostly, which nobody asked for
    tinyobj::LoadObjWithCallback(stream, calls, this, nullptr, &warnings, &error);
    if (problem_) return tl::unexpected(*problem_);
    if (triangles_.empty())
      return badInput("The model has no face with an area.", {.file = file_},
                      "Export it as a Wavefront OBJ file with polygons.");
    return smoothMesh(points_, triangles_);
  }

 private:
  tl::unexpected<Problems> refused(std::string sentence, std::string advice = {}) const {
    return badInput(std::move(sentence), {.file = file_}, std::move(advice));
  }

  /// Keeps the first refusal; the parser cannot be stopped but what follows is not looked at.
  void refuse(std::string sentence) {
    if (problem_) return;
    problem_ = badInput(std::move(sentence), {.file = file_, .line = buffer_.line()}).value();
  }

  Result<void> mustFit() const {
    if (text_.size() > kLargestObjBytes)
      return refused(fmt::format("The model has {} bytes; at most {} are read.", text_.size(),
                                 kLargestObjBytes),
                     "Export it with fewer polygons.");
    if (text_.find('\0') != std::string_view::npos)
      return refused("The file holds bytes that are no text.", "Is it a Wavefront OBJ file?");
    const std::size_t vertices = countLines("v"), faces = countLines("f");
    if (vertices > kMostObjVertices)
      return refused(fmt::format("The model has {} vertices; at most {} are read.", vertices,
                                 kMostObjVertices),
                     "Export it with fewer polygons.");
    if (faces > kMostObjTriangles)
      return refused(
          fmt::format("The model has {} faces; at most {} are read.", faces, kMostObjTriangles),
          "Export it with fewer polygons.");
    return {};
  }

  /// Lines that begin with that one letter and a blank.
  std::size_t countLines(std::string_view letter) const {
    std::size_t count = 0;
    for (std::size_t at = 0; at < text_.size();) {
      const std::size_t end = std::min(text_.find_first_of("\r\n", at), text_.size());
      const std::size_t word = text_.find_first_not_of(" \t", at);
      if (word < end && text_.substr(word, 1) == letter && word + 1 < end &&
          (text_[word + 1] == ' ' || text_[word + 1] == '\t'))
        ++count;
      at = end + 1;
    }
    return count;
  }

  void addVertex(double x, double y, double z) {
    if (problem_) return;
    int words = 0;
    eachWord(buffer_.lineText(), [&](std::string_view word) {
      if (++words <= 3 && !isNumber(word))
        refuse(fmt::format("\"{}\" is no number that a vertex may have.", word.substr(0, 30)));
    });
    if (words < 3) refuse(fmt::format("A vertex has {} numbers; three are needed.", words));
    points_.emplace_back(x, y, -z);  // the file's space is right-handed, ours is not
  }

  /// Index of the vertex, or nothing. Files count from 1, or backward from the last one.
  std::optional<std::uint32_t> vertexAt(int index) const {
    const auto count = static_cast<std::int64_t>(points_.size());
    const std::int64_t at = index > 0 ? index - 1 : count + index;
    if (index == 0 || at < 0 || at >= count) return std::nullopt;
    return static_cast<std::uint32_t>(at);
  }

  void addFace(const tinyobj::index_t* corners, std::size_t count) {
    if (problem_) return;
    if (count > kMostObjCorners)
      return refuse(
          fmt::format("A face has {} corners; at most {} are read.", count, kMostObjCorners));
    bool tooLong = false;  // the parser's numbers would wrap around
    eachWord(buffer_.lineText(),
             [&](std::string_view word) { tooLong |= std::min(word.find('/'), word.size()) > 9; });
    std::vector<std::uint32_t> face;
    for (std::size_t i = 0; i < count; ++i) {
      const auto vertex = vertexAt(corners[i].vertex_index);
      if (!vertex || tooLong)
        return refuse(fmt::format("A face names vertex {}, but only {} have been given.",
                                  corners[i].vertex_index, points_.size()));
      if (face.empty() || face.back() != *vertex) face.push_back(*vertex);
    }
    while (face.size() > 1 && face.front() == face.back()) face.pop_back();
    if (face.size() < 3)
      return refuse(fmt::format("A face has {} different corners; three are needed.", face.size()));
    cutUp(face);
  }

  /// Newell's: twice the area of what the polygon spans, along its normal.
  Vec3 spanOf(const std::vector<std::uint32_t>& face) const {
    Vec3 sum = Vec3::Zero();
    const Vec3& origin = points_[face[0]];
    for (std::size_t i = 1; i + 1 < face.size(); ++i)
      sum += (points_[face[i]] - origin).cross(points_[face[i + 1]] - origin);
    return sum;
  }

  void cutUp(const std::vector<std::uint32_t>& face) {
    const Vec3 normal = spanOf(face);
    if (!(normal.norm() > 1e-12)) return;
    const Vec3 like = std::abs(normal.x()) < 0.6 * normal.norm() ? Vec3::UnitX() : Vec3::UnitY();
    const Vec3 u = normal.cross(like).normalized(), v = normal.normalized().cross(u);
    std::vector<Point> flat;
    for (const std::uint32_t i : face) {
      const Vec3 off = points_[i] - points_[face[0]];
      flat.push_back({off.dot(u), off.dot(v)});
    }
    for (const auto& t : triangulated(flat))
      triangles_.push_back({face[t[0]], face[t[2]], face[t[1]]});  // mirrored with z
    if (triangles_.size() > kMostObjTriangles)
      refuse(fmt::format("The model's faces make more than {} triangles.", kMostObjTriangles));
  }

  LineBuffer buffer_;
  std::string_view text_;
  std::string file_;
  std::vector<Vec3> points_;
  std::vector<std::array<std::uint32_t, 3>> triangles_;
  std::optional<Problems> problem_;
};

}  // namespace

Result<Mesh> readObj(std::string_view text, const std::string& fileName) {
  return ObjSurface(text, fileName).read();
}

}  // namespace tw
