// Measures against shapes whose answer is known, and the laws that all of them keep over random
// scenes.
#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <numbers>

#include "geometry/polygon.h"
#include "stage/ground_contrast.h"
#include "stage/outline_tells.h"
#include "stage/shot_size.h"
#include "stage/solid_shapes.h"
#include "stage/staging.h"
#include "stage/tangents.h"
#include "stage/visibility.h"

using namespace tw;

namespace {

constexpr double kWide = 120, kHigh = 80;
const Polygon kPanel = polygonOf(Rect{{10, 20}, {10 + kWide, 20 + kHigh}});
constexpr double kFocal = 50.0 / 36;  // frame widths

Camera standing() {
  CameraPlace place;
  place.eye = {0, 1.4, -4};
  return Camera(place, kWide / kHigh);
}

Solid ball(const Vec3& middle, double radius) {
  Solid solid{.mesh = placed(ellipsoidMesh({2 * radius, 2 * radius, 2 * radius}, 48),
                             {middle.x(), middle.y(), middle.z()}, 0, 0, true)};
  solid.prop = 0;
  return solid;
}

/// A ball that is seen as a circle of that radius (frame widths) about a place of the frame.
Solid discAt(double x, double y, double radius, double depth) {
  const Vec3 middle((x - 0.5) / kFocal * depth, 1.4 - (y - kHigh / kWide / 2) / kFocal * depth,
                    depth - 4);
  return ball(middle, radius / kFocal * depth);
}

std::vector<Tangent> found(const std::vector<Solid>& solids, int width = 300) {
  const Camera camera = standing();
  return tangentsOf(PanelSight(solids, camera, kPanel, width, Vec3::UnitY()));
}

const Stager& stager() {
  static const Stager made = [] {
    auto stager = Stager::make({{"ada", "ADA", {}, Sex::Female, 1.68, "medium", "bob"},
                                {"bo", "BO", {}, Sex::Male, 1.83, "heavy", "short"}});
    REQUIRE_MESSAGE(stager.has_value(), (stager ? "" : describe(stager.error())));
    return std::move(*stager);
  }();
  return made;
}

/// A random panel of one or two figures and perhaps a crate, and its picture in a looking-glass.
struct TwoSides {
  Beat beat;
  RoughPanel panel, mirrored;
};

Polygon outlineOf(double aspect) {
  return polygonOf(Rect{{0, 0}, {60 * aspect, 60}});
}

Staging inLookingGlass(Staging s) {
  s.camera.eye.x = -s.camera.eye.x;
  s.camera.panDeg = -s.camera.panDeg;
  s.camera.rollDeg = -s.camera.rollDeg;
  s.camera.offsetX = -s.camera.offsetX;
  for (SetFigure& f : s.figures) {
    f.at.x = -f.at.x;
    f.headingDeg = -f.headingDeg;
    f.gazeDeg = -f.gazeDeg;
    f.poseMirrored = !f.poseMirrored;
  }
  for (SetProp& p : s.props) {
    p.at.x = -p.at.x;
    p.headingDeg = -p.headingDeg;
  }
  for (SetLamp* lamp : {&s.light->key, &s.light->fill, &s.light->rim}) lamp->from.x = -lamp->from.x;
  s.choice.mirrored = !s.choice.mirrored;
  return s;
}

Beat anyBeat() {
  const std::vector<std::string> poses{"stand",  "walk",     "point", "kneel", "run",
                                       "crouch", "reach-up", "sit",   "guard", "contrapposto"};
  Beat beat;
  beat.id = "p1-1";
  beat.setting = "none";
  beat.figures = {{"ada", *rc::gen::elementOf(poses), "", ""}};
  if (*rc::gen::arbitrary<bool>())
    beat.figures.push_back({"bo", *rc::gen::elementOf(poses), "looks at", "ada"});
  if (*rc::gen::arbitrary<bool>()) {
    Prop crate;
    crate.id = crate.name = "crate";
    crate.sizeM = {0.7, 0.8, 0.6};
    beat.props.push_back(crate);
  }
  return beat;
}

TwoSides anyPanel() {
  TwoSides out;
  out.beat = anyBeat();
  const double aspect = *rc::gen::elementOf(std::vector<double>{0.8, 1.0, 1.5});
  StageRequest request;
  request.beat = &out.beat;
  request.focus = "ada";
  request.aspect = aspect;
  StagingChoice choice;
  choice.shot = static_cast<ShotSize>(*rc::gen::inRange(1, 7));
  choice.eye = static_cast<EyeHeight>(*rc::gen::inRange(0, 5));
  choice.sideDeg = *rc::gen::inRange(-50, 50);
  choice.tiltDeg = *rc::gen::elementOf(std::vector<double>{0, 0, 9, -12});
  choice.placement = *rc::gen::inRange(0, 3);
  out.panel.outline = out.mirrored.outline = outlineOf(aspect);
  out.panel.staging = stager().solved(request, choice);
  out.mirrored.staging = inLookingGlass(out.panel.staging);
  return out;
}

std::string withSidesExchanged(std::string limb) {
  if (limb.starts_with("left ")) return "right " + limb.substr(5);
  if (limb.starts_with("right ")) return "left " + limb.substr(6);
  return limb;
}

const SeenLimb* limbNamed(const SeenFigure& figure, const std::string& name) {
  for (const SeenLimb& limb : figure.limbs)
    if (limb.limb == name) return &limb;
  return nullptr;
}

bool near(double a, double b, double by) {
  return std::abs(a - b) <= by;
}

}  // namespace

