#include "stage/read_obj.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <Eigen/Geometry>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <numbers>
#include <sstream>

#include "stage/mesh_area_test.h"
#include "stage/mesh_parts.h"
#include "stage/models.h"

namespace tw {
namespace {

Mesh read(const std::string& text) {
  const auto mesh = readObj(text, "art/models/test.obj");
  REQUIRE_MESSAGE(mesh.has_value(), (mesh ? "" : describe(mesh.error())));
  return *mesh;
}

std::string refusal(const std::string& text) {
  const auto mesh = readObj(text, "art/models/test.obj");
  REQUIRE_FALSE(mesh.has_value());
  CHECK(mesh.error().size() == 1);
  return describe(mesh.error());
}

bool has(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

const std::string kCube =
    "# a cube of 2\nmtllib none.mtl\no cube\n"
    "v -1 -1 -1\nv 1 -1 -1\nv 1 1 -1\nv -1 1 -1\nv -1 -1 1\nv 1 -1 1\nv 1 1 1\nv -1 1 1\n"
    "vt 0 0\nvn 0 0 1\nusemtl brass\ns off\n"
    "f 4/1/1 3/1/1 2/1/1 1/1/1\nf 5//1 6//1 7//1 8//1\nf 1/1 2/1 6/1 5/1\n"
    "f 3 4 8 7\nf 2 3 7 6\nf -8 -4 -1 -5\n";

const std::string kTetrahedron =
    "v 1 1 1\nv -1 -1 1\nv -1 1 -1\nv 1 -1 -1\nf 1 3 2\nf 1 2 4\nf 1 4 3\nf 2 3 4\n";

std::string icosahedron() {
  const double g = (1 + std::sqrt(5.0)) / 2;
  std::string out;
  for (const double a : {-1.0, 1.0})
    for (const double b : {-g, g}) {
      out += fmt::format("v 0 {} {}\nv {} {} 0\nv {} 0 {}\n", a, b, a, b, b, a);
    }
  // Faces: the triples of corners at distance 2 from each other, whichever way they turn.
  std::vector<Vec3> p;
  std::istringstream lines(out);
  std::string v;
  for (double x, y, z; lines >> v >> x >> y >> z;) p.emplace_back(x, y, z);
  const auto near = [&](std::size_t i, std::size_t k) {
    return std::abs((p[i] - p[k]).norm() - 2) < 1e-3;
  };
  for (std::size_t i = 0; i < 12; ++i)
    for (std::size_t k = i + 1; k < 12; ++k)
      for (std::size_t m = k + 1; m < 12; ++m)
        if (near(i, k) && near(k, m) && near(m, i))
          out += fmt::format("f {} {} {}\n", i + 1, k + 1, m + 1);
  return out;
}

}  // namespace

// Source of the figures: edge a, volume and area of the regular solids as in any table (for
// instance H. S. M. Coxeter, "Regular Polytopes", table I): cube a³, 6a²; tetrahedron a³/(6√2),
// √3·a²; icosahedron 5(3 + √5)a³/12, 5√3·a².
TEST_CASE("regular solids written as OBJ have their textbook volume and area") {
  const Mesh cube = read(kCube);
  CHECK(signedVolume(cube) == doctest::Approx(8));
  CHECK(surface(cube) == doctest::Approx(24));
  const double a = 2 * std::sqrt(2.0);
  const Mesh tetrahedron = read(kTetrahedron);
  CHECK(signedVolume(tetrahedron) == doctest::Approx(a * a * a / (6 * std::sqrt(2.0))));
  CHECK(surface(tetrahedron) == doctest::Approx(std::sqrt(3.0) * a * a));
  const Mesh icosahedron20 = read(icosahedron());
  CHECK(icosahedron20.triangles.size() == 20);
  CHECK(signedVolume(icosahedron20) ==
        doctest::Approx(5 * (3 + std::sqrt(5.0)) / 12 * 8).epsilon(1e-5));
  CHECK(surface(icosahedron20) == doctest::Approx(5 * std::sqrt(3.0) * 4).epsilon(1e-5));
}

TEST_CASE("a concave face covers its own area and no more") {
  // An L of three unit squares, lifted off every axis' plane.
  const Mesh mesh = read("v 0 0 0\nv 2 0 2\nv 2 1 2\nv 1 1 1\nv 1 2 1\nv 0 2 0\nf 1 2 3 4 5 6\n");
  CHECK(mesh.triangles.size() == 4);
  CHECK(surface(mesh) == doctest::Approx(3 * std::sqrt(2.0)));
}

TEST_CASE("line ends of any system and either way of winding give the same solid") {
  std::string dos = kCube, mac = kCube;
  for (std::size_t at = 0; (at = dos.find('\n', at)) != std::string::npos; at += 2)
    dos.replace(at, 1, "\r\n");
  std::replace(mac.begin(), mac.end(), '\n', '\r');
  CHECK(signedVolume(read(dos)) == doctest::Approx(8));
  CHECK(signedVolume(read(mac)) == doctest::Approx(8));
  std::string inside = kTetrahedron;
  inside.replace(inside.find("f 1 3 2"), 7, "f 1 2 3");  // one face wound the other way
  CHECK(signedVolume(read(inside)) == doctest::Approx(8.0 / 3));
}

TEST_CASE("normals are apart at edges and shared where the surface is round") {
  const Mesh cube = read(kCube);
  CHECK(cube.points.size() == 24);
  for (const Vec3& n : cube.normals) CHECK(n.cwiseAbs().maxCoeff() == doctest::Approx(1));
  std::string tube;  // a prism of 24 sides: its sides are round
  for (int i = 0; i < 24; ++i) {
    const double t = 2 * std::numbers::pi * i / 24;
    tube +=
        fmt::format("v {} 0 {}\nv {} 1 {}\n", std::cos(t), std::sin(t), std::cos(t), std::sin(t));
  }
  for (int i = 0; i < 24; ++i) {
    const int a = 2 * i + 1, b = 2 * ((i + 1) % 24) + 1;
    tube += fmt::format("f {} {} {} {}\n", a, a + 1, b + 1, b);
  }
  CHECK(read(tube).points.size() == 48);
}

TEST_CASE("each refusal is one sentence with file and line") {
  CHECK(has(refusal("v 0 0 0\nv 1 nan 0\n"), "art/models/test.obj:2: \"nan\""));
  CHECK(has(refusal("v 0 0 0\nv 1 1e999 0\n"), ":2: \"1e999\""));
  CHECK(has(refusal("v 0 0 0\nv 1 two 0\n"), "\"two\" is no number"));
  CHECK(has(refusal("v 0 0\n"), ":1: A vertex has 2 numbers; three are needed."));
  CHECK(has(refusal(kTetrahedron + "f 1 2 9\n"), ":9: A face names vertex 9, but only 4"));
  CHECK(has(refusal(kTetrahedron + "f 1 2 -9\n"), "names vertex -9"));
  CHECK(has(refusal(kTetrahedron + "f 0 1 2\n"), "names vertex 0"));
  CHECK(has(refusal(kTetrahedron + "f 1 2 4294967299\n"), "A face names vertex"));
  CHECK(has(refusal(kTetrahedron + "\nf 1 2\n"), ":10: A face has 2 different corners"));
  CHECK(has(refusal(kTetrahedron + "f 1 2 2 1\n"), "A face has"));
  CHECK(has(refusal(""), "no face with an area"));
  CHECK(has(refusal("v 0 0 0\nv 1 0 0\nv 2 0 0\nf 1 2 3\n"), "no face with an area"));
  CHECK(has(refusal(std::string("v 0 0 0\n\0", 9)), "no text"));
}

TEST_CASE("what is too large is refused before it is parsed") {
  std::string many;
  for (std::size_t i = 0; i <= kMostObjVertices; ++i) many += "v 0 0 0\n";
  CHECK(has(refusal(many), "100001 vertices"));
  std::string faces = kTetrahedron;
  for (std::size_t i = 0; i <= kMostObjTriangles; ++i) faces += "f 1 2 3\n";
  CHECK(has(refusal(faces), "faces; at most"));
  std::string wide = kTetrahedron + "f";
  for (std::size_t i = 0; i <= kMostObjCorners; ++i) wide += i % 2 ? " 1" : " 2";
  CHECK(has(refusal(wide + "\n"), "257 corners"));
  std::string blank(kLargestObjBytes + 1, ' ');
  CHECK(has(refusal(blank), "bytes; at most"));
}

TEST_CASE("whatever the fuzzer's corpus holds is read or refused with a sentence") {
  const std::filesystem::path corpus = TIERWRIGHT_SOURCE_DIR "/tests/fuzz/corpus/obj";
  int files = 0;
  for (const auto& entry : std::filesystem::directory_iterator(corpus)) {
    std::ifstream in(entry.path(), std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    const auto mesh = readObj(text, "x.obj");
    if (mesh) CHECK(!mesh->triangles.empty());
    if (!mesh) CHECK(!mesh.error().at(0).sentence.empty());
    ++files;
  }
  CHECK(files >= 4);
}

TEST_CASE("a model stands on the floor at its declared height with its upward axis up") {
  const Mesh cube = read(kCube);
  Prop prop{"tram", "tram"};
  prop.heightM = 3;
  double low = 9, high = -9;
  for (const Vec3& p : modelMesh(cube, prop, false).points)
    low = std::min(low, p.y()), high = std::max(high, p.y());
  CHECK(low == doctest::Approx(0));
  CHECK(high == doctest::Approx(3));
  prop.heightM = 0;
  prop.up = "z";
  const Mesh post = read("v 0 0 0\nv 1 0 0\nv 0 0 5\nf 1 2 3\n");           // five high along z
  CHECK(signedVolume(modelMesh(cube, prop, false)) == doctest::Approx(8));  // turned, not mirrored
  const Beat sized = sizedByModels(
      [&] {
        Beat beat;
        beat.props = {prop};
        return beat;
      }(),
      {{"tram", post}});
  CHECK(sized.props[0].sizeM[1] == doctest::Approx(5));
}

TEST_CASE("what floats keeps the file's waterline") {
  Prop boat{"boat", "boat", "box", {4, 1, 1.5}};
  double low = 9;
  for (const Vec3& p : modelMesh(read(kCube), boat, true).points) low = std::min(low, p.y());
  CHECK(low == doctest::Approx(-1));
}

TEST_CASE("a prop finds its model by the name it gives or by its own") {
  const Models models{{"salvage-boat", {}}, {"tram", {}}};
  CHECK(modelNameFor(Prop{"tram", "tram"}, models) == "tram");
  CHECK(modelNameFor(Prop{"boat", "Salvage Boat"}, models) == "salvage-boat");
  Prop named{"tram", "tram"};
  named.model = "salvage-boat";
  CHECK(modelNameFor(named, models) == "salvage-boat");
  named.model = "gone";
  CHECK(modelNameFor(named, models).empty());
}

}  // namespace tw
