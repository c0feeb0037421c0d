#include "stage/drag.h"

#include <cmath>

#include "stage/held_props.h"
#include "stage/staged_panel_test.h"

namespace tw {
namespace {

const Body& bodyIn(const Staging& staging, std::size_t figure) {
  return stagerOfTwo().bodyOf(staging.figures[figure].who);
}
const Pose& namedPose(const SetFigure& set) {
  return stagerOfTwo().poses().orStand(set.pose);
}
Skeleton skeletonIn(const Staging& staging, std::size_t figure) {
  const SetFigure& set = staging.figures[figure];
  return posed(bodyIn(staging, figure), namedPose(set), set);
}

/// Everything but the named figure and the things that it holds.
bool restIsSame(const Staging& a, const Staging& b, int figure, int thing = -1) {
  if (a.camera != b.camera || a.choice != b.choice || a.light != b.light) return false;
  for (int i = 0; i < 2; ++i)
    if (i != figure && a.figures[std::size_t(i)] != b.figures[std::size_t(i)]) return false;
  for (int i = 0; i < 2; ++i) {
    const bool goesAlong = i == thing || (i == 0 && figure == 0);
    if (!goesAlong && a.props[std::size_t(i)] != b.props[std::size_t(i)]) return false;
  }
  return true;
}

Point anyPlaceNear(const Handle& handle, double mm) {
  const double angle = anyOf(0, 6.283185), far = anyOf(0.2, 1) * mm;
  return {handle.page.x + far * std::cos(angle), handle.page.y + far * std::sin(angle)};
}

/// Ada hauls on a chain that runs to a fallen bell, as a picture of a whole figure has it.
const Beat& beatOfHauling() {
  static const Beat beat = [] {
    Beat b;
    b.id = "p1-2";
    b.setting = "interior bell chamber";
    b.description = "Ada hauls on the chain, taut to the fallen bell.";
    b.figures = {{"ada", "pull", "pulls", "chain"}};
    b.props = {{"chain", "chain", "cylinder", {0.08, 3, 0.08}, ""},
               {"bell", "bell", "cone", {1.6, 1.7, 1.6}, ""}};
    return b;
  }();
  return beat;
}

const StagedPanel& panelOfHauling() {
  static const StagedPanel panel{&stagerOfTwo(), &beatOfHauling(), Rect{{20, 30}, {140, 110}},
                                 "ada"};
  return panel;
}

Staging stagingOfHauling(const StagingChoice& choice) {
  StageRequest request;
  request.beat = &beatOfHauling();
  request.focus = "ada";
  request.aspect = panelOfHauling().aspect();
  return stagerOfTwo().solved(request, choice);
}

struct LineEnds {
  Vec3 near, far;
};

LineEnds endsOf(const SetProp& line) {
  const double pitch = line.pitchDeg / 57.295779513;
  const Vec3 along = Vec3(0, std::cos(pitch), 0) + directionOf(line.headingDeg) * std::sin(pitch);
  const Vec3 middle(line.at.x, line.at.y, line.at.z);
  return {middle - along * line.lengthM / 2, middle + along * line.lengthM / 2};
}

Vec3 handsOfAda(const Staging& staging) {
  return (handleOf(panelOfHauling(), staging, Grab::LeftHand, 0).world +
          handleOf(panelOfHauling(), staging, Grab::RightHand, 0).world) /
         2;
}

/// A page point at which a place is seen that lies so far aside and up of the handle.
Point seenAside(const StagedPanel& panel, const Staging& staging, const Handle& handle,
                double asideM, double upM) {
  const Camera camera = panel.cameraOf(staging);
  const Vec3 aside = camera.rotation().row(0).transpose();
  const Vec3 up = -camera.rotation().row(1).transpose();
  return panel.pageFrom(camera.projectAlways(handle.world + asideM * aside + upM * up));
}

}  // namespace

TEST_CASE("a part dragged to a place within reach is seen there within 1 mm") {
  CHECK(rc::check("hands go where they are dragged", [] {
    const StagedPanel& panel = panelOfTwo();
    const Staging from = anyStaging();
    const Grab grab = *rc::gen::element(Grab::LeftHand, Grab::RightHand, Grab::Head, Grab::Pelvis);
    const int figure = *rc::gen::element(0, 1);
    const Handle handle = handleOf(panel, from, grab, figure);
    RC_PRE(!handle.behindEye);
    const DragTo to{anyPlaceNear(handle, 12)};
    const Dragged d = dragged(panel, from, handle, to);
    const Handle after = handleOf(panel, d.staging, grab, figure);
    RC_LOG() << nameOf(grab) << " of " << figure << ": " << d.shortfall;
    if (d.shortM < 0.001) RC_ASSERT((after.page - to.page).length() < 1);
    RC_ASSERT(d.shortfall.empty() == (d.shortM < 0.005));
    RC_ASSERT(restIsSame(from, d.staging, figure));
    RC_CLASSIFY(d.shortM < 0.001, "reached");
  }));
}

TEST_CASE("a hand dragged to where forward kinematics puts it gets there") {
  CHECK(rc::check("reach what an arm can", [] {
    const StagedPanel& panel = panelOfTwo();
    const Staging from = anyStaging();
    const bool left = *rc::gen::arbitrary<bool>();
    const SetFigure& set = from.figures[1];
    SetFigure other = set;
    const std::string side = left != set.poseMirrored ? "left " : "right ";
    other.turnsDeg[side + "shoulder"] = {anyOf(-20, 120), anyOf(0, 70), anyOf(-30, 30)};
    other.turnsDeg[side + "elbow"] = {anyOf(10, 100), 0, 0};
    const MovedPart hand = left ? MovedPart::LeftHand : MovedPart::RightHand;
    const Body& body = bodyIn(from, 1);
    const Vec3 place = placeOf(hand, body, posed(body, namedPose(other), other));
    const Camera camera = panel.cameraOf(from);
    const Handle handle = handleOf(panel, from, left ? Grab::LeftHand : Grab::RightHand, 1);
    DragTo to{panel.pageFrom(camera.projectAlways(place))};
    to.nearerM = camera.depth(handle.world) - camera.depth(place);
    const Dragged d = dragged(panel, from, handle, to);
    const Handle after = handleOf(panel, d.staging, handle.grab, 1);
    RC_LOG() << d.shortfall;
    RC_ASSERT((after.page - to.page).length() < 1);
    RC_ASSERT((after.world - place).norm() < 0.002);
  }));
}

TEST_CASE("dragged there and back joints are within their limits and the hand is home") {
  CHECK(rc::check("there and back", [] {
    const StagedPanel& panel = panelOfTwo();
    const Staging from = anyStaging();
    const Handle handle = handleOf(panel, from, Grab::LeftHand, 1);
    RC_PRE(!handle.behindEye);
    const Dragged there = dragged(panel, from, handle, {anyPlaceNear(handle, 30)});
    const Handle away = handleOf(panel, there.staging, Grab::LeftHand, 1);
    const Dragged back = dragged(panel, there.staging, away, {handle.page});
    for (const Staging* staging : {&there.staging, &back.staging}) {
      const SetFigure& set = staging->figures[1];
      const Pose pose = withTurns(namedPose(set), set.turnsDeg);
      RC_ASSERT(beyondReach(pose, stagerOfTwo().limits()).empty());
    }
    const Handle home = handleOf(panel, back.staging, Grab::LeftHand, 1);
    if (back.shortM < 0.001) RC_ASSERT((home.page - handle.page).length() < 1);
  }));
}

TEST_CASE("a drag that goes nowhere changes nothing that is seen") {
  const StagedPanel& panel = panelOfTwo();
  const Staging from = plainStaging();
  for (const Handle& handle : handlesOf(panel, from)) {
    const Dragged d = dragged(panel, from, handle, {handle.page});
    const std::vector<Handle> before = handlesOf(panel, from);
    const std::vector<Handle> after = handlesOf(panel, d.staging);
    INFO(nameOf(handle.grab));
    for (std::size_t i = 0; i < before.size(); ++i)
      CHECK((before[i].world - after[i].world).norm() < 0.002);
  }
}

TEST_CASE("what is out of reach says how far short it stays") {
  const StagedPanel& panel = panelOfTwo();
  const Staging from = plainStaging();
  const Handle handle = handleOf(panel, from, Grab::LeftHand, 1);
  const Dragged d = dragged(panel, from, handle, {{handle.page.x + 200, handle.page.y - 200}});
  CHECK(d.shortM > 0.5);
  CHECK(d.shortfall.find("left hand") == 0);
}

TEST_CASE("a pinned hand stays while the hips go down") {
  const StagedPanel& panel = panelOfTwo();
  const Staging from = plainStaging();
  const Handle hips = handleOf(panel, from, Grab::Pelvis, 1);
  const Handle hand = handleOf(panel, from, Grab::RightHand, 1);
  const DragTo to{{hips.page.x + 1, hips.page.y + 5}};
  const Dragged free = dragged(panel, from, hips, to);
  const Dragged held = dragged(panel, from, hips, to, {{1, Joint::RightWrist}});
  CHECK((handleOf(panel, held.staging, Grab::RightHand, 1).world - hand.world).norm() < 0.001);
  CHECK((handleOf(panel, free.staging, Grab::RightHand, 1).world - hand.world).norm() > 0.01);
}

TEST_CASE("a figure's foot follows the pen over the ground and takes what it holds along") {
  CHECK(rc::check("over the ground", [] {
    const StagedPanel& panel = panelOfTwo();
    Staging from = anyStaging();
    const Handle ground = handleOf(panel, from, Grab::Ground, 0);
    RC_PRE(!ground.behindEye);
    const Camera camera = panel.cameraOf(from);
    const Vec3 wanted = ground.world + Vec3(anyOf(-1, 1), 0, anyOf(-0.5, 1));
    RC_PRE(camera.depth(wanted) > 0.5);
    const Point page = panel.pageFrom(camera.projectAlways(wanted));
    const Dragged d = dragged(panel, from, ground, {page});
    const Handle after = handleOf(panel, d.staging, Grab::Ground, 0);
    RC_ASSERT((after.world - wanted).norm() < 1e-6);
    RC_ASSERT((after.page - page).length() < 1e-6);
    const Vec3 way = after.world - ground.world;
    const Vec3 lantern = handleOf(panel, d.staging, Grab::Thing, 0).world -
                         handleOf(panel, from, Grab::Thing, 0).world;
    RC_ASSERT((lantern - way).norm() < 1e-6);
    RC_ASSERT(d.staging.figures[0].turnsDeg == from.figures[0].turnsDeg);
    RC_ASSERT(restIsSame(from, d.staging, 0));
  }));
}

TEST_CASE("a figure drawn above the horizon stays on the ground and says so") {
  const StagedPanel& panel = panelOfTwo();
  const Staging from = stagingOfTwo({ShotSize::Long, EyeHeight::High, 20, 0, false, 0});
  const Handle ground = handleOf(panel, from, Grab::Ground, 1);
  const Dragged d = dragged(panel, from, ground, {{ground.page.x, panel.frame.min.y - 400}});
  CHECK(d.staging.figures[1].at.y == from.figures[1].at.y);
  CHECK_FALSE(d.shortfall.empty());
}

TEST_CASE("drawn upright a thing rises and does not go aside") {
  const StagedPanel& panel = panelOfTwo();
  const Staging from = plainStaging();
  const Handle crate = handleOf(panel, from, Grab::Thing, 1);
  DragTo to{{crate.page.x + 4, crate.page.y - 10}};
  to.upright = true;
  const Dragged d = dragged(panel, from, crate, to);
  CHECK(d.staging.props[1].at.y > from.props[1].at.y + 0.05);
  CHECK(d.staging.props[1].at.x == from.props[1].at.x);
  CHECK(d.staging.props[1].at.z == from.props[1].at.z);
  CHECK(restIsSame(from, d.staging, -1, 1));
}

TEST_CASE("a thing on the floor goes where it is drawn and stays on the floor") {
  const StagedPanel& panel = panelOfTwo();
  const Staging from = plainStaging();
  const Handle crate = handleOf(panel, from, Grab::Thing, 1);
  const Dragged d = dragged(panel, from, crate, {{crate.page.x - 15, crate.page.y + 2}});
  const Handle after = handleOf(panel, d.staging, Grab::Thing, 1);
  CHECK(d.staging.props[1].at.y == from.props[1].at.y);
  CHECK(after.page.x == doctest::Approx(crate.page.x - 15).epsilon(0.06));
  CHECK(restIsSame(from, d.staging, -1, 1));
}

TEST_CASE("a thing in a hand takes the hand along") {
  const StagedPanel& panel = panelOfTwo();
  const Staging from = plainStaging();
  const Handle lantern = handleOf(panel, from, Grab::Thing, 0);
  const DragTo to{{lantern.page.x + 3, lantern.page.y - 4}};
  const Dragged d = dragged(panel, from, lantern, to);
  const Handle after = handleOf(panel, d.staging, Grab::Thing, 0);
  CHECK(d.shortM < 0.001);
  CHECK((after.page - to.page).length() < 1);
  CHECK(restIsSame(from, d.staging, 0));
}

TEST_CASE("a hauled line follows the hands, its far end and the bell it runs to stay") {
  CHECK(rc::check("hauling", [] {
    const StagedPanel& panel = panelOfHauling();
    StagingChoice choice{ShotSize::Long, EyeHeight::Level, anyOf(-40, 40), 0, false, 0};
    choice.mirrored = *rc::gen::arbitrary<bool>();
    const Staging from = stagingOfHauling(choice);
    const Grab grab =
        *rc::gen::element(Grab::LeftHand, Grab::RightHand, Grab::LeftFoot, Grab::RightFoot);
    const bool hand = grab == Grab::LeftHand || grab == Grab::RightHand;
    const double angle = anyOf(0, 6.283185), way = hand ? 0.2 : 0.3;
    const Handle handle = handleOf(panel, from, grab, 0);
    const Dragged d =
        dragged(panel, from, handle,
                {seenAside(panel, from, handle, way * std::cos(angle), way * std::sin(angle))});
    const LineEnds was = endsOf(from.props[0]), is = endsOf(d.staging.props[0]);
    const auto gap = [](const Staging& s, const LineEnds& e) {
      return (handsOfAda(s) - e.near).norm();
    };
    RC_LOG() << nameOf(grab) << ", far end moved " << (is.far - was.far).norm() << " m";
    RC_ASSERT(d.staging.props[1] == from.props[1]);
    RC_ASSERT((is.far - was.far).norm() < 0.001);
    RC_ASSERT(std::abs(gap(d.staging, is) - gap(from, was)) < 0.02);
  }));
}

TEST_CASE("who hauls goes over the ground, turns or takes another pose and the bell stays") {
  const StagedPanel& panel = panelOfHauling();
  const Staging from = stagingOfHauling({ShotSize::Long, EyeHeight::High, 20, 0, false, 0});
  const Handle ground = handleOf(panel, from, Grab::Ground, 0);
  const Point aside = seenAside(panel, from, ground, 0.4, 0);
  const double heading = from.figures[0].headingDeg + 25;
  for (const Staging& now :
       {dragged(panel, from, ground, {aside}).staging, turnedFigure(panel, from, 0, heading),
        posedAs(panel, from, 0, "hold-up", false), flippedFigure(panel, from, 0)}) {
    const LineEnds was = endsOf(from.props[0]), is = endsOf(now.props[0]);
    CHECK(now.props[1] == from.props[1]);
    CHECK((is.far - was.far).norm() < 0.001);
    CHECK((handsOfAda(now) - is.near).norm() < 0.2);
  }
}

TEST_CASE("a hauled line dragged by its middle is seen where it is dragged") {
  const StagedPanel& panel = panelOfHauling();
  const Staging from = stagingOfHauling({ShotSize::Long, EyeHeight::Level, 20, 0, false, 0});
  const Handle chain = handleOf(panel, from, Grab::Thing, 0);
  const Point to = seenAside(panel, from, chain, 0.03, 0.05);
  const Dragged d = dragged(panel, from, chain, {to});
  CHECK((handleOf(panel, d.staging, Grab::Thing, 0).page - to).length() < 1);
  CHECK(d.staging.props[1] == from.props[1]);
}

TEST_CASE("the gaze goes to any place that the neck allows and moves nothing but the head") {
  CHECK(rc::check("gaze", [] {
    const StagedPanel& panel = panelOfTwo();
    Staging from = anyStaging();
    from.figures[1].gazeDeg = anyOf(-30, 30);
    const Skeleton before = skeletonIn(from, 1);
    const double heading = from.figures[1].headingDeg + anyOf(-55, 55);
    const Vec3 place = headMiddle(before) + 2 * directionOf(heading) + Vec3(0, anyOf(-0.6, 0.6), 0);
    const Dragged d = gazedAt(panel, from, 1, place);
    const Skeleton after = skeletonIn(d.staging, 1);
    RC_LOG() << d.shortfall;
    RC_ASSERT(d.shortfall.empty());
    const Vec3 way = (place - headMiddle(after)).normalized();
    RC_ASSERT(way.dot(headFront(after)) > std::cos(0.5 / 57.3));
    for (const Joint joint : {Joint::Pelvis, Joint::Chest, Joint::LeftWrist, Joint::RightToe})
      RC_ASSERT((after[joint] - before[joint]).norm() < 1e-9);
    RC_ASSERT(restIsSame(from, d.staging, 1));
  }));
}

TEST_CASE("a gaze straight behind stops at the neck's limit and says how far off it is") {
  const StagedPanel& panel = panelOfTwo();
  const Staging from = plainStaging();
  const Vec3 behind =
      headMiddle(skeletonIn(from, 1)) - 3 * directionOf(from.figures[1].headingDeg + 10);
  const Dragged d = gazedAt(panel, from, 1, behind);
  const TurnRange twist = stagerOfTwo().limits().of("neck")[2];
  CHECK(std::abs(d.staging.figures[1].gazeDeg) <= std::max(-twist.least, twist.most) + 5);
  CHECK(d.shortfall.find("gaze") == 0);
}

TEST_CASE("the gaze handle goes where it is dragged") {
  const StagedPanel& panel = panelOfTwo();
  const Staging from = plainStaging();
  const Handle gaze = handleOf(panel, from, Grab::Gaze, 1);
  const Handle head = handleOf(panel, from, Grab::Head, 1);
  const DragTo to{between(gaze.page, head.page, 0.35) + Vector{0.5, 1}};  // on the ball before him
  const Dragged d = dragged(panel, from, gaze, to);
  CHECK(d.shortfall.empty());
  CHECK((handleOf(panel, d.staging, Grab::Gaze, 1).page - to.page).length() < 1);
}

TEST_CASE("the heading handle turns the figure about its foot with what it holds") {
  const StagedPanel& panel = panelOfTwo();
  const Staging from = stagingOfTwo({ShotSize::Long, EyeHeight::High, 20, 0, false, 0});
  const Staging turned = turnedFigure(panel, from, 0, from.figures[0].headingDeg + 40);
  const Handle wanted = handleOf(panel, turned, Grab::Heading, 0);
  const Dragged d = dragged(panel, from, handleOf(panel, from, Grab::Heading, 0), {wanted.page});
  CHECK(std::abs(std::remainder(d.staging.figures[0].headingDeg - from.figures[0].headingDeg - 40,
                                360.0)) < 0.01);
  CHECK(d.staging.figures[0].at == from.figures[0].at);
  CHECK(d.staging.props[0] != from.props[0]);
}

TEST_CASE("a figure flipped twice is as it was and flipped once its hands change sides") {
  const StagedPanel& panel = panelOfTwo();
  Staging from = plainStaging();
  from.figures[1].turnsDeg["left shoulder"] = {70, 30, 0};
  const Staging once = flippedFigure(panel, from, 1);
  CHECK(flippedFigure(panel, once, 1) == from);
  const double left = handleOf(panel, from, Grab::LeftHand, 1).world.y();
  CHECK(handleOf(panel, once, Grab::RightHand, 1).world.y() == doctest::Approx(left));
  CHECK(restIsSame(from, once, 1));
}

TEST_CASE("another pose is free of the turns made by hand and keeps the lantern in a hand") {
  const StagedPanel& panel = panelOfTwo();
  Staging from = plainStaging();
  from.figures[0].turnsDeg["waist"] = {20, 0, 0};
  const Staging now = posedAs(panel, from, 0, "walk", true);
  CHECK(now.figures[0].pose == "walk");
  CHECK(now.figures[0].turnsDeg.empty());
  CHECK(restIsSame(from, now, 0));
  const Scene scene = panel.sceneOf(now);
  const Handle lantern = handleOf(panel, now, Grab::Thing, 0);
  double nearest = 9;
  for (const MovedPart hand : {MovedPart::LeftHand, MovedPart::RightHand})
    nearest = std::min(
        nearest,
        (placeOf(hand, *scene.actors[0].body, scene.actors[0].skeleton) - lantern.world).norm());
  CHECK(nearest < 0.35);
}

}  // namespace tw
