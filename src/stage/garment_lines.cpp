// Laying lines on rings: a place on a garment is a share along its rings and an angle round them
// (0 the front, 90 the figure's left, 180 the back). Between two rings all numbers are mixed
// linearly. A line is a list of such places; drawing keeps the stretches that turn to the eye and
// that the picture shows at about that depth, on the parts that the line belongs to.
// Cost: some three hundred places a figure. Does badly: lines do not follow the small forms that
// lie over the rings (a buttock, the chest of a tight top), which the slack in depth forgives.
// Where seams and folds go is common practice of tailors and drawing schools, no source.
#include "stage/garment_lines.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "stage/body_parts.h"
#include "stage/mark_lines.h"
#include "stage/pen.h"

namespace tw {
namespace {

constexpr double kDeg = std::numbers::pi / 180;
constexpr double kDepthSlackM = 0.035;
constexpr double kDepthSlackShare = 0.004;  // of the distance: far pixels span more of a wall

// From which height of the head on the page a kind of line is drawn, mm.
constexpr double kAlways = 2.4, kLarge = 4.5, kClose = 7.0;

std::uint32_t bit(BodyPart part) {
  return 1u << static_cast<unsigned>(part);
}

/// A corner or end of a line: where along the rings, and at which angle.
struct Mark {
  double along, angle;
};

class Tailor {
 public:
  Tailor(const Body& body, const Skeleton& skeleton)
      : sculpt_{body, skeleton, finenessOf(1), body.upperArm / 0.186, {}}, look_(body.look) {}

  std::vector<GarmentLine> sewn() {
    trunk_ = trunkRings(sculpt_);
    skirt_ = skirtRings(sculpt_);
    sewTop();
    if (!skirt_.empty()) sewSkirt();
    for (const bool left : {true, false}) {
      sewSleeve(left);
      sewLeg(left);
    }
    return std::move(lines_);
  }

 private:
  using Rings = std::vector<Ring>;

  void line(const Rings& rings, const std::vector<Mark>& marks, std::uint32_t parts,
            double leastHead, double weight = 0.75, int steps = 6) {
    GarmentLine out;
    out.parts = parts;
    out.leastHeadMm = leastHead;
    out.weight = weight;
    for (std::size_t i = 0; i + 1 < marks.size(); ++i)
      for (int k = i == 0 ? 0 : 1; k <= steps; ++k) {
        const double t = double(k) / steps;
        const SurfacePlace place =
            placeOn(rings, marks[i].along + t * (marks[i + 1].along - marks[i].along),
                    marks[i].angle + t * (marks[i + 1].angle - marks[i].angle));
        out.at.push_back(place.at);
        out.out.push_back(place.out);
      }
    lines_.push_back(std::move(out));
  }

  void round(const Rings& rings, double along, std::uint32_t parts, double leastHead,
             double weight = 0.8) {
    line(rings, {{along, 0}, {along, 360}}, parts, leastHead, weight, 28);
  }

  void button(const Rings& rings, double along, double angle, std::uint32_t parts) {
    const SurfacePlace centre = placeOn(rings, along, angle);
    const SurfacePlace beside = placeOn(rings, along, angle + 8);
    const Vec3 across = (beside.at - centre.at).normalized();
    const Vec3 up = centre.out.cross(across);
    GarmentLine out;
    out.parts = parts;
    out.leastHeadMm = kClose;
    out.weight = 0.6;
    for (int i = 0; i <= 8; ++i) {
      const double a = 2 * std::numbers::pi * i / 8;
      out.at.push_back(centre.at +
                       0.0065 * sculpt_.unit * (std::cos(a) * across + std::sin(a) * up));
      out.out.push_back(centre.out);
    }
    lines_.push_back(std::move(out));
  }

  void box(const Rings& rings, Mark low, Mark high, std::uint32_t parts, double leastHead) {
    line(rings, {low, {high.along, low.angle}, high, {low.along, high.angle}, low}, parts,
         leastHead, 0.55, 3);
  }

