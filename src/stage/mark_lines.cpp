// Drawing marks.
//
//  1 A place by its name becomes a patch of surface: a centre on the face or on a limb's rings, and
//    how to go from there by millimetres across (to the figure's right) and along (up).
//  2 A kind by its name becomes lines on the patch, in its own small units.
//  3 Skin under cloth shows no cut; what lies over the cloth (bandage, tear, blood, dirt) does.
// Cost: some forty places a mark. Does badly: marks on hands are drawn at the wrist.
// Where the places lie on a face: the half-and-third rule of drawing schools; common practice, no
// source.
#include "stage/mark_lines.h"

#include <cmath>
#include <functional>
#include <map>
#include <numbers>

#include "stage/body_parts.h"
#include "stage/face_lines.h"

namespace tw {
namespace {

constexpr double kFaceUnitM = 0.020, kLimbUnitM = 0.030;  // half the size of a mark
constexpr double kFaceHeadMm = 3.2, kLimbHeadMm = 2.4;    // smaller heads show none

std::uint32_t bit(BodyPart part) {
  return 1u << static_cast<unsigned>(part);
}

/// A piece of surface with coordinates: across to the figure's right, along upward, in units.
struct Patch {
  std::function<SurfacePlace(double across, double along)> at;
  std::uint32_t parts = 0;
  double leastHeadMm = 0;
  bool limb = false;     ///< a band can go round it
  bool covered = false;  ///< by cloth
  std::function<SurfacePlace(double angleDeg, double along)> round;
};

struct FacePlace {
  double x, y;  ///< x of the right side, half head breadths; y head heights above the chin
};
const std::map<std::string, FacePlace>& facePlaces() {
  static const std::map<std::string, FacePlace> places{
      {"cheek", {0.56, 0.31}}, {"temple", {0.80, 0.58}}, {"brow", {0.42, 0.63}},
      {"eye", {0.42, 0.485}},  {"jaw", {0.62, 0.14}},    {"forehead", {0, 0.74}},
      {"nose", {0, 0.37}},     {"mouth", {0.16, 0.20}},  {"chin", {0.05, 0.06}},
      {"face", {0.5, 0.33}}};
  return places;
}

class MarkArtist {
 public:
  MarkArtist(const Body& body, const Skeleton& skeleton)
      : sculpt_{body, skeleton, finenessOf(1), body.upperArm / 0.186, {}},
        head_(headMarks(body, skeleton)),
        look_(body.look) {}

  std::vector<GarmentLine> draw() {
    for (const LookMark& mark : look_.marks) {
      const Patch patch = patchOf(mark);
      if (!patch.at || (patch.covered && isSkinDeep(mark.kind))) continue;
      patch_ = &patch;
      drawKind(mark.kind);
    }
    return std::move(lines_);
  }

 private:
  static bool isSkinDeep(const std::string& kind) {
    return kind != "bandage" && kind != "tear" && kind != "blood" && kind != "dirt" &&
           kind != "burn";
  }

  Patch patchOf(const LookMark& mark) const {
    const auto face = facePlaces().find(mark.place);
    if (face != facePlaces().end()) return facePatch(face->second, mark.side);
    const bool left = mark.side <= 0;
    using enum BodyPart;
    const bool sleeve = look_.clothed && look_.sleeves == Cut::Long;
    const bool anySleeve = look_.clothed && look_.sleeves != Cut::Bare;
    const bool trousers = look_.clothed && (look_.legCut == Cut::Long || look_.skirtLength > 0.7);
    if (mark.place == "forearm")
      return limb(forearmRings(sculpt_, left), 0.5, left, left ? LeftForearm : RightForearm,
                  sleeve);
    if (mark.place == "hand")
      return limb(forearmRings(sculpt_, left), 0.96, left, left ? LeftForearm : RightForearm,
                  look_.gloves);
    if (mark.place == "upper arm")
      return limb(upperArmRings(sculpt_, left), 0.55, left, left ? LeftArm : RightArm, anySleeve);
    if (mark.place == "shoulder")
      return limb(upperArmRings(sculpt_, left), 0.2, left, left ? LeftArm : RightArm, anySleeve);
    if (mark.place == "thigh")
      return limb(thighRings(sculpt_, left), 0.55, left, left ? LeftLeg : RightLeg,
                  trousers || look_.skirtLength > 0.3);
    if (mark.place == "knee")
      return limb(thighRings(sculpt_, left), 0.97, left, left ? LeftLeg : RightLeg, trousers);
    if (mark.place == "shin")
      return limb(shankRings(sculpt_, left), 0.4, left, left ? LeftShank : RightShank,
                  trousers || look_.boots > 0.3);
    return trunkPatch(mark);
  }

