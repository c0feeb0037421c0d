#include "stage/staging.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <thread>

#include "geometry/polygon.h"
#include "stage/blocking.h"
#include "stage/frame_camera.h"
#include "stage/quick_measures.h"
#include "stage/shot_size.h"
#include "stage/variants.h"

namespace tw {
namespace {

std::vector<Character> company() {
  return {{"ada", "ADA", {}, Sex::Female, 1.68, "medium", "bob"},
          {"bo", "BO", {}, Sex::Male, 1.83, "heavy", "short"},
          {"cy", "CY", {}, Sex::Female, 1.40, "child", "long"}};
}

const Stager& stager() {
  static const Stager made = [] {
    auto stager = Stager::make(company());
    REQUIRE_MESSAGE(stager.has_value(), (stager ? "" : describe(stager.error())));
    return std::move(*stager);
  }();
  return made;
}

Cast companyBodies() {
  Cast cast;
  for (const Character& one : company()) cast.bodies[one.id] = bodyOf(one);
  return cast;
}

CopyItem said(const std::string& who) {
  CopyItem item;
  item.speaker = who;
  item.text = "Words.";
  item.words = 1;
  return item;
}

Beat alone(const std::string& pose) {
  Beat beat;
  beat.id = "p1-1";
  beat.setting = "exterior";
  beat.figures = {{"ada", pose, "", ""}};
  return beat;
}

Beat talk() {
  Beat beat = alone("stand");
  beat.figures.push_back({"bo", "stand", "", ""});
  beat.copy = {said("bo"), said("ada")};
  return beat;
}

std::vector<Beat> scenes() {
  std::vector<Beat> all{alone("stand"), alone("walk"), talk()};
  Beat points = talk();
  points.figures[0] = {"ada", "point", "points at", "bo"};
  all.push_back(points);
  Beat runs = talk();
  runs.figures[0] = {"ada", "run", "runs to", "bo"};
  all.push_back(runs);
  Beat three = talk();
  three.figures.push_back({"cy", "stand", "", ""});
  all.push_back(three);
  Beat hauls = alone("pull");
  hauls.figures[0].relation = "pulls";
  hauls.figures[0].target = "chain";
  hauls.props = {{"chain", "chain", "cylinder", {0.08, 3, 0.08}, ""}};
  all.push_back(hauls);
  Beat kneels = alone("kneel");
  kneels.props = {{"lantern", "lantern", "cylinder", {0.18, 0.34, 0.18}, "ada"}};
  all.push_back(kneels);
  return all;
}

StageRequest requestFor(const Beat& beat, double aspect = 1.2) {
  StageRequest request;
  request.beat = &beat;
  request.focus = beat.figures.empty() ? "" : beat.figures[0].who;
  request.aspect = aspect;
  return request;
}

RoughPanel panelOf(const StageRequest& request, const StagingChoice& choice, double height = 60) {
  RoughPanel panel;
  panel.outline = polygonOf(Rect{{10, 20}, {10 + height * request.aspect, 20 + height}});
  panel.staging = stager().solved(request, choice);
  return panel;
}

/// Stature over frame height, measured by projecting a plumb rod as tall as the figure that stands
/// parallel to the picture plane at the depth of the head (close shots) or of the upper body.
double projectedRatio(const StageRequest& request, const Staging& staging) {
  const Camera camera(staging.camera, request.aspect);
  const Body body = bodyOf(company()[0]);
  const Skeleton s =
      posed(body, stager().poses().orStand(staging.figures[0].pose), staging.figures[0]);
  const Vec3 head = (s[Joint::Crown] + s[Joint::Chin]) / 2;
  const bool close = staging.choice.shot <= ShotSize::MediumCloseUp;
  const Vec3 at = close ? head : Vec3((head + s[Joint::Pelvis]) / 2);
  const Vec3 up = -camera.rotation().row(1).transpose() * body.stature;
  const Point a = camera.projectAlways(at), b = camera.projectAlways(at + up);
  return (b - a).length() * request.aspect;
}

}  // namespace

TEST_CASE("the solved camera gives the shot size asked for, in tall, square and wide panels") {
  // Bands: staging facts §7.2, stature over frame height (Drillis & Contini landmarks).
  for (const char* pose : {"stand", "walk", "point", "contrapposto", "guard", "shout"}) {
    const Beat beat = alone(pose);
    for (const double aspect : {0.4, 0.75, 1.0, 1.5, 2.2, 3.0}) {
      for (int shot = 0; shot < kShotSizes; ++shot) {
        for (const EyeHeight eye : {EyeHeight::Low, EyeHeight::Level, EyeHeight::High}) {
          const StageRequest request = requestFor(beat, aspect);
          const StagingChoice choice{static_cast<ShotSize>(shot), eye, 30, 0, false, 0};
          const double ratio = projectedRatio(request, stager().solved(request, choice));
          INFO(std::string(pose), " aspect ", aspect, " shot ", shot, " ratio ", ratio);
          // Arms spread in a sliver: whole comes before large.
          if (aspect < 0.5 && choice.shot == ShotSize::Long && ratio < 0.5) {
            CHECK(shotOfRatio(ratio) == ShotSize::VeryLong);
            continue;
          }
          CHECK(shotOfRatio(ratio) == choice.shot);
        }
      }
    }
  }
}

TEST_CASE("head room of a level medium shot is the eight per cent of the band table") {
  const Beat beat = alone("stand");
  const StageRequest request = requestFor(beat, 1.4);
  const StagingChoice choice{ShotSize::Medium, EyeHeight::Level, 0, 0, false, 0};
  const Camera camera(stager().solved(request, choice).camera, 1.4);
  const Staging staging = stager().solved(request, choice);
  const Skeleton s =
      posed(bodyOf(company()[0]), stager().poses().orStand("stand"), staging.figures[0]);
  CHECK(panelPoint(camera, s[Joint::Crown]).y == doctest::Approx(0.08).epsilon(0.25));
}

TEST_CASE("the first speaker stands on the side that is read first") {
  const Beat beat = talk();
  for (const double side : {-25.0, 0.0, 25.0}) {
    for (int placement = 0; placement < 4; ++placement) {
      StageRequest request = requestFor(beat);
      const StagingChoice choice{ShotSize::MediumLong, EyeHeight::Level, side, 0, false, placement};
      INFO(side, " ", placement);
      CHECK(stager().measured(request, choice).speakersInOrder == 1);
      const Variant v = stager().measured(request, choice);
      CHECK(v.heads[1].centre().x < v.heads[0].centre().x);  // bo speaks first
      request.direction = ReadingDirection::RightToLeft;
      CHECK(stager().measured(request, choice).heads[1].centre().x >
            stager().measured(request, choice).heads[0].centre().x);
    }
  }
}

TEST_CASE("a mirrored choice mirrors every measure") {
  for (const Beat& beat : scenes()) {
    for (const double aspect : {0.6, 1.3, 2.4}) {
      StageRequest request = requestFor(beat, aspect);
      request.airShare = 0.2;
      for (const StagingChoice& choice : choicesFor(request, 20)) {
        if (choice.mirrored) continue;
        StagingChoice other = choice;
        other.mirrored = true;
        const Variant a = stager().measured(request, choice);
        const Variant b = stager().measured(request, other);
        CHECK(b.focus.x == doctest::Approx(1 - a.focus.x).epsilon(1e-6));
        CHECK(b.focus.y == doctest::Approx(a.focus.y).epsilon(1e-6));
        CHECK(b.lead.x == doctest::Approx(-a.lead.x).epsilon(1e-6));
        CHECK(b.lead.y == doctest::Approx(a.lead.y).epsilon(1e-6));
        CHECK(b.leadStrength == doctest::Approx(a.leadStrength).epsilon(1e-6));
        CHECK(b.focusHead == doctest::Approx(a.focusHead).epsilon(1e-6));
        CHECK(b.focusRank == doctest::Approx(a.focusRank).epsilon(1e-6));
        CHECK(b.reach == doctest::Approx(a.reach).epsilon(1e-6));
        CHECK(b.cut == a.cut);
        CHECK(b.cutCost == doctest::Approx(a.cutCost).epsilon(1e-6));
        CHECK(b.axisSide == -a.axisSide);
        CHECK(b.visible == doctest::Approx(a.visible).epsilon(0.03));  // the grid has columns
        CHECK(b.air == doctest::Approx(a.air).epsilon(0.03));
      }
    }
  }
}

TEST_CASE("flipping one figure's pose leaves the set where it stands") {
  Beat beat = alone("walk");
  beat.setting = "exterior, quay with a tower";
  for (const bool mirrored : {false, true})
    for (const double side : {0.0, 26.0}) {
      StagingChoice choice{ShotSize::Long, EyeHeight::Level, side, 0, mirrored, 0};
      Staging staging = stager().solved(requestFor(beat), choice);
      const auto setOf = [&] {
        std::vector<Vec3> points;
        for (const Solid& solid : stager().solidsOf(staging, beat, 0.5))
          if (solid.isSet)
            points.insert(points.end(), solid.mesh.points.begin(), solid.mesh.points.end());
        return points;
      };
      const std::vector<Vec3> before = setOf();
      REQUIRE_FALSE(before.empty());
      staging.figures[0].poseMirrored = !staging.figures[0].poseMirrored;
      CHECK(setOf() == before);
    }
}

TEST_CASE("the list of variants holds the asked shot and eye height, leads both ways, no doubles") {
  for (Beat beat : scenes()) {
    beat.shot = ShotSize::Medium;
    beat.eye = EyeHeight::Low;
    const auto variants = stager().variants(requestFor(beat), 48);
    REQUIRE(!variants.empty());
    CHECK(variants.size() <= 48);
    CHECK(variants[0].askedShot == 0);
    CHECK(variants[0].askedEye == 0);
    const auto leads = [&](double sign) {
      return std::any_of(variants.begin(), variants.end(), [&](const Variant& v) {
        return sign * v.lead.x > 0.5 && v.leadStrength > 0.2;
      });
    };
    CHECK(leads(1));
    CHECK(leads(-1));
    for (std::size_t i = 0; i < variants.size(); ++i) {
      CHECK(variants[i].askedShot <= 1);
      for (std::size_t k = 0; k < i; ++k) CHECK(!(variants[i].choice == variants[k].choice));
    }
  }
}

TEST_CASE("every variant's focus lies inside the panel, whatever the panel's shape") {
  std::vector<Beat> all = scenes();
  Beat empty;
  empty.setting = "exterior bell tower";
  all.push_back(empty);
  Beat bell = empty;
  bell.setting = "interior bell tower";
  bell.props = {{"bell", "bell", "cone", {1.6, 1.7, 1.6}, ""}};
  all.push_back(bell);
  for (const Beat& beat : all) {
    for (const double aspect : {0.4, 0.75, 1.6, 3.0}) {
      const auto variants = stager().variants(requestFor(beat, aspect), 48);
      CHECK(variants.size() >= 8);
      for (const Variant& v : variants) {
        CHECK(v.focus.x > 0);
        CHECK(v.focus.x < 1);
        CHECK(v.focus.y > 0);
        CHECK(v.focus.y < 1);
      }
    }
  }
}

TEST_CASE("a whole figure asked for is whole, also inside a free part of the panel") {
  for (const char* pose : {"stand", "walk", "pull", "point", "kneel", "reach-up"}) {
    const Beat beat = alone(pose);
    for (const double aspect : {0.5, 0.65, 1.0, 1.8}) {
      StageRequest request = requestFor(beat, aspect);
      request.wholeFigure = true;
      const Rect part{{0.35, 0.2}, {0.95, 0.95}};
      for (const bool kept : {false, true}) {
        if (kept) request.keepInside = part;
        const StagingChoice choice{ShotSize::Long, EyeHeight::Level, 25, 0, false, 0};
        const Variant v = stager().measured(request, choice);
        INFO(std::string(pose), " aspect ", aspect, " kept ", kept);
        CHECK(v.focusWhole);
        CHECK(v.cut == "whole");
        if (!kept) continue;
        CHECK(part.outset(1e-6).contains(v.heads[0].min));
        CHECK(part.outset(1e-6).contains(v.heads[0].max));
      }
    }
  }
}

TEST_CASE("a larger panel of the same shape never lowers the head's height in mm") {
  for (const Beat& beat : scenes()) {
    const StageRequest request = requestFor(beat, 0.8);
    for (const StagingChoice& choice : choicesFor(request, 6)) {
      double before = 0;
      for (const double height : {40.0, 60.0, 90.0}) {
        RoughPanel panel = panelOf(request, choice, height);
        stager().look(panel, beat, request.focus, 60);
        CHECK(panel.figures[0].headMm >= before);
        before = panel.figures[0].headMm;
      }
    }
  }
}

TEST_CASE("quick measures agree with a rendered picture") {
  // Judge: our own renderer, which counts pixels and knows nothing of capsules.
  double worst = 0, sum = 0;
  int count = 0;
  for (const Beat& beat : scenes()) {
    const StageRequest request = requestFor(beat, 1.1);
    for (const StagingChoice& choice : choicesFor(request, 12)) {
      const Variant v = stager().measured(request, choice);
      RoughPanel panel = panelOf(request, choice);
      stager().look(panel, beat, request.focus, 200);
      const SeenFigure& seen = panel.figures[0];
      CHECK(seen.headMm == doctest::Approx(v.focusHead * 60).epsilon(1e-6));
      CHECK(seen.cut == v.cut);
      CHECK(panel.focus.x == doctest::Approx(10 + v.focus.x * 66).epsilon(1e-6));
      CHECK(panel.lead.strength == doctest::Approx(v.leadStrength).epsilon(1e-6));
      const double off = std::abs(seen.visible - v.visible);
      worst = std::max(worst, off);
      sum += off;
      ++count;
    }
  }
  CHECK(sum / count < 0.05);  // on average
  CHECK(worst < 0.15);        // props are not in the capsules
}

TEST_CASE("the axis side follows the triple product and flips when the camera crosses the line") {
  // Staging facts §7.3: side = sign(((B−A)×(C−A))·up).
  Scene scene;
  scene.actors.resize(2);
  scene.actors[0].set = {"b", "stand", false, {1, 0, 0}, 0, 0};
  scene.actors[1].set = {"a", "stand", false, {-1, 0, 0}, 0, 0};
  CHECK(axisSideOf(scene, Vec3(0, 1.6, -4)) == 1);  // (2,0,0)×(1,·,−4) = (·, 8, ·)
  CHECK(axisSideOf(scene, Vec3(0, 1.6, 4)) == -1);
  CHECK(axisSideOf(scene, Vec3(6, 1.6, 0)) == 0);
}

TEST_CASE("a look into the lens leads nowhere, a profile leads along the picture") {
  const Beat beat = alone("stand");
  const StageRequest request = requestFor(beat);
  const StagingChoice front{ShotSize::CloseUp, EyeHeight::Level, 32, 0, false, 0};
  const StagingChoice profile{ShotSize::CloseUp, EyeHeight::Level, -58, 0, false, 0};
  CHECK(stager().measured(request, front).leadStrength < 0.15);
  CHECK(stager().measured(request, profile).leadStrength > 0.4);
  CHECK(stager().measured(request, profile).lead.x > 0.9);
}

TEST_CASE("heads of a group never hide each other in a level shot") {
  Beat beat = talk();
  beat.figures.push_back({"cy", "stand", "", ""});
  for (const double aspect : {0.75, 1.5, 2.5}) {
    const StageRequest request = requestFor(beat, aspect);
    for (int placement = 0; placement < 4; ++placement) {
      const StagingChoice choice{ShotSize::Long, EyeHeight::Level, 26, 0, false, placement};
      const Variant v = stager().measured(request, choice);
      for (std::size_t i = 0; i < 3; ++i) {
        for (std::size_t k = 0; k < i; ++k) {
          const double apart = std::abs(v.heads[i].centre().x - v.heads[k].centre().x);
          CHECK(apart > 0.3 * (v.heads[i].width() + v.heads[k].width()));
        }
      }
    }
  }
}

TEST_CASE("the same request gives the same variants, also from several threads at once") {
  const Beat beat = talk();
  const StageRequest request = requestFor(beat);
  const auto once = stager().variants(request);
  std::vector<std::vector<Variant>> all(4);
  std::vector<std::thread> threads;
  for (auto& slot : all) {
    threads.emplace_back([&slot, &request] { slot = stager().variants(request); });
  }
  for (std::thread& thread : threads) thread.join();
  for (const auto& other : all) {
    REQUIRE(other.size() == once.size());
    for (std::size_t i = 0; i < once.size(); ++i) {
      CHECK(other[i].choice == once[i].choice);
      CHECK(other[i].focus == once[i].focus);
      CHECK(other[i].visible == once[i].visible);
    }
  }
}

TEST_CASE("a hauled chain starts at the hands and reaches the floor before the hauler") {
  const Beat beat = scenes()[6];
  const StageRequest request = requestFor(beat);
  const Staging staging = stager().solved(request, StagingChoice{});
  REQUIRE(staging.props.size() == 1);
  const auto solids = stager().solidsOf(staging, beat, 0.3);
  const Skeleton s =
      posed(bodyOf(company()[0]), stager().poses().orStand("pull"), staging.figures[0]);
  const Vec3 hands = (s[Joint::LeftWrist] + s[Joint::RightWrist]) / 2;
  double nearest = 1e9, lowest = 1e9;
  for (const Solid& solid : solids) {
    if (solid.prop != 0) continue;
    for (const Vec3& p : solid.mesh.points) {
      nearest = std::min(nearest, (p - hands).norm());
      lowest = std::min(lowest, p.y());
    }
  }
  CHECK(nearest < 0.2);
  CHECK(lowest < 0.15);
}

TEST_CASE("a face counts as seen from the front and in profile, not from behind") {
  const Beat beat = alone("stand");
  const StageRequest request = requestFor(beat);
  const StagingChoice choice{ShotSize::CloseUp, EyeHeight::Level, 0, 0, false, 0};
  Staging staging = stager().solved(request, choice);
  const Cast cast = companyBodies();
  const auto seenAt = [&](double headingDeg) {
    staging.figures[0].headingDeg = headingDeg;
    staging.figures[0].gazeDeg = 0;
    const Scene scene = sceneOf(staging, beat, "ada", cast, stager().poses());
    return quicklyMeasured(request, choice, scene, staging.camera).facesSeen;
  };
  CHECK(seenAt(0) == doctest::Approx(1));
  CHECK(seenAt(70) == doctest::Approx(1));
  CHECK(seenAt(180) < 0.1);
}

TEST_CASE("a speaker outside the frame has no face seen") {
  const Beat beat = talk();
  const StageRequest request = requestFor(beat, 1.5);
  const StagingChoice choice{ShotSize::Medium, EyeHeight::Level, 0, 0, false, 0};
  Staging staging = stager().solved(request, choice);
  const Cast cast = companyBodies();
  const auto seen = [&] {
    const Scene scene = sceneOf(staging, beat, "ada", cast, stager().poses());
    return quicklyMeasured(request, choice, scene, staging.camera).facesSeen;
  };
  const double before = seen();
  staging.figures[1].at.x += 20;
  CHECK(before > 0.9);
  CHECK(seen() <= before - 0.2);
}

}  // namespace tw
