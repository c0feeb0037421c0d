// Staged panels to move things in, for tests only.
#pragma once

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "stage/camera_moves.h"
#include "stage/drag.h"

namespace tw {

inline const Stager& stagerOfTwo() {
  static const Stager made = [] {
    auto stager =
        Stager::make(std::vector<Character>{{"ada", "ADA", {}, Sex::Female, 1.68, "medium", "bob"},
                                            {"bo", "BO", {}, Sex::Male, 1.83, "heavy", "short"}});
    REQUIRE_MESSAGE(stager.has_value(), (stager ? "" : describe(stager.error())));
    return std::move(*stager);
  }();
  return made;
}

/// Ada holds a lantern, Bo stands by, a crate is on the floor.
inline const Beat& beatOfTwo() {
  static const Beat beat = [] {
    Beat b;
    b.id = "p1-1";
    b.setting = "interior store";
    b.figures = {{"ada", "hold", "", ""}, {"bo", "stand", "", ""}};
    b.props = {{"lantern", "lantern", "cylinder", {0.18, 0.34, 0.18}, "ada"},
               {"crate", "crate", "box", {0.7, 0.6, 0.5}, ""}};
    return b;
  }();
  return beat;
}

inline const StagedPanel& panelOfTwo() {
  static const StagedPanel panel{&stagerOfTwo(), &beatOfTwo(), Rect{{20, 30}, {140, 110}}, "ada"};
  return panel;
}

inline Staging stagingOfTwo(const StagingChoice& choice) {
  StageRequest request;
  request.beat = &beatOfTwo();
  request.focus = "ada";
  request.aspect = panelOfTwo().aspect();
  return stagerOfTwo().solved(request, choice);
}

inline double anyOf(double least, double most) {
  return least + (most - least) * *rc::gen::inRange(0, 10001) / 10000.0;
}

/// Solved for any side, height, tilt and mirroring.
inline Staging anyStaging() {
  StagingChoice choice;
  choice.shot = *rc::gen::element(ShotSize::Medium, ShotSize::MediumLong, ShotSize::Long);
  choice.eye = *rc::gen::element(EyeHeight::Low, EyeHeight::Level, EyeHeight::High);
  choice.sideDeg = anyOf(-60, 60);
  choice.tiltDeg = *rc::gen::element(0.0, 12.0, -8.0);
  choice.mirrored = *rc::gen::arbitrary<bool>();
  Staging staging = stagingOfTwo(choice);
  for (SetFigure& figure : staging.figures) figure.poseMirrored = *rc::gen::arbitrary<bool>();
  return staging;
}

inline Staging plainStaging() {
  return stagingOfTwo({ShotSize::Long, EyeHeight::Level, 20, 0, false, 0});
}

inline Handle handleOf(const StagedPanel& panel, const Staging& staging, Grab grab,
                       int figureOrThing) {
  for (const Handle& handle : handlesOf(panel, staging))
    if (handle.grab == grab &&
        (grab == Grab::Thing ? handle.thing : handle.figure) == figureOrThing)
      return handle;
  FAIL("no such handle");
  return {};
}

}  // namespace tw
