#include "stage/set_pieces.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <numbers>
#include <optional>

#include "stage/held_props.h"
#include "stage/solid_shapes.h"
#include "stage/thing_shapes.h"

namespace tw {
namespace {

constexpr double kDeg = std::numbers::pi / 180;
constexpr double kShapedDetail = 0.5;  // coarser pictures serve measures: plain bodies do

/// A mass of the set. `across` and `away` are measured in the view's own ground frame, so that
/// every camera side still has its set behind the figures.
struct Piece {
  std::string shape;
  std::array<double, 3> sizeM;
  double across = 0, away = 0, up = 0, headingDeg = 0;
};

bool says(const std::string& text, std::initializer_list<std::string_view> words) {
  return std::any_of(words.begin(), words.end(),
                     [&](std::string_view word) { return text.find(word) != std::string::npos; });
}

std::string placeWords(const Beat& beat) {
  std::string all = beat.setting;
  if (beat.figures.empty()) all += " " + beat.description;
  for (char& c : all) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return all;
}

using Pieces = std::vector<Piece>;

void tower(Pieces& p) {
  p.push_back({"box", {3.4, 7.0, 3.4}, 0, 0, 0, 24});
  p.push_back({"cone", {4.2, 2.6, 4.2}, 0, 0, 7.0, 24});
  p.push_back({"box", {6.5, 2.6, 3.6}, -4.4, 0.6, 0, 24});
}
void boat(Pieces& p) {
  p.push_back({"boat", {4.8, 0.62, 1.9}, 0, 0, 0, 12});
}
void cliff(Pieces& p) {
  p.push_back({"box", {5.0, 5.2, 4.0}, -1.8, 1.2, 0, 18});
  p.push_back({"box", {4.2, 3.4, 3.4}, 2.2, 0.4, 0, -14});
  p.push_back({"box", {2.4, 1.4, 2.0}, 4.6, -0.6, 0, 33});
}
void rocks(Pieces& p) {
  p.push_back({"ellipsoid", {2.8, 1.7, 2.2}, -1.6, 0.4, -0.35, 20});
  p.push_back({"ellipsoid", {1.8, 1.0, 1.6}, 1.3, -0.3, -0.25, -30});
  p.push_back({"ellipsoid", {4.4, 2.6, 3.0}, 3.6, 2.6, -0.5, 8});
}
void trees(Pieces& p) {
  for (const double x : {-2.8, 0.2, 3.4}) {
    const double back = x * x * 0.25;
    p.push_back({"cylinder", {0.32, 2.4, 0.32}, x, back, 0, 0});
    p.push_back({"ellipsoid", {2.3, 2.8, 2.3}, x + 0.1, back, 1.9, 0});
  }
}
void houses(Pieces& p) {
  p.push_back({"box", {4.2, 4.8, 4.0}, -3.2, 1.0, 0, 10});
  p.push_back({"box", {3.4, 6.4, 4.0}, 1.2, 2.4, 0, 10});
  p.push_back({"box", {5.0, 3.9, 4.0}, 5.8, 1.6, 0, 10});
}
void pier(Pieces& p) {
  p.push_back({"box", {9.0, 0.25, 1.6}, 0, 0.4, 0.75, 0});
  for (const double x : {-3.4, -0.6, 2.2, 4.2}) {
    p.push_back({"cylinder", {0.26, 1.5, 0.26}, x, -0.3, 0, 0});
  }
}
void hills(Pieces& p) {
  p.push_back({"ellipsoid", {26, 9, 12}, -8, 16, -4.5, 0});
  p.push_back({"ellipsoid", {32, 12, 12}, 13, 24, -6.5, 0});
}
void stairs(Pieces& p) {
  for (int i = 0; i < 7; ++i) {
    p.push_back({"box", {1.7, 0.19 * (i + 1), 0.3}, 1.4, 0.3 * i, 0, 0});
  }
}

struct Named {
  std::initializer_list<std::string_view> words;
  void (*build)(Pieces&);
};

Pieces outdoors(const std::string& words) {
  const Named kNamed[] = {
      {{"tower", "steeple", "belfry", "lighthouse", "church", "chapel", "castle"}, tower},
      {{"boat", "ship", "deck", "dinghy", "raft", "barge", "wreck"}, boat},
      {{"cliff", "cave", "canyon", "quarry"}, cliff},
      {{"pier", "quay", "harbour", "harbor", "dock", "jetty"}, pier},
      {{"street", "town", "city", "village", "house", "square", "roof", "alley"}, houses},
      {{"forest", "wood", "tree", "garden", "orchard"}, trees},
      {{"rock", "reef", "shore", "beach", "seabed", "sea floor", "underwater", "ruin"}, rocks},
      {{"stair", "steps"}, stairs},
      {{"hill", "mountain", "field", "moor", "road", "plain"}, hills}};
  Pieces pieces;
  int kinds = 0;
  for (const Named& named : kNamed) {
    if (kinds >= 2 || !says(words, named.words)) continue;
    Pieces more;
    named.build(more);
    for (Piece& piece : more) {
      piece.across += kinds * 5.0;
      piece.away += kinds * 3.0;
      pieces.push_back(piece);
    }
    ++kinds;
  }
  if (pieces.empty()) hills(pieces);
  return pieces;
}

bool isIndoors(const std::string& words) {
  return says(words, {"interior", "inside"}) ||
         (says(words, {"room", "kitchen", "cabin", "office", "hall", "cellar", "shop"}) &&
          !says(words, {"exterior"}));
}

struct Room {
  double halfWide = 2.9, deep = 2.7, near = 2.6, high = 2.9, thick = 0.16;
};

Room roomFor(const Beat& beat) {
  Room room;
  room.halfWide += 0.45 * static_cast<double>(beat.figures.size());
  for (const Prop& prop : beat.props) room.high = std::max(room.high, prop.sizeM[1] + 0.8);
  if (says(placeWords(beat), {"tower", "church", "hall", "belfry", "warehouse"})) {
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

/// The wall away from the camera, with an opening a window or an arch can be drawn into.
void addBackWall(std::vector<Solid>& solids, const Room& r) {
  const double z = r.deep, t = r.thick, open = 1.1, sill = 1.05, lintel = 2.25;
  const double middle = -0.35 * r.halfWide;
  const double left = middle - open / 2 + r.halfWide, right = r.halfWide - middle - open / 2;
  addBox(solids, {left, r.high, t}, {-r.halfWide + left / 2, 0, z});
  addBox(solids, {right, r.high, t}, {r.halfWide - right / 2, 0, z});
  addBox(solids, {open, sill, t}, {middle, 0, z});
  addBox(solids, {open, r.high - lintel, t}, {middle, lintel, z});
}

/// Walls of a room; one that stands before the figures as seen from the eye is taken away.
void addRoom(std::vector<Solid>& solids, const Beat& beat, const Vec3& eye) {
  const Room r = roomFor(beat);
  if (eye.z() < r.deep - 0.3) addBackWall(solids, r);
  const double length = r.deep + r.near;
  const double z = (r.deep - r.near) / 2;
  for (const double side : {-1.0, 1.0}) {
    if (side * eye.x() > 0.35 * r.halfWide) continue;
    const double back = side * eye.x() > -0.4 ? 0.5 * length : 0;  // only its far half
    addBox(solids, {r.thick, r.high, length - back},
           {side * (r.halfWide + r.thick), 0, z + back / 2});
  }
  if (says(placeWords(beat), {"tower", "belfry", "attic", "cabin", "hold"})) {
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

void addOutdoors(std::vector<Solid>& solids, const Beat& beat, double panDeg) {
  const std::string words = placeWords(beat);
  const Vec3 base = mainPlace(beat);
  const double turn = beat.figures.empty() ? 0 : 0.85 * panDeg;
  for (const Piece& piece : outdoors(words)) {
    const bool aboard = piece.shape == "boat" && !beat.figures.empty();
    if (aboard && hasVessel(beat)) continue;
    const double across = aboard ? 0 : base.x() + piece.across;
    const double away = aboard ? 0.1 : base.z() + piece.away;
    const double by = aboard ? 0 : turn;
    const double c = std::cos(by * kDeg), s = std::sin(by * kDeg);
    const Place3 at{c * across + s * away, piece.up, -s * across + c * away};
    std::array<double, 3> size = piece.sizeM;
    if (aboard) size[0] += 0.6 * static_cast<double>(beat.figures.size());
    add(solids, placed(piece.shape == "boat" ? boatMesh(size) : shapeMesh(piece.shape, size), at,
                       aboard ? 5 : piece.headingDeg - by));
  }
}

void mirrorMesh(Mesh& mesh) {
  for (Vec3& p : mesh.points) p.x() = -p.x();
  for (Vec3& n : mesh.normals) n.x() = -n.x();
  for (auto& t : mesh.triangles) std::swap(t[1], t[2]);
}

}  // namespace

bool isAboard(const Beat& beat) {
  if (beat.figures.empty()) return false;
  if (hasVessel(beat)) return true;
  const std::string words = placeWords(beat);
  if (isIndoors(words) || isUnderwater(beat)) return false;
  const Pieces pieces = outdoors(words);
  return std::any_of(pieces.begin(), pieces.end(),
                     [](const Piece& p) { return p.shape == "boat"; });
}

std::vector<Solid> setSolids(const Beat& beat, const CameraPlace& camera, bool leftward, double) {
  std::vector<Solid> solids;
  if (says(beat.setting, {"none"})) return solids;
  const double sign = leftward ? -1 : 1;
  const std::string words = placeWords(beat);
  if (isIndoors(words)) {
    addRoom(solids, beat, Vec3(sign * camera.eye.x, camera.eye.y, camera.eye.z));
  } else {
    addOutdoors(solids, beat, sign * camera.panDeg);
  }
  if (leftward) {
    for (Solid& solid : solids) mirrorMesh(solid.mesh);
  }
  return solids;
}

Box3 mainSetBox(const Beat& beat) {
  const std::string words = placeWords(beat);
  if (isIndoors(words)) {
    const Room r = roomFor(beat);
    return {{-0.8 * r.halfWide, 0, 0.4 * r.deep}, {0.8 * r.halfWide, 0.9 * r.high, r.deep}};
  }
  const Pieces pieces = outdoors(words);
  const Vec3 base = mainPlace(beat);
  Box3 box;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const Piece& p = pieces[i];
    const Vec3 at(base.x() + p.across, p.up, base.z() + p.away);
    const double wide = (p.sizeM[0] + p.sizeM[2]) / 4;
    const Vec3 low(at.x() - wide, std::max(p.up, 0.0), at.z() - wide);
    const Vec3 high(at.x() + wide, p.up + p.sizeM[1], at.z() + wide);
    box.min = i == 0 ? low : Vec3(box.min.cwiseMin(low));
    box.max = i == 0 ? high : Vec3(box.max.cwiseMax(high));
    if (i == 1) break;
  }
  return box;
}

namespace {

/// What has a shape of its own under its name, standing on y = 0; nothing for plain bodies.
std::optional<Mesh> knownThing(const Prop& prop, bool inHand) {
  std::string name = prop.name;
  for (char& c : name) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  const std::array<double, 3> s = handledSize(prop);
  const double length = isRod(prop) && inHand ? std::min(s[0], 3.2) : s[0];
  if (isRod(prop) && s[0] > 0.6 && says(name, {"chain"}))
    return chainMesh(length, std::min(s[1], 0.09));
  if (isRod(prop) && says(name, {"rope", "line", "cable", "cord"}))
    return ropeMesh(length, std::clamp(s[1], 0.02, 0.05), !inHand);
  if (isRod(prop) && says(name, {"oar", "paddle"}))
    return oarMesh(length, std::clamp(s[1], 0.04, 0.06));
  if (says(name, {"lantern", "lamp"}) && prop.sizeM[1] < 0.8) return lanternMesh(prop.sizeM);
  if (says(name, {"knife", "dagger"})) return knifeMesh(prop.sizeM);
  if (says(name, {"helmet"})) return helmetMesh(prop.sizeM);
  if (name == "key") return keyMesh(prop.sizeM);
  return {};
}

}  // namespace

Mesh propMesh(const Prop& prop, const SetProp& set, bool inHand, double detail) {
  const bool bell = says(prop.name, {"bell"}) && prop.sizeM[1] > 0.6;
  if (!inHand && (bell || (isVessel(prop) && !says(prop.name, {"raft", "barge"})))) {
    const auto& size = prop.sizeM;
    constexpr double kAfloat = 0.62;  // the rest of the hull is under water
    return placed(bell ? bellMesh(size) : boatMesh({size[0], kAfloat * size[1], size[2]}), set.at,
                  set.headingDeg);
  }
  if (std::optional<Mesh> known = knownThing(prop, inHand); known && detail >= kShapedDetail) {
    Mesh mesh = placed(std::move(*known), set.at, set.headingDeg, set.pitchDeg, inHand);
    if (!inHand) standOnFloor(mesh);
    return mesh;
  }
  if (!inHand) {
    Mesh mesh = placed(shapeMesh(prop.shape, prop.sizeM), set.at, set.headingDeg, set.pitchDeg);
    standOnFloor(mesh);
    return mesh;
  }
  const std::array<double, 3> s = handledSize(prop);
  const bool rod = isRod(prop);
  const double length = rod ? std::min(s[0], 3.2) : prop.sizeM[1];
  Mesh mesh;
  if (rod) {
    const double thick = says(prop.name, {"rope", "line", "cable"}) ? std::min(s[1], 0.05) : s[1];
    mesh = detail < 0.5
               ? cylinderMesh({thick, length, thick}, 10)
               : shapeMesh(prop.shape == "box" ? "box" : "cylinder", {thick, length, s[2]});
  } else {
    mesh = shapeMesh(prop.shape, prop.sizeM);
  }
  return placed(std::move(mesh), set.at, set.headingDeg, set.pitchDeg, true);
}

}  // namespace tw