  /// A sewn-on piece: its outline a little askew, with stitches across its sides.
  void patch(const Rings& rings, Mark at, double along, double angle, std::uint32_t parts) {
    const Mark a{at.along - along, at.angle - angle},
        b{at.along + 0.8 * along, at.angle - 0.8 * angle}, c{at.along + along, at.angle + angle},
        d{at.along - 0.75 * along, at.angle + 0.9 * angle};
    line(rings, {a, b, c, d, a}, parts, kLarge, 0.6, 3);
    const Mark corners[] = {a, b, c, d, a};
    for (int side = 0; side < 4; ++side)
      for (const double t : {0.3, 0.7}) {
        const Mark on{corners[side].along + t * (corners[side + 1].along - corners[side].along),
                      corners[side].angle + t * (corners[side + 1].angle - corners[side].angle)};
        const double reach = 0.28;
        const Mark in{on.along + reach * (at.along - on.along) * 0.6,
                      on.angle + reach * (at.angle - on.angle) * 0.6};
        const Mark out{on.along - reach * (at.along - on.along) * 0.6,
                       on.angle - reach * (at.angle - on.angle) * 0.6};
        line(rings, {in, out}, parts, kClose, 0.5, 2);
      }
  }

  // Stations of the trunk (see trunkRings), as shares of its thirteen rings.
  static double station(double ring) { return ring / 12; }

  void sewTop() {
    const std::uint32_t torso = bit(BodyPart::Torso) | bit(BodyPart::Hips);
    const bool hangsOver = !skirt_.empty();
    if (look_.collar != Collar::None) sewCollar();
    if (look_.belt && !hangsOver) {
      round(trunk_, station(3.55), torso, kAlways, 0.85);
      round(trunk_, station(4.25), torso, kLarge, 0.8);
      box(trunk_, {station(3.6), -7}, {station(4.2), 7}, torso, kClose);
    }
    sewFront(hangsOver ? station(5.4) : look_.belt ? station(4.25) : station(2.5));
    if (look_.pockets)
      box(trunk_, {station(7.35), 24}, {station(8.35), 50}, torso | bit(BodyPart::LeftArm), kClose);
    if (look_.patches) {
      patch(trunk_, {station(6.5), -46}, station(0.75), 16, torso);
      patch(trunk_, {station(7.6), 152}, station(0.9), 18, torso);
    }
    if (look_.apron) {
      line(trunk_, {{station(4), 40}, {station(8), 30}, {station(8), -30}, {station(4), -40}},
           torso, kAlways, 0.8);
    }
    sewWaistFolds(hangsOver);
  }

  /// Cloth gathers above the belt or hem, most on the side to which the body bends.
  void sewWaistFolds(bool hangsOver) {
    const double from = hangsOver ? 5.4 : 4.5;
    const std::uint32_t torso = bit(BodyPart::Torso) | bit(BodyPart::Hips);
    for (const double side : {-1.0, 1.0}) {
      line(trunk_, {{station(from), side * 62}, {station(from + 0.9), side * 40}}, torso, kLarge,
           0.55);
      line(trunk_, {{station(from + 0.2), side * 88}, {station(from + 1.5), side * 66}}, torso,
           kClose, 0.5);
      line(trunk_, {{station(from), side * 125}, {station(from + 1.0), side * 148}}, torso, kLarge,
           0.5);
      // From the armpit toward the chest, where the arm pulls.
      line(trunk_, {{station(8.7), side * 62}, {station(8.0), side * 44}}, torso, kClose, 0.5);
    }
  }

  void sewCollar() {
    const Rings collar = collarRings(sculpt_);
    const std::uint32_t parts = bit(BodyPart::Torso) | bit(BodyPart::Neck);
    round(collar, 0.02, parts, kLarge, 0.7);
    round(collar, 0.97, parts, kAlways, 0.8);
    if (look_.collar == Collar::Round || look_.collar == Collar::Stand) {
      round(collar, 0.5, parts, kClose, 0.45);
      return;
    }
    // The points of a turned-down collar lie on the chest.
    const bool wide = look_.collar == Collar::Wide || look_.front == Front::Lapels;
    const double low = station(wide ? 9.4 : 10.4), out = wide ? 46 : 30;
    for (const double side : {-1.0, 1.0})
      line(trunk_, {{station(11.6), side * 62}, {low, side * out}, {station(11.0), side * 8}},
           bit(BodyPart::Torso), kAlways, 0.8);
  }

