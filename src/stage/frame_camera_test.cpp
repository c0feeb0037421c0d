// The artist's own lens and roll, pairs as one focus, and crowns of who speaks.
#include "stage/frame_camera.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "stage/quick_measures.h"
#include "stage/shot_size.h"

using namespace tw;

namespace {

const Stager& stager() {
  static const Stager made = [] {
    auto stager = Stager::make({{"ada", "ADA", {}, Sex::Female, 1.68, "medium", "bob"},
                                {"bo", "BO", {}, Sex::Male, 1.83, "heavy", "short"},
                                {"cy", "CY", {}, Sex::Female, 1.15, "child", "long", 6}});
    REQUIRE_MESSAGE(stager.has_value(), (stager ? "" : describe(stager.error())));
    return std::move(*stager);
  }();
  return made;
}

Beat beatOf(std::vector<BeatFigure> figures) {
  Beat beat;
  beat.id = "p1-1";
  beat.setting = "exterior";
  beat.figures = std::move(figures);
  return beat;
}

void says(Beat& beat, const std::string& who) {
  CopyItem item;
  item.speaker = who;
  item.words = 1;
  beat.copy.push_back(item);
}

StageRequest requestFor(const Beat& beat, double aspect) {
  StageRequest request;
  request.beat = &beat;
  request.focus = beat.figures[0].who;
  request.aspect = aspect;
  return request;
}

struct Framed {
  Staging staging;
  Scene scene;
  Camera camera;
};

Framed framed(const StageRequest& request, const StagingChoice& choice) {
  Staging staging = stager().solved(request, choice);
  Scene scene = stager().sceneOf(staging, *request.beat, request.focus);
  Camera camera(staging.camera, request.aspect);
  return {std::move(staging), std::move(scene), camera};
}

constexpr std::array<double, 6> kLenses{14, 24, 35, 50, 135, 300};

}  // namespace

TEST_CASE("an artist's own lens is kept and the shot keeps its size") {
  const double stature = 1.68;
  const Beat beat = beatOf({{"ada", "contrapposto", "", ""}});
  for (const double lens : kLenses)
    for (const double aspect : {0.6, 1.0, 1.8})
      for (int shot = 1; shot < kShotSizes; ++shot)
        for (const EyeHeight eye : {EyeHeight::Low, EyeHeight::Level, EyeHeight::High}) {
          StagingChoice choice{static_cast<ShotSize>(shot), eye, 20, 0, false, 0};
          choice.lensMm = lens;
          // A lens so short that it would touch the face stays 30 cm away: another test.
          if (lens / 36 * aspect * stature / mostRatio(choice.shot) < 0.3) continue;
          const Framed f = framed(requestFor(beat, aspect), choice);
          INFO("lens ", lens, " aspect ", aspect, " shot ", shot);
          CHECK(f.staging.camera.focalMm == lens);
          const ShotSize got = shotOfRatio(statureOverFrame(f.scene, f.camera));
          // So near that head and hips are not one distance away, names meet at their limits.
          CHECK(stepsBetween(got, choice.shot) <= (lens < 30 ? 1 : 0));
        }
}

TEST_CASE("a lens too short for a close-up stays 30 cm from the face and shows more") {
  const Beat beat = beatOf({{"ada", "stand", "", ""}});
  StagingChoice choice{ShotSize::CloseUp, EyeHeight::Level, 0, 0, false, 0};
  choice.lensMm = 14;
  const Framed f = framed(requestFor(beat, 0.7), choice);
  CHECK(f.camera.depth(headMiddle(f.scene.actors[0].skeleton)) == doctest::Approx(0.3));
  CHECK(shotOfRatio(statureOverFrame(f.scene, f.camera)) > ShotSize::CloseUp);
}

TEST_CASE("whatever the lens the head room of a medium shot and the level eye stay") {
  // 8 % head room: the custom that the band table of staging facts §7.2 is computed with.
  const Beat beat = beatOf({{"ada", "stand", "", ""}});
  for (const double lens : kLenses) {
    StagingChoice choice{ShotSize::Medium, EyeHeight::Level, 20, 0, false, 0};
    choice.lensMm = lens;
    const Framed f = framed(requestFor(beat, 1.2), choice);
    const Skeleton& s = f.scene.actors[0].skeleton;
    INFO("lens ", lens);
    CHECK(headBox(f.scene.actors[0], f.camera).min.y == doctest::Approx(0.08).epsilon(0.35));
    CHECK(f.staging.camera.pitchDeg == 0);
    CHECK(f.staging.camera.eye.y == doctest::Approx((s[Joint::Crown] + s[Joint::Chin]).y() / 2));
  }
}

TEST_CASE("a longer lens stands farther off by as much as it is longer") {
  // Source: image size = f · H / d (Hartley & Zisserman ch. 6), so d grows as f does.
  const Beat beat = beatOf({{"ada", "stand", "", ""}});
  const auto distance = [&](double lens) {
    StagingChoice choice{ShotSize::MediumCloseUp, EyeHeight::Level, 0, 0, false, 0};
    choice.lensMm = lens;
    const Framed f = framed(requestFor(beat, 1.2), choice);
    return f.camera.depth(headMiddle(f.scene.actors[0].skeleton));
  };
  CHECK(distance(135) / distance(45) == doctest::Approx(3).epsilon(0.02));
}

