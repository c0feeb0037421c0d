#include "stage/set_pieces.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "stage/building_shapes.h"
#include "stage/held_props.h"
#include "stage/outdoor_set.h"
#include "stage/set_words.h"
#include "stage/solid_shapes.h"
#include "stage/stone_courses.h"
#include "stage/thing_shapes.h"

namespace tw {
namespace {

constexpr double kDeg = std::numbers::pi / 180;
struct Room {
  double halfWide = 2.9, deep = 2.7, near = 2.6, high = 2.9, thick = 0.16;
};

Room roomFor(const Beat& beat) {
  Room room;
  room.halfWide += 0.45 * static_cast<double>(beat.figures.size());
  for (const Prop& prop : beat.props) room.high = std::max(room.high, prop.sizeM[1] + 0.8);
  if (says(placeWords(beat), {"tower", "church", "hall", "belfry", "chamber", "warehouse"})) {
    room.high = std::max(room.high, 4.6);
    room.halfWide += 0.5;
  }
  return room;
}

/// Nothing of a set shows below the floor.
void standOnFloor(Mesh& mesh) {
  for (Vec3& p : mesh.points) p.y() = std::max(p.y(), 0.0);
}

void add(std::vector<Solid>& solids, Mesh mesh) {
  standOnFloor(mesh);
  Solid solid;
  solid.mesh = std::move(mesh);
  solid.isSet = true;
  solids.push_back(std::move(solid));
}

void addBox(std::vector<Solid>& solids, std::array<double, 3> size, Place3 at) {
  add(solids, placed(boxMesh(size), at, 0));
}

bool isOfStone(const Beat& beat) {
  return says(placeWords(beat), {"tower", "belfry", "church", "chapel", "chamber", "crypt", "nave",
                                 "vault", "castle", "cellar", "dungeon"});
}

/// The wall away from the camera, with an opening a window or an arch can be drawn into.
void addBackWall(std::vector<Solid>& solids, const Beat& beat, const Room& r) {
  const bool stone = isOfStone(beat);
  const Opening window{stone ? 1.3 : 1.1, stone ? 0.9 : 1.05, stone ? 2.1 : 1.2, stone,
                       -0.35 * r.halfWide};
  add(solids, placed(wallMesh({2 * r.halfWide, r.high, stone ? 0.3 : r.thick}, window),
                     {0, 0, r.deep + (stone ? 0.07 : 0)}, 0));
}

/// Walls of a room; one that stands before the figures as seen from the eye is taken away.
void addRoom(std::vector<Solid>& solids, const Beat& beat, const Vec3& eye) {
  const Room r = roomFor(beat);
  if (eye.z() < r.deep - 0.3) addBackWall(solids, beat, r);
  const double length = r.deep + r.near;
  const double z = (r.deep - r.near) / 2;
  for (const double side : {-1.0, 1.0}) {
    if (side * eye.x() > 0.35 * r.halfWide) continue;
    const double back = side * eye.x() > -0.4 ? 0.5 * length : 0;  // only its far half
    addBox(solids, {r.thick, r.high, length - back},
           {side * (r.halfWide + r.thick), 0, z + back / 2});
  }
  if (says(placeWords(beat), {"tower", "belfry", "chamber", "attic", "cabin", "hold"})) {
    for (const double zBeam : {0.9, 2.1}) {
      addBox(solids, {2 * r.halfWide, 0.22, 0.22}, {0, r.high - 0.5, zBeam});
    }
  }
}

Vec3 mainPlace(const Beat& beat) {
  if (!beat.props.empty() && beat.figures.empty()) return {1.5, 0, 6};
  if (beat.figures.empty()) return {0, 0, 0};
  return {-2.6, 0, 7.5};
}

bool hasVessel(const Beat& beat) {
  return std::any_of(beat.props.begin(), beat.props.end(), isVessel);
}

/// Where a piece stands, and how it is turned; `turn` is the view's, in degrees.
struct Spot {
  Place3 at;
  double headingDeg = 0;
};
Spot spotOf(const Piece& piece, const Beat& beat, double turn) {
  const Vec3 base = piece.isOwnPlace ? Vec3(0, 0, 0) : mainPlace(beat);
  const double across = base.x() + piece.across, away = base.z() + piece.away;
  const double c = std::cos(turn * kDeg), s = std::sin(turn * kDeg);
  return {{c * across + s * away, piece.up, -s * across + c * away}, piece.headingDeg - turn};
}

void addBoat(std::vector<Solid>& solids, const Piece& piece, const Beat& beat) {
  std::array<double, 3> size = piece.sizeM;
  size[0] += 0.6 * static_cast<double>(beat.figures.size());
  add(solids, placed(boatMesh(size), {0, 0, 0.1}, 5));
}

void addOutdoors(std::vector<Solid>& solids, const Beat& beat, const CameraPlace& camera,
                 double sign, bool drawn) {
  const double turn = beat.figures.empty() ? 0 : 0.85 * sign * camera.panDeg;
  for (const Piece& piece : outdoorPieces(beat)) {
    if (piece.shape == "boat" && (hasVessel(beat) || !beat.figures.empty())) {
      if (!hasVessel(beat)) addBoat(solids, piece, beat);
      continue;
    }
    const Spot spot = spotOf(piece, beat, turn);
    add(solids,
        placed(piece.shape == "boat" ? boatMesh(piece.sizeM) : shapeMesh(piece.shape, piece.sizeM),
               spot.at, spot.headingDeg));
    if (!drawn || !piece.isOwnPlace) continue;
    const Vec3 eye(sign * camera.eye.x, camera.eye.y, camera.eye.z);
    const double away = (Vec3(spot.at.x, spot.at.y + piece.sizeM[1] / 2, spot.at.z) - eye).norm();
    solids.back().garmentLines =
        stoneCourses(piece.sizeM, piece.shape == "broken-tower", spot.at, spot.headingDeg,
                     away / std::max(1.0, camera.focalMm / 36));
  }
}

void mirrorMesh(Mesh& mesh) {
  for (Vec3& p : mesh.points) p.x() = -p.x();
  for (Vec3& n : mesh.normals) n.x() = -n.x();
  for (auto& t : mesh.triangles) std::swap(t[1], t[2]);
}

void mirrorSolid(Solid& solid) {
  mirrorMesh(solid.mesh);
  for (GarmentLine& line : solid.garmentLines)
    for (auto* list : {&line.at, &line.out})
      for (Vec3& v : *list) v.x() = -v.x();
}

}  // namespace

bool isAboard(const Beat& beat) {
  if (beat.figures.empty()) return false;
  if (hasVessel(beat)) return true;
  if (isIndoors(beat) || isUnderwater(beat)) return false;
  const std::vector<Piece> pieces = outdoorPieces(beat);
  return std::any_of(pieces.begin(), pieces.end(),
                     [](const Piece& p) { return p.shape == "boat"; });
}

double roomDepth(const Beat& beat) {
  return roomFor(beat).deep;
}

std::vector<Solid> setSolids(const Beat& beat, const CameraPlace& camera, bool leftward,
                             double detail) {
  std::vector<Solid> solids;
  if (says(beat.setting, {"none"})) return solids;
  const double sign = leftward ? -1 : 1;
  if (isIndoors(beat)) {
    addRoom(solids, beat, Vec3(sign * camera.eye.x, camera.eye.y, camera.eye.z));
  } else {
    addOutdoors(solids, beat, camera, sign, detail > 0.5);
  }
  if (leftward)
    for (Solid& solid : solids) mirrorSolid(solid);
  return solids;
}

Box3 mainSetBox(const Beat& beat) {
  if (isIndoors(beat)) {
    const Room r = roomFor(beat);
    return {{-0.8 * r.halfWide, 0, 0.4 * r.deep}, {0.8 * r.halfWide, 0.9 * r.high, r.deep}};
  }
  const std::vector<Piece> pieces = outdoorPieces(beat);
  Box3 box;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const Piece& p = pieces[i];
    const Place3 at = spotOf(p, beat, 0).at;
    const double wide = (p.sizeM[0] + p.sizeM[2]) / 4;
    const Vec3 low(at.x - wide, std::max(p.up, 0.0), at.z - wide);
    const Vec3 high(at.x + wide, p.up + p.sizeM[1], at.z + wide);
    box.min = i == 0 ? low : Vec3(box.min.cwiseMin(low));
    box.max = i == 0 ? high : Vec3(box.max.cwiseMax(high));
    if (i == 1 || p.isOwnPlace) break;
  }
  return box;
}

}  // namespace tw