  void sewFront(double from) {
    const std::uint32_t torso = bit(BodyPart::Torso) | bit(BodyPart::Hips);
    const double top = station(10.9);
    switch (look_.front) {
      case Front::None:
        return;
      case Front::Buttons:
        line(trunk_, {{from, 4}, {top, 4}}, torso, kAlways, 0.75, 14);
        for (int i = 0; i < 5; ++i)
          button(trunk_, from + (top - from) * (0.1 + 0.19 * i), -4, torso);
        return;
      case Front::Zip:
        line(trunk_, {{from, 2.5}, {top, 2.5}}, torso, kAlways, 0.6, 14);
        line(trunk_, {{from, -6}, {top, -6}}, torso, kClose, 0.5, 14);
        return;
      case Front::Lapels: {
        const double meet = station(6.6);
        line(trunk_, {{from, 5}, {meet, 4}}, torso, kAlways, 0.75);
        for (const double side : {-1.0, 1.0})
          line(trunk_,
               {{meet, side * 4},
                {station(9.0), side * 40},
                {station(9.4), side * 34},
                {station(11.2), side * 30}},
               torso, kAlways, 0.75);
        button(trunk_, meet - 0.03, -5, torso);
        button(trunk_, meet - 0.12, -5, torso);
        return;
      }
    }
  }

  void sewSkirt() {
    const std::uint32_t parts = bit(BodyPart::Skirt);
    round(skirt_, 0.985, parts, kAlways, 0.9);
    const bool opens = look_.front == Front::Buttons || look_.front == Front::Lapels;
    if (opens)
      line(skirt_, {{0.0, 5}, {1.0, look_.front == Front::Lapels ? 14.0 : 6.0}}, parts, kAlways,
           0.75, 14);
    if (look_.belt) {
      round(skirt_, 0.04, parts | bit(BodyPart::Torso), kAlways, 0.8);
      round(skirt_, 0.13, parts, kLarge, 0.7);
    }
    if (look_.pockets && look_.skirtLength > 0.12)
      for (const double side : {-1.0, 1.0})
        line(skirt_, {{0.42, side * 38}, {0.40, side * 66}}, parts, kLarge, 0.7);
    if (look_.apron) {
      line(skirt_, {{0, 44}, {0.85, 50}, {0.85, -50}, {0, -44}}, parts, kAlways, 0.8, 10);
    }
    // Folds fall from the hips and open toward the hem.
    if (look_.skirtLength < 0.3) return;
    constexpr double kFolds[] = {-128, -72, -34, 44, 84, 122, 172};
    for (std::size_t i = 0; i < std::size(kFolds); ++i)
      line(skirt_, {{i % 2 ? 0.42 : 0.58, kFolds[i] * 0.93}, {0.97, kFolds[i]}}, parts,
           i % 2 ? kAlways : kLarge, 0.6, 8);
  }

  /// Short arcs in the crook of a joint and one behind it, more when it bends.
  void sewCrook(const Rings& upper, const Rings& lower, std::uint32_t parts, double bendDeg,
                double crookAngle) {
    const double spread = bendDeg > 40 ? 52 : 30;
    line(upper, {{0.90, crookAngle - spread}, {0.82, crookAngle + 10}}, parts, kLarge, 0.6, 5);
    line(lower, {{0.10, crookAngle + spread}, {0.20, crookAngle - 12}}, parts, kLarge, 0.6, 5);
    if (bendDeg < 40) return;
    line(upper, {{0.96, crookAngle - 64}, {0.93, crookAngle + 40}}, parts, kLarge, 0.7, 6);
    line(upper, {{0.80, crookAngle - 70}, {0.70, crookAngle - 26}}, parts, kClose, 0.5, 5);
  }

  double bendOf(Joint a, Joint b, Joint c) const {
    const Skeleton& k = sculpt_.skeleton;
    const Vec3 in = (k[b] - k[a]).normalized(), out = (k[c] - k[b]).normalized();
    return std::acos(std::clamp(in.dot(out), -1.0, 1.0)) / kDeg;
  }