TEST_CASE("a roll that is asked for is every variant's, mirrored or not") {
  Beat beat = beatOf({{"ada", "stand", "", ""}, {"bo", "stand", "", ""}});
  beat.rollDeg = -12;
  beat.lensMm = 28;
  const StageRequest request = requestFor(beat, 1.3);
  const auto variants = stager().variants(request, 24);
  REQUIRE(variants.size() > 8);
  for (const Variant& v : variants) {
    const CameraPlace camera = stager().solved(request, v.choice).camera;
    CHECK(camera.rollDeg == -12);
    CHECK(camera.focalMm == 28);
  }
}

TEST_CASE("a rolled picture holds the figure as an upright one does") {
  const Beat beat = beatOf({{"ada", "stand", "", ""}});
  for (const double roll : {-40.0, -12.0, 12.0, 25.0})
    for (const ShotSize shot : {ShotSize::Medium, ShotSize::Long, ShotSize::VeryLong}) {
      const Framed f = framed(requestFor(beat, 1.1), {shot, EyeHeight::Level, 10, roll, false, 0});
      INFO("roll ", roll, " shot ", static_cast<int>(shot));
      const FrameCut cut = frameCut(f.scene.actors[0], f.camera, shot, {{0, 0}, {1, 1}});
      if (shot != ShotSize::Medium) CHECK(cut.whole);
      const Rect head = headBox(f.scene.actors[0], f.camera);
      CHECK(head.min.y > 0);
      CHECK(head.min.x > 0);
      CHECK(head.max.x < 1);
    }
}

TEST_CASE("eye heights from worm's to bird's rise step by step and tilt the camera to match") {
  const Beat beat = beatOf({{"ada", "stand", "", ""}});
  for (const ShotSize shot : {ShotSize::CloseUp, ShotSize::Medium, ShotSize::Long}) {
    double before = -1;
    for (int eye = 0; eye < 5; ++eye) {
      StagingChoice choice{shot, static_cast<EyeHeight>(eye), 0, 0, false, 0};
      const CameraPlace camera = framed(requestFor(beat, 1), choice).staging.camera;
      CHECK(camera.eye.y >= before);  // worm's and low meet on the floor in far shots
      before = camera.eye.y;
      if (eye < 2) CHECK(camera.pitchDeg > 5);
      if (eye > 2) CHECK(camera.pitchDeg < -5);
    }
  }
}

TEST_CASE("two in one pose for two are one focus: both heads stay in the frame") {
  for (const char* relation :
       {"carries", "embraces", "grapples", "supports", "comforts", "shields"})
    for (const char* other : {"bo", "cy"}) {
      const Beat beat = beatOf({{"ada", "stand", relation, other}, {other, "stand", "", ""}});
      for (const double aspect : {0.8, 1.4})
        for (const ShotSize shot : {ShotSize::Medium, ShotSize::MediumLong, ShotSize::Long})
          for (const bool mirrored : {false, true}) {
            const Framed f =
                framed(requestFor(beat, aspect), {shot, EyeHeight::Level, 15, 0, mirrored, 0});
            for (const Actor& actor : f.scene.actors) {
              const Rect head = headBox(actor, f.camera);
              INFO(relation, " ", actor.set.who, " aspect ", aspect, " shot ",
                   static_cast<int>(shot));
              CHECK(head.min.y > -0.02);
              CHECK(head.min.x > -0.02);
              CHECK(head.max.x < 1.02);
              CHECK(head.max.y < 1.02);
            }
          }
    }
}

TEST_CASE("no wide shot cuts a speaker's crown unless the search is told what it costs") {
  for (const char* pose : {"kneel", "crouch", "sit", "stand", "lie", "mourn"}) {
    Beat beat = beatOf({{"cy", pose, "", ""}, {"bo", "stand", "looks at", "cy"}});
    says(beat, "bo");
    says(beat, "cy");
    for (const double aspect : {0.7, 1.0, 1.6})
      for (const ShotSize shot :
           {ShotSize::Medium, ShotSize::MediumLong, ShotSize::Long, ShotSize::VeryLong})
        for (int placement = 0; placement < 3; ++placement) {
          const StagingChoice choice{shot, EyeHeight::Level, 20, 0, false, placement};
          const double cost = stager().measured(requestFor(beat, aspect), choice).cutCost;
          const Framed f = framed(requestFor(beat, aspect), choice);
          for (const Actor& actor : f.scene.actors) {
            INFO(pose, " ", actor.set.who, " aspect ", aspect, " shot ", static_cast<int>(shot),
                 " placement ", placement);
            const double top = headBox(actor, f.camera).min.y;
            CHECK((top > -0.01 || cost > 0.4));
            if (shot >= ShotSize::Long) CHECK(top > 0);
          }
        }
  }
}