TEST_CASE("discs that just touch at different depths are a tangent at the place of the touch") {
  // Closed form: circles about (0.4, 0.33) and (0.6, 0.33) of radius 0.1 touch at (0.5, 0.33).
  const auto tangents = found({discAt(0.4, 0.333, 0.1, 4), discAt(0.6, 0.333, 0.1, 6)});
  REQUIRE(tangents.size() == 1);
  CHECK(tangents[0].at.x == doctest::Approx(10 + 0.5 * kWide).epsilon(0.02));
  CHECK(tangents[0].at.y == doctest::Approx(20 + 0.333 * kWide).epsilon(0.06));
  CHECK_FALSE(tangents[0].runsAlong);
}

TEST_CASE("a plain overlap and a plain gap are no tangents") {
  CHECK(found({discAt(0.42, 0.333, 0.1, 4), discAt(0.55, 0.333, 0.1, 6)}).empty());
  CHECK(found({discAt(0.35, 0.333, 0.1, 4), discAt(0.6, 0.333, 0.1, 6)}).empty());
}

TEST_CASE("what touches in space may touch on paper") {
  CHECK(found({discAt(0.4, 0.333, 0.1, 4), discAt(0.6, 0.333, 0.1, 4)}).empty());
}

TEST_CASE("edges that run along each other are told with their length") {
  // Two upright boards, one behind the other, their edges in line: 1 m at depth 4 is 0.347 frames.
  Solid near{.mesh = placed(boxMesh({0.5, 1, 0.02}), {-0.25, 0.9, 0}, 0)};
  Solid far{.mesh = placed(boxMesh({0.8, 1.5, 0.02}), {0.4, 0.65, 2}, 0)};
  near.prop = 0;
  far.prop = 1;
  const auto tangents = found({near, far});
  REQUIRE(tangents.size() == 1);
  CHECK(tangents[0].runsAlong);
  CHECK(tangents[0].lengthMm == doctest::Approx(kFocal / 4 * kWide).epsilon(0.08));
}

TEST_CASE("a contour that only just meets the border is a tangent, one that is cut is none") {
  const auto touching = found({discAt(0.1, 0.333, 0.1, 4)});
  REQUIRE(touching.size() == 1);
  CHECK(touching[0].b == -1);
  CHECK(touching[0].at.x == doctest::Approx(10).epsilon(0.2));
  CHECK(found({discAt(0.03, 0.333, 0.1, 4)}).empty());
  CHECK(found({discAt(0.16, 0.333, 0.1, 4)}).empty());
}

TEST_CASE("an outline's solidity is its area over its hull's") {
  // Source: plane geometry; a disc is its own hull, an L of three squares fills 6/7 of its.
  const Camera camera = standing();
  CHECK(outlineTells(OwnMask(discAt(0.5, 0.33, 0.15, 4), camera, 400)).solidity > 0.98);
  Solid ell{.mesh = placed(boxMesh({0.4, 0.8, 0.01}), {-0.2, 1, 0}, 0)};
  const Mesh foot = placed(boxMesh({0.4, 0.4, 0.01}), {0.2, 1, 0}, 0);
  const auto first = static_cast<std::uint32_t>(ell.mesh.points.size());
  ell.mesh.points.insert(ell.mesh.points.end(), foot.points.begin(), foot.points.end());
  ell.mesh.normals.insert(ell.mesh.normals.end(), foot.normals.begin(), foot.normals.end());
  for (auto t : foot.triangles) {
    for (auto& corner : t) corner += first;
    ell.mesh.triangles.push_back(t);
    ell.mesh.part.push_back(0);
  }
  CHECK(outlineTells(OwnMask(ell, camera, 400)).solidity == doctest::Approx(6.0 / 7).epsilon(0.02));
}