  Patch facePatch(FacePlace place, double side) const {
    const double x = place.x * (side == 0 ? 1 : side);
    Patch patch;
    patch.parts = bit(BodyPart::Head);
    patch.leastHeadMm = kFaceHeadMm;
    patch.at = [this, x, y = place.y](double across, double along) -> SurfacePlace {
      const double u = x + across * kFaceUnitM / head_.axes.col(0).norm();
      const double v = y + along * kFaceUnitM / head_.axes.col(1).norm();
      const double round = std::sqrt(std::max(0.0, 1 - u * u));
      const Vec3 out =
          head_.axes.col(0).normalized() * u + head_.axes.col(2).normalized() * (round + 0.05);
      return {facePlace(head_, u, v), out.normalized()};
    };
    return patch;
  }

  Patch limb(std::vector<Ring> rings, double along, bool left, BodyPart part, bool covered) const {
    return onRings(std::move(rings), along, (left ? 1 : -1) * 40.0, bit(part), covered, true, -1);
  }

  Patch trunkPatch(const LookMark& mark) const {
    const double angle = -mark.side;  // the figure's left is at +90
    const std::uint32_t parts = bit(BodyPart::Torso) | bit(BodyPart::Hips);
    const auto on = [&](double station, double degrees) {
      return onRings(trunkRings(sculpt_), station / 12, degrees, parts, look_.clothed, false, 1);
    };
    if (mark.place == "chest") return on(8.2, angle * 35);
    if (mark.place == "belly") return on(5.2, angle * 30);
    if (mark.place == "back") return on(8, 180 - angle * 25);
    if (mark.place == "neck") {
      std::vector<Ring> rings = collarRings(sculpt_);
      const bool bare = rings.size() < 2;
      if (bare) rings = trunkRings(sculpt_);
      Patch patch = onRings(std::move(rings), bare ? 0.97 : 0.9, angle * 50,
                            bit(BodyPart::Neck) | bit(BodyPart::Torso), false, !bare, 1);
      patch.covered = look_.collar == Collar::Stand || look_.scarfWorn;
      return patch;
    }
    return {};
  }

  /// `up`: +1 when the rings run upward.
  Patch onRings(std::vector<Ring> rings, double along, double angle, std::uint32_t parts,
                bool covered, bool limb, double up) const {
    const double length = (rings.back().centre - rings.front().centre).norm();
    const Ring& near =
        rings[std::min(rings.size() - 1, static_cast<std::size_t>(along * double(rings.size())))];
    const double girth = (near.toRight + near.toLeft + near.toFront + near.toBack) / 4;
    Patch patch;
    patch.parts = parts;
    patch.leastHeadMm = kLimbHeadMm;
    patch.limb = limb;
    patch.covered = covered;
    const auto place = [rings, along, length, up](double degrees, double units) {
      return placeOn(rings, along + up * units * kLimbUnitM / length, degrees);
    };
    patch.round = place;
    patch.at = [place, angle, girth](double across, double units) {
      const double degrees = across * kLimbUnitM / girth * 180 / std::numbers::pi;
      return place(angle - degrees, units);
    };
    return patch;
  }

  using Line = std::vector<std::pair<double, double>>;

  void line(const Line& marks, double weight, bool round = false) {
    GarmentLine out;
    out.parts = patch_->parts;
    out.leastHeadMm = patch_->leastHeadMm;
    out.weight = weight;
    constexpr int kSteps = 6;
    for (std::size_t i = 0; i + 1 < marks.size(); ++i)
      for (int k = i == 0 ? 0 : 1; k <= kSteps; ++k) {
        const double t = double(k) / kSteps;
        const double u = marks[i].first + t * (marks[i + 1].first - marks[i].first);
        const double v = marks[i].second + t * (marks[i + 1].second - marks[i].second);
        const SurfacePlace place = round ? patch_->round(u, v) : patch_->at(u, v);
        out.at.push_back(place.at);
        out.out.push_back(place.out);
      }
    lines_.push_back(std::move(out));
  }

  void ticks(int count, double from, double to, double half, double weight) {
    for (int i = 0; i < count; ++i) {
      const double v = from + (to - from) * (i + 0.5) / count;
      line({{-half + 0.15 * v, v + 0.1}, {half + 0.15 * v, v - 0.1}}, weight);
    }
  }