  void sewSleeve(bool left) {
    using enum Joint;
    if (look_.sleeves == Cut::Bare) return;
    const Rings upper = upperArmRings(sculpt_, left), fore = forearmRings(sculpt_, left);
    const std::uint32_t arm = bit(left ? BodyPart::LeftArm : BodyPart::RightArm);
    const std::uint32_t lower = bit(left ? BodyPart::LeftForearm : BodyPart::RightForearm);
    const double side = left ? 1 : -1;
    // The armhole, over the shoulder from front to back.
    line(upper,
         {{0.34, side * 8},
          {0.22, side * 22},
          {0.13, side * 45},
          {0.09, side * 72},
          {0.08, side * 100},
          {0.12, side * 140}},
         arm | bit(BodyPart::Torso), kLarge, 0.5, 3);
    if (look_.sleeves == Cut::Short) return round(upper, 0.72, arm, kAlways, 0.8);
    const double bend = left ? bendOf(LeftShoulder, LeftElbow, LeftWrist)
                             : bendOf(RightShoulder, RightElbow, RightWrist);
    sewCrook(upper, fore, arm | lower, bend, 0);
    if (look_.cuffs) round(fore, 0.84, lower, kAlways, 0.7);
    line(fore, {{0.78, 40}, {0.66, 10}}, lower, kClose, 0.5, 4);
    if (look_.patches && left) patch(upper, {0.86, 168}, 0.13, 40, arm | lower);
  }

  void sewLeg(bool left) {
    using enum Joint;
    if (look_.legCut == Cut::Bare) return sewBoot(left);
    const Rings thigh = thighRings(sculpt_, left), shank = shankRings(sculpt_, left);
    const std::uint32_t upper = bit(left ? BodyPart::LeftLeg : BodyPart::RightLeg);
    const std::uint32_t lower = bit(left ? BodyPart::LeftShank : BodyPart::RightShank);
    const double side = left ? 1 : -1;
    if (look_.legCut == Cut::Short) {
      round(thigh, 0.80, upper, kAlways, 0.8);
      return sewBoot(left);
    }
    const double bend =
        left ? bendOf(LeftHip, LeftKnee, LeftAnkle) : bendOf(RightHip, RightKnee, RightAnkle);
    sewCrook(thigh, shank, upper | lower, bend, 180);
    // At the front cloth is strained over the knee.
    line(thigh, {{0.88, side * 50}, {0.95, side * 6}}, upper, kLarge, 0.5, 4);
    line(shank, {{0.16, side * 48}, {0.10, side * 4}}, lower, kLarge, 0.5, 4);
    // From the crotch, where the leg leaves the trunk.
    line(thigh, {{0.10, side * -58}, {0.20, side * -20}}, upper | bit(BodyPart::Torso), kLarge,
         0.55, 5);
    if (look_.pockets)
      line(thigh, {{0.02, side * 50}, {0.16, side * 82}}, upper | bit(BodyPart::Hips), kClose, 0.6,
           5);
    if (look_.patches && left) patch(thigh, {0.62, 34}, 0.12, 26, upper);
    if (look_.patches && !left) patch(shank, {0.14, -18}, 0.10, 34, lower | upper);
    if (look_.boots == 0) {
      round(shank, 0.93, lower, kLarge, 0.55);
      line(shank, {{0.88, side * 64}, {0.80, side * 20}}, lower, kLarge, 0.5, 5);
    }
    sewBoot(left);
  }

  /// The seam where the boot's foot is sewn to its shaft.
  void sewBoot(bool left) {
    if (look_.boots == 0) return;
    const Rings shank = shankRings(sculpt_, left);
    const std::uint32_t foot = bit(left ? BodyPart::LeftFoot : BodyPart::RightFoot);
    round(shank, 1 - 0.9 * look_.boots, foot, kLarge, 0.6);
  }