TEST_CASE("half of a ball behind a board is hidden by the board, half beyond the frame by it") {
  const Camera camera = standing();
  Solid one = discAt(0.5, 0.333, 0.1, 5);
  one.figure = 0;
  one.prop = -1;
  Solid board{.mesh = placed(boxMesh({2, 3, 0.02}), {1, 0, -1}, 0)};  // covers all right of 0.5
  board.prop = 0;
  const std::vector<Solid> solids{one, board};
  const Visibility v = visibilityOf(PanelSight(solids, camera, kPanel, 300, Vec3::UnitY()), 0);
  CHECK(v.visible == doctest::Approx(0.5).epsilon(0.02));
  REQUIRE(v.hiddenBy.contains(1));
  CHECK(v.hiddenBy.at(1) == doctest::Approx(0.5).epsilon(0.02));
  Solid cut = discAt(0.0, 0.333, 0.1, 5);
  cut.figure = 0;
  cut.prop = -1;
  const std::vector<Solid> alone{cut};
  CHECK(visibilityOf(PanelSight(alone, camera, kPanel, 300, Vec3::UnitY()), 0).cutOff ==
        doctest::Approx(0.5).epsilon(0.03));
}

TEST_CASE("a limb's foreshortening is the table's of a limb about the axis") {
  // Source: facts on foreshortening, midpoint on the axis at D = 5 L (closed form, perspective).
  const Camera camera = standing();
  const double theta = std::numbers::pi / 3, length = 0.8;
  Skeleton s;
  s.at.fill(Vec3(0, 1.4, 0));
  s.frame.fill(Eigen::Matrix3d::Identity());
  const Vec3 half = length / 2 * Vec3(std::cos(theta), 0, std::sin(theta));
  s.at[static_cast<std::size_t>(Joint::LeftElbow)] = Vec3(0, 1.4, 0) - half;
  s.at[static_cast<std::size_t>(Joint::LeftWrist)] = Vec3(0, 1.4, 0) + half;
  CHECK(foreshortening(Limb::LeftForearm, s, camera) == doctest::Approx(0.5038).epsilon(1e-3));
  CHECK(foreshortening(Limb::LeftForearm, s, camera) ==
        doctest::Approx(tw::foreshortening(60, 5)).epsilon(1e-6));
}

TEST_CASE("a light figure on a dark ground has contrast over 0, a dark one on light under 0") {
  const Camera camera = standing();
  Solid one = discAt(0.5, 0.333, 0.1, 5);
  one.figure = 0;
  one.prop = -1;
  const std::vector<Solid> solids{one};
  const PanelSight sight(solids, camera, kPanel, 240, Vec3(0, 0, -1));
  Mood night, day;
  night.skyDark = night.groundDark = 0.9;
  Lighting light;
  light.ambient = 1;
  const auto contrast = [&](const Mood& mood) {
    return groundContrast(sight, lightnessPicture(sight, mood, light), 0);
  };
  CHECK(contrast(night) > 50);
  light.ambient = light.key.strength = light.fill.strength = 0;
  CHECK(contrast(day) < -80);
}

TEST_CASE("mirroring the scene mirrors every measure") {
  CHECK(rc::check("left and right limbs exchanged, all else the same", [] {
    TwoSides two = anyPanel();
    stager().look(two.panel, two.beat, "ada");
    stager().look(two.mirrored, two.beat, "ada");
    const double wide = bounds(two.panel.outline).width();
    for (std::size_t i = 0; i < two.panel.figures.size(); ++i) {
      const SeenFigure &a = two.panel.figures[i], &b = two.mirrored.figures[i];
      RC_ASSERT(near(a.visible, b.visible, 0.01));
      RC_ASSERT(near(a.share, b.share, 0.01));
      RC_ASSERT(near(a.headMm, b.headMm, 1e-6));
      RC_ASSERT(near(a.reach, b.reach, 1e-9));
      RC_ASSERT(near(a.solidity, b.solidity, 0.03));  // close-ups: a coarse own picture
      RC_ASSERT(near(a.overlap, b.overlap, 0.01));
      RC_ASSERT(near(a.contrast, b.contrast, 1.0));
      RC_ASSERT(a.cut == b.cut);
      RC_ASSERT(a.jointCuts.size() == b.jointCuts.size());
      for (const SeenLimb& limb : a.limbs) {
        const SeenLimb* other = limbNamed(b, withSidesExchanged(limb.limb));
        RC_ASSERT(other != nullptr);
        RC_ASSERT(near(limb.visible, other->visible, 0.12));  // a hand is a few dozen pixels
        RC_ASSERT(near(limb.foreshortened, other->foreshortened, 1e-6));
      }
    }
    RC_ASSERT(near(two.panel.focus.x, wide - two.mirrored.focus.x, 1e-6));
    RC_ASSERT(near(two.panel.lead.direction.x, -two.mirrored.lead.direction.x, 1e-6));
    RC_ASSERT(near(two.panel.lead.direction.y, two.mirrored.lead.direction.y, 1e-6));
  }));
}