  void drawKind(const std::string& kind) {
    if (kind == "scar") {
      line({{-0.15, -1.0}, {0.05, 0}, {0.2, 1.0}}, 1.1);
      ticks(3, -0.8, 0.8, 0.34, 0.6);
    } else if (kind == "stitches") {
      line({{-0.1, -0.9}, {0.1, 0.9}}, 0.7);
      ticks(5, -0.9, 0.9, 0.3, 0.8);
    } else if (kind == "cut") {
      line({{-0.5, -0.7}, {0, 0.05}, {0.45, 0.8}}, 1.1);
      line({{-0.05, -0.7}, {0.25, -0.2}}, 0.7);
    } else if (kind == "bruise") {
      for (int i = -2; i <= 2; ++i)
        line({{0.32 * i - 0.25, -0.8 + 0.12 * i * i}, {0.32 * i + 0.25, 0.8 - 0.12 * i * i}}, 0.7);
    } else if (kind == "bandage") {
      drawBandage();
    } else if (kind == "plaster") {
      line({{-0.9, -0.55}, {-0.65, -0.95}, {0.9, 0.5}, {0.65, 0.9}, {-0.9, -0.55}}, 0.9);
      line({{-0.3, 0.0}, {-0.05, -0.4}}, 0.6);
      line({{0.1, 0.35}, {0.35, -0.05}}, 0.6);
    } else if (kind == "eye patch") {
      drawEyePatch();
    } else if (kind == "tattoo") {
      line({{0, 0.9}, {-0.55, 0}, {0, -0.9}, {0.55, 0}, {0, 0.9}}, 1.0);
      line({{0, 0.9}, {0, -0.9}}, 0.8);
      line({{-0.55, 0}, {0.55, 0}}, 0.8);
    } else if (kind == "tear") {
      line({{-0.8, 0.9}, {-0.3, 0.3}, {-0.6, 0}, {0, -0.3}, {-0.2, -0.6}, {0.5, -1.0}}, 1.6);
      line({{-0.3, 0.9}, {0.1, 0.35}, {0.6, -0.6}, {0.5, -1.0}}, 1.2);
    } else if (kind == "burn") {
      line({{-0.7, 0},
            {-0.4, 0.7},
            {0.1, 0.5},
            {0.6, 0.8},
            {0.7, 0},
            {0.3, -0.7},
            {-0.2, -0.45},
            {-0.6, -0.7},
            {-0.7, 0}},
           0.8);
      line({{-0.25, 0.1}, {0.25, 0.15}}, 0.7);
    } else if (kind == "blood") {
      line({{-0.5, 0.8}, {-0.4, -0.6}}, 1.5);
      line({{0, 0.9}, {0.05, -1.0}}, 1.7);
      line({{0.45, 0.8}, {0.45, -0.3}}, 1.4);
    } else {  // dirt
      for (int i = 0; i < 4; ++i)
        line({{-0.8 + 0.1 * i, 0.7 - 0.45 * i}, {0.7 - 0.15 * i, 0.9 - 0.45 * i}}, 0.9);
    }
  }

  void box(double half, double high) {
    line({{-half, -high}, {half, -high}, {half, high}, {-half, high}, {-half, -high}}, 0.8);
  }

  void drawBandage() {
    if (!patch_->limb) {
      box(1.2, 0.75);
      for (const double v : {-0.3, 0.25}) line({{-1.2, v}, {1.2, v + 0.12}}, 0.6);
      return;
    }
    for (int i = -2; i <= 2; ++i)
      line({{-10, 0.55 * i - 0.12},
            {110, 0.55 * i + 0.3},
            {230, 0.55 * i - 0.05},
            {350, 0.55 * i - 0.12}},
           i == -2 || i == 2 ? 1.1 : 0.75, true);
  }

  void drawEyePatch() {
    for (const double r : {0.12, 0.3, 0.48, 0.66, 0.84}) {
      Line ring;
      for (int i = 0; i <= 10; ++i) {
        const double a = 2 * std::numbers::pi * i / 10;
        ring.emplace_back(r * 1.1 * std::cos(a), r * std::sin(a));
      }
      line(ring, 2.0);
    }
    line({{-2.6, 1.6}, {-0.6, 0.6}}, 1.0);
    line({{2.6, 1.6}, {0.6, 0.6}}, 1.0);
  }

  Sculpt sculpt_;
  HeadMarks head_;
  const Look& look_;
  const Patch* patch_ = nullptr;
  std::vector<GarmentLine> lines_;
};

}  // namespace

std::vector<GarmentLine> markLines(const Body& body, const Skeleton& skeleton) {
  if (body.look.marks.empty()) return {};
  return MarkArtist(body, skeleton).draw();
}

}  // namespace tw