  const Sculpt sculpt_;
  const Look& look_;
  Rings trunk_, skirt_;
  std::vector<GarmentLine> lines_;
};

/// Height of the figure's head on the page as its distance has it, mm.
double headOnPage(const Solid& solid, const PanelView& view) {
  if (!solid.head) return 0;
  const double depth = view.camera.depth(solid.head->at(0, 0.5, 0));
  return view.camera.intrinsics()(0, 0) * solid.head->axes.col(1).norm() / std::max(0.05, depth) *
         view.frame.width();
}

bool isOnHair(std::uint32_t parts) {
  return parts == bit(BodyPart::Hair);
}

/// Dark hair shines where the light falls on it.
bool shinesAt(const Solid& solid, const PanelView& view, std::size_t pixel) {
  constexpr double kDarkHair = 0.5, kLit = 0.45;
  return solid.look.hair < kDarkHair || view.picture.light[pixel] > kLit;
}

bool isSeen(const GarmentLine& line, std::size_t i, int index, const Solid& solid,
            const PanelView& view, Point& page) {
  const Vec3& at = line.at[i];
  if (line.out[i].dot((view.camera.eye() - at).normalized()) < 0.1) return false;
  const auto place = view.camera.project(at);
  if (!place || place->x < 0 || place->x > 1 || place->y < 0) return false;
  const Point px{place->x * view.picture.width, place->y * view.picture.width};
  if (px.y > view.picture.height) return false;
  page = view.pageFromPx(px);
  const std::size_t pixel = view.pixelAt(px);
  const double depth = view.camera.depth(at);
  if (isOnHair(line.parts) && !shinesAt(solid, view, pixel)) return false;
  return view.picture.solid[pixel] == index && (line.parts >> view.picture.part[pixel] & 1u) &&
         std::abs(view.picture.depth[pixel] - depth) <
             std::max(kDepthSlackM, kDepthSlackShare * depth);
}

/// Ink that shows on the garment: on black cloth seams are left lighter.
double inkOn(const Look& look, std::uint32_t parts) {
  constexpr double kTooDark = 0.75, kOnDark = 0.3, kDarkHair = 0.5;
  if (isOnHair(parts)) return look.hair > kDarkHair ? 0 : 1;
  const std::uint32_t onLegs = bit(BodyPart::LeftLeg) | bit(BodyPart::RightLeg) |
                               bit(BodyPart::LeftShank) | bit(BodyPart::RightShank);
  const std::uint32_t onFeet = bit(BodyPart::LeftFoot) | bit(BodyPart::RightFoot);
  const double value = parts & onLegs                 ? look.legs
                       : parts & onFeet               ? look.shoes
                       : parts & bit(BodyPart::Skirt) ? look.skirt
                                                      : look.top;
  return value > kTooDark ? kOnDark : 1;
}

}  // namespace

SurfacePlace placeOn(const std::vector<Ring>& rings, double along, double angleDeg) {
  const double place = std::clamp(along, 0.0, 1.0) * double(rings.size() - 1);
  const auto low = std::min(static_cast<std::size_t>(place), rings.size() - 2);
  const double t = place - double(low);
  const double x = -std::sin(angleDeg * kDeg), y = std::cos(angleDeg * kDeg);
  const auto on = [&](const Ring& ring) -> Vec3 {
    return x * (x > 0 ? ring.toRight : ring.toLeft) * ring.right +
           y * (y > 0 ? ring.toFront : ring.toBack) * ring.front;
  };
  const Ring &a = rings[low], &b = rings[low + 1];
  const Vec3 by = (1 - t) * on(a) + t * on(b);
  // An ellipse's normal leans to its short axis; the direction of the place serves.
  return {(1 - t) * a.centre + t * b.centre + by, by.normalized()};
}

std::vector<GarmentLine> garmentLines(const Body& body, const Skeleton& skeleton) {
  if (!body.look.clothed) return {};
  return Tailor(body, skeleton).sewn();
}

std::vector<Stroke> drawnGarments(const Solid& solid, int index, const PanelView& view,
                                  double lineMm) {
  std::vector<Stroke> out;
  const double headMm = headOnPage(solid, view);
  for (const GarmentLine& line : solid.garmentLines) {
    if (headMm < line.leastHeadMm) continue;
    const double width = lineMm * line.weight;
    std::vector<Point> points;
    const auto flush = [&] {
      if (points.size() >= 2)
        out.push_back(drawnLine(points, width, inkOn(solid.look, line.parts), 0.06 * headMm));
      points.clear();
    };
    for (std::size_t i = 0; i < line.at.size(); ++i) {
      Point page;
      if (isSeen(line, i, index, solid, view, page))
        points.push_back(page);
      else
        flush();
    }
    flush();
  }
  return out;
}

}  // namespace tw