TEST_CASE("an added occluder never raises what is seen of any figure or limb") {
  CHECK(rc::check("a board before the scene only takes away", [] {
    const TwoSides two = anyPanel();
    const Rect frame = frameOf(two.panel.outline);
    const Camera camera(two.panel.staging.camera, frame.width() / frame.height());
    std::vector<Solid> solids = stager().solidsOf(two.panel.staging, two.beat, 0.5);
    const auto measured = [&] {
      std::vector<Visibility> all;
      const PanelSight sight(solids, camera, two.panel.outline, 200, Vec3::UnitY());
      for (std::size_t i = 0; i < two.beat.figures.size(); ++i)
        all.push_back(visibilityOf(sight, static_cast<int>(i)));
      return all;
    };
    const std::vector<Visibility> before = measured();
    const Vec3 eye = camera.eye();
    const Vec3 through =
        camera.rayThrough({*rc::gen::inRange(0, 100) / 100.0, *rc::gen::inRange(0, 70) / 100.0});
    const double away = *rc::gen::inRange(3, 60) / 10.0;
    const Vec3 at = eye + away * through;
    const double size = *rc::gen::inRange(5, 80) / 100.0;
    Solid board{.mesh = placed(boxMesh({size, size, 0.05}), {at.x(), at.y(), at.z()}, 0, 0, true)};
    board.prop = 0;
    solids.push_back(board);
    const std::vector<Visibility> after = measured();
    for (std::size_t i = 0; i < before.size(); ++i) {
      RC_ASSERT(after[i].visible <= before[i].visible);
      RC_ASSERT(after[i].share <= before[i].share);
      for (std::size_t limb = 0; limb < kLimbs; ++limb)
        RC_ASSERT(after[i].limbs[limb] <= before[i].limbs[limb]);
    }
  }));
}

TEST_CASE("scaling the picture in pixels changes no ratio beyond what pixels round") {
  CHECK(rc::check("300 px and 600 px agree", [] {
    TwoSides two = anyPanel();
    RoughPanel& small = two.panel;
    RoughPanel large = small;
    stager().look(small, two.beat, "ada", 300);
    stager().look(large, two.beat, "ada", 600);
    for (std::size_t i = 0; i < small.figures.size(); ++i) {
      const SeenFigure &a = small.figures[i], &b = large.figures[i];
      RC_ASSERT(near(a.visible, b.visible, 0.02));
      RC_ASSERT(near(a.share, b.share, 0.01));
      RC_ASSERT(near(a.solidity, b.solidity, 0.03));
      RC_ASSERT(near(a.overlap, b.overlap, 0.02));
      RC_ASSERT(a.headMm == b.headMm);
      RC_ASSERT(a.reach == b.reach);
      for (std::size_t limb = 0; limb < kLimbs; ++limb) {
        RC_ASSERT(near(a.limbs[limb].visible, b.limbs[limb].visible, 0.2));
        RC_ASSERT(a.limbs[limb].foreshortened == b.limbs[limb].foreshortened);
      }
    }
  }));
}

TEST_CASE("a larger print of the same panel keeps every share") {
  CHECK(rc::check("shares have no unit", [] {
    TwoSides two = anyPanel();
    RoughPanel large = two.panel;
    for (Point& p : large.outline.points) p = {2.5 * p.x, 2.5 * p.y};
    stager().look(two.panel, two.beat, "ada");
    stager().look(large, two.beat, "ada");
    for (std::size_t i = 0; i < large.figures.size(); ++i) {
      RC_ASSERT(near(large.figures[i].visible, two.panel.figures[i].visible, 1e-3));
      RC_ASSERT(near(large.figures[i].headMm, 2.5 * two.panel.figures[i].headMm, 1e-6));
      RC_ASSERT(large.figures[i].cut == two.panel.figures[i].cut);
    }
    RC_ASSERT(large.tangents.size() == two.panel.tangents.size());
  }));
}
